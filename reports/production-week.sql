-- report:  production-week
-- title:   Production by week
-- meaning: As production by day, added up by week. The rolling mean is the lumber of this and the 3 weeks before it over
--          the number of those weeks that had a sheet. Hours are whole days' and stay out under a job, customer,
--          species or site.
-- filters: from to job customer species site
-- example: production-week --period season -o weeks.html
-- table:   production |
-- column:  week day "Week from"
-- column:  days count "Days" total=sum
-- column:  logs count "Logs" total=sum
-- column:  net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- column:  lumber_bf lumber "Lumber" total=sum
-- column:  pieces count "Pieces" total=sum
-- column:  overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- column:  sawing_hours hours "Sawing" total=sum
-- column:  bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- column:  stop_hours hours "Stops" total=sum
-- column:  crew_hours hours "Crew" total=sum
-- column:  bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- column:  mean_bf ratio:0 "Mean of 4 weeks" of=rolling_lumber/rolling_count total=none unit=bf
-- column:  rule text "Rule"
-- column:  counted_lumber lumber "" hidden
-- column:  counted_scale scale "" hidden unit-from=scale_unit
-- column:  scale_unit text "" hidden
-- column:  rolling_lumber lumber "" hidden
-- column:  rolling_count count "" hidden
-- chart:   line x=week y=lumber_bf,mean_bf title="Lumber a week"
WITH runs AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, count(DISTINCT day) AS days, sum(logs) AS logs,
         sum(net) FILTER (WHERE logs > unscaled_logs) AS net_scale, sum(lumber) AS lumber, sum(pieces) AS pieces,
         sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS counted_lumber,
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS counted_scale,
         group_concat(DISTINCT scale_unit) FILTER (WHERE logs > unscaled_logs) AS scale_unit,
         group_concat(DISTINCT rule) FILTER (WHERE logs > unscaled_logs) AS rule
  FROM v_run
  WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
    AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
  GROUP BY 1),
hours AS (
  SELECT day - (day + 11 - :week_start) % 7 AS week, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew
  FROM v_sheet
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NULL
  GROUP BY 1)
SELECT r.week, r.days, r.logs, r.net_scale AS net_scale_bf, r.lumber AS lumber_bf, r.pieces,
       nullif(h.sawing, 0) AS sawing_hours, h.stops AS stop_hours, nullif(h.crew, 0) AS crew_hours,
       replace(r.rule, ',', ', ') AS rule, r.counted_lumber, r.counted_scale, r.scale_unit,
       sum(r.lumber) OVER before AS rolling_lumber, count(*) OVER before AS rolling_count
FROM runs r LEFT JOIN hours h ON h.week = r.week
WINDOW before AS (ORDER BY r.week ROWS 3 PRECEDING)
ORDER BY r.week;
