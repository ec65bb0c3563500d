-- report:  teeth
-- title:   Tooth and blade work
-- meaning: For every piece of work on a saw, the lumber and lineal feet sawn since the work on that saw before it, in
--          the order the sheets give, and the sawing hours of the days after that one up to and with this one (hours
--          are known by day only). A dash for the first work on a saw in the book: nothing is known before it.
-- filters: from to job
-- example: teeth --period season
-- table:   teeth |
-- column:  day day "Day"
-- column:  saw text "Saw"
-- column:  action text "Work"
-- column:  teeth count "Teeth" total=sum
-- column:  cause text "Cause"
-- column:  species text "Species"
-- column:  log text "Log"
-- column:  since_bf lumber:0 "Lumber since"
-- column:  since_lineal_ft feet:0 "Lineal since"
-- column:  since_hours hours:1 "Sawing since"
-- column:  text text "Remark"
-- empty:   no tooth work in this period
WITH work AS (
  SELECT *, lag(day) OVER saw_work AS last_day, lag(shift) OVER saw_work AS last_shift,
         lag(number) OVER saw_work AS last_number
  FROM v_tooth_work WHERE day <= :to
  WINDOW saw_work AS (PARTITION BY saw ORDER BY day, shift, number))
SELECT w.day, w.saw, replace(w.action, '-', ' ') AS action, w.teeth, nullif(w.cause, '') AS cause, w.species,
       nullif(w.log_tag, '') AS log, nullif(w.text, '') AS text,
       CASE WHEN w.last_day IS NOT NULL THEN (
         SELECT coalesce(sum(t.lumber), 0) FROM v_tally t WHERE t.day BETWEEN w.last_day AND w.day
           AND (t.day, t.shift, t.number) > (w.last_day, w.last_shift, w.last_number)
           AND (t.day, t.shift, t.number) < (w.day, w.shift, w.number)) END AS since_bf,
       CASE WHEN w.last_day IS NOT NULL THEN (
         SELECT coalesce(sum(t.length * CASE WHEN t.form = 'lineal' THEN 1 ELSE t.pieces END), 0)
         FROM v_tally t WHERE t.day BETWEEN w.last_day AND w.day
           AND (t.day, t.shift, t.number) > (w.last_day, w.last_shift, w.last_number)
           AND (t.day, t.shift, t.number) < (w.day, w.shift, w.number)) END AS since_lineal_ft,
       CASE WHEN w.last_day IS NOT NULL THEN (
         SELECT sum(s.sawing_minutes) FROM v_sheet s WHERE s.day > w.last_day AND s.day <= w.day) END AS since_hours
FROM work w
WHERE w.day BETWEEN :from AND :to AND (:job IS NULL OR w.job = :job)
ORDER BY w.day, w.shift, w.number;
-- notes:
SELECT 'Before any work on teeth or blades: power locked out, as the mill''s manual and local safety rules say.'
WHERE EXISTS (SELECT 1 FROM v_tooth_work WHERE day BETWEEN :from AND :to);
-- table:   causes | By saw, work and cause
-- column:  saw text "Saw"
-- column:  action text "Work"
-- column:  cause text "Cause"
-- column:  species text "Species"
-- column:  times count "Times" total=sum
-- column:  teeth count "Teeth" total=sum
-- column:  teeth_per_mbf ratio:2 "Teeth per MBF" of=teeth/lumber once per=mbf
-- column:  lumber lumber "" hidden
-- empty:   no tooth work in this period
SELECT saw, replace(action, '-', ' ') AS action, nullif(cause, '') AS cause, species, count(*) AS times,
       sum(teeth) AS teeth,
       (SELECT sum(lumber) FROM v_run WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)) AS lumber
FROM v_tooth_work WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
GROUP BY saw, action, cause, species ORDER BY saw, action, cause, species;
