-- Own lumber sold by its length, by the piece, or by the bundle. What was posted before is by the board foot.
ALTER TABLE sold ADD COLUMN form TEXT NOT NULL DEFAULT 'piece' CHECK (form IN ('piece', 'lineal'));
ALTER TABLE sold ADD COLUMN rate_per TEXT NOT NULL DEFAULT 'bf' CHECK (rate_per IN ('bf', 'piece', 'lf', 'lm'));
-- A bundle sold whole: what own lumber was tallied under its tag until then, less what was sold out of it.
CREATE TABLE sold_bundle (day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  buyer TEXT NOT NULL, bundle TEXT NOT NULL COLLATE NOCASE,
  price_micro INTEGER,                          -- of the whole bundle; NULL = by the price list
  PRIMARY KEY (day, shift, number), FOREIGN KEY (day, shift) REFERENCES sheet ON DELETE CASCADE) STRICT, WITHOUT ROWID;
CREATE INDEX tally_by_bundle ON tally (bundle COLLATE NOCASE, day, shift, number) WHERE bundle IS NOT NULL;
