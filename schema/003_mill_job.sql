-- In which mill files a job stands, so that the last that was said of it holds for its sheets when a later file has it
-- no more. Worked out from the journal. From the entry of one mill file to that of another, all between them included.
CREATE TABLE mill_job (
  job         INTEGER NOT NULL REFERENCES job,
  first_entry INTEGER NOT NULL REFERENCES journal,
  last_entry  INTEGER NOT NULL REFERENCES journal CHECK (last_entry >= first_entry),
  PRIMARY KEY (job, first_entry)
) STRICT, WITHOUT ROWID;
