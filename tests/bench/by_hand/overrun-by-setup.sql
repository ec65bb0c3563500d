WITH g AS (
  SELECT setup, species, practice, unit, count(*) AS runs, sum(logs) AS logs, sum(net) FILTER (WHERE logs > unscaled_logs) AS net,
         sum(lumber) AS lumber, nullif(sum(content), 0) AS content, sum(unscaled_logs) AS unscaled,
         sum(lumber) FILTER (WHERE counted) AS clumber, sum(net) FILTER (WHERE counted) AS cnet,
         sum(content) FILTER (WHERE counted) AS ccontent, sum(wood) FILTER (WHERE counted) AS cwood
  FROM (SELECT logs, lines, unscaled_logs, net, lumber, content, wood, species, practice, unit,
          coalesce(setup, (SELECT c.setup FROM setup_change c
            WHERE (c.day, c.shift) < (run.day, run.shift) ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1)) AS setup,
          logs > 0 AND unscaled_logs = 0 AND lumber > 0 AS counted FROM run) WHERE logs > 0 OR lines > 0
  GROUP BY setup, species, practice, unit)
SELECT u.name, n.code, practice, runs, logs, net, lumber, content, unscaled, clumber, cnet, ccontent, cwood, unit
FROM g LEFT JOIN setup u ON u.id = g.setup LEFT JOIN species n ON n.id = g.species ORDER BY u.name, n.code, practice, unit;
SELECT 'Set-up ' || coalesce(u.name, '-') || ': ' || logs || ' logs; under 50 is too few to tell set-ups apart (common practice, no source).'
FROM (SELECT coalesce(setup, (SELECT c.setup FROM setup_change c WHERE (c.day, c.shift) < (run.day, run.shift)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1)) AS setup, sum(logs) AS logs
      FROM run GROUP BY 1 HAVING sum(logs) BETWEEN 1 AND 49) g LEFT JOIN setup u ON u.id = g.setup ORDER BY u.name;
