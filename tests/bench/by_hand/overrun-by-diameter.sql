WITH m AS (
  SELECT day, shift, run, min(metric) AS metric, count(*) AS measured,
         sum(diameter * CASE WHEN metric THEN 32 ELSE 127 END) / (count(*) * CASE WHEN min(metric) THEN 16000 ELSE 24384 END) AS class
  FROM log WHERE state = 'sawn' AND diameter IS NOT NULL GROUP BY day, shift, run),
r AS (
  SELECT CASE WHEN m.measured = r.logs THEN m.metric END AS metric, CASE WHEN m.measured = r.logs THEN m.class END AS class,
         CASE WHEN r.logs > r.unscaled_logs THEN r.practice END AS practice, r.unit, r.logs, r.unscaled_logs, r.net, r.lumber, r.content, r.wood,
         r.logs > 0 AND r.unscaled_logs = 0 AND r.lumber > 0 AS counted
  FROM run r LEFT JOIN m ON m.day = r.day AND m.shift = r.shift AND m.run = r.run WHERE r.logs > 0 OR r.lines > 0)
SELECT CASE metric WHEN 1 THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
                   WHEN 0 THEN (class * 3) || ' to ' || (class * 3 + 3) || ' in' END,
       practice, count(*), sum(logs), sum(net) FILTER (WHERE logs > unscaled_logs), sum(lumber), nullif(sum(content), 0),
       sum(unscaled_logs), sum(lumber) FILTER (WHERE counted), sum(net) FILTER (WHERE counted),
       sum(content) FILTER (WHERE counted), sum(wood) FILTER (WHERE counted), unit
FROM r GROUP BY metric, class, practice, unit ORDER BY metric IS NULL, metric, class, practice, unit;
WITH g AS (
  SELECT CASE WHEN l.diameter IS NOT NULL THEN l.metric END AS metric, l.diameter / CASE WHEN l.metric THEN 500 ELSE 192 END AS class,
         l.practice, CASE WHEN l.practice IS NOT NULL THEN r.unit END AS unit, count(*) AS logs,
         sum(l.gross) AS gross, sum(l.deduction) AS deduction, sum(l.net) AS net, sum(l.content) AS content
  FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run WHERE l.state = 'sawn' GROUP BY 1, 2, 3, 4)
SELECT CASE metric WHEN 1 THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
                   WHEN 0 THEN (class * 3) || ' to ' || (class * 3 + 3) || ' in' END, practice, logs, gross, deduction, net, content,
       CASE WHEN practice IS NOT NULL THEN content END, unit
FROM g ORDER BY metric IS NULL, metric, class, practice, unit;
