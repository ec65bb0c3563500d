SELECT m.day, a.name, b.name, j.code, m.distance_micro, nullif(m.minutes, 0), m.unit
FROM move m JOIN site a ON a.id = m.from_site JOIN site b ON b.id = m.to_site LEFT JOIN job j ON j.id = m.job
ORDER BY m.day, m.shift, m.number;
WITH r AS (SELECT site, count(DISTINCT day) AS days, sum(logs) AS logs, sum(lumber) AS lumber FROM run GROUP BY site),
t AS (SELECT site, sum(minutes) AS minutes FROM sawing GROUP BY site)
SELECT s.name, r.days, r.logs, r.lumber, t.minutes FROM r LEFT JOIN t ON t.site IS r.site LEFT JOIN site s ON s.id = r.site
ORDER BY s.name;
