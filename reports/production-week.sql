-- report:  production-week
-- title:   Production by week
-- meaning: As production by day, added up by week. The rolling mean is the lumber of this and the 3 weeks before it over
--          the number of those weeks that had a sheet. Hours are kept by day; blank when
--          filtered by job, customer, species or site.
-- takes:   from to job customer species site
-- example: production-week --period season -o weeks.html
-- table:   production |
-- shows:   week day "Week from"
-- shows:   days count "Days" total=sum
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- shows:   stop_hours hours "Stops" total=sum
-- shows:   crew_hours hours "Crew" total=sum
-- shows:   bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- shows:   mean_bf ratio:0 "Mean of 4 weeks" of=rolling_lumber/rolling_count total=none unit=bf
-- shows:   rule text "Rule"
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- shows:   rolling_lumber lumber "" hidden
-- shows:   rolling_count count "" hidden
-- picture: line across=week up=lumber_bf,mean_bf title="Lumber per week"
WITH sawn AS (   -- by whole sheets where nothing narrows the answer, else by runs
  SELECT day - (day + 11 - :week_start) % 7 AS week, min(day) AS first, max(day) AS last,
         count(DISTINCT CASE WHEN runs > 0 THEN day END) AS days, sum(logs) AS logs, sum(net) AS net_scale,
         sum(lumber) AS lumber, sum(pieces) AS pieces, sum(counted_lumber) AS counted_lumber,
         sum(counted_net) AS counted_scale, group_concat(DISTINCT scale_units) AS scale_unit,
         CASE WHEN min(rules) IS max(rules) THEN min(rules) ELSE 'several' END AS rule,
         sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew
  FROM v_sheet
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NULL
  GROUP BY 1 HAVING sum(runs) > 0
  UNION ALL
  SELECT day - (day + 11 - :week_start) % 7, NULL, NULL, count(DISTINCT day), sum(logs), sum(net) FILTER (WHERE logs > unscaled_logs), sum(lumber),
         sum(pieces), sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0),
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0),
         group_concat(DISTINCT scale_unit) FILTER (WHERE logs > unscaled_logs),
         group_concat(DISTINCT rule) FILTER (WHERE logs > unscaled_logs), NULL, NULL, NULL
  FROM v_run_id
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NOT NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY 1)
SELECT s.week, s.days, s.logs, s.net_scale AS net_scale_bf, s.lumber AS lumber_bf, s.pieces,
       nullif(s.sawing, 0) AS sawing_hours, s.stops AS stop_hours, nullif(s.crew, 0) AS crew_hours,
       replace(CASE s.rule WHEN 'several' THEN (SELECT group_concat(DISTINCT r.rule) FROM v_run_id r
         WHERE r.day BETWEEN s.first AND s.last AND r.logs > r.unscaled_logs) ELSE s.rule END, ',', ', ') AS rule,
       s.counted_lumber, s.counted_scale, s.scale_unit,
       sum(s.lumber) OVER before AS rolling_lumber, count(*) OVER before AS rolling_count
FROM sawn s
WINDOW before AS (ORDER BY s.week ROWS 3 PRECEDING)
ORDER BY s.week;
