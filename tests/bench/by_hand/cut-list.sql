WITH cut AS MATERIALIZED (
  SELECT r.job, z.thickness, z.width, t.metric, t.length, t.grade, sum(t.pieces) AS pieces
  FROM run r JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run JOIN size z ON z.id = t.size
  WHERE r.job IN (SELECT job FROM cut_list) AND t.form <> 'lineal' GROUP BY 1, 2, 3, 4, 5, 6),
list AS (
  SELECT j.code, z.label, l.length, g.code AS grade, l.pieces, l.line, l.metric, coalesce((SELECT sum(c.pieces) FROM cut c
           WHERE c.job = l.job AND c.thickness = z.thickness AND c.width = z.width AND c.metric = l.metric
           AND c.length = l.length AND (l.grade IS NULL OR c.grade = l.grade)), 0) AS cut
  FROM cut_list l JOIN job j ON j.id = l.job JOIN size z ON z.id = l.size LEFT JOIN grade g ON g.id = l.grade)
SELECT code, label, length, grade, pieces, cut, max(pieces - cut, 0), max(cut - pieces, 0), min(pieces, cut), metric
FROM list ORDER BY code, line;
WITH cut AS MATERIALIZED (
  SELECT r.job, t.size, t.grade, t.metric, t.length, t.form = 'lineal' AS lineal, sum(t.pieces) AS pieces, sum(t.lumber) AS lumber
  FROM run r JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
  WHERE r.job IN (SELECT job FROM cut_list) GROUP BY 1, 2, 3, 4, 5, 6)
SELECT j.code, z.label, CASE WHEN NOT lineal THEN c.length END AS length, g.code, CASE WHEN NOT lineal THEN sum(c.pieces) END,
       sum(c.lumber), c.metric
FROM cut c JOIN job j ON j.id = c.job JOIN size z ON z.id = c.size LEFT JOIN grade g ON g.id = c.grade
WHERE NOT EXISTS (SELECT 1 FROM cut_list l JOIN size y ON y.id = l.size WHERE l.job = c.job AND y.thickness = z.thickness
  AND y.width = z.width AND l.metric = c.metric AND l.length = c.length AND (l.grade IS NULL OR l.grade = c.grade))
GROUP BY c.job, c.metric, c.size, 3, c.grade, lineal ORDER BY j.code, c.metric, z.thickness, z.width, z.label, 3, g.code;
