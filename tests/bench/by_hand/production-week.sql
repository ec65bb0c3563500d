WITH r AS (
  SELECT day - (day + 10) % 7 AS p, count(DISTINCT CASE WHEN logs > 0 OR lines > 0 THEN day END) AS days, sum(logs) AS logs,
         sum(net) FILTER (WHERE logs > unscaled_logs) AS net, sum(lumber) AS lumber, sum(pieces) AS pieces,
         sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS clumber,
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS cnet,
         group_concat(DISTINCT unit) FILTER (WHERE logs > unscaled_logs) AS unit,
         group_concat(DISTINCT practice) FILTER (WHERE logs > unscaled_logs) AS rule
  FROM run GROUP BY 1),
h AS (SELECT day - (day + 10) % 7 AS p, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew FROM sheet GROUP BY 1)
SELECT h.p, coalesce(days, 0), logs, net, lumber, pieces, nullif(sawing, 0), stops, nullif(1000000 * crew, 0), replace(rule, ',', ', '),
       clumber, cnet, unit, sum(CASE WHEN days > 0 THEN lumber END) OVER before, count(CASE WHEN days > 0 THEN lumber END) OVER before
FROM h LEFT JOIN r ON r.p = h.p WINDOW before AS (ORDER BY h.p RANGE 21 PRECEDING) ORDER BY h.p;
