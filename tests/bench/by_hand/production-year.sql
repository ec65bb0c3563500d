WITH r AS (
  SELECT strftime('%Y', day * 86400, 'unixepoch') AS p, count(DISTINCT day) AS days, sum(logs) AS logs, sum(net) FILTER (WHERE logs > unscaled_logs) AS net,
         sum(lumber) AS lumber, sum(pieces) AS pieces,
         sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS clumber,
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS cnet,
         group_concat(DISTINCT unit) FILTER (WHERE logs > unscaled_logs) AS unit,
         group_concat(DISTINCT practice) FILTER (WHERE logs > unscaled_logs) AS rule
  FROM run GROUP BY 1),
h AS (SELECT strftime('%Y', day * 86400, 'unixepoch') AS p, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew FROM sheet GROUP BY 1)
SELECT r.p, days, logs, net, lumber, pieces, nullif(sawing, 0), stops, nullif(crew, 0), replace(rule, ',', ', '), clumber, cnet,
       unit, sum(lumber) OVER before, count(*) OVER before
FROM r LEFT JOIN h ON h.p = r.p WINDOW before AS (ORDER BY r.p ROWS 2 PRECEDING) ORDER BY r.p;
