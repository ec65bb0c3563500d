-- report:  setup-records
-- title:   Set-ups by date
-- meaning: The saws count as set anew by a set-up line on a sheet, by a move, by a full set of teeth and by another blade. What a
--          line does not say is what was last said for the set-up of that name. A run belongs to the newest record above its
--          first log or board; records under which nothing was sawn are told with the next. Overrun, LRF and recovery
--          as in the report overrun; few logs tell little (setups-compared says how much).
-- takes:   from to job customer species site
-- example: setup-records --period season
-- table:   records | How the saws were set
-- shows:   day day "From"
-- shows:   begun text "Set anew by"
-- shows:   setup text "Set-up"
-- shows:   site text "Site"
-- shows:   kerf mils "Head kerf"
-- shows:   edger mils "Edger kerf"
-- shows:   third mils "Third kerf"
-- shows:   over mils "Over nominal"
-- shows:   lead mils "Lead"
-- shows:   zero mils "Set-works zero"
-- shows:   feed micro:1 "Feed" unit-from=feed_unit
-- shows:   tooth text "Teeth"
-- shows:   feed_unit text "" hidden
-- note:    What no sheet has said yet is left open. A set-up line takes kerf, over, edger, third, lead, zero, feed and tooth.
-- empty:   nothing sawn in this period
WITH run AS (
  SELECT x.record, min(r.day) AS day, group_concat(DISTINCT s.name) AS site
  FROM v_run_id r
    JOIN v_run_record x ON x.day = r.day AND x.shift = r.shift AND x.run = r.run
    LEFT JOIN v_site s ON s.id = r.site_id
  WHERE r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
    AND (:customer_id IS NULL OR r.customer_id = :customer_id)
    AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
    AND (r.logs > 0 OR r.lines > 0)
  GROUP BY 1),
used AS (SELECT DISTINCT record FROM v_run_record),
begun AS (
  SELECT record, CASE begun WHEN 'full set' THEN saw || ' full set' WHEN 'other blade' THEN saw || ' blade'
                            WHEN 'moved' THEN 'move to ' || coalesce(site, '-') ELSE 'set-up line' END AS words
  FROM v_setup_record)
SELECT coalesce(e.day, run.day) AS day,
       (SELECT group_concat(words, ', ')
        FROM (SELECT words FROM begun b
              WHERE b.record <= e.record
                AND b.record > coalesce((SELECT max(u.record) FROM used u WHERE u.record < e.record), 0)
              ORDER BY b.record)) AS begun,
       e.setup, run.site, e.kerf_mils AS kerf, e.edger_mils AS edger, e.third_mils AS third, e.over_mils AS over,
       e.lead_mils AS lead, e.zero_mils AS zero, e.feed_micro AS feed, e.tooth,
       CASE WHEN e.metric THEN 'm per min' ELSE 'ft per min' END AS feed_unit
FROM run LEFT JOIN v_setup_record e ON e.record = run.record
ORDER BY run.record;
-- table:   sawn | What was sawn so
-- shows:   day day "From"
-- shows:   setup text "Set-up"
-- shows:   site text "Site"
-- shows:   rule text "Rule"
-- shows:   runs count "Runs" total=sum
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   lrf ratio:2 "LRF" of=counted_lumber/counted_content
-- shows:   recovery_percent percent "Recovery" of=counted_wood/counted_content
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   counted_content ft3 "" hidden
-- shows:   counted_wood cubic "" hidden
-- shows:   scale_unit text "" hidden
-- picture: bar across=day up=recovery_percent title="Recovery by set-up record"
-- empty:   nothing sawn in this period
WITH run AS (
  SELECT x.record, r.rule, r.scale_unit, min(r.day) AS day,
         group_concat(DISTINCT s.name) AS site, min(r.setup_id) AS setup_id, count(*) AS runs, sum(r.logs) AS logs,
         sum(r.net) FILTER (WHERE r.scaled) AS net_scale_bf, sum(r.lumber) AS lumber_bf,
         sum(r.lumber) FILTER (WHERE r.counted) AS counted_lumber, sum(r.net) FILTER (WHERE r.counted) AS counted_scale,
         sum(r.content) FILTER (WHERE r.counted) AS counted_content, sum(r.wood) FILTER (WHERE r.counted) AS counted_wood
  FROM v_run_id r
    JOIN v_run_record x ON x.day = r.day AND x.shift = r.shift AND x.run = r.run
    LEFT JOIN v_site s ON s.id = r.site_id
  WHERE r.day BETWEEN :from AND :to AND (:job_id IS NULL OR r.job_id = :job_id)
    AND (:customer_id IS NULL OR r.customer_id = :customer_id)
    AND (:species_id IS NULL OR r.species_id = :species_id) AND (:site_id IS NULL OR r.site_id = :site_id)
    AND (r.logs > 0 OR r.lines > 0)
  GROUP BY x.record, r.rule, r.scale_unit)
SELECT coalesce((SELECT e.day FROM v_setup_record e WHERE e.record = run.record), run.day) AS day, u.name AS setup, site, rule, runs, logs, net_scale_bf, lumber_bf,
       counted_lumber, counted_scale, counted_content, counted_wood, scale_unit
FROM run LEFT JOIN v_setup u ON u.id = run.setup_id
ORDER BY run.record, rule, scale_unit;
