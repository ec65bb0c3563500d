WITH moved AS (
  SELECT lower(t.bundle) AS tag, r.species, t.grade, z.stack AS size, t.metric, CASE WHEN t.form <> 'lineal' THEN t.length END AS length,
         t.pieces AS cut, 0 AS shares, 0 AS sold, 0 AS delivered, CASE WHEN t.form <> 'lineal' THEN 0 WHEN t.sense = 'sawn' THEN t.length
           ELSE -t.length END AS along, t.lumber
  FROM job j CROSS JOIN run r CROSS JOIN tally t ON t.day = r.day AND t.shift = r.shift AND t.run = r.run JOIN size z ON z.id = t.size
  WHERE j.owner = 'own' AND r.job = j.id
  UNION ALL SELECT lower(x.bundle), x.species, x.grade, z.stack, x.metric, CASE WHEN x.form <> 'lineal' THEN x.length END, 0, 0,
         x.pieces, 0, CASE WHEN x.form = 'lineal' THEN -x.length ELSE 0 END, -x.lumber FROM sold x JOIN size z ON z.id = x.size
  UNION ALL SELECT lower(b.bundle), nullif(l.species, 0), nullif(l.grade, 0), z.stack, l.metric, nullif(l.length, 0), 0, 0, l.pieces, 0,
         -l.along, -l.lumber
  FROM sold_bundle b JOIN sold_bundle_line l ON l.day = b.day AND l.shift = b.shift AND l.number = b.number JOIN size z ON z.id = l.size),
stack AS (
  SELECT tag, species, grade, size, metric, length, sum(cut) AS cut, sum(shares) AS shares, sum(sold) AS sold,
         sum(delivered) AS delivered, sum(along) AS along, sum(lumber) AS lumber
  FROM moved GROUP BY tag, species, grade, size, metric, length)
SELECT (SELECT t.bundle FROM tally t WHERE t.bundle = tag COLLATE NOCASE ORDER BY t.day, t.shift, t.number LIMIT 1), s.code, g.code,
       z.label, length, 0, cut, shares, sold, delivered, cut + shares - sold, CASE WHEN length IS NULL THEN along END, lumber, stack.metric
FROM stack JOIN size z ON z.id = stack.size LEFT JOIN species s ON s.id = stack.species LEFT JOIN grade g ON g.id = stack.grade
ORDER BY tag, s.code, g.code, stack.metric, z.thickness, z.width, length;
SELECT 'More sold than there is, below 0 on hand: ' || coalesce(s.code || ' ', '') || coalesce(g.code || ' ', '') || z.label
       || coalesce(' of bundle ' || (SELECT t.bundle FROM tally t WHERE t.bundle = o.bundle COLLATE NOCASE
                     ORDER BY t.day, t.shift, t.number LIMIT 1), ' of no bundle') || '.'
FROM own_stock o JOIN size z ON z.id = o.size LEFT JOIN species s ON s.id = o.species LEFT JOIN grade g ON g.id = o.grade
WHERE pieces < 0 ORDER BY bundle, s.code, g.code, z.thickness, z.width, length;
SELECT s.code, g.code, sum(pieces), sum(lumber), sum(sum(lumber)) OVER ()
FROM own_stock o LEFT JOIN species s ON s.id = o.species LEFT JOIN grade g ON g.id = o.grade GROUP BY o.species, o.grade
HAVING sum(lumber) <> 0 ORDER BY s.code, g.code;
SELECT j.code, nullif(bundle, ''), sum(cut), sum(to_mill), sum(delivered), sum(cut - to_mill - delivered), sum(lumber)
FROM job_stock h JOIN job j ON j.id = h.job WHERE j.owner <> 'own' GROUP BY h.job, bundle ORDER BY j.code, bundle;
