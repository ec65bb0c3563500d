-- What a sheet's totals were still short of. `lineal` is the length of all boards end to end, counted in 1/320 mm, in which
-- 1/64 inch (127) and 1/10 mm (32) are both whole: a sheet may have boards of either measure. What `less` and `resaw` take
-- off is taken off, also by the lineal foot. (The edition is filled anew from the journal.)
ALTER TABLE sheet ADD COLUMN lines INTEGER NOT NULL DEFAULT 0;       -- tally lines: a day with a log or one of these was sawn
