-- report:  where-wood-went
-- title:   Where the wood went
-- meaning: The logs' volume is lumber (green, as really cut), sawdust and the rest: slabs, edgings, trim, and what shrinks. Each
--          board costs one cut of the head saw and one of the edger, of its whole length: width x head kerf +
--          thickness x edger kerf + both kerfs; a third saw adds its own. Assumed: the kerf of the set-up for the head
--          saw, of the mill file for the others; boards as thick and wide as their targets say. Cuts that freed a
--          slab alone are in the rest. Runs count whose logs were all scaled and gave lumber.
-- takes:   from to job customer species site
-- example: where-wood-went --period 2026-w19
-- worked:  where-wood-went
-- input:   runs
SELECT day, shift, run, job, species, setup, logs, net, scale_unit, lumber, wood, content
FROM v_run
WHERE counted AND day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
  AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
ORDER BY day, shift, run;
-- input:   boards
SELECT t.day, t.shift, t.run, z.thickness, z.width, z.metric, sum(t.lineal) AS lineal, sum(t.wood) AS wood
FROM v_tally_id t
  JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN v_size z ON z.id = t.size_id
WHERE r.counted AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
GROUP BY t.day, t.shift, t.run, t.size_id ORDER BY t.day, t.shift, t.run, t.size_id;
-- input:   kerfs
SELECT setup, kerf_mils, metric FROM v_setup_change WHERE kerf_mils IS NOT NULL ORDER BY day, shift, number;
-- table:   setups | By set-up
-- shows:   setup text "Set-up"
-- shows:   head_kerf mils "Head kerf"
-- shows:   edger_kerf mils "Edger kerf"
-- shows:   runs count "Runs" total=sum
-- shows:   logs count "Logs" total=sum
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   lumber_ft3 ft3 "Lumber" total=sum
-- shows:   sawdust_ft3 ft3 "Sawdust" total=sum
-- shows:   rest_ft3 ft3 "Rest" total=sum
-- shows:   lumber_percent percent "Lumber" of=lumber_ft3/log_ft3
-- shows:   sawdust_percent percent "Sawdust" of=sawdust_ft3/log_ft3
-- shows:   rest_percent percent "Rest" of=rest_ft3/log_ft3
-- picture: stacked-bar across=setup up=lumber_percent,sawdust_percent,rest_percent title="Of each log's volume, by set-up"
-- empty:   no run of logs, all scaled, that gave lumber in this period
-- table:   runs | By run
-- shows:   day day "Day"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   setup text "Set-up"
-- shows:   logs count "Logs" total=sum
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=lumber/net
-- shows:   lumber_percent percent "Lumber" of=lumber_ft3/log_ft3
-- shows:   sawdust_percent percent "Sawdust" of=sawdust_ft3/log_ft3
-- shows:   rest_percent percent "Rest" of=rest_ft3/log_ft3
-- shows:   lumber lumber "" hidden
-- shows:   net scale "" hidden unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- shows:   lumber_ft3 ft3 "" hidden
-- shows:   sawdust_ft3 ft3 "" hidden
-- shows:   rest_ft3 ft3 "" hidden
-- empty:   no run of logs, all scaled, that gave lumber in this period
