WITH g AS (
  SELECT l.day, r.species, l.practice, r.unit, coalesce(l.origin, (SELECT i.origin FROM log i WHERE i.tag = l.tag
           AND i.state = 'received' AND (i.day, i.shift, i.number) < (l.day, l.shift, l.number)
           ORDER BY i.day DESC, i.shift DESC, i.number DESC LIMIT 1)) AS origin,
         count(*) AS logs, sum(l.net) AS net, sum(l.content) AS content
  FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run WHERE l.state = 'sawn' GROUP BY 1, 2, 3, 4, 5)
SELECT strftime('%Y', day * 86400, 'unixepoch'), coalesce(nullif(s.kind, ''), s.code), origin, practice, sum(logs), sum(net),
       sum(content), CASE WHEN practice IS NOT NULL THEN unit END
FROM g LEFT JOIN species s ON s.id = g.species GROUP BY 1, 2, 3, 4 ORDER BY 1, 2, 3, 4;
WITH g AS (
  SELECT strftime('%Y', day * 86400, 'unixepoch') AS year, species, job, sum(lines) AS lines, sum(pieces) AS pieces,
         sum(lumber) AS lumber FROM run GROUP BY 1, 2, 3)
SELECT year, coalesce(nullif(s.kind, ''), s.code), CASE j.owner WHEN 'customer' THEN 'custom' ELSE j.owner END, sum(pieces),
       sum(lumber)
FROM g LEFT JOIN species s ON s.id = g.species LEFT JOIN job j ON j.id = g.job
GROUP BY 1, 2, 3 HAVING sum(lines) > 0 ORDER BY 1, 2, 3;
