WITH m AS (
  SELECT day, shift, run, metric, sum(diameter) / count(*) / CASE WHEN metric THEN 500 ELSE 192 END AS class FROM log
  WHERE state = 'sawn' AND diameter IS NOT NULL GROUP BY day, shift, run)
SELECT CASE WHEN m.metric THEN (m.class * 5) || ' to ' || (m.class * 5 + 5) || ' cm'
            ELSE (m.class * 3) || ' to ' || (m.class * 3 + 3) || ' in' END,
       r.practice, count(*), sum(r.logs), sum(r.net), sum(r.lumber), sum(r.content), sum(r.wood), r.unit
FROM m JOIN run r ON r.day = m.day AND r.shift = m.shift AND r.run = m.run WHERE r.unscaled_logs = 0 AND r.lumber > 0
GROUP BY m.metric, m.class, r.practice, r.unit ORDER BY m.metric, m.class, r.practice, r.unit;
WITH g AS (
  SELECT l.metric, l.diameter / CASE WHEN l.metric THEN 500 ELSE 192 END AS class, l.practice, r.unit, count(*) AS logs,
         sum(l.gross) AS gross, sum(l.deduction) AS deduction, sum(l.net) AS net, sum(l.content) AS content
  FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  WHERE l.state = 'sawn' AND l.diameter IS NOT NULL AND l.practice IS NOT NULL GROUP BY 1, 2, 3, 4)
SELECT CASE WHEN metric THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
            ELSE (class * 3) || ' to ' || (class * 3 + 3) || ' in' END, practice, logs, gross, deduction, net, content, unit
FROM g ORDER BY metric, class, practice, unit;
