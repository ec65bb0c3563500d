-- report:  crew
-- title:   Crew hours by activity
-- meaning: Paid time as written on the sheets, by what it went into and by person. A 'crew' entry without an activity is
--          the day's work. Under a job, time written under no job counts with the job's part of the day's sawing time.
-- takes:   from to job
-- example: crew --period "last month"
-- worksheets: one
-- table:   crew | By activity
-- shows:   activity text "Activity"
-- shows:   hands count "People"
-- shows:   hours fine-hours "Time" total=sum
-- shows:   share_percent percent "Share" of=hours/all_hours once
-- shows:   all_hours fine-hours "" hidden
-- picture: bar across=activity up=hours title="Crew hours by activity"
-- empty:   no crew time in this period
WITH time AS (
  SELECT activity, name, sum(1000000 * minutes) AS minutes FROM v_crew
  WHERE day BETWEEN :from AND :to AND :job IS NULL GROUP BY activity, name
  UNION ALL
  SELECT activity, name, sum(minutes_micro) FROM v_job_crew
  WHERE day BETWEEN :from AND :to AND :job IS NOT NULL AND (:job_id IS NULL OR job_id = :job_id) GROUP BY activity, name)
SELECT coalesce(nullif(activity, ''), 'the day''s work') AS activity, count(DISTINCT name) AS hands, sum(minutes) AS hours,
       sum(sum(minutes)) OVER () AS all_hours
FROM time GROUP BY 1 ORDER BY sum(minutes) DESC, 1;
-- table:   hands | By person
-- shows:   name text "Name"
-- shows:   days count "Days"
-- shows:   hours fine-hours "Time" total=sum
-- empty:   no crew time in this period
SELECT name, count(DISTINCT day) AS days, sum(1000000 * minutes) AS hours FROM v_crew
WHERE day BETWEEN :from AND :to AND :job IS NULL GROUP BY name
UNION ALL
SELECT name, count(DISTINCT day), sum(minutes_micro) FROM v_job_crew
WHERE day BETWEEN :from AND :to AND :job IS NOT NULL AND (:job_id IS NULL OR job_id = :job_id) GROUP BY name
ORDER BY name;
