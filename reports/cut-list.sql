-- report:  cut-list
-- title:   Cut lists: wanted, cut, still to cut
-- meaning: What each job's cut list (mill file) wants against the pieces tallied for that job in the same size and
--          length. Each board counts once: first on the lines that name its grade, in the order of the list, then what is
--          left of any grade on the lines that name none, in the order of the list. Short is what is still to cut; over is
--          what was cut beyond all lines that take it, and stands on the last of them. Boards that fit no line are in the
--          second table.
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
  SELECT r.job_id, z.stack, t.metric, t.length, t.grade_id, sum(t.pieces) AS pieces
  FROM v_run_id r JOIN v_tally_id t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
    JOIN v_size z ON z.id = t.size_id
  WHERE r.day BETWEEN :from AND :to AND r.job_id IN (SELECT job_id FROM v_cut_list) AND t.form <> 'lineal'
    AND (:job_id IS NULL OR r.job_id = :job_id)
  GROUP BY 1, 2, 3, 4, 5),
list AS (     -- `before`: wanted by the lines above it that take the same boards; `last`: none below it does
  SELECT l.*, sum(l.pieces) OVER alike - l.pieces AS before, lead(l.line) OVER alike IS NULL AS last
  FROM v_cut_list l LEFT JOIN v_job j ON j.id = l.job_id
  WHERE (:job_id IS NULL OR l.job_id = :job_id) AND (:customer_id IS NULL OR j.customer_id = :customer_id)
  WINDOW alike AS (PARTITION BY l.job_id, l.stack, l.metric, l.length, l.grade_id ORDER BY l.line)),
graded AS (   -- lines that name a grade; where no line takes any grade, the last of them takes what is over
  SELECT l.*, coalesce(c.pieces, 0) AS there, l.last AND NOT EXISTS (SELECT 1 FROM list a WHERE a.job_id = l.job_id
           AND a.stack = l.stack AND a.metric = l.metric AND a.length = l.length AND a.grade_id IS NULL) AS takes_over
  FROM list l LEFT JOIN cut c ON c.job_id = l.job_id AND c.stack = l.stack AND c.metric = l.metric AND c.length = l.length
    AND c.grade_id = l.grade_id
  WHERE l.grade_id IS NOT NULL),
filled AS (
  SELECT *, CASE WHEN NOT takes_over THEN min(max(there - before, 0), pieces)
                 WHEN there < 0 THEN there ELSE max(there - before, 0) END AS cut FROM graded),
open AS (     -- lines that take any grade: what the lines with a grade leave
  SELECT l.*, coalesce((SELECT sum(c.pieces) FROM cut c WHERE c.job_id = l.job_id AND c.stack = l.stack AND c.metric = l.metric
                 AND c.length = l.length), 0)
              - coalesce((SELECT sum(f.cut) FROM filled f WHERE f.job_id = l.job_id AND f.stack = l.stack AND f.metric = l.metric
                 AND f.length = l.length), 0) AS there
  FROM list l WHERE l.grade_id IS NULL),
done AS (
  SELECT line, job, size, metric, length, grade, pieces, cut FROM filled
  UNION ALL
  SELECT line, job, size, metric, length, grade, pieces,
         CASE WHEN NOT last THEN min(max(there - before, 0), pieces) WHEN there < 0 THEN there ELSE max(there - before, 0) END
  FROM open)
SELECT job, size, length AS length_ft, grade, pieces AS wanted, cut, max(pieces - cut, 0) AS short,
       max(cut - pieces, 0) AS over, max(min(pieces, cut), 0) AS done, metric
FROM done ORDER BY job, line;
-- table:   beside | Cut for these jobs, not on a list
-- shows:   job text "Job"
-- shows:   size text "Size"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   grade text "Grade"
-- shows:   pieces count "Pieces" total=sum
-- shows:   lineal_ft lineal "Lineal" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- shows:   metric count "" hidden
-- empty:   nothing cut but what is on the lists
WITH cut AS MATERIALIZED (
  SELECT r.job_id, t.size_id, t.grade_id, t.metric, CASE WHEN t.form <> 'lineal' THEN t.length END AS length,
         sum(t.pieces) AS pieces, sum(t.lineal) AS lineal, sum(t.lumber) AS lumber
  FROM v_run_id r JOIN v_tally_id t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
  WHERE r.day BETWEEN :from AND :to AND r.job_id IN (SELECT job_id FROM v_cut_list)
    AND (:job_id IS NULL OR r.job_id = :job_id)
  GROUP BY 1, 2, 3, 4, 5)
SELECT j.code AS job, z.label AS size, c.length AS length_ft, g.code AS grade, CASE WHEN c.length THEN c.pieces END AS pieces,
       CASE WHEN c.length IS NULL THEN c.lineal END AS lineal_ft, c.lumber AS bf, c.metric
FROM cut c JOIN v_job j ON j.id = c.job_id JOIN v_size z ON z.id = c.size_id LEFT JOIN v_grade g ON g.id = c.grade_id
WHERE (:customer_id IS NULL OR j.customer_id = :customer_id)
  AND NOT EXISTS (SELECT 1 FROM v_cut_list l WHERE l.job_id = c.job_id AND l.stack = z.stack
    AND l.metric = c.metric AND l.length = c.length AND (l.grade_id IS NULL OR l.grade_id = c.grade_id))
ORDER BY j.code, c.metric, z.thickness, z.width, z.label, c.length, g.code;
