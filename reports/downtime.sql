-- report:  downtime
-- title:   Stops by cause
-- meaning: Every stop written on a sheet, by cause. Minutes per MBF is stopped time over all lumber of the period (also
--          that of days without a stop). Chargeable is what was marked 'charge'.
-- takes:   from to job customer site
-- example: downtime --period season
-- table:   downtime |
-- shows:   cause text "Cause"
-- shows:   stops count "Stops" total=sum
-- shows:   minutes minutes "Time" total=sum
-- shows:   share_percent percent "Share" of=minutes/all_minutes once
-- shows:   minutes_per_mbf ratio:1 "min per MBF" of=minutes/lumber once per=mbf
-- shows:   chargeable_minutes minutes "Chargeable" total=sum
-- shows:   all_minutes minutes "" hidden
-- shows:   lumber lumber "" hidden
-- picture: bar across=cause up=minutes title="Minutes stopped by cause"
-- empty:   no stop in this period
WITH stops AS (
  SELECT cause, count(*) AS stops, sum(minutes) AS minutes, sum(minutes * charge) AS charged FROM v_stop
  WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
    AND (:customer_id IS NULL OR customer_id = :customer_id) AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY cause)
SELECT cause, stops, minutes, charged AS chargeable_minutes, (SELECT sum(minutes) FROM stops) AS all_minutes,
       (SELECT sum(lumber) FROM v_run_id WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
          AND (:customer_id IS NULL OR customer_id = :customer_id) AND (:site_id IS NULL OR site_id = :site_id)) AS lumber
FROM stops ORDER BY minutes DESC, cause;
-- table:   stops | Every stop
-- shows:   day day "Day"
-- shows:   began text "At"
-- shows:   cause text "Cause"
-- shows:   minutes minutes "Time" total=sum
-- shows:   charged_to text "Charge"
-- shows:   text text "What"
-- empty:   no stop in this period
SELECT day, CASE WHEN from_minute IS NOT NULL THEN printf('%d:%02d', from_minute / 60, from_minute % 60) END AS began, cause,
       minutes, CASE WHEN charge THEN coalesce(job, 'yes') END AS charged_to, nullif(text, '') AS text
FROM v_stop
WHERE day BETWEEN :from AND :to AND (:job_id IS NULL OR job_id = :job_id)
  AND (:customer_id IS NULL OR customer_id = :customer_id) AND (:site_id IS NULL OR site_id = :site_id)
ORDER BY day, shift, number;
