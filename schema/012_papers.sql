-- A division of lumber says in which bundle each side's boards lie, and a load slip can be taken back.
DROP TABLE paper;                                  -- empty: an edition is raised before the journal is read again
CREATE TABLE paper (
  entry    INTEGER PRIMARY KEY REFERENCES journal,
  kind     TEXT NOT NULL CHECK (kind IN ('invoice', 'division', 'payment', 'refund', 'credit', 'write-off', 'waiver', 'load',
                                         'take-back')),
  number   INTEGER NOT NULL CHECK (number >= 1),   -- of its kind, without a gap
  called   TEXT NOT NULL,                          -- as printed, with the prefix; '' where the number is printed alone
  day      INTEGER NOT NULL,
  due      INTEGER,
  job      TEXT NOT NULL,                          -- '' = none
  customer TEXT NOT NULL,                          -- a customer's code, or a buyer's name
  amount   INTEGER NOT NULL,
  subtotal INTEGER NOT NULL,                       -- sum of the lines
  invoice  INTEGER,                                -- number of the invoice it belongs to
  cancels  INTEGER NOT NULL CHECK (cancels IN (0, 1)),
  method   TEXT NOT NULL,
  note     TEXT NOT NULL,
  slip     INTEGER UNIQUE,                         -- take-back: number of the load slip, which cannot be taken back twice
  UNIQUE (kind, number)
) STRICT;
CREATE INDEX paper_by_day ON paper (day);
ALTER TABLE paper_share ADD COLUMN bundle TEXT NOT NULL DEFAULT '';   -- '' = in none

-- Whom each correction of a sheet concerned, by the lines it changed: its reason is for their papers alone.
CREATE TABLE corrected (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,
  revision INTEGER NOT NULL,                        -- the one that changed it
  sale     INTEGER NOT NULL CHECK (sale IN (0, 1)),
  who      TEXT NOT NULL COLLATE NOCASE,            -- a job; of a sale, its buyer; '' = no job
  why      TEXT NOT NULL,
  PRIMARY KEY (day, shift, revision, sale, who),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
