-- The book, first edition. Read this file as a document: what is kept, what is worked out, and in which units.
--
-- Units, everywhere in the book:
--   day          days since 1970-01-01, a local calendar day
--   minutes      whole minutes
--   lumber,wood  a volume: cubic 1/64 inch in an inch book (37,748,736 to the board foot), cubic 1/10 mm in a
--                metric book; lumber counts nominal size, wood counts the size really cut
--   length, thickness, width, diameter   counts of 1/64 inch, or of 1/10 mm where metric = 1
--   gross, deduction, net                millionths of the scaling practice's unit (bf, ft3, m3)
--   content      millionths of a cubic foot of log, inside bark
--   money        minor units (cents)
--   number       place in the order of the day: line in the sheet x 1000 + item in the line

-- ---- kept for ever ------------------------------------------------------------------------------------------
-- Every change to the book is one entry here, with the exact text that was posted. An entry is never changed.
-- digest = SHA-256 over the digest before it and every field of the entry, so a changed entry breaks the chain.
CREATE TABLE journal (
  entry     INTEGER PRIMARY KEY,                -- 1, 2, 3 ... without a gap
  kind      TEXT NOT NULL CHECK (kind IN ('mill', 'sheet', 'paper')),
  subject   TEXT NOT NULL,                      -- '2026-05-05', '2026-05-05 shift 2', 'mill', a paper's name
  revision  INTEGER NOT NULL CHECK (revision >= 1),
  at        TEXT NOT NULL,                      -- local date and time of posting
  why       TEXT NOT NULL,                      -- reason of a revision; '' for a first posting
  body      TEXT NOT NULL,                      -- the text as posted, byte for byte
  digest    TEXT NOT NULL CHECK (length(digest) = 64),
  UNIQUE (kind, subject, revision)
) STRICT;

-- ---- worked out from the journal; emptied and refilled by `rebuild` -------------------------------------------
-- Words met so far. Lines hold the number, so a word is written once; the case of its letters makes no difference.
CREATE TABLE site    (id INTEGER PRIMARY KEY, name TEXT NOT NULL COLLATE NOCASE UNIQUE) STRICT;
CREATE TABLE species (id INTEGER PRIMARY KEY, code TEXT NOT NULL COLLATE NOCASE UNIQUE, name TEXT NOT NULL DEFAULT '',
                      kind TEXT NOT NULL DEFAULT '') STRICT;       -- kind: species group for the year's return
