-- Papers that billing keeps for ever: worked out from the journal's entries of kind 'paper', whose JSON has every
-- figure and word of them. What is still open on an invoice follows from all papers in order and is worked out in
-- billing/, not kept. Money in minor units; days as in 001_book.sql.
CREATE TABLE paper (
  entry    INTEGER PRIMARY KEY REFERENCES journal,
  kind     TEXT NOT NULL CHECK (kind IN ('invoice', 'settlement', 'payment', 'refund', 'credit', 'write-off', 'waiver', 'load')),
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
  UNIQUE (kind, number)
) STRICT;
CREATE TABLE paper_line (                          -- an invoice's lines
  entry INTEGER NOT NULL REFERENCES paper, line INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('sawing', 'charge', 'adjustment', 'minimum', 'percent', 'waived')),
  title TEXT NOT NULL, description TEXT NOT NULL, day INTEGER,
  quantity_micro INTEGER NOT NULL, unit TEXT NOT NULL, amount INTEGER NOT NULL, tax TEXT NOT NULL,
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;
CREATE TABLE paper_tax (                           -- taxes of an invoice, or of a credit note (there to be taken off)
  entry INTEGER NOT NULL REFERENCES paper, line INTEGER NOT NULL,
  name TEXT NOT NULL, percent_micro INTEGER NOT NULL, base INTEGER NOT NULL, amount INTEGER NOT NULL,
  included INTEGER NOT NULL CHECK (included IN (0, 1)), excused TEXT NOT NULL,
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;
CREATE TABLE paper_share (                         -- what a share settlement gave to whom; the mill's is own stock
  entry INTEGER NOT NULL REFERENCES paper, line INTEGER NOT NULL,
  species TEXT NOT NULL, grade TEXT NOT NULL, size TEXT NOT NULL, thickness INTEGER NOT NULL, width INTEGER NOT NULL,
  length INTEGER NOT NULL, metric INTEGER NOT NULL, to_customer INTEGER NOT NULL, to_mill INTEGER NOT NULL,
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;
