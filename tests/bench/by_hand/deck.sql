WITH g AS (
  SELECT r.job, r.species, sum(l.state = 'received') AS received, sum(l.net) FILTER (WHERE l.state = 'received') AS received_net,
         sum(l.state = 'sawn') AS sawn, sum(l.net) FILTER (WHERE l.state = 'sawn') AS sawn_net,
         group_concat(DISTINCT CASE WHEN l.practice IS NOT NULL THEN r.unit END) AS unit
  FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run WHERE l.state <> 'left'
  GROUP BY r.job, r.species)
SELECT j.code, s.code, received, received_net, sawn, sawn_net, unit
FROM g LEFT JOIN job j ON j.id = g.job LEFT JOIN species s ON s.id = g.species ORDER BY j.code, s.code;
SELECT l.tag, j.code, s.code, l.spec, l.net, l.day, 20454 - l.day, l.origin,
       CASE WHEN l.state = 'left' THEN 'half-sawn, on the mill' END, 1, CASE WHEN l.practice IS NOT NULL THEN r.unit END
FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  LEFT JOIN job j ON j.id = r.job LEFT JOIN species s ON s.id = r.species
WHERE l.state IN ('received', 'left') AND NOT EXISTS (SELECT 1 FROM log n WHERE n.tag = l.tag AND n.state <> 'received'
  AND (n.day, n.shift, n.number) > (l.day, l.shift, l.number))
ORDER BY l.day, l.shift, l.number;
