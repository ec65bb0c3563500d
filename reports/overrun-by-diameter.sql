-- report:  overrun-by-diameter
-- title:   Overrun and recovery by small-end diameter
-- meaning: Boards cannot be traced to logs, so lumber is known by run only: each run stands in the class of its logs'
--          mean small-end diameter. Overrun by Doyle or Scribner falls as logs get larger and by International moves
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
-- shows:   overrun_percent percent-over "Overrun" of=lumber_bf/net_scale_bf
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   lrf ratio:2 "LRF" of=lumber_bf/log_ft3
-- shows:   recovery_percent percent "Recovery" of=wood/log_ft3
-- shows:   wood cubic "" hidden
-- shows:   scale_unit text "" hidden
-- picture: bar across=diameter up=recovery_percent title="Recovery by diameter"
-- empty:   no run whose logs were all measured
WITH mean AS (
  SELECT day, shift, run, metric, sum(diameter) / count(*) / CASE WHEN metric THEN 500 ELSE 192 END AS class FROM v_log_id
  WHERE state = 'sawn' AND diameter IS NOT NULL AND day BETWEEN :from AND :to
  GROUP BY day, shift, run)
SELECT CASE WHEN m.metric THEN (m.class * 5) || ' to ' || (m.class * 5 + 5) || ' cm'
            ELSE (m.class * 3) || ' to ' || (m.class * 3 + 3) || ' in' END AS diameter,
       r.rule, count(*) AS runs, sum(r.logs) AS logs, sum(r.net) AS net_scale_bf, sum(r.lumber) AS lumber_bf,
       sum(r.content) AS log_ft3, sum(r.wood) AS wood, r.scale_unit
FROM mean m JOIN v_run_id r ON r.day = m.day AND r.shift = m.shift AND r.run = m.run
WHERE r.unscaled_logs = 0 AND r.lumber > 0
  AND (:job_id IS NULL OR r.job_id = :job_id) AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
GROUP BY m.metric, m.class, r.rule, r.scale_unit
ORDER BY m.metric, m.class, r.rule, r.scale_unit;
-- table:   logs | Logs by their own diameter
-- shows:   diameter text "Diameter"
-- shows:   rule text "Rule"
-- shows:   logs count "Logs" total=sum
-- shows:   gross_bf scale "Gross scale" total=sum unit-from=scale_unit
-- shows:   deduction_bf scale "Deduction" total=sum unit-from=scale_unit
-- shows:   net_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   defect_percent percent "Defect" of=deduction_bf/gross_bf
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   net_per_ft3 ratio:2 "Net scale per ft3" of=net_bf/log_ft3
-- shows:   scale_unit text "" hidden
-- empty:   no log measured
WITH logs AS (
  SELECT l.metric, l.diameter / CASE WHEN l.metric THEN 500 ELSE 192 END AS class, l.rule, r.scale_unit, count(*) AS logs,
         sum(l.gross) AS gross, sum(l.deduction) AS deduction, sum(l.net) AS net, sum(l.content) AS content
  FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  WHERE l.state = 'sawn' AND l.diameter IS NOT NULL AND l.rule IS NOT NULL AND l.day BETWEEN :from AND :to
    AND (:job_id IS NULL OR r.job_id = :job_id) AND (:customer_id IS NULL OR r.customer_id = :customer_id)
    AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
  GROUP BY l.metric, class, l.rule, r.scale_unit)
SELECT CASE WHEN metric THEN (class * 5) || ' to ' || (class * 5 + 5) || ' cm'
            ELSE (class * 3) || ' to ' || (class * 3 + 3) || ' in' END AS diameter, rule,
       logs, gross AS gross_bf, deduction AS deduction_bf, net AS net_bf, content AS log_ft3, scale_unit
FROM logs ORDER BY metric, class, rule, scale_unit;
