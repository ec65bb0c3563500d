-- The book: one SQLite file. Read this as a document: what is kept, what is worked out from it, and in which units.
--
-- This is the whole second edition. An edition is never changed once books of it are about: the next one is a whole
-- file of its own, 003_book.sql. An older book is brought up to it by making every table but the journal anew and
-- working the journal in again; new columns of the journal begin with their DEFAULT. The older file stays, for a book
-- is known by its edition's very words (DEVELOPERS.md, "Where things are added").
-- New in it: all that a set-up line says, when the saws were set anew, where a run begins, and residue.
--
-- Units, everywhere in the book. A remark that names a unit in one word means these:
--   day       days since 1970-01-01, a local calendar day
--   shift     sheet of its day, from 1
--   number    place in the order of the day: line in the sheet x 1000 + item in the line
--   minutes   whole minutes; a clock time counts from midnight
--   volume    cubic 1/64 inch in an inch book (37,748,736 to the board foot), cubic 1/10 mm in a metric book
--   measure   a length, thickness, width or diameter: 1/64 inch, or 1/10 mm where metric = 1
--   mils      1/1000 inch, or 1/100 mm where metric = 1
--   scale     a log's volume by a scaling practice: millionths of the practice's unit (bf, ft3, m3)
--   money     minor units of the currency (cents)
--   micro     millionths: of a unit that stands beside it, or of the currency
--   flag      0 or 1
--   text, words: as written; '' = none

-- ==== kept for ever ================================================================================================

-- Every change to the book is one entry here, with the exact text that was posted. An entry is never changed.
CREATE TABLE journal (
  entry       INTEGER PRIMARY KEY,            -- 1, 2, 3 ... without a gap
  kind        TEXT NOT NULL CHECK (kind IN ('mill', 'sheet', 'paper')),   -- what was posted
  subject     TEXT NOT NULL,                  -- '2026-05-05', '2026-05-05 shift 2', 'mill', a paper's name
  revision    INTEGER NOT NULL CHECK (revision >= 1),   -- of its subject, from 1 without a gap
  at          TEXT NOT NULL,                  -- local date and time of posting, '2026-05-05 20:14:07'
  why         TEXT NOT NULL,                  -- reason of a revision; '' for a first posting
  body        TEXT NOT NULL,                  -- the text as posted, byte for byte
  keeps_rules INTEGER NOT NULL CHECK (keeps_rules IN (0, 1)),   -- flag: a corrected sheet whose logs keep the log rules
                                              -- they were posted under, though a later mill file was in force
  digest      TEXT NOT NULL CHECK (length(digest) = 64),   -- SHA-256 in hex over the digest before it and every
                                              -- field of the entry, so that a changed entry breaks the chain
  UNIQUE (kind, subject, revision)
) STRICT;

-- ==== worked out from the journal; emptied and refilled by `rebuild` ===============================================
-- ---- words met so far: lines hold the id, so a word is written once; capital or small letters make no difference --

CREATE TABLE site (
  id   INTEGER PRIMARY KEY,                   -- in the order they were met
  name TEXT NOT NULL COLLATE NOCASE UNIQUE    -- as first written
) STRICT;

CREATE TABLE species (
  id   INTEGER PRIMARY KEY,                   -- in the order they were met
  code TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- as a sheet has it: DF
  name TEXT NOT NULL DEFAULT '',              -- from the mill file: Douglas-fir
  kind TEXT NOT NULL DEFAULT ''               -- species group for the year's return
) STRICT;

CREATE TABLE grade (
  id   INTEGER PRIMARY KEY,                   -- in the order they were met
  code TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- as a sheet has it
  name TEXT NOT NULL DEFAULT ''               -- from the mill file
) STRICT;

CREATE TABLE setup (
  id   INTEGER PRIMARY KEY,                   -- in the order they were met
  name TEXT NOT NULL COLLATE NOCASE UNIQUE    -- as first written
) STRICT;

CREATE TABLE customer (
  id   INTEGER PRIMARY KEY,                   -- in the order they were met
  code TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- as the mill file has it
  name TEXT NOT NULL DEFAULT ''               -- in full, from the mill file
) STRICT;

