-- report:  fuel
-- title:   Fuel and engine hours by week
-- meaning: Fuel filled in, engine hours from one meter reading to the next, in the week of the later one, and both over
--          the week's lumber. Every week with a sheet has its line, sawn or not. Where gallons and litres were filled,
--          litres are shown as gallons (1 gal = 3.785411784 l). Fuel filled is not fuel burned: a tank carries over, so
--          single weeks lie and months tell.
-- takes:   from to
-- example: fuel --period "this year"
-- table:   fuel |
-- shows:   week day "Week from"
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   fuel micro:1 "Fuel" total=sum unit-from=fuel_unit
-- shows:   fuel_per_mbf ratio:2 "Fuel per MBF" of=fuel/lumber_bf per=mbf
-- shows:   engine_hours tenths "Engine" total=sum unit=h
-- shows:   engine_hours_per_mbf ratio:2 "Engine hours per MBF" of=engine_hours/lumber_bf per=mbf
-- shows:   fuel_per_engine_hour ratio:2 "Fuel per engine hour" of=fuel/engine_hours
-- shows:   teeth count "Teeth replaced" total=sum
-- shows:   teeth_per_mbf ratio:2 "Teeth per MBF" of=teeth/lumber_bf per=mbf
-- shows:   fuel_paid money "Paid for fuel" total=sum
-- shows:   fuel_unit text "" hidden
-- picture: line across=week up=fuel_per_mbf title="Fuel per MBF"
WITH weeks AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(lumber) FILTER (WHERE runs > 0) AS lumber FROM v_sheet
  WHERE day BETWEEN :from AND :to GROUP BY 1),
fill AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(price_minor) AS paid,
         coalesce(sum(quantity_micro) FILTER (WHERE unit = 'gal'), 0) AS gallons,
         coalesce(sum(quantity_micro) FILTER (WHERE unit = 'l'), 0) AS litres
  FROM v_fuel WHERE day BETWEEN :from AND :to GROUP BY 1),
counted AS (SELECT CASE WHEN max(gallons) > 0 THEN 'gal' ELSE 'l' END AS unit FROM fill),
engine AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(since_tenths) AS tenths FROM v_meter
  WHERE day BETWEEN :from AND :to GROUP BY 1),
teeth AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(teeth) AS teeth FROM v_tooth_work
  WHERE day BETWEEN :from AND :to AND action IN ('replaced', 'full-set') GROUP BY 1)
SELECT w.week, w.lumber AS lumber_bf,
       CASE WHEN c.unit = 'l' THEN f.litres WHEN f.litres = 0 THEN f.gallons
            ELSE f.gallons + times_over(f.litres, 1000000000, 3785411784) END AS fuel,
       e.tenths AS engine_hours, t.teeth, f.paid AS fuel_paid, CASE WHEN f.week IS NOT NULL THEN c.unit END AS fuel_unit
FROM weeks w CROSS JOIN counted c LEFT JOIN fill f ON f.week = w.week LEFT JOIN engine e ON e.week = w.week
  LEFT JOIN teeth t ON t.week = w.week
ORDER BY w.week;
