-- report:  struck
-- title:   Struck lines and corrections
-- meaning: What a later revision of a day sheet no longer had, and why. A struck line stays in sight; its figures are
--          in no total.
-- takes:   from to job species
-- example: struck --period 2026-w19
-- table:   struck | Struck lines
-- shows:   day day "Day"
-- shows:   kind text "Kind"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   line text "Line"
-- shows:   pieces count "Pieces"
-- shows:   bf lumber "Lumber"
-- shows:   why text "Why"
-- shows:   struck_at text "Struck"
-- shows:   struck count "" strikes
-- empty:   no struck lines
SELECT day, kind, job, species, text AS line, pieces, lumber AS bf, why, struck_at, 1 AS struck
FROM v_struck WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:species IS NULL OR species = :species)
ORDER BY day, shift, revision, number;
-- table:   corrections | Corrections
-- shows:   subject text "Sheet"
-- shows:   revision count "Revision"
-- shows:   posted_at text "Posted"
-- shows:   why text "Why"
-- empty:   no corrections
SELECT subject, revision, at AS posted_at, why FROM (
  SELECT entry, subject, revision, at, why FROM v_entry WHERE kind = 'mill' AND revision > 1
  UNION ALL
  SELECT entry, subject, revision, at, why FROM v_entry WHERE kind = 'sheet' AND revision > 1
    AND subject BETWEEN date(:from * 86400, 'unixepoch') AND date(:to * 86400, 'unixepoch') || ' shift 9999')
ORDER BY entry;
