WITH cut AS MATERIALIZED (
  SELECT r.job, z.stack, t.metric, t.length, t.grade, sum(t.pieces) AS pieces
  FROM run r JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run JOIN size z ON z.id = t.size
  WHERE r.job IN (SELECT job FROM cut_list) AND t.form <> 'lineal' GROUP BY 1, 2, 3, 4, 5),
list AS (
  SELECT l.*, z.stack, z.label, sum(l.pieces) OVER alike - l.pieces AS before, lead(l.line) OVER alike IS NULL AS last
  FROM cut_list l JOIN size z ON z.id = l.size
  WINDOW alike AS (PARTITION BY l.job, z.stack, l.metric, l.length, l.grade ORDER BY l.line)),
graded AS (
  SELECT l.*, coalesce(c.pieces, 0) AS there, l.last AND NOT EXISTS (SELECT 1 FROM list a WHERE a.job = l.job
           AND a.stack = l.stack AND a.metric = l.metric AND a.length = l.length AND a.grade IS NULL) AS takes_over
  FROM list l LEFT JOIN cut c ON c.job = l.job AND c.stack = l.stack AND c.metric = l.metric AND c.length = l.length
    AND c.grade = l.grade
  WHERE l.grade IS NOT NULL),
filled AS (SELECT *, CASE WHEN NOT takes_over THEN min(max(there - before, 0), pieces)
                          WHEN there < 0 THEN there ELSE max(there - before, 0) END AS cut FROM graded),
any_grade AS (
  SELECT l.*, coalesce((SELECT sum(c.pieces) FROM cut c WHERE c.job = l.job AND c.stack = l.stack AND c.metric = l.metric
                 AND c.length = l.length), 0)
              - coalesce((SELECT sum(f.cut) FROM filled f WHERE f.job = l.job AND f.stack = l.stack AND f.metric = l.metric
                 AND f.length = l.length), 0) AS there
  FROM list l WHERE l.grade IS NULL),
done AS (
  SELECT line, job, label, metric, length, grade, pieces, cut FROM filled
  UNION ALL SELECT line, job, label, metric, length, grade, pieces,
         CASE WHEN NOT last THEN min(max(there - before, 0), pieces) WHEN there < 0 THEN there ELSE max(there - before, 0) END
  FROM any_grade)
SELECT j.code, label, length, g.code, pieces, cut, max(pieces - cut, 0), max(cut - pieces, 0), max(min(pieces, cut), 0), metric
FROM done JOIN job j ON j.id = job LEFT JOIN grade g ON g.id = grade ORDER BY j.code, line;
WITH cut AS MATERIALIZED (
  SELECT r.job, t.size, t.grade, t.metric, CASE WHEN t.form <> 'lineal' THEN t.length END AS length, sum(t.pieces) AS pieces,
         sum(t.lumber) AS lumber,
         sum(CASE t.metric WHEN 1 THEN 32 ELSE 127 END * CASE t.sense WHEN 'sawn' THEN t.length ELSE -t.length END) AS lineal
  FROM run r JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
  WHERE r.job IN (SELECT job FROM cut_list) GROUP BY 1, 2, 3, 4, 5)
SELECT j.code, z.label, c.length, g.code, CASE WHEN c.length THEN c.pieces END, CASE WHEN c.length IS NULL THEN c.lineal END,
       c.lumber, c.metric
FROM cut c JOIN job j ON j.id = c.job JOIN size z ON z.id = c.size LEFT JOIN grade g ON g.id = c.grade
WHERE NOT EXISTS (SELECT 1 FROM cut_list l JOIN size y ON y.id = l.size WHERE l.job = c.job AND y.stack = z.stack
  AND l.metric = c.metric AND l.length = c.length AND (l.grade IS NULL OR l.grade = c.grade))
ORDER BY j.code, c.metric, z.thickness, z.width, z.label, c.length, g.code;
