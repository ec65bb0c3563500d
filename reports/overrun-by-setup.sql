-- report:  overrun-by-setup
-- title:   Overrun and recovery by set-up
-- meaning: Overrun, LRF and recovery as in the report overrun: total over total of the runs whose logs were all scaled, not a
--          mean of percentages. Logs of other diameters or other cut lists move these figures
--          too: compare set-ups only over many logs of like size.
-- takes:   from to job customer species site
-- example: overrun-by-setup --rule doyle
-- table:   overrun |
-- shows:   setup text "Set-up"
-- shows:   species text "Species"
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
-- empty:   no run of logs in this period
WITH overrun AS (
  SELECT setup_id, species_id, rule, count(*) AS runs, sum(logs) AS logs,
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
  GROUP BY setup_id, species_id, rule, scale_unit)
SELECT u.name AS setup, s.code AS species, rule, runs, logs, net_scale_bf, lumber_bf, log_ft3, unscaled_logs, counted_lumber, counted_scale,
       counted_content, counted_wood, scale_unit
FROM overrun LEFT JOIN v_setup u ON u.id = setup_id LEFT JOIN v_species s ON s.id = species_id
ORDER BY u.name, s.code, rule, scale_unit;
-- notes:
SELECT 'Set-up ' || coalesce(u.name, '-') || ' has under ' || :few_logs || ' logs (' || logs || '), too few to tell set-ups apart by (common practice, no source).'
FROM (SELECT setup_id, sum(logs) AS logs FROM v_run_id
      WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
        AND (:customer_id IS NULL OR customer_id = :customer_id)
        AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
      GROUP BY setup_id HAVING sum(logs) > 0 AND sum(logs) < :few_logs) LEFT JOIN v_setup u ON u.id = setup_id
ORDER BY u.name;
