PRAGMA application_id = 1262895691;
PRAGMA user_version = 2;
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
CREATE TABLE corrected (
  day INTEGER NOT NULL, shift INTEGER NOT NULL,   -- the sheet
  revision INTEGER NOT NULL,                  -- the one that changed it
  sale     INTEGER NOT NULL CHECK (sale IN (0, 1)),   -- flag: lines of a sale
  who      TEXT NOT NULL COLLATE NOCASE,      -- a job; of a sale, its buyer; '' = no job
  why      TEXT NOT NULL,                     -- reason of the correction
  PRIMARY KEY (day, shift, revision, sale, who),
  FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
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
INSERT INTO journal VALUES (1, 'mill', 'mill', 1, '2026-06-01 20:00:00', '', '# The mill file of an invented mill, and a sample to start your own from. Everything in it may be left out, and no
# order is asked for. A key that is not known is refused with the nearest one named, so a slip cannot hide.
#
# Lines that begin with # are remarks. Sizes, lengths and measures stand in quotes, as a sheet writes them:
# "2x6", "1-5/8x5-5/8", "5/4x6", "16''6", "5/16". Plain numbers need no quotes: 16, 0.29.

[mill]
name       = "Q. Hargan, custom sawing"
owner      = "Quill Hargan"
address    = ["The yard", "Sallow Fork", "Tannet County"]
phone      = ""
email      = ""
tax_number = ""
logo       = ""              # a PNG or JPEG image; it may lie beside the book
sites      = ["Tervane farm", "yard"]
terms      = ["Lumber is green, rough sawn and ungraded unless said otherwise."]   # lines under every invoice
units      = "inch"          # or "metric": sizes in mm, lengths in m, log diameters in cm
currency   = "$"             # or { sign = "kr", after = true, mark = ",", thousands = "." }
paper      = "letter"        # or "a4"
dates      = "ymd"           # or "mdy", "dmy"
week_start = "monday"
season     = "03-01"         # the day the season begins, month first

# The log rule of the house, by section formula, part sections pro rata at the butt, to the nearest 5 bf.
# Published tables can differ by 5. A job may name a rule of its own.
[scale]
rule = "international-quarter"

# A scaling practice of one''s own: a rule, and what is done otherwise. Reports can ask for it by its name.
[[practice]]
name     = "creek-scribner"
rule     = "scribner-c"
diameter = "down"            # fractions of an inch are dropped
trim     = "4"               # 4 in come off the measured length first

# How much wood a log holds, for recovery and the lumber recovery factor, whatever rule it is billed by.
[recovery]
taper = "1/8"                # in per ft, where only the small end was measured
trim  = "4-51/64"            # logs are cut this much over length: 0.4 ft is 4.8 in, here to the nearest 1/64 in

# How lumber is counted for a bill. A job or a price may count otherwise.
[count]
thickness          = "as-cut"       # or "next-quarter", "next-inch"
under_inch_as_inch = false
surface_measure    = false          # true: hardwood, board by board
length             = "as-written"   # or "whole-foot-down", "even-foot-down"
rounding           = "total-whole"  # each charge''s exact board feet are rounded once, a half up

# A sheet with more than this is warned of, never refused.
[capacity]
largest_log   = 36           # inches across
longest_log   = "20''"
largest_board = "8x12"
bf_a_day      = 4000

[[saw]]
role     = "head"
diameter = 42
kerf     = 0.29              # before Wednesday; a sheet''s `setup` line says what is in force
teeth    = 22
rpm      = 900

[[saw]]
role     = "edger"
diameter = 20
kerf     = "1/4"
teeth    = 10

[species]
DF = { name = "Douglas-fir", group = "fir" }
WH = { name = "western hemlock", group = "hemlock" }
RC = { name = "red cedar", group = "cedar" }

# The mill''s own yard grades. They are not grade stamps.
[grade]
Sel = "Select"
No2 = "Number 2"
No3 = "Number 3"

[lumber]
sizes = ["1x4", "1x6", "1x8", "1x10", "5/4x4", "5/4x6", "2x4", "2x6", "2x8", "2x10", "2x12", "4x4", "4x6"]
# What a size is cut to can be said here for all jobs, in a table [lumber.target], or for one job (see QHH below).
# Without it, a board is nominal size plus what the set-up in force cuts over.

# ---- customers and jobs --------------------------------------------------------------------------------------

[[customer]]
code    = "TER"
name    = "Oda Tervane"
address = ["Tervane farm", "Sallow Fork"]

[[customer]]
code    = "QHH"
name    = "Quarrel Hill Hall Committee"
address = ["The Hall", "Quarrel Hill"]

[[customer]]
code    = "MUM"
name    = "Dace Mumbrey"
address = ["Sallow Fork"]
note    = "Cedar on halves."

[[job]]
code     = "TER"             # what a sheet''s `job` line says
customer = "TER"
name     = "Barn, full dimension"
site     = "Tervane farm"
cut_list = [                 # as tally lines: size x length, then pieces
  "2x6x16 12",
  "2x10x16 8",
  "2x10x12 12",
  "4x6x16 12",
  "4x6x12 10",
  "1x8x16 10",
]

[[job]]
code     = "QHH"
customer = "QHH"
name     = "Hall framing, finish size"
site     = "yard"
[job.target]                 # called = cut to: 1-5/8 thick, 3/8 under in width
"2x4" = "1-5/8x3-5/8"
"2x6" = "1-5/8x5-5/8"
"2x8" = "1-5/8x7-5/8"

[[job]]
code     = "MUM"
customer = "MUM"
name     = "Cedar on halves"
site     = "yard"
owner    = "shares"

# ---- money: what is charged. The most particular price that fits is used. --------------------------------------

[invoice]
first    = 1
due_days = 14

[[price]]
job   = "TER"
basis = "bf"
rate  = 0.48

[[price]]
job            = "TER"
basis          = "bf"
thickness_from = "4"
rate           = 0.54
name           = "4 in and thicker"

[[price]]
job         = "QHH"
basis       = "bf"
rate        = 0.52
minimum_job = 250.00

[[price]]
job   = "MUM"
basis = "shares"

[[share]]
job     = "MUM"
percent = 50                 # the customer''s
rule    = "by-size-line"

[[price]]                    # lumber of our own, sold at the yard
own_lumber = true
basis      = "bf"
species    = "DF"
grade      = "No2"
rate       = 1.05

[[charge]]
name  = "set-up"
title = "Set-up and take-down"
flat  = 150.00
once  = true
job   = "TER"

[[charge]]
name  = "travel"
title = "Travel"
rate  = 1.75
per   = "mile"
move  = true
round_trip = true            # a sheet''s `move` line has the way once; it is charged there and back
job   = "TER"

[[charge]]
name   = "metal-strike"
title  = "Metal strike"
flat   = 40.00
rate   = 9.00
per    = "tooth"
strike = true

[[charge]]
name  = "waiting"
title = "Waiting"
rate  = 75.00
per   = "hour"
stop  = ["waiting"]

[[charge]]
name  = "bundling"
title = "Bundling"
rate  = 45.00
per   = "hour"

[[tax]]                      # check with the authority: none on custom sawing here, 5 % on lumber sold
name = "Sales tax"
rate = 5
on   = ["lumber"]

[[agreement]]
job     = "TER"
agreed  = 2026-04-20
deposit = 400.00
say     = ["Full dimension, rough sawn.", "Oda Tervane brings the logs to the mill with her own tractor."]

# ---- what the work costs: for the mill''s own eyes, on no customer''s paper ---------------------------------------

[[cost]]
name = "Quill''s time"
rate = 28.00
per  = "crew-hour"           # crew-hour, sawing-hour, engine-hour, day, year, MBF, log, tooth, gallon, mile
hand = "Quill"

[[cost]]
name = "Bess''s wage"
rate = 22.00
per  = "crew-hour"
hand = "Bess"

[[cost]]
name = "Wear and repairs"
rate = 4.50
per  = "engine-hour"

[[cost]]
name = "Fuel"
rate = 3.90
per  = "gallon"              # fuel that no sheet gives a price for

[[cost]]
name = "Teeth"
rate = 2.60
per  = "tooth"

[[cost]]
name = "Truck"
rate = 0.70
per  = "mile"

[[cost]]
name = "Insurance and the mill itself"
rate = 4800.00
per  = "year"
days = 110                   # spread over the days a year the mill saws

[[service]]                  # done by a stop for `service` with this word in its remark
name  = "oil"
every = 50                   # engine hours
', 0, 'a7329928901836789a489800ce1e463cd658ac15d958b6d54c7d3b4628977ca8');
INSERT INTO journal VALUES (2, 'sheet', '2026-05-04', 1, '2026-06-01 20:00:00', '', 'sheet   2026-05-04                                ; Monday: first day on the barn for Oda Tervane
site    Tervane farm
crew    Quill 9, Bess 9
meter   1842.6                                    ; at the start of the week
setup   1 kerf 0.29 over 0.12
job     TER
species DF
sawing  7:30-9:45 10:00-12:10 12:50-14:05 14:35-15:10

log     T01 16x10
log     T02 17x10
log     T03 12x14
log     T04 19x12
log     T05 14x10 defect 15bf rot
log     T06 18x16
log     T07 16x14
log     T08 15x16 defect 10bf sweep
log     T09 14x12
log     T10 12x12
log     T11 16x16
log     T12 15x14

1x4     6/10 7/12 4/14 3/16                       ; the barn is cut full dimension, ungraded
1x6     1/12 1/16
1x8     4/10 2/12 4/14 3/16
1x10    1/12 2/16
2x6     7/10 3/12 4/14 7/16
2x8     3/10 5/12 2/14 4/16
teeth   head touched-up                           ; 12:10, both saws, after dinner''s first log pulled hard
teeth   edger touched-up
2x10    2/10 4/12 4/14 2/16
4x4     4/10 1/12 2/14 3/16
4x6     3/10 4/12 3/14 4/16

thick   2x6 2.13 2.10 2.12 2.14
thick   2x6 2.11 2.12 2.15 2.09
thick   1x8 1.13 1.11 1.12 1.14
stop    14:05-14:35 belt slack feed belt, tightened and tracked
meter   1849.4
fuel    9.4 gal
note    cut list gone over with Oda, she wants the 2x10s first
', 0, 'dea41975317009a022e1da23c07e68a8f6604036137bf5519a3c0970ed555a22');
INSERT INTO journal VALUES (3, 'sheet', '2026-05-05', 1, '2026-06-01 20:00:00', '', 'sheet   2026-05-05                                ; Tuesday
site    Tervane farm
crew    Quill 9, Bess 9
job     TER
species DF
sawing  8:30-10:20 10:56-12:00 12:45-13:30 14:15-15:21

log     T13 15x12
log     T14 13x12
log     T15 13x10
log     T16 14x16
log     T17 15x12 defect 5bf staple
stop    10:20-10:56 metal fence staple in T17     ; head saw, third board
teeth   head replaced 3 metal T17 fence staple, kept in the tin
log     T18 13x16
log     T19 14x16
stop    13:30-14:15 waiting Tervane''s tractor was haying, charge
log     T20 12x16 defect 15bf rot
log     T21 17x16
log     T22 16x10

1x4     3/8 2/10 3/12 8/16
1x8     2/10 5/12 6/16
2x6     5/10 1/12 4/16
2x8     1/10 4/16
2x10    1/10 5/12 5/16
4x4     3/10 1/12 3/16
4x6     2/10 4/12 6/16

thick   2x10 2.14 2.10 2.11 2.13
meter   1854.6
fuel    7.3 gal
', 0, 'c1e21adbdeb37960c15bb0c2f6682509c65210bd5442a1cdfa154d2cfbac05db');
INSERT INTO journal VALUES (4, 'sheet', '2026-05-06', 1, '2026-06-01 20:00:00', '', 'sheet   2026-05-06                                ; Wednesday: finish the barn, move to the yard
site    Tervane farm
crew    Quill 9, Bess 9
job     TER
species DF
sawing  8:45-10:15

log     T23 15x14 defect 15bf rot
log     T24 14x12
log     T25 13x12 defect 15bf rot
log     T26 13x16

1x4     1/10 3/12 1/14 1/16
1x8     2/12 2/14 1/16
2x6     1/12 1/16
2x8     1/12
2x10    2/12 2/14 1/16
4x4     1/12 1/16
4x6     2/12 1/14 1/16

note    counted the barn pile with Oda, 208 pieces, both signed the tally
move    Tervane farm to yard 23 mi 3:45           ; 11:00, take-down 1.25 h, road 0.9 h, set-up 1.6 h
setup   2 kerf 0.26 over 0.05 track shimmed at two stakes, blade squared to the bed, scale pointer set

job     own
teeth   head full-set 22 wear
sawing  14:45-16:30
log     Y01 15x12
log     Y02 12x12
log     Y03 14x16
log     Y04 14x12

1x4 No2 2/12 1/16
1x4 No3 2/12
1x6 No2 1/12 1/16
1x6 Sel 1/12
1x8 No2 2/12
1x8 No3 2/12
1x8 Sel 1/16
2x6 No2 7/12 1/16
2x6 No3 2/16
2x6 Sel 1/16
2x8 No2 1/12
2x8 No3 1/12
2x10 No2 4/12 2/16
2x10 No3 1/12
2x12 No2 1/12

thick   2x6 2.05 2.04 2.06 2.05
thick   1x4 1.05 1.06 1.04 1.05
meter   1858.2
fuel    5.1 gal
', 0, '9b2ef9d936bc717b423d470499968599453072a3ab8a2040e12f81b33e682c57');
INSERT INTO journal VALUES (5, 'sheet', '2026-05-06', 2, '2026-06-01 20:00:00', 'a note was left out', 'sheet   2026-05-06                                ; Wednesday: finish the barn, move to the yard
site    Tervane farm
crew    Quill 9, Bess 9
job     TER
species DF
sawing  8:45-10:15

log     T23 15x14 defect 15bf rot
log     T24 14x12
log     T25 13x12 defect 15bf rot
log     T26 13x16

1x4     1/10 3/12 1/14 1/16
1x8     2/12 2/14 1/16
2x6     1/12 1/16
2x8     1/12
2x10    2/12 2/14 1/16
4x4     1/12 1/16
4x6     2/12 1/14 1/16

note    counted the barn pile with Oda, 208 pieces, both signed the tally
move    Tervane farm to yard 23 mi 3:45           ; 11:00, take-down 1.25 h, road 0.9 h, set-up 1.6 h
setup   2 kerf 0.26 over 0.05 track shimmed at two stakes, blade squared to the bed, scale pointer set

job     own
teeth   head full-set 22 wear
sawing  14:45-16:30
log     Y01 15x12
log     Y02 12x12
log     Y03 14x16
log     Y04 14x12

1x4 No2 2/12 1/16
1x4 No3 2/12
1x6 No2 1/12 1/16
1x6 Sel 1/12
1x8 No2 2/12
1x8 No3 2/12
1x8 Sel 1/16
2x6 No2 7/12 1/16
2x6 No3 2/16
2x6 Sel 1/16
2x8 No2 1/12
2x8 No3 1/12
2x10 No2 4/12 2/16
2x10 No3 1/12
2x12 No2 1/12

thick   2x6 2.05 2.04 2.06 2.05
thick   1x4 1.05 1.06 1.04 1.05
meter   1858.2
fuel    5.1 gal
note corrected
', 0, 'a128fdac07399d28f3fc4fdeaa9ab563b68450c6c71a5b31dea7819375af4838');
INSERT INTO journal VALUES (6, 'paper', 'Invoice 1', 1, '2026-06-01 20:00:00', '', 'its text', 0, '14209dc7dd3b91bc79ac88a284b21cf3a817fb0936365e23b7378d7ad0f19ba8');
INSERT INTO journal VALUES (7, 'sheet', '2026-05-11', 1, '2026-06-01 20:00:00', '', 'sheet 2026-05-11
site yard
teeth edger full-set 18
setup 3 kerf 0.26 edger 0.24 third 0.2 lead 1/16 feed 55 zero -1/32 tooth chrome pointer set
log 14x12
2x6 3/12
residue slabs 1.5 cord for the stove
blade head changed dull
move yard to Fenn 4 mi
', 0, '1d5e1a3090c47aad8400d37095f89616effebab8f14b96d70bc6a0438c6cd7bb');
INSERT INTO site VALUES (1, 'Tervane farm');
INSERT INTO site VALUES (2, 'yard');
INSERT INTO site VALUES (3, 'Fenn');
INSERT INTO species VALUES (1, 'DF', 'Douglas-fir', 'fir');
INSERT INTO species VALUES (2, 'WH', 'western hemlock', 'hemlock');
INSERT INTO species VALUES (3, 'RC', 'red cedar', 'cedar');
INSERT INTO grade VALUES (1, 'Sel', 'Select');
INSERT INTO grade VALUES (2, 'No2', 'Number 2');
INSERT INTO grade VALUES (3, 'No3', 'Number 3');
INSERT INTO setup VALUES (1, '1');
INSERT INTO setup VALUES (2, '2');
INSERT INTO setup VALUES (3, '3');
INSERT INTO customer VALUES (1, 'TER', 'Oda Tervane');
INSERT INTO customer VALUES (2, 'QHH', 'Quarrel Hill Hall Committee');
INSERT INTO customer VALUES (3, 'MUM', 'Dace Mumbrey');
INSERT INTO job VALUES (1, 'TER', 'Barn, full dimension', 1, 'customer', 'Tervane farm');
INSERT INTO job VALUES (2, 'QHH', 'Hall framing, finish size', 2, 'customer', 'yard');
INSERT INTO job VALUES (3, 'MUM', 'Cedar on halves', 3, 'shares', 'yard');
INSERT INTO job VALUES (4, 'own', '', NULL, 'own', '');
INSERT INTO size VALUES (1, '1x4', 64, 256, 0, 0, 1);
INSERT INTO size VALUES (2, '1x6', 64, 384, 0, 0, 2);
INSERT INTO size VALUES (3, '1x8', 64, 512, 0, 0, 3);
INSERT INTO size VALUES (4, '1x10', 64, 640, 0, 0, 4);
INSERT INTO size VALUES (5, '5/4x4', 80, 256, 0, 1, 5);
INSERT INTO size VALUES (6, '5/4x6', 80, 384, 0, 1, 6);
INSERT INTO size VALUES (7, '2x4', 128, 256, 0, 0, 7);
INSERT INTO size VALUES (8, '2x6', 128, 384, 0, 0, 8);
INSERT INTO size VALUES (9, '2x8', 128, 512, 0, 0, 9);
INSERT INTO size VALUES (10, '2x10', 128, 640, 0, 0, 10);
INSERT INTO size VALUES (11, '2x12', 128, 768, 0, 0, 11);
INSERT INTO size VALUES (12, '4x4', 256, 256, 0, 0, 12);
INSERT INTO size VALUES (13, '4x6', 256, 384, 0, 0, 13);
INSERT INTO board_length VALUES (0, 6144);
INSERT INTO board_length VALUES (0, 7680);
INSERT INTO board_length VALUES (0, 9216);
INSERT INTO board_length VALUES (0, 10752);
INSERT INTO board_length VALUES (0, 12288);
INSERT INTO mill_job VALUES (1, 1, 1);
INSERT INTO mill_job VALUES (2, 1, 1);
INSERT INTO mill_job VALUES (3, 1, 1);
INSERT INTO cut_list VALUES (1, 1, 8, 12288, 0, NULL, 12);
INSERT INTO cut_list VALUES (1, 2, 10, 12288, 0, NULL, 8);
INSERT INTO cut_list VALUES (1, 3, 10, 9216, 0, NULL, 12);
INSERT INTO cut_list VALUES (1, 4, 13, 12288, 0, NULL, 12);
INSERT INTO cut_list VALUES (1, 5, 13, 9216, 0, NULL, 10);
INSERT INTO cut_list VALUES (1, 6, 3, 12288, 0, NULL, 10);
INSERT INTO cost VALUES (1, 'Quill''s time', 28000000, 'crew-hour', 60, 'crew hour', 'Quill', -1000000, 1000000);
INSERT INTO cost VALUES (2, 'Bess''s wage', 22000000, 'crew-hour', 60, 'crew hour', 'Bess', -1000000, 1000000);
INSERT INTO cost VALUES (3, 'Wear and repairs', 4500000, 'engine-hour', 10, 'engine hour', '', -1000000, 1000000);
INSERT INTO cost VALUES (4, 'Fuel', 3900000, 'gal', 1000000, 'gal', '', -1000000, 1000000);
INSERT INTO cost VALUES (5, 'Teeth', 2600000, 'tooth', 1, 'tooth', '', -1000000, 1000000);
INSERT INTO cost VALUES (6, 'Truck', 700000, 'mi', 1000000, 'mi', '', -1000000, 1000000);
INSERT INTO cost VALUES (7, 'Insurance and the mill itself', 4800000000, 'day', 110, 'day sawn', '', -1000000, 1000000);
INSERT INTO service VALUES (1, 'oil', 500);
INSERT INTO sheet VALUES (20577, 1, 2, 1, 1, 375, 30, 1080, 0, 1, 'Tervane farm', 'international-quarter', 'bf', 32, 12, 0, 1590000000, 109, 58913193984, 137720832, 58913193984, 1590000000);
INSERT INTO sheet VALUES (20578, 1, 3, 1, 1, 285, 81, 1080, 45, 1, 'Tervane farm', 'international-quarter', 'bf', 21, 10, 0, 1160000000, 74, 41875931136, 96365568, 41875931136, 1160000000);
INSERT INTO sheet VALUES (20579, 1, 5, 1, 2, 195, 0, 1080, 0, 2, 'Tervane farm / yard', 'international-quarter', 'bf', 37, 8, 0, 825000000, 59, 30752636928, 75883008, 30752636928, 825000000);
INSERT INTO sheet VALUES (20584, 1, 7, 1, 1, 0, 0, 0, 0, 1, 'yard', 'international-quarter', 'bf', 1, 1, 0, 100000000, 3, 1358954496, 3511296, 1358954496, 100000000);
INSERT INTO run VALUES (20577, 1, 1, 10000, 1, 1, 1, 1, 'international-quarter', 'bf', 12, 0, 1615000000, 1590000000, 234362510, 32, 109, 58913193984, 63574951484);
INSERT INTO run VALUES (20578, 1, 1, 8000, 1, 1, 1, NULL, 'international-quarter', 'bf', 10, 0, 1180000000, 1160000000, 175031996, 21, 74, 41875931136, 45141408190);
INSERT INTO run VALUES (20579, 1, 1, 8000, 1, 1, 1, NULL, 'international-quarter', 'bf', 4, 0, 435000000, 405000000, 65050203, 18, 25, 14092861440, 15208744274);
INSERT INTO run VALUES (20579, 1, 2, 28000, 2, 4, 1, 2, 'international-quarter', 'bf', 4, 0, 420000000, 420000000, 62813457, 19, 34, 16659775488, 17272280187);
INSERT INTO run VALUES (20584, 1, 1, 5000, 2, NULL, NULL, 3, 'international-quarter', 'bf', 1, 0, 100000000, 100000000, 14751813, 1, 3, 1358954496, 1358954496);
INSERT INTO log VALUES (20577, 1, 10000, 1, 'T01', 'sawn', '16x10', 0, 1024, 7680, 0, 'international-quarter', 110000000, 0, 110000000, 0, 15699525, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 11000, 1, 'T02', 'sawn', '17x10', 0, 1088, 7680, 0, 'international-quarter', 125000000, 0, 125000000, 0, 17642246, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 12000, 1, 'T03', 'sawn', '12x14', 0, 768, 10752, 0, 'international-quarter', 85000000, 0, 85000000, 0, 13079097, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 13000, 1, 'T04', 'sawn', '19x12', 0, 1216, 9216, 0, 'international-quarter', 190000000, 0, 190000000, 0, 26418003, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 14000, 1, 'T05', 'sawn', '14x10 defect 15bf rot', 0, 896, 7680, 0, 'international-quarter', 80000000, 15000000, 65000000, 0, 12154414, '15bf rot', NULL);
INSERT INTO log VALUES (20577, 1, 15000, 1, 'T06', 'sawn', '18x16', 0, 1152, 12288, 0, 'international-quarter', 230000000, 0, 230000000, 0, 32379707, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 16000, 1, 'T07', 'sawn', '16x14', 0, 1024, 10752, 0, 'international-quarter', 155000000, 0, 155000000, 0, 22425166, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 17000, 1, 'T08', 'sawn', '15x16 defect 10bf sweep', 0, 960, 12288, 0, 'international-quarter', 155000000, 10000000, 145000000, 0, 22987803, '10bf sweep', NULL);
INSERT INTO log VALUES (20577, 1, 18000, 1, 'T09', 'sawn', '14x12', 0, 896, 9216, 0, 'international-quarter', 100000000, 0, 100000000, 0, 14751813, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 19000, 1, 'T10', 'sawn', '12x12', 0, 768, 9216, 0, 'international-quarter', 70000000, 0, 70000000, 0, 11032158, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 20000, 1, 'T11', 'sawn', '16x16', 0, 1024, 12288, 0, 'international-quarter', 180000000, 0, 180000000, 0, 25939544, NULL, NULL);
INSERT INTO log VALUES (20577, 1, 21000, 1, 'T12', 'sawn', '15x14', 0, 960, 10752, 0, 'international-quarter', 135000000, 0, 135000000, 0, 19853034, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 8000, 1, 'T13', 'sawn', '15x12', 0, 960, 9216, 0, 'international-quarter', 115000000, 0, 115000000, 0, 16814531, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 9000, 1, 'T14', 'sawn', '13x12', 0, 832, 9216, 0, 'international-quarter', 85000000, 0, 85000000, 0, 12824355, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 10000, 1, 'T15', 'sawn', '13x10', 0, 832, 7680, 0, 'international-quarter', 70000000, 0, 70000000, 0, 10552024, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 11000, 1, 'T16', 'sawn', '14x16', 0, 896, 12288, 0, 'international-quarter', 135000000, 0, 135000000, 0, 20214955, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 12000, 1, 'T17', 'sawn', '15x12 defect 5bf staple', 0, 960, 9216, 0, 'international-quarter', 115000000, 5000000, 110000000, 0, 16814531, '5bf staple', NULL);
INSERT INTO log VALUES (20578, 1, 15000, 1, 'T18', 'sawn', '13x16', 0, 832, 12288, 0, 'international-quarter', 115000000, 0, 115000000, 0, 17621001, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 16000, 1, 'T19', 'sawn', '14x16', 0, 896, 12288, 0, 'international-quarter', 135000000, 0, 135000000, 0, 20214955, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 18000, 1, 'T20', 'sawn', '12x16 defect 15bf rot', 0, 768, 12288, 0, 'international-quarter', 95000000, 15000000, 80000000, 0, 15205940, '15bf rot', NULL);
INSERT INTO log VALUES (20578, 1, 19000, 1, 'T21', 'sawn', '17x16', 0, 1088, 12288, 0, 'international-quarter', 205000000, 0, 205000000, 0, 29070179, NULL, NULL);
INSERT INTO log VALUES (20578, 1, 20000, 1, 'T22', 'sawn', '16x10', 0, 1024, 7680, 0, 'international-quarter', 110000000, 0, 110000000, 0, 15699525, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 8000, 1, 'T23', 'sawn', '15x14 defect 15bf rot', 0, 960, 10752, 0, 'international-quarter', 135000000, 15000000, 120000000, 0, 19853034, '15bf rot', NULL);
INSERT INTO log VALUES (20579, 1, 9000, 1, 'T24', 'sawn', '14x12', 0, 896, 9216, 0, 'international-quarter', 100000000, 0, 100000000, 0, 14751813, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 10000, 1, 'T25', 'sawn', '13x12 defect 15bf rot', 0, 832, 9216, 0, 'international-quarter', 85000000, 15000000, 70000000, 0, 12824355, '15bf rot', NULL);
INSERT INTO log VALUES (20579, 1, 11000, 1, 'T26', 'sawn', '13x16', 0, 832, 12288, 0, 'international-quarter', 115000000, 0, 115000000, 0, 17621001, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 28000, 2, 'Y01', 'sawn', '15x12', 0, 960, 9216, 0, 'international-quarter', 115000000, 0, 115000000, 0, 16814531, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 29000, 2, 'Y02', 'sawn', '12x12', 0, 768, 9216, 0, 'international-quarter', 70000000, 0, 70000000, 0, 11032158, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 30000, 2, 'Y03', 'sawn', '14x16', 0, 896, 12288, 0, 'international-quarter', 135000000, 0, 135000000, 0, 20214955, NULL, NULL);
INSERT INTO log VALUES (20579, 1, 31000, 2, 'Y04', 'sawn', '14x12', 0, 896, 9216, 0, 'international-quarter', 100000000, 0, 100000000, 0, 14751813, NULL, NULL);
INSERT INTO log VALUES (20584, 1, 5000, 1, NULL, 'sawn', '14x12', 0, 896, 9216, 0, 'international-quarter', 100000000, 0, 100000000, 0, 14751813, NULL, NULL);
INSERT INTO tally VALUES (20577, 1, 23000, 1, 1, NULL, NULL, 'sawn', 'piece', 6, 7680, 0, 754974720, 870938837, NULL);
INSERT INTO tally VALUES (20577, 1, 23001, 1, 1, NULL, NULL, 'sawn', 'piece', 7, 9216, 0, 1056964608, 1219314372, NULL);
INSERT INTO tally VALUES (20577, 1, 23002, 1, 1, NULL, NULL, 'sawn', 'piece', 4, 10752, 0, 704643072, 812876248, NULL);
INSERT INTO tally VALUES (20577, 1, 23003, 1, 1, NULL, NULL, 'sawn', 'piece', 3, 12288, 0, 603979776, 696751070, NULL);
INSERT INTO tally VALUES (20577, 1, 24000, 1, 2, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 226492416, 258744936, NULL);
INSERT INTO tally VALUES (20577, 1, 24001, 1, 2, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 301989888, 344993248, NULL);
INSERT INTO tally VALUES (20577, 1, 25000, 1, 3, NULL, NULL, 'sawn', 'piece', 4, 7680, 0, 1006632960, 1144340349, NULL);
INSERT INTO tally VALUES (20577, 1, 25001, 1, 3, NULL, NULL, 'sawn', 'piece', 2, 9216, 0, 603979776, 686604209, NULL);
INSERT INTO tally VALUES (20577, 1, 25002, 1, 3, NULL, NULL, 'sawn', 'piece', 4, 10752, 0, 1409286144, 1602076488, NULL);
INSERT INTO tally VALUES (20577, 1, 25003, 1, 3, NULL, NULL, 'sawn', 'piece', 3, 12288, 0, 1207959552, 1373208419, NULL);
INSERT INTO tally VALUES (20577, 1, 26000, 1, 4, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 377487360, 427859273, NULL);
INSERT INTO tally VALUES (20577, 1, 26001, 1, 4, NULL, NULL, 'sawn', 'piece', 2, 12288, 0, 1006632960, 1140958062, NULL);
INSERT INTO tally VALUES (20577, 1, 27000, 1, 8, NULL, NULL, 'sawn', 'piece', 7, 7680, 0, 2642411520, 2856975335, NULL);
INSERT INTO tally VALUES (20577, 1, 27001, 1, 8, NULL, NULL, 'sawn', 'piece', 3, 9216, 0, 1358954496, 1469301601, NULL);
INSERT INTO tally VALUES (20577, 1, 27002, 1, 8, NULL, NULL, 'sawn', 'piece', 4, 10752, 0, 2113929216, 2285580268, NULL);
INSERT INTO tally VALUES (20577, 1, 27003, 1, 8, NULL, NULL, 'sawn', 'piece', 7, 12288, 0, 4227858432, 4571160537, NULL);
INSERT INTO tally VALUES (20577, 1, 28000, 1, 9, NULL, NULL, 'sawn', 'piece', 3, 7680, 0, 1509949440, 1624554602, NULL);
INSERT INTO tally VALUES (20577, 1, 28001, 1, 9, NULL, NULL, 'sawn', 'piece', 5, 9216, 0, 3019898880, 3249109205, NULL);
INSERT INTO tally VALUES (20577, 1, 28002, 1, 9, NULL, NULL, 'sawn', 'piece', 2, 10752, 0, 1409286144, 1516250962, NULL);
INSERT INTO tally VALUES (20577, 1, 28003, 1, 9, NULL, NULL, 'sawn', 'piece', 4, 12288, 0, 3221225472, 3465716485, NULL);
INSERT INTO tally VALUES (20577, 1, 31000, 1, 10, NULL, NULL, 'sawn', 'piece', 2, 7680, 0, 1258291200, 1349794136, NULL);
INSERT INTO tally VALUES (20577, 1, 31001, 1, 10, NULL, NULL, 'sawn', 'piece', 4, 9216, 0, 3019898880, 3239505927, NULL);
INSERT INTO tally VALUES (20577, 1, 31002, 1, 10, NULL, NULL, 'sawn', 'piece', 4, 10752, 0, 3523215360, 3779423581, NULL);
INSERT INTO tally VALUES (20577, 1, 31003, 1, 10, NULL, NULL, 'sawn', 'piece', 2, 12288, 0, 2013265920, 2159670618, NULL);
INSERT INTO tally VALUES (20577, 1, 32000, 1, 12, NULL, NULL, 'sawn', 'piece', 4, 7680, 0, 2013265920, 2135873815, NULL);
INSERT INTO tally VALUES (20577, 1, 32001, 1, 12, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 640762144, NULL);
INSERT INTO tally VALUES (20577, 1, 32002, 1, 12, NULL, NULL, 'sawn', 'piece', 2, 10752, 0, 1409286144, 1495111670, NULL);
INSERT INTO tally VALUES (20577, 1, 32003, 1, 12, NULL, NULL, 'sawn', 'piece', 3, 12288, 0, 2415919104, 2563048577, NULL);
INSERT INTO tally VALUES (20577, 1, 33000, 1, 13, NULL, NULL, 'sawn', 'piece', 3, 7680, 0, 2264924160, 2379529322, NULL);
INSERT INTO tally VALUES (20577, 1, 33001, 1, 13, NULL, NULL, 'sawn', 'piece', 4, 9216, 0, 3623878656, 3807246916, NULL);
INSERT INTO tally VALUES (20577, 1, 33002, 1, 13, NULL, NULL, 'sawn', 'piece', 3, 10752, 0, 3170893824, 3331341051, NULL);
INSERT INTO tally VALUES (20577, 1, 33003, 1, 13, NULL, NULL, 'sawn', 'piece', 4, 12288, 0, 4831838208, 5076329221, NULL);
INSERT INTO tally VALUES (20578, 1, 22000, 1, 1, NULL, NULL, 'sawn', 'piece', 3, 6144, 0, 301989888, 348375535, NULL);
INSERT INTO tally VALUES (20578, 1, 22001, 1, 1, NULL, NULL, 'sawn', 'piece', 2, 7680, 0, 251658240, 290312946, NULL);
INSERT INTO tally VALUES (20578, 1, 22002, 1, 1, NULL, NULL, 'sawn', 'piece', 3, 9216, 0, 452984832, 522563302, NULL);
INSERT INTO tally VALUES (20578, 1, 22003, 1, 1, NULL, NULL, 'sawn', 'piece', 8, 12288, 0, 1610612736, 1858002852, NULL);
INSERT INTO tally VALUES (20578, 1, 23000, 1, 3, NULL, NULL, 'sawn', 'piece', 2, 7680, 0, 503316480, 572170174, NULL);
INSERT INTO tally VALUES (20578, 1, 23001, 1, 3, NULL, NULL, 'sawn', 'piece', 5, 9216, 0, 1509949440, 1716510523, NULL);
INSERT INTO tally VALUES (20578, 1, 23002, 1, 3, NULL, NULL, 'sawn', 'piece', 6, 12288, 0, 2415919104, 2746416837, NULL);
INSERT INTO tally VALUES (20578, 1, 24000, 1, 8, NULL, NULL, 'sawn', 'piece', 5, 7680, 0, 1887436800, 2040696668, NULL);
INSERT INTO tally VALUES (20578, 1, 24001, 1, 8, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 452984832, 489767200, NULL);
INSERT INTO tally VALUES (20578, 1, 24002, 1, 8, NULL, NULL, 'sawn', 'piece', 4, 12288, 0, 2415919104, 2612091735, NULL);
INSERT INTO tally VALUES (20578, 1, 25000, 1, 9, NULL, NULL, 'sawn', 'piece', 1, 7680, 0, 503316480, 541518201, NULL);
INSERT INTO tally VALUES (20578, 1, 25001, 1, 9, NULL, NULL, 'sawn', 'piece', 4, 12288, 0, 3221225472, 3465716485, NULL);
INSERT INTO tally VALUES (20578, 1, 26000, 1, 10, NULL, NULL, 'sawn', 'piece', 1, 7680, 0, 629145600, 674897068, NULL);
INSERT INTO tally VALUES (20578, 1, 26001, 1, 10, NULL, NULL, 'sawn', 'piece', 5, 9216, 0, 3774873600, 4049382408, NULL);
INSERT INTO tally VALUES (20578, 1, 26002, 1, 10, NULL, NULL, 'sawn', 'piece', 5, 12288, 0, 5033164800, 5399176544, NULL);
INSERT INTO tally VALUES (20578, 1, 27000, 1, 12, NULL, NULL, 'sawn', 'piece', 3, 7680, 0, 1509949440, 1601905361, NULL);
INSERT INTO tally VALUES (20578, 1, 27001, 1, 12, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 640762144, NULL);
INSERT INTO tally VALUES (20578, 1, 27002, 1, 12, NULL, NULL, 'sawn', 'piece', 3, 12288, 0, 2415919104, 2563048577, NULL);
INSERT INTO tally VALUES (20578, 1, 28000, 1, 13, NULL, NULL, 'sawn', 'piece', 2, 7680, 0, 1509949440, 1586352882, NULL);
INSERT INTO tally VALUES (20578, 1, 28001, 1, 13, NULL, NULL, 'sawn', 'piece', 4, 9216, 0, 3623878656, 3807246916, NULL);
INSERT INTO tally VALUES (20578, 1, 28002, 1, 13, NULL, NULL, 'sawn', 'piece', 6, 12288, 0, 7247757312, 7614493832, NULL);
INSERT INTO tally VALUES (20579, 1, 13000, 1, 1, NULL, NULL, 'sawn', 'piece', 1, 7680, 0, 125829120, 145156473, NULL);
INSERT INTO tally VALUES (20579, 1, 13001, 1, 1, NULL, NULL, 'sawn', 'piece', 3, 9216, 0, 452984832, 522563302, NULL);
INSERT INTO tally VALUES (20579, 1, 13002, 1, 1, NULL, NULL, 'sawn', 'piece', 1, 10752, 0, 176160768, 203219062, NULL);
INSERT INTO tally VALUES (20579, 1, 13003, 1, 1, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 201326592, 232250357, NULL);
INSERT INTO tally VALUES (20579, 1, 14000, 1, 3, NULL, NULL, 'sawn', 'piece', 2, 9216, 0, 603979776, 686604209, NULL);
INSERT INTO tally VALUES (20579, 1, 14001, 1, 3, NULL, NULL, 'sawn', 'piece', 2, 10752, 0, 704643072, 801038244, NULL);
INSERT INTO tally VALUES (20579, 1, 14002, 1, 3, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 402653184, 457736140, NULL);
INSERT INTO tally VALUES (20579, 1, 15000, 1, 8, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 452984832, 489767200, NULL);
INSERT INTO tally VALUES (20579, 1, 15001, 1, 8, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 603979776, 653022934, NULL);
INSERT INTO tally VALUES (20579, 1, 16000, 1, 9, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 649821841, NULL);
INSERT INTO tally VALUES (20579, 1, 17000, 1, 10, NULL, NULL, 'sawn', 'piece', 2, 9216, 0, 1509949440, 1619752963, NULL);
INSERT INTO tally VALUES (20579, 1, 17001, 1, 10, NULL, NULL, 'sawn', 'piece', 2, 10752, 0, 1761607680, 1889711790, NULL);
INSERT INTO tally VALUES (20579, 1, 17002, 1, 10, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 1006632960, 1079835309, NULL);
INSERT INTO tally VALUES (20579, 1, 18000, 1, 12, NULL, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 640762144, NULL);
INSERT INTO tally VALUES (20579, 1, 18001, 1, 12, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 805306368, 854349526, NULL);
INSERT INTO tally VALUES (20579, 1, 19000, 1, 13, NULL, NULL, 'sawn', 'piece', 2, 9216, 0, 1811939328, 1903623458, NULL);
INSERT INTO tally VALUES (20579, 1, 19001, 1, 13, NULL, NULL, 'sawn', 'piece', 1, 10752, 0, 1056964608, 1110447017, NULL);
INSERT INTO tally VALUES (20579, 1, 19002, 1, 13, NULL, NULL, 'sawn', 'piece', 1, 12288, 0, 1207959552, 1269082305, NULL);
INSERT INTO tally VALUES (20579, 1, 33000, 2, 1, 2, NULL, 'sawn', 'piece', 2, 9216, 0, 301989888, 321053000, NULL);
INSERT INTO tally VALUES (20579, 1, 33001, 2, 1, 2, NULL, 'sawn', 'piece', 1, 12288, 0, 201326592, 214035333, NULL);
INSERT INTO tally VALUES (20579, 1, 34000, 2, 1, 3, NULL, 'sawn', 'piece', 2, 9216, 0, 301989888, 321053000, NULL);
INSERT INTO tally VALUES (20579, 1, 35000, 2, 2, 2, NULL, 'sawn', 'piece', 1, 9216, 0, 226492416, 239798845, NULL);
INSERT INTO tally VALUES (20579, 1, 35001, 2, 2, 2, NULL, 'sawn', 'piece', 1, 12288, 0, 301989888, 319731794, NULL);
INSERT INTO tally VALUES (20579, 1, 36000, 2, 2, 1, NULL, 'sawn', 'piece', 1, 9216, 0, 226492416, 239798845, NULL);
INSERT INTO tally VALUES (20579, 1, 37000, 2, 3, 2, NULL, 'sawn', 'piece', 2, 9216, 0, 603979776, 638142382, NULL);
INSERT INTO tally VALUES (20579, 1, 38000, 2, 3, 3, NULL, 'sawn', 'piece', 2, 9216, 0, 603979776, 638142382, NULL);
INSERT INTO tally VALUES (20579, 1, 39000, 2, 3, 1, NULL, 'sawn', 'piece', 1, 12288, 0, 402653184, 425428255, NULL);
INSERT INTO tally VALUES (20579, 1, 40000, 2, 8, 2, NULL, 'sawn', 'piece', 7, 9216, 0, 3170893824, 3277250888, NULL);
INSERT INTO tally VALUES (20579, 1, 40001, 2, 8, 2, NULL, 'sawn', 'piece', 1, 12288, 0, 603979776, 624238264, NULL);
INSERT INTO tally VALUES (20579, 1, 41000, 2, 8, 3, NULL, 'sawn', 'piece', 2, 12288, 0, 1207959552, 1248476529, NULL);
INSERT INTO tally VALUES (20579, 1, 42000, 2, 8, 1, NULL, 'sawn', 'piece', 1, 12288, 0, 603979776, 624238264, NULL);
INSERT INTO tally VALUES (20579, 1, 43000, 2, 9, 2, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 622948516, NULL);
INSERT INTO tally VALUES (20579, 1, 44000, 2, 9, 3, NULL, 'sawn', 'piece', 1, 9216, 0, 603979776, 622948516, NULL);
INSERT INTO tally VALUES (20579, 1, 45000, 2, 10, 2, NULL, 'sawn', 'piece', 4, 9216, 0, 3019898880, 3110873334, NULL);
INSERT INTO tally VALUES (20579, 1, 45001, 2, 10, 2, NULL, 'sawn', 'piece', 2, 12288, 0, 2013265920, 2073915556, NULL);
INSERT INTO tally VALUES (20579, 1, 46000, 2, 10, 3, NULL, 'sawn', 'piece', 1, 9216, 0, 754974720, 777718333, NULL);
INSERT INTO tally VALUES (20579, 1, 47000, 2, 11, 2, NULL, 'sawn', 'piece', 1, 9216, 0, 905969664, 932488151, NULL);
INSERT INTO tally VALUES (20584, 1, 6000, 1, 8, NULL, NULL, 'sawn', 'piece', 3, 9216, 0, 1358954496, 1358954496, NULL);
INSERT INTO sawing VALUES (20577, 1, 8000, 1, 1, 450, 135);
INSERT INTO sawing VALUES (20577, 1, 8001, 1, 1, 600, 130);
INSERT INTO sawing VALUES (20577, 1, 8002, 1, 1, 770, 75);
INSERT INTO sawing VALUES (20577, 1, 8003, 1, 1, 875, 35);
INSERT INTO sawing VALUES (20578, 1, 6000, 1, 1, 510, 110);
INSERT INTO sawing VALUES (20578, 1, 6001, 1, 1, 656, 64);
INSERT INTO sawing VALUES (20578, 1, 6002, 1, 1, 765, 45);
INSERT INTO sawing VALUES (20578, 1, 6003, 1, 1, 855, 66);
INSERT INTO sawing VALUES (20579, 1, 6000, 1, 1, 525, 90);
INSERT INTO sawing VALUES (20579, 1, 27000, 4, 2, 885, 105);
INSERT INTO stop VALUES (20577, 1, 38000, 1, 1, 845, 30, 'belt', 'slack feed belt, tightened and tracked', 0);
INSERT INTO stop VALUES (20578, 1, 13000, 1, 1, 620, 36, 'metal', 'fence staple in T17', 0);
INSERT INTO stop VALUES (20578, 1, 17000, 1, 1, 810, 45, 'waiting', 'Tervane''s tractor was haying', 1);
INSERT INTO crew VALUES (20577, 1, 3000, 1, 'Quill', 540, '');
INSERT INTO crew VALUES (20577, 1, 3001, 1, 'Bess', 540, '');
INSERT INTO crew VALUES (20578, 1, 3000, 1, 'Quill', 540, '');
INSERT INTO crew VALUES (20578, 1, 3001, 1, 'Bess', 540, '');
INSERT INTO crew VALUES (20579, 1, 3000, NULL, 'Quill', 540, '');
INSERT INTO crew VALUES (20579, 1, 3001, NULL, 'Bess', 540, '');
INSERT INTO tooth_work VALUES (20577, 1, 29000, 1, 1, 'head', 'touched-up', NULL, '', '', '');
INSERT INTO tooth_work VALUES (20577, 1, 30000, 1, 1, 'edger', 'touched-up', NULL, '', '', '');
INSERT INTO tooth_work VALUES (20578, 1, 14000, 1, 1, 'head', 'replaced', 3, 'metal', 'T17', 'fence staple, kept in the tin');
INSERT INTO tooth_work VALUES (20579, 1, 26000, 2, 4, 'head', 'full-set', 22, 'wear', '', '');
INSERT INTO tooth_work VALUES (20584, 1, 3000, NULL, NULL, 'edger', 'full-set', 18, '', '', '');
INSERT INTO tooth_work VALUES (20584, 1, 8000, 1, NULL, 'head', 'blade-changed', NULL, 'dull', '', '');
INSERT INTO setup_change VALUES (20577, 1, 5000, 1, 290, 120, NULL, NULL, NULL, NULL, NULL, NULL, 0, '');
INSERT INTO setup_change VALUES (20579, 1, 23000, 2, 260, 50, NULL, NULL, NULL, NULL, NULL, NULL, 0, 'track shimmed at two stakes, blade squared to the bed, scale pointer set');
INSERT INTO setup_change VALUES (20584, 1, 4000, 3, 260, NULL, 240, 200, 63, -31, 55000000, 'chrome', 0, 'pointer set');
INSERT INTO setup_record VALUES (20577, 1, 5000, 'written', '', 1);
INSERT INTO setup_record VALUES (20579, 1, 22000, 'moved', '', 2);
INSERT INTO setup_record VALUES (20579, 1, 23000, 'written', '', 2);
INSERT INTO setup_record VALUES (20579, 1, 26000, 'full set', 'head', 2);
INSERT INTO setup_record VALUES (20584, 1, 3000, 'full set', 'edger', 2);
INSERT INTO setup_record VALUES (20584, 1, 4000, 'written', '', 2);
INSERT INTO setup_record VALUES (20584, 1, 8000, 'other blade', 'head', 2);
INSERT INTO setup_record VALUES (20584, 1, 9000, 'moved', '', 3);
INSERT INTO thickness VALUES (20577, 1, 35000, 1, 8, 2130);
INSERT INTO thickness VALUES (20577, 1, 35000, 2, 8, 2100);
INSERT INTO thickness VALUES (20577, 1, 35000, 3, 8, 2120);
INSERT INTO thickness VALUES (20577, 1, 35000, 4, 8, 2140);
INSERT INTO thickness VALUES (20577, 1, 36000, 1, 8, 2110);
INSERT INTO thickness VALUES (20577, 1, 36000, 2, 8, 2120);
INSERT INTO thickness VALUES (20577, 1, 36000, 3, 8, 2150);
INSERT INTO thickness VALUES (20577, 1, 36000, 4, 8, 2090);
INSERT INTO thickness VALUES (20577, 1, 37000, 1, 3, 1130);
INSERT INTO thickness VALUES (20577, 1, 37000, 2, 3, 1110);
INSERT INTO thickness VALUES (20577, 1, 37000, 3, 3, 1120);
INSERT INTO thickness VALUES (20577, 1, 37000, 4, 3, 1140);
INSERT INTO thickness VALUES (20578, 1, 30000, 1, 10, 2140);
INSERT INTO thickness VALUES (20578, 1, 30000, 2, 10, 2100);
INSERT INTO thickness VALUES (20578, 1, 30000, 3, 10, 2110);
INSERT INTO thickness VALUES (20578, 1, 30000, 4, 10, 2130);
INSERT INTO thickness VALUES (20579, 1, 49000, 1, 8, 2050);
INSERT INTO thickness VALUES (20579, 1, 49000, 2, 8, 2040);
INSERT INTO thickness VALUES (20579, 1, 49000, 3, 8, 2060);
INSERT INTO thickness VALUES (20579, 1, 49000, 4, 8, 2050);
INSERT INTO thickness VALUES (20579, 1, 50000, 1, 1, 1050);
INSERT INTO thickness VALUES (20579, 1, 50000, 2, 1, 1060);
INSERT INTO thickness VALUES (20579, 1, 50000, 3, 1, 1040);
INSERT INTO thickness VALUES (20579, 1, 50000, 4, 1, 1050);
INSERT INTO meter VALUES (20577, 1, 4000, 18426);
INSERT INTO meter VALUES (20577, 1, 39000, 18494);
INSERT INTO meter VALUES (20578, 1, 31000, 18546);
INSERT INTO meter VALUES (20579, 1, 51000, 18582);
INSERT INTO fuel VALUES (20577, 1, 40000, 9400000, 'gal', NULL);
INSERT INTO fuel VALUES (20578, 1, 32000, 7300000, 'gal', NULL);
INSERT INTO fuel VALUES (20579, 1, 52000, 5100000, 'gal', NULL);
INSERT INTO move VALUES (20579, 1, 22000, 1, 1, 2, 23000000, 'mi', 225);
INSERT INTO move VALUES (20584, 1, 9000, NULL, 2, 3, 4000000, 'mi', 0);
INSERT INTO residue VALUES (20584, 1, 7000, NULL, 'slabs', 1500000, 'cord', 'for the stove');
INSERT INTO note VALUES (20577, 1, 41000, 'cut list gone over with Oda, she wants the 2x10s first');
INSERT INTO note VALUES (20579, 1, 21000, 'counted the barn pile with Oda, 208 pieces, both signed the tally');
INSERT INTO note VALUES (20579, 1, 53000, 'corrected');
INSERT INTO own_stock VALUES ('', 1, 1, 2, 0, 9216, 1, 0, 226492416);
INSERT INTO own_stock VALUES ('', 1, 1, 3, 0, 12288, 1, 0, 402653184);
INSERT INTO own_stock VALUES ('', 1, 1, 8, 0, 12288, 1, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 2, 1, 0, 9216, 2, 0, 301989888);
INSERT INTO own_stock VALUES ('', 1, 2, 1, 0, 12288, 1, 0, 201326592);
INSERT INTO own_stock VALUES ('', 1, 2, 2, 0, 9216, 1, 0, 226492416);
INSERT INTO own_stock VALUES ('', 1, 2, 2, 0, 12288, 1, 0, 301989888);
INSERT INTO own_stock VALUES ('', 1, 2, 3, 0, 9216, 2, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 2, 8, 0, 9216, 7, 0, 3170893824);
INSERT INTO own_stock VALUES ('', 1, 2, 8, 0, 12288, 1, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 2, 9, 0, 9216, 1, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 2, 10, 0, 9216, 4, 0, 3019898880);
INSERT INTO own_stock VALUES ('', 1, 2, 10, 0, 12288, 2, 0, 2013265920);
INSERT INTO own_stock VALUES ('', 1, 2, 11, 0, 9216, 1, 0, 905969664);
INSERT INTO own_stock VALUES ('', 1, 3, 1, 0, 9216, 2, 0, 301989888);
INSERT INTO own_stock VALUES ('', 1, 3, 3, 0, 9216, 2, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 3, 8, 0, 12288, 2, 0, 1207959552);
INSERT INTO own_stock VALUES ('', 1, 3, 9, 0, 9216, 1, 0, 603979776);
INSERT INTO own_stock VALUES ('', 1, 3, 10, 0, 9216, 1, 0, 754974720);
INSERT INTO job_stock VALUES (1, '', 1, 208, 0, 0, 114881986560);
