-- A part of a report: production by week, month or year. In curly brackets: step, a week, month or year, the kind and
-- heading of its column, and of_day, the step a day lies in; mean, how many steps the rolling mean takes, back, how many of
-- them lie before it, and reach, the first day of those; ordered, the step as a number, and range, how far back in it.

-- title:   Production by {step}
-- meaning: As production by day, added up by {step}; days are those with a log or a board. The rolling mean is the lumber of
--          this and the {back} calendar {step}s before it, those before the period too, over the number of those {step}s in
--          which something was sawn: a {step} without sawing is left out, and none further back takes its place.
-- takes:   from to job customer species site
-- table:   production |
-- shows:   {step} {kind} "{heading}"
-- shows:   days count "Days" total=sum
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- shows:   stop_hours hours "Stops" total=sum
-- shows:   crew_hours fine-hours "Crew" total=sum
-- shows:   bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- shows:   mean_bf ratio:0 "Mean of {mean} {step}s" of=rolling_lumber/rolling_count total=none unit=bf
-- shows:   rule text "Rule"
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- shows:   rolling_lumber lumber "" hidden
-- shows:   rolling_count count "" hidden
-- picture: line across={step} up=lumber_bf,mean_bf title="Lumber per {step}"
WITH part AS (                   -- under a job, customer, species or site: what stands under it
  SELECT day, logs, net, lines, lumber, pieces, rule, scale_unit, scaled, counted, NULL AS sawing, NULL AS stops, NULL AS crew
  FROM v_run_id
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NOT NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
  UNION ALL                     -- time has no species, and crew time no site
  SELECT day, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, minutes, NULL, NULL FROM v_sawing
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :site) IS NOT NULL AND :species IS NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:site_id IS NULL OR site_id = :site_id)
  UNION ALL
  SELECT day, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, minutes, NULL FROM v_stop
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :site) IS NOT NULL AND :species IS NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:site_id IS NULL OR site_id = :site_id)
  UNION ALL
  SELECT day, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, minutes_micro FROM v_job_crew
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer) IS NOT NULL AND :species IS NULL AND :site IS NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)),
sawn AS (   -- by whole sheets where nothing narrows the answer
  SELECT {of_day} AS {step}, min(day) AS first, max(day) AS last,
         count(DISTINCT CASE WHEN logs > 0 OR lines > 0 THEN day END) AS days, sum(logs) FILTER (WHERE runs > 0) AS logs,
         sum(net) AS net_scale, sum(lumber) FILTER (WHERE runs > 0) AS lumber, sum(pieces) FILTER (WHERE runs > 0) AS pieces,
         sum(counted_lumber) AS counted_lumber, sum(counted_net) AS counted_scale,
         group_concat(DISTINCT scale_units) AS scale_unit,
         CASE WHEN min(rules) IS max(rules) THEN min(rules) ELSE 'several' END AS rule,
         sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, 1000000 * sum(crew_minutes) AS crew
  FROM v_sheet
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NULL
  GROUP BY 1
  UNION ALL
  SELECT {of_day}, NULL, NULL, count(DISTINCT CASE WHEN logs > 0 OR lines > 0 THEN day END), sum(logs),
         sum(net) FILTER (WHERE scaled), sum(lumber), sum(pieces),
         sum(lumber) FILTER (WHERE counted),
         sum(net) FILTER (WHERE counted),
         group_concat(DISTINCT scale_unit) FILTER (WHERE scaled),
         group_concat(DISTINCT rule) FILTER (WHERE scaled), sum(sawing), sum(stops), sum(crew)
  FROM part GROUP BY 1),
earlier AS (   -- what the rolling mean of the first {step}s reaches back to
  SELECT {of_day} AS {step}, sum(lumber) FILTER (WHERE logs > 0 OR lines > 0) AS lumber FROM v_sheet
  WHERE day < :from AND day >= {reach}
    AND coalesce(:job, :customer, :species, :site) IS NULL
  GROUP BY 1
  UNION ALL
  SELECT {of_day}, sum(lumber) FILTER (WHERE logs > 0 OR lines > 0) FROM v_run_id
  WHERE day < :from AND day >= {reach}
    AND coalesce(:job, :customer, :species, :site) IS NOT NULL
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY 1),
mean AS (
  SELECT {step}, sum(sum(lumber)) OVER before AS lumber, count(sum(lumber)) OVER before AS {step}s
  FROM (SELECT {step}, CASE WHEN days > 0 THEN lumber END AS lumber FROM sawn UNION ALL SELECT {step}, lumber FROM earlier) GROUP BY {step}
  WINDOW before AS (ORDER BY {ordered} RANGE {range} PRECEDING))
SELECT s.{step}, s.days, s.logs, s.net_scale AS net_scale_bf, s.lumber AS lumber_bf, s.pieces,
       nullif(s.sawing, 0) AS sawing_hours, s.stops AS stop_hours, nullif(s.crew, 0) AS crew_hours,
       replace(CASE s.rule WHEN 'several' THEN (SELECT group_concat(DISTINCT r.rule) FROM v_run_id r
         WHERE r.day BETWEEN s.first AND s.last AND r.scaled) ELSE s.rule END, ',', ', ') AS rule,
       s.counted_lumber, s.counted_scale, s.scale_unit, m.lumber AS rolling_lumber, m.{step}s AS rolling_count
FROM sawn s JOIN mean m ON m.{step} = s.{step}
ORDER BY s.{step};