CREATE TABLE job (
  id       INTEGER PRIMARY KEY,               -- in the order they were met
  code     TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- as a sheet has it
  name     TEXT NOT NULL DEFAULT '',          -- in full, from the mill file
  customer INTEGER REFERENCES customer,       -- NULL = nobody's, or not said
  owner    TEXT NOT NULL DEFAULT 'customer' CHECK (owner IN ('customer', 'own', 'shares')),   -- whose the lumber is
  site     TEXT NOT NULL DEFAULT ''           -- where it is sawn, words of the mill file
) STRICT;
CREATE INDEX job_by_owner ON job (owner);

CREATE TABLE size (
  id        INTEGER PRIMARY KEY,              -- in the order they were met
  label     TEXT NOT NULL,                    -- as the trade writes it: 2x6, 5/4x6, 50x150
  thickness INTEGER NOT NULL CHECK (thickness > 0),   -- nominal, measure
  width     INTEGER NOT NULL CHECK (width > 0),       -- nominal, measure
  metric    INTEGER NOT NULL CHECK (metric IN (0, 1)),    -- flag: measured in 1/10 mm
  quarters  INTEGER NOT NULL CHECK (quarters IN (0, 1)),  -- flag: written in quarters, 5/4
  stack     INTEGER,                          -- id of the first met of its thickness and width: 5/4x6, 1-1/4x6
  UNIQUE (metric, thickness, width, quarters)
) STRICT;

CREATE TABLE board_length (                   -- lengths tallied so far: another one may be a slip
  metric INTEGER NOT NULL,                    -- flag: measured in 1/10 mm
  length INTEGER NOT NULL,                    -- measure
  PRIMARY KEY (metric, length)
) STRICT, WITHOUT ROWID;

-- ---- the mill file in force ---------------------------------------------------------------------------------------

-- In which mill files a job stands, so that the last that was said of it holds for its sheets when a later file has it
-- no more. From the entry of one mill file to that of another, all between them included.
CREATE TABLE mill_job (
  job         INTEGER NOT NULL REFERENCES job,      -- its id
  first_entry INTEGER NOT NULL REFERENCES journal,  -- the first mill file that has it
  last_entry  INTEGER NOT NULL REFERENCES journal CHECK (last_entry >= first_entry),   -- the last that has it, on end
  PRIMARY KEY (job, first_entry)
) STRICT, WITHOUT ROWID;

