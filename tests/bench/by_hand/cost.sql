WITH u AS (
  SELECT day, 'crew-hour' AS per, name AS who, minutes AS q FROM crew
  UNION ALL SELECT day, 'sawing-hour', '', sawing_minutes FROM sheet
  UNION ALL SELECT day, 'engine-hour', '', tenths - lag(tenths) OVER (ORDER BY day, shift, number) FROM meter
  UNION ALL SELECT day, 'day', '', 1 FROM sheet GROUP BY day HAVING sum(logs) > 0 OR sum(lines) > 0
  UNION ALL SELECT day, 'lumber', '', lumber FROM sheet
  UNION ALL SELECT day, 'log', '', logs FROM sheet
  UNION ALL SELECT day, 'tooth', saw, teeth FROM tooth_work WHERE action IN ('replaced', 'full-set')
  UNION ALL SELECT day, unit, '', quantity_micro FROM fuel WHERE price_minor IS NULL
  UNION ALL SELECT day, unit, '', distance_micro FROM move),
spent AS (
  SELECT c.line, c.name, c.unit, sum(u.q) / c.whole * 1000000 + (sum(u.q) % c.whole * 1000000 * 2 + c.whole) / (2 * c.whole) AS quantity,
         c.rate_micro AS rate,
         sum(u.q) / c.whole * c.rate_micro + (sum(u.q) % c.whole * c.rate_micro * 2 + c.whole) / (2 * c.whole) AS cost
  FROM u JOIN cost c ON c.per = u.per AND u.day BETWEEN c.from_day AND c.to_day
    AND (c.who = u.who COLLATE NOCASE OR c.who = '' AND NOT EXISTS (SELECT 1 FROM cost own WHERE own.per = c.per
         AND own.who = u.who COLLATE NOCASE AND own.who <> '' AND u.day BETWEEN own.from_day AND own.to_day))
  WHERE u.q <> 0 GROUP BY c.line HAVING sum(u.q) <> 0
  UNION ALL SELECT 1000000, 'Fuel, as paid on the sheets', unit, sum(quantity_micro), NULL, sum(price_minor) * 10000
  FROM fuel WHERE price_minor IS NOT NULL GROUP BY unit)
SELECT name, quantity, rate, cost, unit, (SELECT sum(lumber) FROM sheet), sum(cost) OVER () FROM spent ORDER BY line, unit;
WITH u AS (
  SELECT day, 'crew-hour' AS per, name AS who, minutes AS q FROM crew
  UNION ALL SELECT day, 'sawing-hour', '', sawing_minutes FROM sheet
  UNION ALL SELECT day, 'engine-hour', '', tenths - lag(tenths) OVER (ORDER BY day, shift, number) FROM meter
  UNION ALL SELECT day, 'day', '', 1 FROM sheet GROUP BY day HAVING sum(logs) > 0 OR sum(lines) > 0
  UNION ALL SELECT day, 'lumber', '', lumber FROM sheet
  UNION ALL SELECT day, 'log', '', logs FROM sheet
  UNION ALL SELECT day, 'tooth', saw, teeth FROM tooth_work WHERE action IN ('replaced', 'full-set')
  UNION ALL SELECT day, unit, '', quantity_micro FROM fuel WHERE price_minor IS NULL
  UNION ALL SELECT day, unit, '', distance_micro FROM move),
monthly AS (
  SELECT strftime('%Y-%m', u.day * 86400, 'unixepoch') AS month, c.line, c.whole, c.rate_micro AS rate, sum(u.q) AS q
  FROM u JOIN cost c ON c.per = u.per AND u.day BETWEEN c.from_day AND c.to_day
    AND (c.who = u.who COLLATE NOCASE OR c.who = '' AND NOT EXISTS (SELECT 1 FROM cost own WHERE own.per = c.per
         AND own.who = u.who COLLATE NOCASE AND own.who <> '' AND u.day BETWEEN own.from_day AND own.to_day))
  WHERE u.q <> 0 GROUP BY 1, c.line),
spent AS (
  SELECT month, q / whole * rate + (q % whole * rate * 2 + whole) / (2 * whole) AS cost FROM monthly
  UNION ALL SELECT strftime('%Y-%m', day * 86400, 'unixepoch'), sum(price_minor) * 10000 FROM fuel
  WHERE price_minor IS NOT NULL GROUP BY 1),
cut AS (SELECT strftime('%Y-%m', day * 86400, 'unixepoch') AS month, sum(lumber) FILTER (WHERE runs > 0) AS lumber FROM sheet GROUP BY 1)
SELECT month, sum(lumber), sum(cost) FROM (SELECT month, cost, NULL AS lumber FROM spent
  UNION ALL SELECT month, NULL, lumber FROM cut WHERE EXISTS (SELECT 1 FROM spent)) GROUP BY month ORDER BY month;
