-- report:  pace
-- title:   Board feet per hour, by job
-- meaning: Lumber of a job over its sawing time and its paid crew time. Crew time that a sheet writes under no job is
--          shared out by the day's sawing time; on a day without sawing it stays under no job, in the line with a dash for
--          the job. Days are those with a log or a board. The total pace is all lumber over all hours, those of days
--          without sawing too.
-- takes:   from to job customer
-- example: pace --period "last month"
-- table:   pace |
-- shows:   job text "Job"
-- shows:   days count "Days"
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- shows:   crew_hours fine-hours "Crew" total=sum
-- shows:   bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- shows:   pieces_per_sawing_hour ratio:0 "Pieces per sawing hour" of=pieces/sawing_hours
-- picture: bar across=job up=bf_per_sawing_hour title="Board feet per sawing hour"
WITH runs AS (SELECT job_id, count(DISTINCT CASE WHEN logs > 0 OR lines > 0 THEN day END) AS days, sum(lumber) AS lumber,
                     sum(pieces) AS pieces
              FROM v_run_id
              WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
                AND (:customer_id IS NULL OR customer_id = :customer_id)
              GROUP BY job_id),
part AS (
  SELECT job_id, days, lumber, pieces, NULL AS sawing, NULL AS crew FROM runs
  UNION ALL
  SELECT job_id, NULL, NULL, NULL, minutes, NULL FROM v_sawing
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
    AND (:customer_id IS NULL OR customer_id = :customer_id)
  UNION ALL
  SELECT job_id, NULL, NULL, NULL, NULL, minutes_micro FROM v_job_crew
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
    AND (:customer_id IS NULL OR customer_id = :customer_id)),
jobs AS (SELECT job_id, sum(days) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces, sum(sawing) AS sawing, sum(crew) AS crew
         FROM part GROUP BY job_id)
SELECT j.code AS job, coalesce(p.days, 0) AS days, p.lumber AS lumber_bf, p.pieces, p.sawing AS sawing_hours, p.crew AS crew_hours
FROM jobs p LEFT JOIN v_job j ON j.id = p.job_id
ORDER BY j.code;
