WITH r AS (SELECT job, sum(logs) AS logs, sum(lines) AS lines, sum(pieces) AS pieces, sum(lumber) AS lumber FROM run GROUP BY job)
SELECT CASE j.owner WHEN 'customer' THEN 'custom' WHEN 'own' THEN 'own' WHEN 'shares' THEN 'shares' ELSE 'no job named' END,
       count(r.job), sum(logs), sum(pieces), sum(lumber), (SELECT sum(lumber) FROM r)
FROM r LEFT JOIN job j ON j.id = r.job GROUP BY 1 HAVING sum(logs) > 0 OR sum(lines) > 0 ORDER BY 5 DESC, 1;
WITH r AS (SELECT job, sum(logs) AS logs, sum(lines) AS lines, sum(pieces) AS pieces, sum(lumber) AS lumber FROM run GROUP BY job)
SELECT CASE j.owner WHEN 'customer' THEN 'custom' WHEN 'own' THEN 'own' WHEN 'shares' THEN 'shares' ELSE 'no job named' END,
       j.code, c.code, logs, pieces, lumber
FROM r LEFT JOIN job j ON j.id = r.job LEFT JOIN customer c ON c.id = j.customer WHERE logs > 0 OR lines > 0 ORDER BY 1, j.code;
