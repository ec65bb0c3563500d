-- report:  cost
-- title:   Cost of sawing
-- meaning: What the mill file says the work costs ([[cost]]), each by what the sheets say was used: paid crew time,
--          sawing time, engine hours between readings, days sawn, lumber, logs, teeth replaced, fuel filled, distance
--          moved. A year's cost is spread evenly over the days sawn that the mill file gives it, so idle days carry
--          none. Fuel with a price on its sheet counts as paid. Cost per MBF is the whole cost over all lumber of the
--          period, custom and own alike.
-- takes:   from to
-- example: cost --period "this year"
-- worksheets: one
-- table:   cost |
-- shows:   name text "What"
-- shows:   quantity micro:2 "Used" total=none
-- shows:   unit text "Unit"
-- shows:   rate micro:4 "Rate" unit=money
-- shows:   cost micro "Cost" total=sum unit=money
-- shows:   per_mbf ratio "Cost per MBF" of=cost/lumber once per=mbf unit=money
-- shows:   share_percent percent "Share" of=cost/all_cost once
-- shows:   lumber lumber "" hidden
-- shows:   all_cost micro "" hidden
-- empty:   no cost in this period; the mill file's [[cost]] entries say what the work costs
WITH spent AS (
  SELECT line, name, unit, times_over(sum(quantity), 1000000, CASE unit WHEN 'day sawn' THEN 1 ELSE whole END) AS quantity,
         CASE unit WHEN 'day sawn' THEN 10000 * times_over(rate_micro, 1, 10000 * whole) ELSE rate_micro END AS rate,
         times_over(sum(quantity), rate_micro, whole) AS cost
  FROM v_spent WHERE day BETWEEN :from AND :to GROUP BY line HAVING sum(quantity) <> 0
  UNION ALL
  SELECT 1000000, 'Fuel, as paid on the sheets', unit, sum(quantity_micro), NULL, money_micro(sum(price_minor))
  FROM v_fuel WHERE price_minor IS NOT NULL AND day BETWEEN :from AND :to GROUP BY unit)
SELECT name, quantity, rate, cost, unit, (SELECT sum(lumber) FROM v_sheet WHERE day BETWEEN :from AND :to) AS lumber,
       sum(cost) OVER () AS all_cost
FROM spent ORDER BY line, unit;
-- table:   months | By month
-- shows:   month text "Month"
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   cost micro "Cost" total=sum unit=money
-- shows:   per_mbf ratio "Cost per MBF" of=cost/lumber_bf per=mbf unit=money
-- picture: line across=month up=per_mbf title="Cost per MBF"
-- empty:   no cost in this period
WITH spent AS (
  SELECT strftime('%Y-%m', day * 86400, 'unixepoch') AS month, times_over(sum(quantity), rate_micro, whole) AS cost
  FROM v_spent WHERE day BETWEEN :from AND :to GROUP BY 1, line
  UNION ALL
  SELECT strftime('%Y-%m', day * 86400, 'unixepoch'), money_micro(sum(price_minor))
  FROM v_fuel WHERE price_minor IS NOT NULL AND day BETWEEN :from AND :to GROUP BY 1),
cut AS (SELECT strftime('%Y-%m', day * 86400, 'unixepoch') AS month, sum(lumber) FILTER (WHERE runs > 0) AS lumber FROM v_sheet
        WHERE day BETWEEN :from AND :to GROUP BY 1)
SELECT month, sum(lumber) AS lumber_bf, sum(cost) AS cost
FROM (SELECT month, cost, NULL AS lumber FROM spent UNION ALL SELECT month, NULL, lumber FROM cut WHERE EXISTS (SELECT 1 FROM spent))
GROUP BY month ORDER BY month;
-- foot:    What sawing costs, as the mill file has it; no tax advice. It stands on no customer's paper.
