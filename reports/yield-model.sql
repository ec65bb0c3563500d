-- report:  yield-model
-- title:   Yield against the best pattern
-- meaning: What came out of each run's logs, against the most that a head saw and an edger saw could have got out of them: the
--          best pattern of layers and widths, of the sizes and lengths that were cut for that job and set-up, is found for
--          each log by its diameter, length and taper. Logs are taken for round, straight and sound, boards for square-edged;
--          kerf and oversize are the set-up's; nothing is left out for the bed, the dogs or the grade, so no mill reaches it.
--          A run over 100 % is a slip somewhere; it stays in the totals, which are of all runs shown, and is told beside them.
-- takes:   from to job customer species site
-- example: yield-model --period season
-- worked:  yield
-- input:   runs
SELECT r.day, r.shift, r.run, j.code AS job, s.code AS species, u.name AS setup, r.lumber, r.wood,
       e.kerf_mils AS kerf, e.edger_mils AS edger, e.over_mils AS over
FROM v_run_id r
  JOIN v_run_record x ON x.day = r.day AND x.shift = r.shift AND x.run = r.run
  LEFT JOIN v_setup_record e ON e.record = x.record
  LEFT JOIN v_job j ON j.id = r.job_id LEFT JOIN v_species s ON s.id = r.species_id
  LEFT JOIN v_setup u ON u.id = r.setup_id
WHERE r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id) AND (:species_id IS NULL OR r.species_id = :species_id)
  AND (:site_id IS NULL OR r.site_id = :site_id) AND r.logs > 0 AND r.lines > 0
ORDER BY r.day, r.shift, r.run;
-- input:   logs
SELECT l.day, l.shift, l.run, l.spec, l.metric
FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
WHERE l.state = 'sawn' AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id) AND (:species_id IS NULL OR r.species_id = :species_id)
  AND (:site_id IS NULL OR r.site_id = :site_id)
ORDER BY l.day, l.shift, l.number;
-- input:   sizes
SELECT DISTINCT t.day, t.shift, t.run, z.thickness, z.width, t.length, t.metric
FROM v_tally_id t JOIN v_size z ON z.id = t.size_id
  JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
WHERE t.entry = 'sawn' AND t.form = 'piece' AND r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
  AND (:customer_id IS NULL OR r.customer_id = :customer_id) AND (:species_id IS NULL OR r.species_id = :species_id)
  AND (:site_id IS NULL OR r.site_id = :site_id)
ORDER BY t.day, t.shift, t.run, z.thickness, z.width, t.length;
-- input:   year
WITH newest AS (SELECT max(day) AS day FROM v_sheet WHERE day <= :to)
SELECT sum(lumber) AS lumber FROM v_run_id r JOIN newest n WHERE r.day BETWEEN n.day - 364 AND n.day;
-- part:    lumber-price
-- table:   yield | Runs against the best pattern
-- shows:   day day "Day"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   setup text "Set-up"
-- shows:   logs count "Logs" total=sum
-- shows:   best_bf lumber "Best pattern" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   share_percent percent "Share of the best" of=lumber_bf/best_bf
-- shows:   best_recovery_percent percent "Recovery at best" of=best_wood/log_volume
-- shows:   recovery_percent percent "Recovery" of=wood/log_volume
-- shows:   wood cubic "" hidden
-- shows:   best_wood cubic "" hidden
-- shows:   log_volume cubic "" hidden
-- empty:   no run with measured logs, a tally by pieces and a set-up with its kerf in this period
-- table:   what_if | What a change would be worth on these logs
-- shows:   change text "Change"
-- shows:   gain_percent micro:1 "More lumber" unit=%
-- shows:   gain_bf lumber "On these logs"
-- shows:   bf_a_year lumber "A year"
-- shows:   money_a_year micro "Worth a year" unit=money
-- empty:   no logs to reckon on
-- table:   pattern | The best pattern of the commonest log
-- shows:   board text "Board"
-- shows:   length_ft feet "Length"
-- shows:   pieces count "Pieces" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- empty:   no logs to reckon on
