-- report:  day
-- title:   The day
-- meaning: The figures of the day, then what stands behind them. Board feet are nominal and exact; board feet per
--          hour is all lumber over all sawing hours; overrun is lumber over net log scale, less 100 %, of the runs
--          whose logs were all scaled.
-- takes:   from to
-- needs:   day
-- example: day --period 2026-05-05
-- worksheets: one
-- table:   numbers | The day in figures
-- shows:   lumber_bf lumber "Lumber"
-- shows:   pieces count "Pieces"
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   rule text "Rule"
-- shows:   logs count "Logs"
-- shows:   net_scale_bf scale "Net scale" unit-from=scale_unit
-- shows:   sawing_hours hours "Sawing"
-- shows:   stop_hours hours "Stops"
-- shows:   crew_hours hours "Crew"
-- shows:   unscaled_logs count "Logs without scale"
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   scale_unit text "" hidden
-- empty:   no sheet for this day
SELECT r.lumber AS lumber_bf, r.pieces, replace(r.rule, ',', ', ') AS rule, r.logs, r.net_scale AS net_scale_bf,
       nullif(h.sawing, 0) AS sawing_hours, h.stops AS stop_hours, nullif(h.crew, 0) AS crew_hours, r.unscaled_logs,
       r.counted_lumber, r.counted_scale, r.scale_unit
FROM (SELECT count(*) AS sheets, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew
      FROM v_sheet WHERE day BETWEEN :from AND :to) h,
     (SELECT sum(logs) AS logs, sum(unscaled_logs) AS unscaled_logs,
             sum(net) FILTER (WHERE scaled) AS net_scale, sum(lumber) AS lumber, sum(pieces) AS pieces,
             sum(lumber) FILTER (WHERE counted) AS counted_lumber,
             sum(net) FILTER (WHERE counted) AS counted_scale,
             group_concat(DISTINCT scale_unit) FILTER (WHERE scaled) AS scale_unit,
             group_concat(DISTINCT rule) FILTER (WHERE scaled) AS rule
      FROM v_run WHERE day BETWEEN :from AND :to) r
WHERE h.sheets > 0;
-- table:   runs | Runs
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   setup text "Set-up"
-- shows:   site text "Site"
-- shows:   rule text "Rule"
-- shows:   logs count "Logs" total=sum
-- shows:   net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- shows:   lrf ratio:2 "LRF" of=counted_lumber/counted_content
-- shows:   recovery_percent percent "Recovery" of=counted_wood/counted_content
-- shows:   counted_lumber lumber "" hidden
-- shows:   counted_scale scale "" hidden unit-from=scale_unit
-- shows:   counted_content ft3 "" hidden
-- shows:   counted_wood cubic "" hidden
-- shows:   scale_unit text "" hidden
-- empty:   nothing sawn
SELECT job, species, setup, site, CASE WHEN scaled THEN rule END AS rule, logs,
       CASE WHEN scaled THEN net END AS net_scale_bf, lumber AS lumber_bf, pieces, scale_unit,
       CASE WHEN counted THEN lumber END AS counted_lumber, CASE WHEN counted THEN net END AS counted_scale,
       CASE WHEN counted THEN content END AS counted_content, CASE WHEN counted THEN wood END AS counted_wood
FROM v_run
WHERE day BETWEEN :from AND :to
  AND (logs > 0 OR lines > 0)
ORDER BY day, shift, run;
-- table:   logs | Logs
-- shows:   tag text "Log"
-- shows:   job text "Job"
-- shows:   species text "Species"
-- shows:   spec text "As measured"
-- shows:   gross_bf scale "Gross scale" total=sum unit-from=scale_unit
-- shows:   deduction_bf scale "Deduction" total=sum unit-from=scale_unit
-- shows:   net_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   remark text "Remark"
-- shows:   scale_unit text "" hidden
-- empty:   no log sawn
SELECT tag, job, species, spec, gross AS gross_bf, deduction AS deduction_bf, net AS net_bf, content AS log_ft3,
       CASE WHEN spec IS NULL THEN 'not measured' WHEN net IS NULL THEN 'no scale' WHEN cull = 1 THEN 'cull'
            WHEN borrowed = 1 THEN 'measured on receipt' END AS remark,
       CASE WHEN net IS NOT NULL THEN scale_unit(rule) END AS scale_unit
FROM v_log WHERE state = 'sawn' AND day BETWEEN :from AND :to
ORDER BY day, shift, number;
-- table:   stops | Stops by cause
-- shows:   cause text "Cause"
-- shows:   stops count "Stops" total=sum
-- shows:   minutes minutes "Time" total=sum
-- shows:   chargeable_minutes minutes "Chargeable" total=sum
-- shows:   what text "What"
-- empty:   no stops
SELECT cause, count(*) AS stops, sum(minutes) AS minutes, sum(minutes * charge) AS chargeable_minutes,
       group_concat(nullif(text, ''), '; ') AS what
FROM v_stop WHERE day BETWEEN :from AND :to
GROUP BY cause ORDER BY sum(minutes) DESC, cause;
-- table:   teeth | Tooth and blade work
-- shows:   saw text "Saw"
-- shows:   action text "Work"
-- shows:   teeth count "Teeth" total=sum
-- shows:   cause text "Cause"
-- shows:   log text "Log"
-- shows:   text text "Remark"
-- note:    Before any work on teeth or blades: power locked out, as the mill's manual and local safety rules say.
-- empty:   no tooth work
SELECT saw, replace(action, '-', ' ') AS action, teeth, nullif(cause, '') AS cause, nullif(log_tag, '') AS log,
       nullif(text, '') AS text
FROM v_tooth_work WHERE day BETWEEN :from AND :to
ORDER BY day, shift, number;
-- table:   boards | Boards by size
-- shows:   size text "Size"
-- shows:   grade text "Grade"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   pieces count "Pieces" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- shows:   lineal_ft lineal "Lineal" total=sum
-- shows:   metric count "" hidden
-- grid:    rows=size,grade column=length_ft cell=pieces sums=pieces,bf,lineal_ft?
-- empty:   nothing tallied
SELECT size, grade, CASE WHEN form <> 'lineal' THEN length END AS length_ft, CASE WHEN max(form <> 'lineal') THEN sum(pieces) END AS pieces,
       sum(lumber) AS bf, sum(lineal) FILTER (WHERE form = 'lineal') AS lineal_ft, metric
FROM v_tally WHERE day BETWEEN :from AND :to
GROUP BY size, metric, thickness, width, grade, length_ft
HAVING sum(pieces) <> 0 OR sum(lumber) <> 0
ORDER BY metric, thickness, width, size, grade, length_ft;
-- table:   struck | Struck lines
-- shows:   job text "Job"
-- shows:   line text "Line"
-- shows:   pieces count "Pieces"
-- shows:   bf lumber "Lumber"
-- shows:   why text "Why"
-- shows:   struck_at text "Struck"
-- shows:   struck count "" strikes
-- empty:   no struck lines
SELECT job, text AS line, pieces, lumber AS bf, why, struck_at, 1 AS struck
FROM v_struck WHERE day BETWEEN :from AND :to
ORDER BY day, shift, revision, number;
