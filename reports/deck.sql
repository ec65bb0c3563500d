-- report:  deck
-- title:   Log deck
-- meaning: Logs received with 'in' against logs sawn, and what lies on the deck today with its age. A log leaves the
--          deck when its tag is sawn; a log received without a tag cannot be followed and stays listed. A log left
--          half-sawn on the mill is listed until it is finished. Logs sawn without being received count as sawn only.
-- takes:   from to job customer species site
-- example: deck
-- table:   deck | Received and sawn
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   received count "Received" total=sum
-- shows:   received_bf scale "Scale received" total=sum unit-from=scale_unit
-- shows:   sawn count "Sawn" total=sum
-- shows:   sawn_bf scale "Scale sawn" total=sum unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- empty:   no log received or sawn in this period
WITH logs AS (
  SELECT r.job_id, r.species_id, sum(l.state = 'received') AS received,
         sum(l.net) FILTER (WHERE l.state = 'received') AS received_bf, sum(l.state = 'sawn') AS sawn,
         sum(l.net) FILTER (WHERE l.state = 'sawn') AS sawn_bf,
         group_concat(DISTINCT CASE WHEN l.rule IS NOT NULL THEN r.scale_unit END) AS scale_unit
  FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  WHERE l.state <> 'left' AND l.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
    AND (:customer_id IS NULL OR r.customer_id = :customer_id) AND (:species_id IS NULL OR r.species_id = :species_id)
    AND (:site_id IS NULL OR r.site_id = :site_id)
  GROUP BY r.job_id, r.species_id)
SELECT j.code AS job, s.code AS species, received, received_bf, sawn, sawn_bf, scale_unit
FROM logs LEFT JOIN v_job j ON j.id = job_id LEFT JOIN v_species s ON s.id = species_id ORDER BY j.code, s.code;
-- table:   on-hand | On the deck today
-- shows:   tag text "Log"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   spec text "As measured"
-- shows:   net_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   since day "Since"
-- shows:   age_days count "Age" unit=days
-- shows:   origin text "From"
-- shows:   remark text "Remark"
-- shows:   logs count "Logs" total=sum
-- shows:   scale_unit text "" hidden
-- empty:   no log on the deck
SELECT tag, job, species, spec, net AS net_bf, day AS since, :today - day AS age_days, origin,
       CASE WHEN state = 'left' THEN 'half-sawn, on the mill' END AS remark, 1 AS logs, scale_unit
FROM v_deck
WHERE (:job_id IS NULL OR job_id = :job_id) AND (:customer_id IS NULL OR customer_id = :customer_id)
  AND (:species_id IS NULL OR species_id = :species_id) AND (:site_id IS NULL OR site_id = :site_id)
ORDER BY day, shift, number;
