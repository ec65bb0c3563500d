-- report:  overrun
-- title:   Overrun and recovery by run
-- meaning: A run is all of a day sheet that has one site, job, species and set-up: the smallest thing of which both
--          the logs in and the boards out are known. Overrun is nominal board feet over net log scale, less 100 %:
--          it moves with the rule, the diameters and the defects. LRF is nominal board feet per cubic foot of log;
--          recovery is the wood really cut over the log's own volume. Read the three side by side, with the number
--          of logs. A run counts when every log of it has a scale.
-- takes:   from to job customer species site
-- example: overrun --period 2026-w19
-- table:   overrun |
-- shows:   day day "Day"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   setup text "Set-up"
-- shows:   rule text "Rule"
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   lrf ratio:2 "LRF" of=counted_lumber/counted_content
-- shows:   recovery_percent percent "Recovery" of=counted_wood/counted_content
-- shows:   unscaled_logs count "Logs without scale" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   site text "Site"
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   counted_content ft3 "" hidden
-- shows:   counted_wood cubic "" hidden
-- shows:   scale_unit text "" hidden
-- empty:   no run of logs in this period
-- foot:    Log scale for payment or tax: where law asks for a licensed scaler or a given rule, that governs.
SELECT day, job, species, setup, CASE WHEN scaled THEN rule END AS rule, logs,
       CASE WHEN scaled THEN net END AS net_scale_bf, lumber AS lumber_bf,
       nullif(content, 0) AS log_ft3, unscaled_logs, pieces, site, scale_unit,
       CASE WHEN counted THEN lumber END AS counted_lumber, CASE WHEN counted THEN net END AS counted_scale,
       CASE WHEN counted THEN content END AS counted_content, CASE WHEN counted THEN wood END AS counted_wood
FROM v_run
WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
  AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
  AND (logs > 0 OR lines > 0)
ORDER BY day, shift, run;
