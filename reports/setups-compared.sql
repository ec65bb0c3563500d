-- report:  setups-compared
-- title:   Two set-ups compared
-- meaning: Overrun moves with the diameters, the rule, the sizes and the defects, so two set-ups are held side by side as they are,
--          over one mix of small-end diameters (classes of 3 in; a run's boards shared out to its logs by D x D x L), and against
--          the mill's own yield curve, fitted by least squares to the earlier one's runs; its limits are drawn by
--          resampling whole runs, 95 in 100, always from the same seed. Assumed: that runs are like one another but
--          for the logs in them; other cut lists, duller teeth, frozen or defective wood move the figures too. Runs
--          count whose logs were all scaled and measured and gave lumber.
-- takes:   from to job customer species site setup against
-- example: setups-compared --species DF --rule doyle
-- worked:  setups-compared
-- input:   runs
SELECT r.day, r.shift, r.run, u.name AS setup, r.lumber, r.wood
FROM v_run_id r JOIN v_setup u ON u.id = r.setup_id
WHERE r.counted AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
ORDER BY r.day, r.shift, r.run;
-- input:   logs
SELECT l.day, l.shift, l.run, l.diameter, l.length, l.metric, l.net, l.gross, l.scale_unit, l.content
FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
WHERE l.state = 'sawn' AND r.counted AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id);
-- input:   sheets
SELECT day, shift, lumber FROM v_sheet ORDER BY day, shift;
-- input:   work
SELECT day, shift, action FROM v_tooth_work WHERE saw = 'head';
-- input:   boards
SELECT u.name AS setup, z.thickness, z.metric, sum(t.lumber) AS lumber
FROM v_tally_id t
  JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN v_setup u ON u.id = r.setup_id
  JOIN v_size z ON z.id = t.size_id
WHERE r.counted AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id)
  AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
GROUP BY u.name, z.thickness, z.metric ORDER BY z.metric, z.thickness;
-- table:   measures | Side by side
-- shows:   measure text "Measure"
-- shows:   unit text "Unit"
-- shows:   earlier micro:2 "Earlier"
-- shows:   later micro:2 "Later"
-- shows:   change micro:2 "Change"
-- empty:   no two set-ups with runs of logs, all scaled, in this period
-- table:   curve | Later set-up against the earlier one's yield curve
-- shows:   what text "What"
-- shows:   gain_percent micro:1 "Gain" unit=%
-- shows:   least_percent micro:1 "At least" unit=%
-- shows:   most_percent micro:1 "At most" unit=%
-- empty:   too few runs for a curve and its limits
-- table:   runs | Each run
-- shows:   day day "Day"
-- shows:   setup text "Set-up"
-- shows:   logs count "Logs"
-- shows:   mean_diameter micro:1 "Mean diameter" unit=in
-- shows:   earlier_percent micro:1 "Earlier, recovery" unit=%
-- shows:   later_percent micro:1 "Later, recovery" unit=%
-- picture: scatter across=mean_diameter up=earlier_percent,later_percent title="Recovery of each run by the mean diameter of its logs"
-- empty:   no runs to compare
-- table:   thicknesses | Share of each thickness in the lumber
-- shows:   thickness text "Thickness"
-- shows:   earlier_percent micro:1 "Earlier" unit=%
-- shows:   later_percent micro:1 "Later" unit=%
-- note:    Where the shares differ, so do the cut lists: thin boards spend more of a log in kerf.
-- empty:   no lumber to compare
