-- report:  cut-list
-- title:   Cut lists: wanted, cut, still to cut
-- meaning: What each job's cut list (mill file) wants against the pieces tallied for that job in the same size and
--          length, and grade where the list names one. Short is what is still to cut; over is what was cut beyond the
--          list. Pieces on no list are in the second table.
-- filters: from to job customer
-- example: cut-list --job TER
-- table:   cut-list |
-- column:  job text "Job"
-- column:  size text "Size"
-- column:  length_ft feet "Length" metric-from=metric
-- column:  grade text "Grade"
-- column:  wanted count "Wanted" total=sum
-- column:  cut count "Cut" total=sum
-- column:  short count "Still to cut" total=sum
-- column:  over count "Over" total=sum
-- column:  done_percent percent:0 "Done" of=done/wanted
-- column:  done count "" hidden
-- column:  metric count "" hidden
-- empty:   no job has a cut list
WITH cut AS (
  SELECT job, thickness, width, metric, length, grade, sum(pieces) AS pieces FROM v_tally
  WHERE day BETWEEN :from AND :to AND form <> 'lineal' AND (:job IS NULL OR job = :job)
  GROUP BY job, thickness, width, metric, length, grade),
list AS (
  SELECT l.*, coalesce((SELECT sum(c.pieces) FROM cut c WHERE c.job = l.job AND c.thickness = l.thickness
             AND c.width = l.width AND c.metric = l.metric AND c.length = l.length
             AND (l.grade IS NULL OR c.grade = l.grade)), 0) AS cut
  FROM v_cut_list l LEFT JOIN v_job j ON j.code = l.job
  WHERE (:job IS NULL OR l.job = :job) AND (:customer IS NULL OR j.customer = :customer))
SELECT job, size, length AS length_ft, grade, pieces AS wanted, cut, max(pieces - cut, 0) AS short,
       max(cut - pieces, 0) AS over, min(pieces, cut) AS done, metric
FROM list ORDER BY job, line;
-- table:   beside | Cut for these jobs, on no list
-- column:  job text "Job"
-- column:  size text "Size"
-- column:  length_ft feet "Length" metric-from=metric
-- column:  grade text "Grade"
-- column:  pieces count "Pieces" total=sum
-- column:  bf lumber "Lumber" total=sum
-- column:  metric count "" hidden
-- empty:   nothing beside the lists
SELECT t.job, t.size, CASE WHEN t.form <> 'lineal' THEN t.length END AS length_ft, t.grade,
       CASE WHEN max(t.form <> 'lineal') THEN sum(t.pieces) END AS pieces, sum(t.lumber) AS bf, t.metric
FROM v_tally t
WHERE t.day BETWEEN :from AND :to AND (:job IS NULL OR t.job = :job) AND (:customer IS NULL OR t.customer = :customer)
  AND t.job IN (SELECT job FROM v_cut_list)
  AND NOT EXISTS (SELECT 1 FROM v_cut_list l WHERE l.job = t.job AND l.thickness = t.thickness AND l.width = t.width
    AND l.metric = t.metric AND l.length = t.length AND (l.grade IS NULL OR l.grade = t.grade))
GROUP BY t.job, t.metric, t.thickness, t.width, t.size, length_ft, t.grade
ORDER BY t.job, t.metric, t.thickness, t.width, t.size, length_ft, t.grade;
