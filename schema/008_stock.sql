-- Lumber on the yard, kept by posting, so that asking what is there does not go through the tallies of all the years.
-- 0 and '' stand for none, so that every row has a whole key. Worked out from the journal like every table but that one.
ALTER TABLE size ADD COLUMN stack INTEGER REFERENCES size;   -- the first met of its thickness and width: 5/4x6 and 1-1/4x6 lie in one

CREATE TABLE own_stock (                          -- own lumber: sawn for the mill and come from shares, less what was sold
  bundle TEXT NOT NULL,                           -- its tag in small letters
  species INTEGER NOT NULL, grade INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES size,          -- size.stack
  metric INTEGER NOT NULL, length INTEGER NOT NULL,   -- of a board; 0 = counted by its length
  pieces INTEGER NOT NULL, along INTEGER NOT NULL,    -- along: length counted, in counts as in tally
  lumber INTEGER NOT NULL,
  PRIMARY KEY (bundle, species, grade, size, metric, length)
) STRICT, WITHOUT ROWID;
CREATE INDEX own_stock_gone ON own_stock (lumber) WHERE pieces = 0 AND along = 0 AND lumber = 0;

CREATE TABLE job_stock (                          -- customers' lumber
  job INTEGER NOT NULL REFERENCES job, bundle TEXT NOT NULL, species INTEGER NOT NULL,
  cut INTEGER NOT NULL, to_mill INTEGER NOT NULL, delivered INTEGER NOT NULL,   -- pieces
  lumber INTEGER NOT NULL,                        -- still here
  PRIMARY KEY (job, bundle, species)
) STRICT, WITHOUT ROWID;
CREATE INDEX job_stock_here ON job_stock (job) WHERE lumber <> 0;
CREATE INDEX job_stock_gone ON job_stock (lumber) WHERE cut = 0 AND to_mill = 0 AND delivered = 0 AND lumber = 0;

-- What was in a bundle sold whole: what own lumber was tallied under its tag since it was last sold whole, less what was
-- sold out of it by the piece or the foot. Below 0: more was sold out of it than was tallied.
CREATE TABLE sold_bundle_line (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  species INTEGER NOT NULL, grade INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES size,          -- as its oldest line in the bundle has it
  metric INTEGER NOT NULL, length INTEGER NOT NULL,
  pieces INTEGER NOT NULL, along INTEGER NOT NULL, lumber INTEGER NOT NULL,
  PRIMARY KEY (day, shift, number, species, grade, size, metric, length),
  FOREIGN KEY (day, shift, number) REFERENCES sold_bundle ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX sold_by_bundle ON sold (bundle COLLATE NOCASE, day, shift, number) WHERE bundle IS NOT NULL;
CREATE INDEX sold_bundle_by_tag ON sold_bundle (bundle, day, shift, number);
CREATE INDEX paper_by_day ON paper (day);
