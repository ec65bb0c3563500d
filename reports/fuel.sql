-- report:  fuel
-- title:   Fuel and engine hours by week
-- meaning: Fuel filled in, engine hours from each reading's forerunner to it, in the week of the reading, and both over
--          the week's lumber. Every week with a sheet has its line, sawn or not. Fuel filled is not fuel burned: a tank
--          carries over, so single weeks lie and months tell.
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
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(quantity_micro) AS quantity, sum(price_minor) AS paid,
         group_concat(DISTINCT unit) AS unit
  FROM v_fuel WHERE day BETWEEN :from AND :to GROUP BY 1),
engine AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(since_tenths) AS tenths FROM v_meter
  WHERE day BETWEEN :from AND :to GROUP BY 1),
teeth AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(teeth) AS teeth FROM v_tooth_work
  WHERE day BETWEEN :from AND :to AND action IN ('replaced', 'full-set') GROUP BY 1)
SELECT w.week, w.lumber AS lumber_bf, f.quantity AS fuel, e.tenths AS engine_hours, t.teeth, f.paid AS fuel_paid,
       f.unit AS fuel_unit
FROM weeks w LEFT JOIN fill f ON f.week = w.week LEFT JOIN engine e ON e.week = w.week
  LEFT JOIN teeth t ON t.week = w.week
ORDER BY w.week;
