WITH w AS (SELECT day - (day + 10) % 7 AS week, sum(lumber) AS lumber FROM run GROUP BY 1),
f AS (SELECT day - (day + 10) % 7 AS week, sum(quantity_micro) AS quantity, sum(price_minor) AS paid,
             group_concat(DISTINCT unit) AS unit FROM fuel GROUP BY 1),
m AS (SELECT day - (day + 10) % 7 AS week, max(tenths) AS last, min(tenths) AS first FROM meter GROUP BY 1),
e AS (SELECT week, last - coalesce(lag(last) OVER (ORDER BY week), first) AS tenths FROM m),
t AS (SELECT day - (day + 10) % 7 AS week, sum(teeth) AS teeth FROM tooth_work WHERE action IN ('replaced', 'full-set')
      GROUP BY 1)
SELECT w.week, w.lumber, f.quantity, e.tenths, t.teeth, f.paid, f.unit
FROM w LEFT JOIN f ON f.week = w.week LEFT JOIN e ON e.week = w.week LEFT JOIN t ON t.week = w.week ORDER BY w.week;