CREATE TABLE cut_list (                       -- what a job wants
  job    INTEGER NOT NULL REFERENCES job,     -- its id
  line   INTEGER NOT NULL,                    -- of its list, from 1
  size   INTEGER NOT NULL REFERENCES size,    -- its id
  length INTEGER NOT NULL,                    -- measure
  metric INTEGER NOT NULL,                    -- flag: measured in 1/10 mm
  grade  INTEGER REFERENCES grade,            -- its id; NULL = any
  pieces INTEGER NOT NULL CHECK (pieces > 0), -- wanted, count
  PRIMARY KEY (job, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE cost (                           -- what the work costs
  line       INTEGER PRIMARY KEY,             -- order of the mill file, from 1
  name       TEXT NOT NULL,                   -- words
  rate_micro INTEGER NOT NULL,                -- of one unit, micro of the currency; of a year's cost the whole sum
  per        TEXT NOT NULL,                   -- what it goes by, as v_use.per has it
  whole      INTEGER NOT NULL CHECK (whole > 0),  -- a quantity of v_use that makes one unit; of a year's cost its days
  unit       TEXT NOT NULL,                   -- as printed: crew hour, MBF, gal
  who        TEXT NOT NULL,                   -- this hand or saw only; '' = every one without an entry of its own
  from_day   INTEGER NOT NULL,                -- in force from, day
  to_day     INTEGER NOT NULL                 -- to, day; both included
) STRICT;

CREATE TABLE service (                        -- what is due by engine hours
  line         INTEGER PRIMARY KEY,           -- order of the mill file, from 1
  name         TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- words; '' = any stop for service
  every_tenths INTEGER NOT NULL CHECK (every_tenths > 0)   -- tenths of an engine hour
) STRICT;

-- ---- one day at the mill, with its totals -------------------------------------------------------------------------

-- A sheet: one day, or one shift of it. Its totals over its runs are kept, so that questions over all the years are
-- quickly answered.
CREATE TABLE sheet (
  day            INTEGER NOT NULL,            -- day
  shift          INTEGER NOT NULL CHECK (shift >= 1),   -- of the day, from 1
  entry          INTEGER NOT NULL REFERENCES journal,   -- the revision in force
  mill_entry     INTEGER NOT NULL,            -- entry of the mill file its logs were scaled by; 0 = none yet
  revision       INTEGER NOT NULL,            -- its number, from 1
  sawing_minutes INTEGER NOT NULL,            -- minutes
  stop_minutes   INTEGER NOT NULL,            -- minutes
  crew_minutes   INTEGER NOT NULL,            -- minutes, of all hands
  charge_minutes INTEGER NOT NULL,            -- minutes of stops that are charged for
  runs           INTEGER NOT NULL DEFAULT 0,  -- count
  sites          TEXT,                        -- names in the order of the day, ' / ' between them; NULL = none
  rules          TEXT,                        -- practices that scaled a log, ',' between them; NULL = none
  units          TEXT,                        -- units of their scales, ',' between them; NULL = none
  lines          INTEGER NOT NULL DEFAULT 0,  -- tally lines: a day with a log or one of these was sawn
  logs           INTEGER NOT NULL DEFAULT 0,  -- sawn, count
  unscaled_logs  INTEGER NOT NULL DEFAULT 0,  -- of them without a scale, count
  net            INTEGER,                     -- scale; NULL = no log has one
  pieces         INTEGER NOT NULL DEFAULT 0,  -- boards, count
  lumber         INTEGER NOT NULL DEFAULT 0,  -- nominal, volume
  lineal         INTEGER NOT NULL DEFAULT 0,  -- length of all boards end to end, in 1/320 mm, in which 1/64 inch (127)
                                              -- and 1/10 mm (32) are whole; what `less`, `resaw` take off is off
  counted_lumber INTEGER,                     -- volume, of the runs that cut lumber and whose logs all have a scale:
  counted_net    INTEGER,                     -- and scale of their logs; what overrun counts. NULL = no such run
  PRIMARY KEY (day, shift)
) STRICT, WITHOUT ROWID;

-- A run: one stretch of a sheet with one site, job, species and set-up, with its totals. Boards cannot be traced to
-- logs; a run is the smallest thing of which logs in and boards out are both known.
CREATE TABLE run (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  run           INTEGER NOT NULL CHECK (run >= 1),    -- of the sheet, from 1
  first_number  INTEGER NOT NULL,             -- of its first log or board, place in the order of the day
  site          INTEGER REFERENCES site,      -- its id; NULL = none
  job           INTEGER REFERENCES job,       -- its id; NULL = none
  species       INTEGER REFERENCES species,   -- its id; NULL = not said
  setup         INTEGER REFERENCES setup,     -- its id, where named in this sheet; NULL = carried over, see v_run
  practice      TEXT NOT NULL,                -- scaling practice: its name
  unit          TEXT NOT NULL,                -- unit of the scales below: bf, ft3, m3
  logs          INTEGER NOT NULL,             -- sawn, count
  unscaled_logs INTEGER NOT NULL,             -- of them without a scale, count
  gross         INTEGER NOT NULL,             -- before defects, scale
  net           INTEGER NOT NULL,             -- after them, scale
  content       INTEGER NOT NULL,             -- wood inside bark, millionths of a cubic foot
  lines         INTEGER NOT NULL,             -- tally lines, count
  pieces        INTEGER NOT NULL,             -- boards, count
  lumber        INTEGER NOT NULL,             -- nominal, volume
  wood          INTEGER NOT NULL,             -- really cut, volume
  scaled        INTEGER GENERATED ALWAYS AS (logs > unscaled_logs),   -- flag: some of its logs have a scale
  counted       INTEGER GENERATED ALWAYS AS   -- flag: overrun and recovery count it, for all its logs have a scale
                                              -- and there is lumber of them
    (logs > 0 AND unscaled_logs = 0 AND lumber > 0),
  PRIMARY KEY (day, shift, run),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX run_by_job ON run (job);

-- A log received (`in`), sawn, or left on the mill half-sawn. A log tag sawn without a measure of its own takes the
-- measure of the newest earlier line that has one.
CREATE TABLE log (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number    INTEGER NOT NULL,                 -- place in the order of the day
  run       INTEGER NOT NULL,                 -- of the sheet
  tag       TEXT COLLATE NOCASE,              -- as written; NULL = none
  state     TEXT NOT NULL CHECK (state IN ('received', 'sawn', 'left')),   -- what became of it on this line
  spec      TEXT,                             -- measures and defects as the sheet writes them; NULL = not measured
  borrowed  INTEGER NOT NULL CHECK (borrowed IN (0, 1)),   -- flag: the measure comes from an earlier line of this tag
  diameter  INTEGER,                          -- mean small end, measure; NULL = not measured
  length    INTEGER,                          -- measure; NULL = not measured
  metric    INTEGER,                          -- flag: measured in 1/10 mm; NULL = not measured
  practice  TEXT,                             -- scaling practice: its name; NULL, like the four below = no scale
  gross     INTEGER,                          -- before defects, scale
  deduction INTEGER,                          -- for defects, scale
  net       INTEGER,                          -- after them, scale
  cull      INTEGER,                          -- flag: too small or too faulty to count, by its practice
  content   INTEGER,                          -- wood inside bark, millionths of a cubic foot; NULL = not measured
  defect    TEXT,                             -- words; NULL = none
  origin    TEXT,                             -- where it grew, words; NULL = not said
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX log_by_tag ON log (tag, day, shift, number) WHERE tag IS NOT NULL;

-- A tally line: so many pieces of one size and length. `less` and `resaw` lines have figures below 0.
CREATE TABLE tally (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number INTEGER NOT NULL,                    -- place in the order of the day
  run    INTEGER NOT NULL,                    -- of the sheet
  size   INTEGER NOT NULL REFERENCES size,    -- its id
  grade  INTEGER REFERENCES grade,            -- its id; NULL = none
  bundle TEXT,                                -- its tag as written; NULL = in none
  sense  TEXT NOT NULL CHECK (sense IN ('sawn', 'less', 'resaw')),       -- put on the pile, taken off, sawn again
  form   TEXT NOT NULL CHECK (form IN ('piece', 'lineal', 'random')),    -- by the piece, by its length, or by the board
                                              -- of any width
  pieces INTEGER NOT NULL,                    -- count; 0 = counted by its length
  length INTEGER NOT NULL,                    -- of a piece, or of all of it, measure
  metric INTEGER NOT NULL,                    -- flag: measured in 1/10 mm
  lumber INTEGER NOT NULL,                    -- nominal, volume
  wood   INTEGER NOT NULL,                    -- really cut, volume
  reason TEXT,                                -- of a `less` line, words; NULL = none
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX tally_by_bundle ON tally (bundle COLLATE NOCASE, day, shift, number) WHERE bundle IS NOT NULL;

-- ---- what else happened in the day, in its order ------------------------------------------------------------------

CREATE TABLE sawing (                         -- a span of sawing time
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number      INTEGER NOT NULL,               -- place in the order of the day
  job         INTEGER REFERENCES job,         -- its id; NULL = under none
  site        INTEGER REFERENCES site,        -- its id; NULL = none
  from_minute INTEGER NOT NULL,               -- clock time, minutes
  minutes     INTEGER NOT NULL,               -- minutes
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE stop (                           -- time the mill stood
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number      INTEGER NOT NULL,               -- place in the order of the day
  job         INTEGER REFERENCES job,         -- its id; NULL = under none
  site        INTEGER REFERENCES site,        -- its id; NULL = none
  from_minute INTEGER,                        -- clock time, minutes; NULL = not said
  minutes     INTEGER NOT NULL,               -- minutes
  cause       TEXT NOT NULL,                  -- one word
  text        TEXT NOT NULL,                  -- words
  charge      INTEGER NOT NULL CHECK (charge IN (0, 1)),   -- flag: charged for
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE crew (                           -- a hand's time
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number   INTEGER NOT NULL,                  -- place in the order of the day
  job      INTEGER REFERENCES job,            -- its id; NULL = under none
  name     TEXT NOT NULL,                     -- of the hand
  minutes  INTEGER NOT NULL,                  -- minutes
  activity TEXT NOT NULL,                     -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE tooth_work (                     -- work on teeth or blades
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number  INTEGER NOT NULL,                   -- place in the order of the day
  run     INTEGER,                            -- of the sheet; NULL = between runs
  job     INTEGER REFERENCES job,             -- its id; NULL = under none
  saw     TEXT NOT NULL,                      -- which saw, words
  action  TEXT NOT NULL,                      -- what was done, one word
  teeth   INTEGER,                            -- count; NULL = not said
  cause   TEXT NOT NULL,                      -- one word
  log_tag TEXT NOT NULL,                      -- of the log it happened in
  text    TEXT NOT NULL,                      -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE setup_change (                   -- a set-up written down
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number     INTEGER NOT NULL,                -- place in the order of the day
  setup      INTEGER NOT NULL REFERENCES setup,   -- its id
  kerf_mils  INTEGER,                         -- width of the head saw's cut, mils; NULL, as in the next seven = not said
  over_mils  INTEGER,                         -- how much over nominal is cut, mils
  edger_mils INTEGER,                         -- width of the edger saw's cut, mils
  third_mils INTEGER,                         -- width of the third saw's cut, mils
  lead_mils  INTEGER,                         -- how much nearer the log the saw's front stands, mils
  zero_mils  INTEGER,                         -- where the set-works point when the gap is nought, mils
  feed_micro INTEGER,                         -- feet, or metres where metric, a minute, micro
  tooth      TEXT,                            -- kind of tooth, one word
  metric     INTEGER NOT NULL,                -- flag: the mils are 1/100 mm
  text       TEXT NOT NULL,                   -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- The saws stand otherwise from here on. A run belongs to the newest of these above its first log or board.
CREATE TABLE setup_record (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number INTEGER NOT NULL,                    -- place in the order of the day
  begun  TEXT NOT NULL CHECK (begun IN ('written', 'moved', 'full set', 'other blade')),   -- by what
  saw    TEXT NOT NULL,                       -- whose teeth or blade; '' = of a set-up written down or a move
  site   INTEGER REFERENCES site,             -- its id; NULL = none
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE thickness (                      -- a caliper reading
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number  INTEGER NOT NULL,                   -- place in the order of the day
  reading INTEGER NOT NULL,                   -- of the line, from 1
  size    INTEGER NOT NULL REFERENCES size,   -- its id; says by its metric what the mils are
  mils    INTEGER NOT NULL,                   -- mils
  PRIMARY KEY (day, shift, number, reading),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE meter (                          -- a reading of the engine hours
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number INTEGER NOT NULL,                    -- place in the order of the day
  tenths INTEGER NOT NULL,                    -- tenths of an engine hour
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE fuel (                           -- fuel filled in
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number         INTEGER NOT NULL,            -- place in the order of the day
  quantity_micro INTEGER NOT NULL,            -- micro of the unit
  unit           TEXT NOT NULL CHECK (unit IN ('gal', 'l')),   -- gallons or liters
  price_minor    INTEGER,                     -- paid for all of it, money; NULL = not said
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE move (                           -- a move of the mill between sites
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number         INTEGER NOT NULL,            -- place in the order of the day
  job            INTEGER REFERENCES job,      -- its id; NULL = under none
  from_site      INTEGER NOT NULL REFERENCES site,   -- its id
  to_site        INTEGER NOT NULL REFERENCES site,   -- its id
  distance_micro INTEGER NOT NULL,            -- micro of the unit
  unit           TEXT NOT NULL CHECK (unit IN ('mi', 'km')),   -- miles or kilometers
  minutes        INTEGER NOT NULL,            -- minutes
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE residue (                        -- slabs, dust and the like taken away
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number         INTEGER NOT NULL,            -- place in the order of the day
  job            INTEGER REFERENCES job,      -- its id; NULL = under none
  kind           TEXT NOT NULL                -- what it is
                 CHECK (kind IN ('slabs', 'edgings', 'trim', 'chips', 'bark', 'shavings', 'sawdust')),
  quantity_micro INTEGER NOT NULL,            -- as it lies, stacked or loose, micro of the unit
  unit           TEXT NOT NULL CHECK (unit IN ('ft3', 'yd3', 'm3', 'cord')),   -- cubic feet, yards, metres; cords
  text           TEXT NOT NULL,               -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE charge (                         -- a small charge
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number         INTEGER NOT NULL,            -- place in the order of the day
  job            INTEGER REFERENCES job,      -- its id; NULL = under none
  name           TEXT NOT NULL,               -- of the charge in the mill file
  quantity_micro INTEGER NOT NULL,            -- micro of what the charge goes by
  text           TEXT NOT NULL,               -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE sold (                           -- own lumber sold in the yard by the piece or the foot
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number     INTEGER NOT NULL,                -- place in the order of the day
  buyer      TEXT NOT NULL,                   -- words
  species    INTEGER REFERENCES species,      -- its id; NULL = not said
  size       INTEGER NOT NULL REFERENCES size,    -- its id
  grade      INTEGER REFERENCES grade,        -- its id; NULL = none
  bundle     TEXT,                            -- tag of the bundle it came out of; NULL = of none
  form       TEXT NOT NULL CHECK (form IN ('piece', 'lineal')),    -- counted by the piece, or by its length
  pieces     INTEGER NOT NULL,                -- count; 0 = counted by its length
  length     INTEGER NOT NULL,                -- of a piece, or of all of it, measure
  metric     INTEGER NOT NULL,                -- flag: measured in 1/10 mm
  lumber     INTEGER NOT NULL,                -- nominal, volume
  rate_micro INTEGER,                         -- agreed price, micro of the currency; NULL = by the price list
  rate_per   TEXT NOT NULL CHECK (rate_per IN ('bf', 'piece', 'lf', 'lm')),   -- what that price is of one of
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX sold_by_bundle ON sold (bundle COLLATE NOCASE, day, shift, number) WHERE bundle IS NOT NULL;

CREATE TABLE sold_bundle (                    -- a bundle of own lumber sold whole
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number      INTEGER NOT NULL,               -- place in the order of the day
  buyer       TEXT NOT NULL,                  -- words
  bundle      TEXT NOT NULL COLLATE NOCASE,   -- its tag
  price_micro INTEGER,                        -- of the whole bundle, micro of the currency; NULL = by the price list
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX sold_bundle_by_tag ON sold_bundle (bundle, day, shift, number);

-- What was in a bundle sold whole: what own lumber was tallied under its tag since it was last sold whole, less what
-- was sold out of it by the piece or the foot. Below 0: more was sold out of it than was tallied.
CREATE TABLE sold_bundle_line (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,   -- the bundle sold
  species INTEGER NOT NULL,                   -- its id; 0 = not said
  grade   INTEGER NOT NULL,                   -- its id; 0 = none
  size    INTEGER NOT NULL REFERENCES size,   -- id, as its oldest line in the bundle has it
  metric  INTEGER NOT NULL,                   -- flag: measured in 1/10 mm
  length  INTEGER NOT NULL,                   -- of a piece, measure; 0 = counted by its length
  pieces  INTEGER NOT NULL,                   -- count
  along   INTEGER NOT NULL,                   -- length counted, measure
  lumber  INTEGER NOT NULL,                   -- nominal, volume
  PRIMARY KEY (day, shift, number, species, grade, size, metric, length),
  FOREIGN KEY (day, shift, number) REFERENCES sold_bundle ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE note (                           -- a remark of the day
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  number INTEGER NOT NULL,                    -- place in the order of the day
  text   TEXT NOT NULL,                       -- words
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- ---- corrections --------------------------------------------------------------------------------------------------

-- A tally line or log of an earlier revision that the revision in force no longer has: struck, and kept in sight.
CREATE TABLE struck (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  revision INTEGER NOT NULL,                  -- that had the line
  number   INTEGER NOT NULL,                  -- place in the order of the day
  entry    INTEGER NOT NULL REFERENCES journal,   -- the revision that struck it
  kind     TEXT NOT NULL CHECK (kind IN ('tally', 'log')),   -- of line
  job      INTEGER REFERENCES job,            -- its id; NULL = under none
  species  INTEGER REFERENCES species,        -- its id; NULL = not said
  size     INTEGER REFERENCES size,           -- its id; NULL, like the five below = a log
  grade    INTEGER REFERENCES grade,          -- its id; NULL = none
  length   INTEGER,                           -- measure
  metric   INTEGER,                           -- flag: measured in 1/10 mm
  pieces   INTEGER,                           -- count
  lumber   INTEGER,                           -- nominal, volume
  text     TEXT NOT NULL,                     -- the line as it was written
  why      TEXT NOT NULL,                     -- reason of the correction
  PRIMARY KEY (day, shift, revision, number),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- Whom each correction of a sheet concerned, by the lines it changed: its reason is for their papers alone.
CREATE TABLE corrected (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  revision INTEGER NOT NULL,                  -- the one that changed it
  sale     INTEGER NOT NULL CHECK (sale IN (0, 1)),   -- flag: lines of a sale
  who      TEXT NOT NULL COLLATE NOCASE,      -- a job; of a sale, its buyer; '' = no job
  why      TEXT NOT NULL,                     -- reason of the correction
  PRIMARY KEY (day, shift, revision, sale, who),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- ---- what lies on the deck and on the yard today ------------------------------------------------------------------
-- Kept by posting, so that asking for it does not go through all the years. 0 and '' stand for none, so that every row
-- of the stock has a whole key.

CREATE TABLE on_deck (                        -- logs received, or left half-sawn, and not sawn since
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,   -- the log's line
  tag TEXT COLLATE NOCASE,                    -- of the log; NULL: cannot be followed, and stays
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift, number) REFERENCES log ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX on_deck_by_tag ON on_deck (tag) WHERE tag IS NOT NULL;

CREATE TABLE own_stock (                      -- own lumber: sawn for the mill and come from shares, less what was sold
  bundle  TEXT NOT NULL,                      -- its tag in small letters; '' = in none
  species INTEGER NOT NULL,                   -- its id; 0 = not said
  grade   INTEGER NOT NULL,                   -- its id; 0 = none
  size    INTEGER NOT NULL REFERENCES size,   -- id of the first of its stack, size.stack
  metric  INTEGER NOT NULL,                   -- flag: measured in 1/10 mm
  length  INTEGER NOT NULL,                   -- of a piece, measure; 0 = counted by its length
  pieces  INTEGER NOT NULL,                   -- count
  along   INTEGER NOT NULL,                   -- length counted, measure
  lumber  INTEGER NOT NULL,                   -- nominal, volume
  PRIMARY KEY (bundle, species, grade, size, metric, length)
) STRICT, WITHOUT ROWID;
CREATE INDEX own_stock_gone ON own_stock (lumber) WHERE pieces = 0 AND along = 0 AND lumber = 0;

CREATE TABLE job_stock (                      -- customers' lumber
  job       INTEGER NOT NULL REFERENCES job,  -- its id
  bundle    TEXT NOT NULL,                    -- its tag in small letters; '' = in none
  species   INTEGER NOT NULL,                 -- its id; 0 = not said
  cut       INTEGER NOT NULL,                 -- pieces, count
  to_mill   INTEGER NOT NULL,                 -- pieces given to the mill as its share, count
  delivered INTEGER NOT NULL,                 -- pieces loaded, count
  lumber    INTEGER NOT NULL,                 -- still here, volume
  PRIMARY KEY (job, bundle, species)
) STRICT, WITHOUT ROWID;
CREATE INDEX job_stock_here ON job_stock (job) WHERE lumber <> 0;
CREATE INDEX job_stock_gone ON job_stock (lumber) WHERE cut = 0 AND to_mill = 0 AND delivered = 0 AND lumber = 0;

-- ---- papers: from the journal's entries of kind 'paper', whose JSON has every figure and word of them -------------
-- What is still open on an invoice follows from all papers in order and is worked out by billing, not kept.

CREATE TABLE paper (
  entry    INTEGER PRIMARY KEY REFERENCES journal,   -- its own
  kind     TEXT NOT NULL                      -- of paper
           CHECK (kind IN ('invoice', 'division', 'payment', 'refund', 'credit', 'write-off', 'waiver', 'load',
                           'take-back')),
  number   INTEGER NOT NULL CHECK (number >= 1),     -- of its kind, from 1 without a gap
  called   TEXT NOT NULL,                     -- as printed, with the prefix; '' where the number is printed alone
  day      INTEGER NOT NULL,                  -- it bears, day
  due      INTEGER,                           -- day; NULL = nothing is due
  job      TEXT NOT NULL,                     -- a job's code; '' = none
  customer TEXT NOT NULL,                     -- a customer's code, or a buyer's name
  amount   INTEGER NOT NULL,                  -- money
  subtotal INTEGER NOT NULL,                  -- sum of the lines, money
  invoice  INTEGER,                           -- number of the invoice it belongs to; NULL = to none
  cancels  INTEGER NOT NULL CHECK (cancels IN (0, 1)),   -- flag: a credit note that takes its invoice back
  method   TEXT NOT NULL,                     -- how it was paid, words
  note     TEXT NOT NULL,                     -- words
  slip     INTEGER UNIQUE,                    -- take-back: number of the load slip, which cannot be taken back twice
  UNIQUE (kind, number)
) STRICT;
CREATE INDEX paper_by_day ON paper (day);

CREATE TABLE paper_line (                     -- a line of an invoice
  entry INTEGER NOT NULL REFERENCES paper,    -- the paper
  line  INTEGER NOT NULL,                     -- of the paper, from 1
  kind  TEXT NOT NULL CHECK (kind IN ('sawing', 'charge', 'adjustment', 'minimum', 'percent', 'waived')),   -- of line
  title TEXT NOT NULL,                        -- as printed
  description    TEXT NOT NULL,               -- as printed
  day            INTEGER,                     -- of the work, day; NULL = of no one day
  quantity_micro INTEGER NOT NULL,            -- micro of the unit
  unit           TEXT NOT NULL,               -- as printed
  amount         INTEGER NOT NULL,            -- money
  tax            TEXT NOT NULL,               -- name of its tax; '' = none
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE paper_tax (                      -- a tax of an invoice, or of a credit note (there to be taken off)
  entry INTEGER NOT NULL REFERENCES paper,    -- the paper
  line  INTEGER NOT NULL,                     -- of its taxes, from 1
  name  TEXT NOT NULL,                        -- of the tax
  percent_micro INTEGER NOT NULL,             -- micro of one percent
  base          INTEGER NOT NULL,             -- what it is reckoned from, money
  amount        INTEGER NOT NULL,             -- money
  included      INTEGER NOT NULL CHECK (included IN (0, 1)),   -- flag: in the prices already
  excused       TEXT NOT NULL,                -- why it is not asked for, words; '' = it is
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE paper_share (                    -- a line of a division of lumber; the mill's part is own stock
  entry       INTEGER NOT NULL REFERENCES paper,    -- the paper
  line        INTEGER NOT NULL,               -- of the paper, from 1
  bundle      TEXT NOT NULL,                  -- its tag; '' = in none
  species     TEXT NOT NULL,                  -- its code
  grade       TEXT NOT NULL,                  -- its code
  size        TEXT NOT NULL,                  -- as written
  thickness   INTEGER NOT NULL,               -- nominal, measure
  width       INTEGER NOT NULL,               -- nominal, measure
  length      INTEGER NOT NULL,               -- of a piece, measure; 0 = counted by its length
  metric      INTEGER NOT NULL,               -- flag: measured in 1/10 mm
  to_customer INTEGER NOT NULL,               -- pieces, or a length (measure) where length = 0
  to_mill     INTEGER NOT NULL,               -- pieces, or a length (measure) where length = 0
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE paper_load (                     -- a line of a load slip: what it took away
  entry     INTEGER NOT NULL REFERENCES paper,    -- the paper
  line      INTEGER NOT NULL,                 -- of the paper, from 1
  bundle    TEXT NOT NULL,                    -- its tag; '' = in none
  species   TEXT NOT NULL,                    -- its code
  grade     TEXT NOT NULL,                    -- its code
  size      TEXT NOT NULL,                    -- as written
  thickness INTEGER NOT NULL,                 -- nominal, measure
  width     INTEGER NOT NULL,                 -- nominal, measure
  length    INTEGER NOT NULL,                 -- of a piece, or of all of it, measure
  metric    INTEGER NOT NULL,                 -- flag: measured in 1/10 mm
  pieces    INTEGER NOT NULL,                 -- count; 0 = counted by its length
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE paper_sheet (                    -- a sheet that an invoice or a division covers, as it stood then
  entry INTEGER NOT NULL REFERENCES paper,    -- the paper
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  revision INTEGER NOT NULL,                  -- that was in force then
  PRIMARY KEY (entry, day, shift)
) STRICT, WITHOUT ROWID;
