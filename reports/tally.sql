-- report:  tally
-- title:   Tally
-- meaning: Every piece tallied, by nominal size and length, with what was taken off ('less', 'resaw') already taken
--          off. Board feet are thickness x width x length / 12 in nominal inches and feet, added exactly and rounded
--          once. Lumber counted by the lineal foot has board feet and its length in all, but no pieces.
-- takes:   from to job customer species site
-- example: tally --job TER --period 2026-w19 -o ter-week.xlsx
-- table:   tally |
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   grade text "Grade"
-- shows:   size text "Size"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   pieces count "Pieces" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- shows:   lineal_ft lineal "Lineal" total=sum
-- shows:   metric count "" hidden
-- grid:    rows=job?,species?,size,grade column=length_ft cell=pieces sums=pieces,bf,lineal_ft?
-- empty:   nothing tallied
WITH lines AS (   -- `board`: size, grade, metric and length in one number, so that a line finds its like quickly; length 0: lineal
  SELECT (coalesce(r.job_id, 0) << 24) + coalesce(r.species_id, 0) AS whose,
         (t.size_id << 44) + (coalesce(t.grade_id, 0) << 26) + (t.metric << 25)
           + CASE t.form WHEN 'lineal' THEN 0 ELSE t.length END AS board,
         sum(t.pieces) AS pieces, sum(t.lumber) AS lumber, sum(CASE t.form WHEN 'lineal' THEN t.lineal END) AS lineal
  FROM v_tally_id t JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  WHERE t.day BETWEEN :from AND :to AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
    AND (:customer_id IS NULL OR r.customer_id = :customer_id) AND (:species_id IS NULL OR r.species_id = :species_id)
    AND (:site_id IS NULL OR r.site_id = :site_id)
  GROUP BY whose, board HAVING sum(t.pieces) <> 0 OR sum(t.lumber) <> 0)
SELECT j.code AS job, s.code AS species, g.code AS grade, z.label AS size, nullif(board & 0x1ffffff, 0) AS length_ft,
       CASE WHEN board & 0x1ffffff THEN pieces END AS pieces, lumber AS bf, lineal AS lineal_ft, (board >> 25) & 1 AS metric
FROM lines JOIN v_size z ON z.id = board >> 44 LEFT JOIN v_job j ON j.id = whose >> 24
  LEFT JOIN v_species s ON s.id = whose & 0xffffff LEFT JOIN v_grade g ON g.id = (board >> 26) & 0x3ffff
ORDER BY j.code, s.code, metric, z.thickness, z.width, z.label, g.code, length_ft;
-- table:   struck | Struck lines
-- shows:   day day "Day"
-- shows:   line text "Line"
-- shows:   pieces count "Pieces"
-- shows:   bf lumber "Lumber"
-- shows:   why text "Why"
-- shows:   struck count "" strikes
-- empty:   no struck lines
SELECT s.day, s.text AS line, s.pieces, s.lumber AS bf, s.why, 1 AS struck
FROM v_struck s LEFT JOIN v_job j ON j.code = s.job
WHERE s.kind = 'tally' AND s.day BETWEEN :from AND :to AND (:job IS NULL OR s.job = :job)
  AND (:customer IS NULL OR j.customer = :customer) AND (:species IS NULL OR s.species = :species) AND :site IS NULL
ORDER BY s.day, s.shift, s.revision, s.number;
