WITH w AS (SELECT day - (day + 10) % 7 AS week, sum(lumber) FILTER (WHERE runs > 0) AS lumber FROM sheet GROUP BY 1),
f AS (SELECT day - (day + 10) % 7 AS week, sum(quantity_micro) AS quantity, sum(price_minor) AS paid,
             group_concat(DISTINCT unit) AS unit FROM fuel GROUP BY 1),
m AS (SELECT day, tenths - lag(tenths) OVER (ORDER BY day, shift, number) AS since FROM meter),
e AS (SELECT day - (day + 10) % 7 AS week, sum(since) AS tenths FROM m GROUP BY 1),
t AS (SELECT day - (day + 10) % 7 AS week, sum(teeth) AS teeth FROM tooth_work WHERE action IN ('replaced', 'full-set')
      GROUP BY 1)
SELECT w.week, w.lumber, f.quantity, e.tenths, t.teeth, f.paid, f.unit
FROM w LEFT JOIN f ON f.week = w.week LEFT JOIN e ON e.week = w.week LEFT JOIN t ON t.week = w.week ORDER BY w.week;
