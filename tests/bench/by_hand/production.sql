WITH r AS (
  SELECT day, sum(logs) AS logs, sum(unscaled_logs) AS unscaled, sum(net) FILTER (WHERE logs > unscaled_logs) AS net,
         sum(lumber) AS lumber, sum(pieces) AS pieces,
         sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS clumber,
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS cnet,
         group_concat(DISTINCT unit) FILTER (WHERE logs > unscaled_logs) AS unit,
         group_concat(DISTINCT practice) FILTER (WHERE logs > unscaled_logs) AS rule,
         group_concat(DISTINCT replace(site.name, ',', char(31))) AS sites
  FROM run LEFT JOIN site ON site.id = run.site GROUP BY day),
h AS (SELECT day, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew FROM sheet GROUP BY day)
SELECT h.day, replace(replace(sites, ',', ' / '), char(31), ','), logs, net, lumber, pieces, nullif(sawing, 0), stops,
       nullif(1000000 * crew, 0), unscaled, replace(rule, ',', ', '), clumber, cnet, unit
FROM h LEFT JOIN r ON r.day = h.day ORDER BY h.day;
SELECT sum(unscaled_logs) || ' of ' || sum(logs) || ' logs have no scale; overrun counts the runs whose logs all have one.'
FROM run HAVING sum(unscaled_logs) > 0;
