-- What questions over all the years are answered from, kept by posting: each sheet's totals over its runs, and the
-- runs of a job. Worked out from the journal like every table but that one.
CREATE INDEX run_by_job ON run (job);

ALTER TABLE sheet ADD COLUMN runs     INTEGER NOT NULL DEFAULT 0;
ALTER TABLE sheet ADD COLUMN sites    TEXT;                          -- names in the order of the day, ' / ' between them
ALTER TABLE sheet ADD COLUMN rules    TEXT;                          -- practices that scaled a log, ',' between them
ALTER TABLE sheet ADD COLUMN units    TEXT;                          -- units of their scales, ',' between them
ALTER TABLE sheet ADD COLUMN logs     INTEGER NOT NULL DEFAULT 0;
ALTER TABLE sheet ADD COLUMN unscaled_logs INTEGER NOT NULL DEFAULT 0;
ALTER TABLE sheet ADD COLUMN net      INTEGER;                       -- NULL: no log has a scale
ALTER TABLE sheet ADD COLUMN pieces   INTEGER NOT NULL DEFAULT 0;
ALTER TABLE sheet ADD COLUMN lumber   INTEGER NOT NULL DEFAULT 0;
ALTER TABLE sheet ADD COLUMN lineal   INTEGER NOT NULL DEFAULT 0;    -- length of all boards, counts as in tally
ALTER TABLE sheet ADD COLUMN counted_lumber INTEGER;                 -- of the runs that cut lumber and whose logs all
ALTER TABLE sheet ADD COLUMN counted_net    INTEGER;                 -- have a scale: what overrun counts
