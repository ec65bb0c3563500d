SELECT m.day, a.name, b.name, j.code, m.distance_micro, nullif(m.minutes, 0), m.unit
FROM move m JOIN site a ON a.id = m.from_site JOIN site b ON b.id = m.to_site LEFT JOIN job j ON j.id = m.job
ORDER BY m.day, m.shift, m.number;
WITH p AS (SELECT site, day, logs, lumber, NULL AS minutes FROM run
           UNION ALL SELECT site, day, NULL, NULL, minutes FROM sawing),
g AS (SELECT site, count(DISTINCT day) AS days, sum(logs) AS logs, sum(lumber) AS lumber, sum(minutes) AS minutes FROM p GROUP BY site)
SELECT s.name, days, logs, lumber, minutes FROM g LEFT JOIN site s ON s.id = g.site ORDER BY s.name;
