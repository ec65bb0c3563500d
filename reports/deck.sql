-- report:  deck
-- title:   Log deck
-- meaning: Logs received with 'in' against logs sawn, and what lies on the deck today with its age. A log leaves the
--          deck when its tag is sawn; a log received without a tag cannot be followed and stays listed. A log left
--          half-sawn on the mill is listed until it is finished. Logs sawn without being received count as sawn only.
-- filters: from to job customer species site
-- example: deck
-- table:   deck | Received and sawn
-- column:  job text "Job"
-- column:  species text "Species"
-- column:  received count "Received" total=sum
-- column:  received_bf scale "Scale received" total=sum unit-from=scale_unit
-- column:  sawn count "Sawn" total=sum
-- column:  sawn_bf scale "Scale sawn" total=sum unit-from=scale_unit
-- column:  scale_unit text "" hidden
-- empty:   no log received or sawn in this period
SELECT job, species, sum(state = 'received') AS received, sum(net) FILTER (WHERE state = 'received') AS received_bf,
       sum(state = 'sawn') AS sawn, sum(net) FILTER (WHERE state = 'sawn') AS sawn_bf,
       group_concat(DISTINCT scale_unit(rule)) AS scale_unit
FROM v_log
WHERE state <> 'left' AND day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
  AND (:customer IS NULL OR customer = :customer) AND (:species IS NULL OR species = :species)
  AND (:site IS NULL OR site = :site)
GROUP BY job, species ORDER BY job, species;
-- table:   on-hand | On the deck today
-- column:  tag text "Log"
-- column:  job text "Job"
-- column:  species text "Species"
-- column:  spec text "As measured"
-- column:  net_bf scale "Net scale" total=sum unit-from=scale_unit
-- column:  since day "Since"
-- column:  age_days count "Age" unit=days
-- column:  origin text "From"
-- column:  remark text "Remark"
-- column:  logs count "Logs" total=sum
-- column:  scale_unit text "" hidden
-- empty:   no log on the deck
SELECT tag, job, species, spec, net AS net_bf, day AS since, :today - day AS age_days, origin,
       CASE WHEN state = 'left' THEN 'half-sawn, on the mill' END AS remark, 1 AS logs,
       CASE WHEN rule IS NOT NULL THEN scale_unit(rule) END AS scale_unit
FROM v_log l
WHERE state IN ('received', 'left') AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
  AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
  AND NOT EXISTS (SELECT 1 FROM v_log s WHERE s.tag = l.tag AND s.state <> 'received'
    AND (s.day, s.shift, s.number) > (l.day, l.shift, l.number))
ORDER BY day, shift, number;
