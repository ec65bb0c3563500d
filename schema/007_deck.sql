-- The logs that lie on the deck: received, or left half-sawn, and not sawn since. Kept by posting tag by tag, so that
-- asking for the deck does not go through the logs of all the years.
CREATE TABLE on_deck (
  day INTEGER NOT NULL, shift INTEGER NOT NULL, number INTEGER NOT NULL,
  tag TEXT COLLATE NOCASE,                       -- NULL: cannot be followed, and stays
  PRIMARY KEY (day, shift, number),
  FOREIGN KEY (day, shift, number) REFERENCES log ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX on_deck_by_tag ON on_deck (tag) WHERE tag IS NOT NULL;
CREATE INDEX job_by_owner ON job (owner);
