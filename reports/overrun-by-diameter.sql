-- report:  overrun-by-diameter
-- title:   Overrun and recovery by small-end diameter
-- meaning: Boards cannot be traced to logs, so lumber is known by run only: each run stands in the class of its logs'
--          mean small-end diameter, in inches when any of them was measured so; a dash when a log of it has no small end
--          measured, or it has no logs. Overrun by Doyle or Scribner falls as logs get larger and by International moves
--          little: read it with LRF and recovery beside it. The second table counts every log in its own class.
-- takes:   from to job customer species site
-- example: overrun-by-diameter --period season --species DF
-- table:   overrun | Runs by mean diameter of their logs
-- shows:   diameter text "Diameter"
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
-- picture: bar across=diameter up=recovery_percent title="Recovery by diameter"
-- empty:   no run of logs in this period
WITH mean AS (   -- diameters in 1/320 mm, in which 1/64 in (127) and 1/10 mm (32) are both whole; classes of 3 in or 5 cm
  SELECT day, shift, run, min(metric) AS metric, count(*) AS measured,
         sum(diameter * CASE WHEN metric THEN 32 ELSE 127 END) / (count(*) * CASE WHEN min(metric) THEN 16000 ELSE 24384 END) AS class
  FROM v_log_id WHERE state = 'sawn' AND diameter IS NOT NULL AND day BETWEEN :from AND :to
  GROUP BY day, shift, run),
runs AS (
  SELECT CASE WHEN m.measured = r.logs THEN m.metric END AS metric, CASE WHEN m.measured = r.logs THEN m.class END AS class,
         CASE WHEN r.scaled THEN r.rule END AS rule, r.scale_unit, r.logs, r.unscaled_logs, r.net, r.lumber, r.content, r.wood,
         r.scaled, r.counted
  FROM v_run_id r LEFT JOIN mean m ON m.day = r.day AND m.shift = r.shift AND m.run = r.run
  WHERE r.day BETWEEN :from AND :to AND (r.logs > 0 OR r.lines > 0)
    AND (:job_id IS NULL OR r.job_id = :job_id) AND (:customer_id IS NULL OR r.customer_id = :customer_id)
    AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id))
SELECT CASE metric WHEN 1 THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
                   WHEN 0 THEN (class * 3) || ' to ' || (class * 3 + 3) || ' in' END AS diameter,
       rule, count(*) AS runs, sum(logs) AS logs, sum(net) FILTER (WHERE scaled) AS net_scale_bf,
       sum(lumber) AS lumber_bf, nullif(sum(content), 0) AS log_ft3, sum(unscaled_logs) AS unscaled_logs,
       sum(lumber) FILTER (WHERE counted) AS counted_lumber, sum(net) FILTER (WHERE counted) AS counted_scale,
       sum(content) FILTER (WHERE counted) AS counted_content, sum(wood) FILTER (WHERE counted) AS counted_wood, scale_unit
FROM runs GROUP BY metric, class, rule, scale_unit
ORDER BY metric IS NULL, metric, class, rule, scale_unit;
-- table:   logs | Logs by their own diameter
-- shows:   diameter text "Diameter"
-- shows:   rule text "Rule"
-- shows:   logs count "Logs" total=sum
-- shows:   gross_bf scale "Gross scale" total=sum unit-from=scale_unit
-- shows:   deduction_bf scale "Deduction" total=sum unit-from=scale_unit
-- shows:   net_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   defect_percent percent "Defect" of=deduction_bf/gross_bf
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   net_per_ft3 ratio:2 "Net scale per ft³" of=net_bf/scaled_content
-- shows:   scaled_content ft3 "" hidden
-- shows:   scale_unit text "" hidden
-- empty:   no log sawn
WITH logs AS (
  SELECT CASE WHEN l.diameter IS NOT NULL THEN l.metric END AS metric, l.diameter / CASE WHEN l.metric THEN 500 ELSE 192 END AS class,
         l.rule, CASE WHEN l.rule IS NOT NULL THEN r.scale_unit END AS scale_unit, count(*) AS logs, sum(l.gross) AS gross,
         sum(l.deduction) AS deduction, sum(l.net) AS net, sum(l.content) AS content
  FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  WHERE l.state = 'sawn' AND l.day BETWEEN :from AND :to
    AND (:job_id IS NULL OR r.job_id = :job_id) AND (:customer_id IS NULL OR r.customer_id = :customer_id)
    AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
  GROUP BY 1, 2, 3, 4)
SELECT CASE metric WHEN 1 THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
                   WHEN 0 THEN (class * 3) || ' to ' || (class * 3 + 3) || ' in' END AS diameter, rule,
       logs, gross AS gross_bf, deduction AS deduction_bf, net AS net_bf, content AS log_ft3,
       CASE WHEN rule IS NOT NULL THEN content END AS scaled_content, scale_unit
FROM logs ORDER BY metric IS NULL, metric, class, rule, scale_unit;
