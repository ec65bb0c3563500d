-- report:  moves
-- title:   Moves and sites
-- meaning: Every move between sites with its distance and the time written for it (take-down, road and set-up
--          together), then what was done at each site.
-- takes:   from to job
-- example: moves --period season
-- table:   moves | Moves
-- shows:   day day "Day"
-- shows:   from_site text "From"
-- shows:   to_site text "To"
-- shows:   job text "Job"
-- shows:   distance micro:1 "Distance" total=sum unit-from=unit
-- shows:   hours hours "Time" total=sum
-- shows:   unit text "" hidden
-- empty:   no move in this period
SELECT day, from_site, to_site, job, distance_micro AS distance, nullif(minutes, 0) AS hours, unit FROM v_move
WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
ORDER BY day, shift, number;
-- table:   sites | Sites
-- shows:   site text "Site"
-- shows:   days count "Days"
-- shows:   logs count "Logs" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- empty:   nothing sawn in this period
WITH part AS (
  SELECT site_id, day, logs, lumber, NULL AS minutes FROM v_run_id
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
  UNION ALL
  SELECT site_id, day, NULL, NULL, minutes FROM v_sawing
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)),
sites AS (SELECT site_id, count(DISTINCT day) AS days, sum(logs) AS logs, sum(lumber) AS lumber, sum(minutes) AS minutes
          FROM part GROUP BY site_id)
SELECT s.name AS site, days, logs, lumber AS lumber_bf, minutes AS sawing_hours
FROM sites LEFT JOIN v_site s ON s.id = site_id ORDER BY s.name;
