-- What the work costs and what is due by engine hours, from the mill file; and what load slips took away. Rates are
-- millionths of the currency.
CREATE TABLE cost (
  line       INTEGER PRIMARY KEY,                -- order of the mill file
  name       TEXT NOT NULL,
  rate_micro INTEGER NOT NULL,                   -- of one unit; of a year's cost the whole sum
  per        TEXT NOT NULL,                      -- what it goes by, as v_use.per has it
  whole      INTEGER NOT NULL CHECK (whole > 0), -- a quantity of v_use that makes one unit; of a year's cost its days
  unit       TEXT NOT NULL,                      -- as printed: crew hour, MBF, gal
  who        TEXT NOT NULL,                      -- this hand or saw only; '' = every one without an entry of its own
  from_day   INTEGER NOT NULL, to_day INTEGER NOT NULL   -- in force, both days included
) STRICT;
CREATE TABLE service (
  line INTEGER PRIMARY KEY, name TEXT NOT NULL COLLATE NOCASE UNIQUE,   -- '' = any stop for service
  every_tenths INTEGER NOT NULL CHECK (every_tenths > 0)
) STRICT;
CREATE TABLE paper_load (                         -- what a load slip took away
  entry INTEGER NOT NULL REFERENCES paper, line INTEGER NOT NULL,
  bundle TEXT NOT NULL, species TEXT NOT NULL, grade TEXT NOT NULL, size TEXT NOT NULL,
  thickness INTEGER NOT NULL, width INTEGER NOT NULL, length INTEGER NOT NULL, metric INTEGER NOT NULL,
  pieces INTEGER NOT NULL,                       -- 0 = a run of lineal feet, as long as `length`
  PRIMARY KEY (entry, line)
) STRICT, WITHOUT ROWID;
