-- report:  strip
-- title:   The mill at a glance
-- meaning: Lumber through each saw since its last full set and since it was last touched up (or any later work on its
--          teeth), engine hours since the last stop whose cause was 'service', and metal strikes this month: tooth
--          work with the cause 'metal', counted once a day and log.
-- table:   saws | Saws
-- column:  saw text "Saw"
-- column:  full_set day "Full set"
-- column:  since_full_set_bf lumber:0 "Lumber since full set"
-- column:  touched_up day "Last touched"
-- column:  since_touch_up_bf lumber:0 "Lumber since touched"
-- empty:   no tooth work in the book
WITH last AS (
  SELECT saw, max(day * 1000000000 + shift * 100000000 + number) FILTER (WHERE action = 'full-set') AS full_set,
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
-- table:   engine | Engine and strikes
-- column:  meter tenths "Engine meter" unit=h
-- column:  since_service tenths "Since service" unit=h
-- column:  serviced day "Serviced"
-- column:  strikes count "Strikes this month"
-- column:  last_strike day "Last strike"
SELECT (SELECT max(tenths) FROM v_meter) AS meter, serviced,
       (SELECT max(tenths) FROM v_meter) - (SELECT max(tenths) FROM v_meter WHERE day <= serviced) AS since_service,
       (SELECT count(*) FROM (SELECT DISTINCT day, log_tag FROM v_tooth_work WHERE cause = 'metal'
          AND strftime('%Y-%m', day * 86400, 'unixepoch') = strftime('%Y-%m', :today * 86400, 'unixepoch'))) AS strikes,
       (SELECT max(day) FROM v_tooth_work WHERE cause = 'metal') AS last_strike
FROM (SELECT max(day) AS serviced FROM v_stop WHERE cause = 'service');
