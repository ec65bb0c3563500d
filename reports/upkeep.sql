-- report:  upkeep
-- title:   The mill at a glance
-- meaning: Lumber through each saw since its last full set of teeth or change of blade, and since it was last touched
--          up (or any later work on it); engine hours to the next service of the mill file's [[service]] list, counted from the last stop for
--          'service' with that word in its remark; and metal strikes this month: tooth work with the cause 'metal',
--          counted once a day and log.
-- example: upkeep
-- worksheets: one
-- table:   saws | Saws
-- shows:   saw text "Saw"
-- shows:   full_set day "New teeth or blade"
-- shows:   since_full_set_bf lumber:0 "Lumber since new"
-- shows:   touched_up day "Last touched up"
-- shows:   since_touch_up_bf lumber:0 "Lumber since touched up"
-- empty:   no tooth work in the book
WITH last AS (
  SELECT saw, max(day * 1000000000 + shift * 100000000 + number) FILTER (WHERE action IN ('full-set', 'blade-changed')) AS full_set,
         max(day * 1000000000 + shift * 100000000 + number) AS touched
  FROM v_tooth_work GROUP BY saw)
SELECT saw, full_set / 1000000000 AS full_set, touched / 1000000000 AS touched_up,
       CASE WHEN full_set IS NOT NULL THEN (SELECT coalesce(sum(lumber), 0) FROM v_tally
         WHERE day >= full_set / 1000000000 AND day * 1000000000 + shift * 100000000 + number > full_set) END
         AS since_full_set_bf,
       (SELECT coalesce(sum(lumber), 0) FROM v_tally
         WHERE day >= touched / 1000000000 AND day * 1000000000 + shift * 100000000 + number > touched)
         AS since_touch_up_bf
FROM last ORDER BY saw;
-- table:   service | Engine hours to next service
-- shows:   service text "Service"
-- shows:   every_hours tenths "Every" unit=h
-- shows:   done day "Last done"
-- shows:   since_hours tenths "Since then" unit=h
-- shows:   to_next_hours tenths "To next" unit=h
-- empty:   the mill file lists no [[service]]
-- note:    A dash means no such service is in the book yet; a minus, that it is overdue.
WITH done AS (
  SELECT s.line, s.name, s.every_tenths,
         (SELECT max(t.day) FROM v_stop t WHERE t.cause = 'service' AND instr(lower(t.text), lower(s.name)) > 0) AS day
  FROM v_service s),
since AS (
  SELECT line, name, every_tenths, day,
         (SELECT max(tenths) FROM v_meter) - (SELECT max(tenths) FROM v_meter m WHERE m.day <= done.day) AS since
  FROM done)
SELECT coalesce(nullif(name, ''), 'service') AS service, every_tenths AS every_hours, day AS done, since AS since_hours,
       every_tenths - since AS to_next_hours
FROM since ORDER BY line;
-- table:   strikes | Engine and strikes
-- shows:   meter tenths "Hour meter" unit=h
-- shows:   strikes count "Strikes this month"
-- shows:   last_strike day "Last strike"
SELECT (SELECT max(tenths) FROM v_meter) AS meter,
       (SELECT count(*) FROM (SELECT DISTINCT day, log_tag FROM v_tooth_work WHERE cause = 'metal'
          AND strftime('%Y-%m', day * 86400, 'unixepoch') = strftime('%Y-%m', :today * 86400, 'unixepoch'))) AS strikes,
       (SELECT max(day) FROM v_tooth_work WHERE cause = 'metal') AS last_strike;
