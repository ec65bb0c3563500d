-- report:  cut-list
-- title:   Cut lists: wanted, cut, still to cut
-- meaning: What each job's cut list (mill file) wants against the pieces tallied for that job in the same size and
--          length, and grade where the list names one. Short is what is still to cut; over is what was cut beyond the
--          list. Pieces not on a list are in the second table.
-- takes:   from to job customer
-- example: cut-list --job TER
-- table:   cut-list |
-- shows:   job text "Job"
-- shows:   size text "Size"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   grade text "Grade"
-- shows:   wanted count "Wanted" total=sum
-- shows:   cut count "Cut" total=sum
-- shows:   short count "Still to cut" total=sum
-- shows:   over count "Over" total=sum
-- shows:   done_percent percent:0 "Done" of=done/wanted
-- shows:   done count "" hidden
-- shows:   metric count "" hidden
-- empty:   no job has a cut list
WITH cut AS MATERIALIZED (
  SELECT r.job_id, z.thickness, z.width, t.metric, t.length, t.grade_id, sum(t.pieces) AS pieces
  FROM v_run_id r JOIN v_tally_id t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
    JOIN v_size z ON z.id = t.size_id
  WHERE r.day BETWEEN :from AND :to AND r.job_id IN (SELECT job_id FROM v_cut_list) AND t.form <> 'lineal'
    AND (:job_id IS NULL OR r.job_id = :job_id)
  GROUP BY 1, 2, 3, 4, 5, 6),
list AS (
  SELECT l.*, coalesce((SELECT sum(c.pieces) FROM cut c WHERE c.job_id = l.job_id AND c.thickness = l.thickness
             AND c.width = l.width AND c.metric = l.metric AND c.length = l.length
             AND (l.grade_id IS NULL OR c.grade_id = l.grade_id)), 0) AS cut
  FROM v_cut_list l LEFT JOIN v_job j ON j.id = l.job_id
  WHERE (:job_id IS NULL OR l.job_id = :job_id) AND (:customer_id IS NULL OR j.customer_id = :customer_id))
SELECT job, size, length AS length_ft, grade, pieces AS wanted, cut, max(pieces - cut, 0) AS short,
       max(cut - pieces, 0) AS over, min(pieces, cut) AS done, metric
FROM list ORDER BY job, line;
-- table:   beside | Cut for these jobs, not on a list
-- shows:   job text "Job"
-- shows:   size text "Size"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   grade text "Grade"
-- shows:   pieces count "Pieces" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- shows:   metric count "" hidden
-- empty:   nothing cut but what is on the lists
WITH cut AS MATERIALIZED (
  SELECT r.job_id, t.size_id, t.grade_id, t.metric, t.length, t.form = 'lineal' AS lineal, sum(t.pieces) AS pieces,
         sum(t.lumber) AS lumber
  FROM v_run_id r JOIN v_tally_id t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
  WHERE r.day BETWEEN :from AND :to AND r.job_id IN (SELECT job_id FROM v_cut_list)
    AND (:job_id IS NULL OR r.job_id = :job_id)
  GROUP BY r.job_id, t.size_id, t.grade_id, t.metric, t.length, lineal)
SELECT j.code AS job, z.label AS size, CASE WHEN NOT lineal THEN c.length END AS length_ft, g.code AS grade,
       CASE WHEN NOT lineal THEN sum(c.pieces) END AS pieces, sum(c.lumber) AS bf, c.metric
FROM cut c JOIN v_job j ON j.id = c.job_id JOIN v_size z ON z.id = c.size_id LEFT JOIN v_grade g ON g.id = c.grade_id
WHERE (:customer_id IS NULL OR j.customer_id = :customer_id)
  AND NOT EXISTS (SELECT 1 FROM v_cut_list l WHERE l.job_id = c.job_id AND l.thickness = z.thickness
    AND l.width = z.width AND l.metric = c.metric AND l.length = c.length
    AND (l.grade_id IS NULL OR l.grade_id = c.grade_id))
GROUP BY c.job_id, c.metric, c.size_id, length_ft, c.grade_id, lineal
ORDER BY j.code, c.metric, z.thickness, z.width, z.label, length_ft, g.code;
