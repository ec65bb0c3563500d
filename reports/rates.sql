-- report:  rates
-- title:   Board feet an hour by job
-- meaning: Lumber of a job over its sawing time and its paid crew time. Crew time that a sheet writes under no job is
--          divided among the day's jobs by their sawing time. A rate is all lumber over all hours; a job without hours
--          shows a dash and stays out of the total rate.
-- filters: from to job customer
-- example: rates --period "last month"
-- table:   rates |
-- column:  job text "Job"
-- column:  days count "Days"
-- column:  lumber_bf lumber "Lumber" total=sum
-- column:  pieces count "Pieces" total=sum
-- column:  sawing_hours hours "Sawing" total=sum
-- column:  bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- column:  crew_hours micro:2 "Crew" total=sum unit=h
-- column:  bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- column:  pieces_per_sawing_hour ratio:0 "Pieces per sawing hour" of=pieces/sawing_hours
-- chart:   bar x=job y=bf_per_sawing_hour title="Board feet a sawing hour"
WITH runs AS (SELECT job, count(DISTINCT day) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces FROM v_run
              WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
                AND (:customer IS NULL OR customer = :customer)
              GROUP BY job),
crew AS (SELECT job, sum(hours_micro) AS hours_micro FROM v_job_crew WHERE day BETWEEN :from AND :to GROUP BY job)
SELECT r.job, r.days, r.lumber AS lumber_bf, r.pieces,
       (SELECT sum(minutes) FROM v_sawing s WHERE s.job = r.job AND s.day BETWEEN :from AND :to) AS sawing_hours,
       w.hours_micro AS crew_hours
FROM runs r LEFT JOIN crew w ON w.job = r.job ORDER BY r.job;
