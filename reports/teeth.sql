-- report:  teeth
-- title:   Tooth and blade work
-- meaning: For every piece of work on a saw, the lumber and lineal feet sawn since the work on that saw before it ('less'
--          and 'resaw' taken off), in the order the sheets give, and the sawing hours of the days after that one up to
--          and with this one (hours are known by day only). A dash: the first work on a saw in the book, with nothing known before
--          it.
-- takes:   from to job
-- example: teeth --period season
-- table:   teeth |
-- shows:   day day "Day"
-- shows:   saw text "Saw"
-- shows:   action text "Work"
-- shows:   teeth count "Teeth" total=sum
-- shows:   cause text "Cause"
-- shows:   species text "Species"
-- shows:   log text "Log"
-- shows:   since_bf lumber:0 "Lumber since"
-- shows:   since_lineal_ft lineal:0 "Lineal since"
-- shows:   since_hours hours:1 "Sawing since"
-- shows:   text text "Remark"
-- empty:   no tooth work in this period
WITH work AS (   -- of the period, and back to the work before it on each of its saws
  SELECT * FROM v_tooth_work WHERE day <= :to AND day >= (
    SELECT min(coalesce((SELECT max(day) FROM v_tooth_work p WHERE p.saw = saws.saw AND p.day < :from), :from))
    FROM (SELECT DISTINCT saw FROM v_tooth_work WHERE day BETWEEN :from AND :to) saws)),
sheets AS (      -- what was sawn before each sheet, counted from some day on; hours with the sheet's whole day
  SELECT day, shift, sum(lumber) OVER so_far - lumber AS lumber, sum(lineal) OVER so_far - lineal AS lineal,
         sum(sawing_minutes) OVER (ORDER BY day) AS minutes
  FROM v_sheet WHERE day BETWEEN (SELECT min(day) FROM work) AND :to
  WINDOW so_far AS (ORDER BY day, shift)),
placed AS (
  SELECT w.*, s.minutes, s.lumber + (SELECT coalesce(sum(t.lumber), 0) FROM v_tally_id t
           WHERE t.day = w.day AND t.shift = w.shift AND t.number < w.number) AS lumber,
         s.lineal + (SELECT coalesce(sum(t.lineal), 0) FROM v_tally_id t
           WHERE t.day = w.day AND t.shift = w.shift AND t.number < w.number) AS lineal
  FROM work w JOIN sheets s ON s.day = w.day AND s.shift = w.shift)
SELECT day, saw, replace(action, '-', ' ') AS action, teeth, nullif(cause, '') AS cause, species,
       nullif(log_tag, '') AS log, nullif(text, '') AS text, since_bf, since_lineal_ft, since_hours
FROM (SELECT *, lumber - lag(lumber) OVER saw_work AS since_bf, lineal - lag(lineal) OVER saw_work AS since_lineal_ft,
             minutes - lag(minutes) OVER saw_work AS since_hours
      FROM placed WINDOW saw_work AS (PARTITION BY saw ORDER BY day, shift, number))
WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
ORDER BY day, shift, number;
-- notes:
SELECT 'Before any work on teeth or blades: power locked out, as the mill''s manual and local safety rules say.'
WHERE EXISTS (SELECT 1 FROM v_tooth_work WHERE day BETWEEN :from AND :to);
-- table:   causes | By saw, work and cause
-- shows:   saw text "Saw"
-- shows:   action text "Work"
-- shows:   cause text "Cause"
-- shows:   times count "Times" total=sum
-- shows:   teeth count "Teeth" total=sum
-- shows:   teeth_per_mbf ratio:2 "Teeth per MBF" of=teeth/lumber once per=mbf total=none
-- shows:   lumber lumber "" hidden
-- note:    Teeth per MBF is over all lumber of the period, whatever the species.
-- empty:   no tooth work in this period
SELECT saw, replace(action, '-', ' ') AS action, nullif(cause, '') AS cause, count(*) AS times, sum(teeth) AS teeth,
       (SELECT sum(lumber) FROM v_run_id WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)) AS lumber
FROM v_tooth_work WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
GROUP BY saw, 2, v_tooth_work.cause ORDER BY saw, 2, v_tooth_work.cause;
-- table:   species | By species
-- shows:   species text "Species"
-- shows:   times count "Times" total=sum
-- shows:   replaced count "Teeth replaced" total=sum
-- shows:   metal count "Replaced for metal" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   teeth_per_mbf ratio:2 "Replaced per MBF" of=replaced/lumber_bf per=mbf
-- note:    Replaced per MBF is over the species' own lumber, full sets counted as replaced. Work between runs has no species.
-- empty:   no tooth work in this period
WITH part AS (
  SELECT species_id, count(*) AS times, sum(teeth) FILTER (WHERE action IN ('replaced', 'full-set')) AS replaced,
         sum(teeth) FILTER (WHERE action IN ('replaced', 'full-set') AND cause = 'metal') AS metal, NULL AS lumber
  FROM v_tooth_work WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id) GROUP BY species_id
  UNION ALL
  SELECT species_id, NULL, NULL, NULL, sum(lumber) FROM v_run_id
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id) GROUP BY species_id)
SELECT s.code AS species, coalesce(sum(times), 0) AS times, sum(replaced) AS replaced, sum(metal) AS metal, sum(lumber) AS lumber_bf
FROM part LEFT JOIN v_species s ON s.id = species_id
WHERE EXISTS (SELECT 1 FROM part WHERE times > 0)
GROUP BY species_id ORDER BY s.code;
