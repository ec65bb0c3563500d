-- report:  where-wood-went
-- title:   Where the wood went
-- meaning: The logs' volume is lumber (green, as really cut), sawdust and the rest: slabs, edgings, trim, and what shrinks. Each
--          board costs one cut of the head saw and one of the edger, of its whole length: width x head kerf +
--          thickness x edger kerf + both kerfs; a third saw adds its own. Assumed: the kerfs of the set-up line, and what it
--          does not say of the mill file; boards as thick and wide as their targets say. Cuts that freed a
--          slab alone are in the rest. Runs count whose logs were all scaled and gave lumber.
-- takes:   from to job customer species site
-- example: where-wood-went --period 2026-w19
-- worked:  where-wood-went
-- input:   runs
SELECT r.day, r.shift, r.run, r.job, r.species, r.setup, r.logs, r.net, r.scale_unit, r.lumber, r.wood, r.content,
       e.kerf_mils AS kerf, e.edger_mils AS edger, e.third_mils AS third, e.metric
FROM v_run r
  JOIN v_run_record x ON x.day = r.day AND x.shift = r.shift AND x.run = r.run
  LEFT JOIN v_setup_record e ON e.record = x.record
WHERE r.counted AND r.day BETWEEN :from AND :to AND (:job IS NULL OR r.job = :job)
  AND (:customer IS NULL OR r.customer = :customer)
  AND (:species IS NULL OR r.species = :species) AND (:site IS NULL OR r.site = :site)
ORDER BY r.day, r.shift, r.run;
-- input:   boards
SELECT t.day, t.shift, t.run, z.thickness, z.width, z.metric, sum(t.lineal) AS lineal, sum(t.wood) AS wood
FROM v_tally_id t
  JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN v_size z ON z.id = t.size_id
WHERE r.counted AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
GROUP BY t.day, t.shift, t.run, t.size_id ORDER BY t.day, t.shift, t.run, t.size_id;
-- input:   residue
SELECT kind, sum(quantity_micro) AS quantity, unit FROM v_residue
WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
  AND (:customer_id IS NULL OR customer_id = :customer_id) AND :species IS NULL AND :site IS NULL
GROUP BY kind, unit ORDER BY kind, unit;
-- table:   setups | By set-up
-- shows:   setup text "Set-up"
-- shows:   head_kerf mils "Head kerf"
-- shows:   edger_kerf mils "Edger kerf"
-- shows:   third_kerf mils "Third kerf"
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
-- table:   residue | What was taken away
-- shows:   kind text "Residue"
-- shows:   quantity micro:2 "As it lay" total=none
-- shows:   unit text "Unit"
-- shows:   solid_ft3 ft3 "Solid, about" total=sum
-- shows:   of text "Out of"
-- shows:   share_percent percent "Of that" of=solid_ft3/of_ft3 total=none
-- shows:   of_ft3 ft3 "" hidden
-- note:    Solid: 75 ft3 in a cord of slabs, and 1 ft3 in 2.5 of loose sawdust (Sawmill Residue in the Prince George Area of
--          British Columbia, Canada Forestry Branch, about 1951); chips, bark and shavings as sawdust (common practice, no source).
--          No log's volume counts bark, and shavings come off boards. Not told of one species or site.
-- empty:   no residue line on a sheet of this period
