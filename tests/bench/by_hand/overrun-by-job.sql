WITH g AS (
  SELECT job, practice, unit, count(*) AS runs, sum(logs) AS logs, sum(net) FILTER (WHERE logs > unscaled_logs) AS net,
         sum(lumber) AS lumber, nullif(sum(content), 0) AS content, sum(unscaled_logs) AS unscaled,
         sum(lumber) FILTER (WHERE counted) AS clumber, sum(net) FILTER (WHERE counted) AS cnet,
         sum(content) FILTER (WHERE counted) AS ccontent, sum(wood) FILTER (WHERE counted) AS cwood
  FROM (SELECT *, logs > 0 AND unscaled_logs = 0 AND lumber > 0 AS counted FROM run) WHERE logs > 0 OR lines > 0
  GROUP BY job, practice, unit)
SELECT n.code, practice, runs, logs, net, lumber, content, unscaled, clumber, cnet, ccontent, cwood, unit
FROM g LEFT JOIN job n ON n.id = g.job ORDER BY n.code, practice, unit;
