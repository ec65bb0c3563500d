-- report:  pace
-- title:   Board feet per hour, by job
-- meaning: Lumber of a job over its sawing time and its paid crew time. Crew time that a sheet writes under no job is
--          divided among the day's jobs by their sawing time. Pace is all lumber over all hours; a job without hours
--          shows a dash and stays out of the total pace.
-- takes:   from to job customer
-- example: pace --period "last month"
-- table:   pace |
-- shows:   job text "Job"
-- shows:   days count "Days"
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- shows:   crew_hours micro:2 "Crew" total=sum unit=h
-- shows:   bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- shows:   pieces_per_sawing_hour ratio:0 "Pieces per sawing hour" of=pieces/sawing_hours
-- picture: bar across=job up=bf_per_sawing_hour title="Board feet per sawing hour"
WITH runs AS (SELECT job_id, count(DISTINCT day) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces FROM v_run_id
              WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
                AND (:customer_id IS NULL OR customer_id = :customer_id)
              GROUP BY job_id),
sawing AS (SELECT job_id, sum(minutes) AS minutes FROM v_sawing
           WHERE job_id IS NOT NULL AND day BETWEEN :from AND :to GROUP BY job_id),
crew AS (SELECT job_id, sum(hours_micro) AS hours_micro FROM v_job_crew WHERE day BETWEEN :from AND :to GROUP BY job_id)
SELECT j.code AS job, r.days, r.lumber AS lumber_bf, r.pieces, s.minutes AS sawing_hours, w.hours_micro AS crew_hours
FROM runs r LEFT JOIN v_job j ON j.id = r.job_id LEFT JOIN sawing s ON s.job_id = r.job_id
  LEFT JOIN crew w ON w.job_id = r.job_id
ORDER BY j.code;
