WITH g AS (
  SELECT r.job, r.species, t.size, t.grade, t.metric, CASE WHEN t.form <> 'lineal' THEN t.length END AS length,
         sum(t.pieces) AS pieces, sum(t.lumber) AS lumber,
         sum(CASE t.form WHEN 'lineal' THEN CASE t.metric WHEN 1 THEN 32 ELSE 127 END * CASE t.sense WHEN 'sawn' THEN t.length ELSE -t.length END END)
           AS lineal
  FROM run r CROSS JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run
  GROUP BY 1, 2, 3, 4, 5, 6 HAVING sum(t.pieces) <> 0 OR sum(t.lumber) <> 0)
SELECT j.code, s.code, d.code, z.label, g.length, CASE WHEN g.length IS NOT NULL THEN g.pieces END, g.lumber, g.lineal, g.metric
FROM g JOIN size z ON z.id = g.size LEFT JOIN job j ON j.id = g.job LEFT JOIN species s ON s.id = g.species
  LEFT JOIN grade d ON d.id = g.grade
ORDER BY j.code, s.code, g.metric, z.thickness, z.width, z.label, d.code, g.length;
SELECT s.day, s.text, s.pieces, s.lumber, s.why, 1 FROM struck s WHERE s.kind = 'tally'
ORDER BY s.day, s.shift, s.revision, s.number;
