-- report:  production
-- title:   Production by day
-- meaning: Board feet are nominal, exact from every tally line. Overrun is board feet over net log scale, less 100 %,
--          of the runs whose logs were all scaled. Board feet per hour is all board feet over all sawing hours. Under a
--          job, customer or site, the hours and stops written under it count, and crew time written under no job is
--          shared out by the day's sawing time. A dash means not known, not zero.
-- takes:   from to job customer species site
-- example: production --period "this week"
-- table:   production |
-- shows:   day day "Day"
-- shows:   site text "Site"
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
-- shows:   unscaled_logs count "Logs without scale" total=sum
-- shows:   rule text "Rule"
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- picture: bar across=day up=lumber_bf title="Lumber per day"
WITH part AS (                   -- under a job, customer, species or site: what stands under it, day by day
  SELECT day, logs, unscaled_logs, net, lumber, pieces, rule, scale_unit, scaled, counted,
         NULL AS sawing, NULL AS stops, NULL AS crew
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
    AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id))
SELECT day,                     -- nothing narrows the answer: the sheets' own totals
       CASE WHEN min(sites) IS max(sites) THEN min(sites) ELSE (SELECT group_concat(site, ' / ') FROM (SELECT site FROM v_run
          WHERE v_run.day = v_sheet.day GROUP BY site ORDER BY min(shift * 1000 + run))) END AS site,
       sum(logs) FILTER (WHERE runs > 0) AS logs, sum(net) AS net_scale_bf, sum(lumber) FILTER (WHERE runs > 0) AS lumber_bf,
       sum(pieces) FILTER (WHERE runs > 0) AS pieces, nullif(sum(sawing_minutes), 0) AS sawing_hours,
       sum(stop_minutes) AS stop_hours, nullif(1000000 * sum(crew_minutes), 0) AS crew_hours,
       sum(unscaled_logs) FILTER (WHERE runs > 0) AS unscaled_logs,
       replace(CASE WHEN min(rules) IS max(rules) THEN min(rules) ELSE (SELECT group_concat(DISTINCT rule) FROM v_run_id
          WHERE v_run_id.day = v_sheet.day AND v_run_id.scaled) END, ',', ', ') AS rule,
       sum(counted_lumber) AS counted_lumber, sum(counted_net) AS counted_scale,
       group_concat(DISTINCT scale_units) AS scale_unit
FROM v_sheet WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NULL
GROUP BY day
UNION ALL
SELECT day,
       (SELECT group_concat(site, ' / ') FROM (SELECT site FROM v_run WHERE v_run.day = part.day
          AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
          AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
          GROUP BY site ORDER BY min(shift * 1000 + run))),
       sum(logs), sum(net) FILTER (WHERE scaled), sum(lumber), sum(pieces), nullif(sum(sawing), 0),
       sum(stops), nullif(sum(crew), 0), sum(unscaled_logs),
       replace(group_concat(DISTINCT rule) FILTER (WHERE scaled), ',', ', '),
       sum(lumber) FILTER (WHERE counted),
       sum(net) FILTER (WHERE counted),
       group_concat(DISTINCT scale_unit) FILTER (WHERE scaled)
FROM part GROUP BY day
ORDER BY day;
-- notes:
SELECT 'Logs without a scale: ' || sum(unscaled_logs) || ' of ' || sum(logs) || '; overrun counts the runs whose logs all have one.'
FROM v_run_id
WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
HAVING sum(unscaled_logs) > 0;
