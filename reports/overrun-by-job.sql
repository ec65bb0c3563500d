-- report:  overrun-by-job
-- title:   Overrun and recovery by job
-- meaning: Overrun, LRF and recovery as in the report overrun: total over total of the runs whose logs were all scaled, not a
--          mean of percentages. Jobs differ in diameters, species and cut lists, so a difference between them is not a
--          proof of better sawing.
-- takes:   from to job customer species site
-- example: overrun-by-job --period 2026-05 --rule scribner-c
-- table:   overrun |
-- shows:   job text "Job"
-- shows:   rule text "Rule"
-- shows:   runs count "Runs" total=sum
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   lrf ratio:2 "LRF" of=counted_lumber/counted_content
-- shows:   recovery_percent percent "Recovery" of=counted_wood/counted_content
-- shows:   unscaled_logs count "Logs without scale" total=sum
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   counted_content ft3 "" hidden
-- shows:   counted_wood cubic "" hidden
-- shows:   scale_unit text "" hidden
-- picture: bar across=job up=overrun_percent title="Overrun by job"
-- empty:   no run of logs in this period
WITH overrun AS (
  SELECT job_id, rule, count(*) AS runs, sum(logs) AS logs,
         sum(net) FILTER (WHERE scaled) AS net_scale_bf, sum(lumber) AS lumber_bf,
         nullif(sum(content), 0) AS log_ft3, sum(unscaled_logs) AS unscaled_logs,
         sum(lumber) FILTER (WHERE counted) AS counted_lumber, sum(net) FILTER (WHERE counted) AS counted_scale,
         sum(content) FILTER (WHERE counted) AS counted_content, sum(wood) FILTER (WHERE counted) AS counted_wood,
         scale_unit
  FROM v_run_id
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
    AND (:customer_id IS NULL OR customer_id = :customer_id)
    AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
    AND (logs > 0 OR lines > 0)
  GROUP BY job_id, rule, scale_unit)
SELECT j.code AS job, rule, runs, logs, net_scale_bf, lumber_bf, log_ft3, unscaled_logs, counted_lumber, counted_scale,
       counted_content, counted_wood, scale_unit
FROM overrun LEFT JOIN v_job j ON j.id = job_id
ORDER BY j.code, rule, scale_unit;
