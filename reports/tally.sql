-- report:  tally
-- title:   Tally
-- meaning: Every piece tallied, by nominal size and length, with what was taken off ('less', 'resaw') already taken
--          off. Board feet are thickness x width x length / 12 in nominal inches and feet, added exactly and rounded
--          once. Lumber counted by the lineal foot has board feet but no pieces and no length.
-- filters: from to job customer species site
-- example: tally --job TER --period 2026-w19 -o ter-week.xlsx
-- table:   tally |
-- column:  job text "Job"
-- column:  species text "Species"
-- column:  grade text "Grade"
-- column:  size text "Size"
-- column:  length_ft feet "Length" metric-from=metric
-- column:  pieces count "Pieces" total=sum
-- column:  bf lumber "Lumber" total=sum
-- column:  metric count "" hidden
-- grid:    rows=job?,species?,size,grade column=length_ft cell=pieces sums=pieces,bf
-- empty:   nothing tallied
SELECT job, species, grade, size, CASE WHEN form <> 'lineal' THEN length END AS length_ft, CASE WHEN max(form <> 'lineal') THEN sum(pieces) END AS pieces,
       sum(lumber) AS bf, metric
FROM v_tally
WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
  AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
GROUP BY job, species, size, metric, thickness, width, grade, length_ft
HAVING sum(pieces) <> 0 OR sum(lumber) <> 0
ORDER BY job, species, metric, thickness, width, size, grade, length_ft;
-- table:   struck | Struck lines
-- column:  day day "Day"
-- column:  line text "Line"
-- column:  pieces count "Pieces"
-- column:  bf lumber "Lumber"
-- column:  why text "Why"
-- column:  struck count "" strikes
-- empty:   no struck lines
SELECT s.day, s.text AS line, s.pieces, s.lumber AS bf, s.why, 1 AS struck
FROM v_struck s LEFT JOIN v_job j ON j.code = s.job
WHERE s.kind = 'tally' AND s.day BETWEEN :from AND :to AND (:job IS NULL OR s.job = :job)
  AND (:customer IS NULL OR j.customer = :customer) AND (:species IS NULL OR s.species = :species) AND :site IS NULL
ORDER BY s.day, s.shift, s.revision, s.number;