CREATE TABLE grade   (id INTEGER PRIMARY KEY, code TEXT NOT NULL COLLATE NOCASE UNIQUE, name TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE customer(id INTEGER PRIMARY KEY, code TEXT NOT NULL COLLATE NOCASE UNIQUE, name TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE job     (id INTEGER PRIMARY KEY, code TEXT NOT NULL COLLATE NOCASE UNIQUE, name TEXT NOT NULL DEFAULT '',
                      customer INTEGER REFERENCES customer,
                      owner TEXT NOT NULL DEFAULT 'customer' CHECK (owner IN ('customer', 'own', 'shares')),
                      site TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE setup   (id INTEGER PRIMARY KEY, name TEXT NOT NULL COLLATE NOCASE UNIQUE) STRICT;
CREATE TABLE size (
  id        INTEGER PRIMARY KEY,
  label     TEXT NOT NULL,                      -- as the trade writes it: 2x6, 5/4x6, 50x150
  thickness INTEGER NOT NULL CHECK (thickness > 0),
  width     INTEGER NOT NULL CHECK (width > 0),
  metric    INTEGER NOT NULL CHECK (metric IN (0, 1)),
  quarters  INTEGER NOT NULL CHECK (quarters IN (0, 1)),
  UNIQUE (metric, thickness, width, quarters)
) STRICT;
CREATE TABLE board_length (                      -- lengths tallied so far: another one may be a slip
  metric INTEGER NOT NULL, length INTEGER NOT NULL, PRIMARY KEY (metric, length)
) STRICT, WITHOUT ROWID;
CREATE TABLE cut_list (                          -- what a job wants, from the mill file
  job INTEGER NOT NULL REFERENCES job, line INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES size, length INTEGER NOT NULL, metric INTEGER NOT NULL,
  grade INTEGER REFERENCES grade, pieces INTEGER NOT NULL CHECK (pieces > 0),
  PRIMARY KEY (job, line)
) STRICT, WITHOUT ROWID;

-- One day (or shift) at the mill, with its whole-day totals.
CREATE TABLE sheet (
  day INTEGER NOT NULL, shift INTEGER NOT NULL CHECK (shift >= 1),
  entry          INTEGER NOT NULL REFERENCES journal,   -- the revision in force
  mill_entry     INTEGER NOT NULL,                      -- the mill file its logs were scaled by; 0 = none yet
  revision       INTEGER NOT NULL,
  sawing_minutes INTEGER NOT NULL, stop_minutes INTEGER NOT NULL, crew_minutes INTEGER NOT NULL,
  charge_minutes INTEGER NOT NULL,                      -- stops marked chargeable
  PRIMARY KEY (day, shift)
) STRICT, WITHOUT ROWID;

-- A run: one stretch of a sheet with one site, job, species and set-up, with its totals. Boards cannot be traced
-- to logs; a run is the smallest thing of which logs in and boards out are both known.
CREATE TABLE run (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, run INTEGER NOT NULL CHECK (run >= 1),
  site INTEGER REFERENCES site, job INTEGER REFERENCES job, species INTEGER REFERENCES species,
  setup INTEGER REFERENCES setup,               -- named in this sheet; NULL = carried over, see v_run
  practice TEXT NOT NULL,                       -- scaling practice: its name
  unit     TEXT NOT NULL,                       -- unit of the scales below: bf, ft3, m3
  logs INTEGER NOT NULL, unscaled_logs INTEGER NOT NULL,   -- logs sawn; of them without a measure
  gross INTEGER NOT NULL, net INTEGER NOT NULL, content INTEGER NOT NULL,
  lines INTEGER NOT NULL, pieces INTEGER NOT NULL, lumber INTEGER NOT NULL, wood INTEGER NOT NULL,
  PRIMARY KEY (day, shift, run),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- A tally line: so many pieces of one size and length. `less` and `resaw` lines have negative figures.
CREATE TABLE tally (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  run    INTEGER NOT NULL,
  size   INTEGER NOT NULL REFERENCES size, grade INTEGER REFERENCES grade, bundle TEXT,
  sense  TEXT NOT NULL CHECK (sense IN ('sawn', 'less', 'resaw')),
  form   TEXT NOT NULL CHECK (form IN ('piece', 'lineal', 'random')),
  pieces INTEGER NOT NULL,                      -- 0 for lineal feet
  length INTEGER NOT NULL, metric INTEGER NOT NULL,
  lumber INTEGER NOT NULL, wood INTEGER NOT NULL,
  reason TEXT,
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- A log received (`in`), sawn, or left on the mill half-sawn. A log tag sawn without a measure of its own takes
-- the measure of the newest earlier line that has one.
CREATE TABLE log (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  run   INTEGER NOT NULL,
  tag   TEXT COLLATE NOCASE,
  state TEXT NOT NULL CHECK (state IN ('received', 'sawn', 'left')),
  spec  TEXT,                                   -- the raw measures and defects as the sheet writes them; NULL = not measured
  borrowed INTEGER NOT NULL CHECK (borrowed IN (0, 1)),   -- 1 = the measure comes from an earlier line of this tag
  diameter INTEGER, length INTEGER, metric INTEGER,       -- mean small end; NULL = not measured
  practice TEXT, gross INTEGER, deduction INTEGER, net INTEGER, cull INTEGER, content INTEGER,
  defect TEXT, origin TEXT,
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX log_by_tag ON log (tag, day, shift, number) WHERE tag IS NOT NULL;

-- What happened in the day, in its order.
CREATE TABLE sawing (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  job INTEGER REFERENCES job, site INTEGER REFERENCES site, from_minute INTEGER NOT NULL, minutes INTEGER NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE stop (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  job INTEGER REFERENCES job, site INTEGER REFERENCES site, from_minute INTEGER, minutes INTEGER NOT NULL,
  cause TEXT NOT NULL, text TEXT NOT NULL, charge INTEGER NOT NULL CHECK (charge IN (0, 1)),
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE crew (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  job INTEGER REFERENCES job, name TEXT NOT NULL, minutes INTEGER NOT NULL, activity TEXT NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE tooth_work (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  run INTEGER, job INTEGER REFERENCES job, saw TEXT NOT NULL, action TEXT NOT NULL, teeth INTEGER, cause TEXT NOT NULL,
  log_tag TEXT NOT NULL, text TEXT NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE setup_change (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  setup INTEGER NOT NULL REFERENCES setup, kerf_mils INTEGER, over_mils INTEGER,
  metric INTEGER NOT NULL,                      -- the two before: thousandths of an inch, or hundredths of a mm
  text TEXT NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE thickness (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL, reading INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES size, mils INTEGER NOT NULL,
  PRIMARY KEY (day, shift, number, reading), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE charge (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  job INTEGER REFERENCES job, name TEXT NOT NULL, quantity_micro INTEGER NOT NULL, text TEXT NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE meter (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL, tenths INTEGER NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE fuel (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  quantity_micro INTEGER NOT NULL, unit TEXT NOT NULL CHECK (unit IN ('gal', 'l')), price_minor INTEGER,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE move (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  job INTEGER REFERENCES job, from_site INTEGER NOT NULL REFERENCES site, to_site INTEGER NOT NULL REFERENCES site,
  distance_micro INTEGER NOT NULL, unit TEXT NOT NULL CHECK (unit IN ('mi', 'km')), minutes INTEGER NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE sold (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  buyer TEXT NOT NULL, species INTEGER REFERENCES species, size INTEGER NOT NULL REFERENCES size,
  grade INTEGER REFERENCES grade, bundle TEXT, pieces INTEGER NOT NULL, length INTEGER NOT NULL, metric INTEGER NOT NULL,
  lumber INTEGER NOT NULL, rate_micro INTEGER,  -- agreed price of a bf, millionths of the currency; NULL = by the price list
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE TABLE note (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL, text TEXT NOT NULL,
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;

-- A tally line or log of an earlier revision that the revision in force no longer has: struck, and kept in sight.
CREATE TABLE struck (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, revision INTEGER NOT NULL, number INTEGER NOT NULL,
  entry  INTEGER NOT NULL REFERENCES journal,   -- the revision that struck it
  kind   TEXT NOT NULL CHECK (kind IN ('tally', 'log')),
  job INTEGER REFERENCES job, species INTEGER REFERENCES species,
  size INTEGER REFERENCES size, grade INTEGER REFERENCES grade, length INTEGER, metric INTEGER,
  pieces INTEGER, lumber INTEGER,
  text   TEXT NOT NULL,                         -- the line as it was written
  why    TEXT NOT NULL,
  PRIMARY KEY (day, shift, revision, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
