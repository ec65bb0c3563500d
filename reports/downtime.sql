-- report:  downtime
-- title:   Stops by cause
-- meaning: Every stop written on a sheet, by cause. Minutes per MBF is stopped time over all lumber of the period (also
--          that of days without a stop). Chargeable is what was marked 'charge'.
-- filters: from to job customer site
-- example: downtime --period season
-- table:   downtime |
-- column:  cause text "Cause"
-- column:  stops count "Stops" total=sum
-- column:  minutes minutes "Time" total=sum
-- column:  share_percent percent "Share" of=minutes/all_minutes once
-- column:  minutes_per_mbf ratio:1 "min per MBF" of=minutes/lumber once per=mbf
-- column:  chargeable_minutes minutes "Chargeable" total=sum
-- column:  all_minutes minutes "" hidden
-- column:  lumber lumber "" hidden
-- chart:   bar x=cause y=minutes title="Minutes stopped by cause"
-- empty:   no stop in this period
WITH stops AS (
  SELECT s.cause, s.minutes, s.charge FROM v_stop s LEFT JOIN v_job j ON j.code = s.job
  WHERE s.day BETWEEN :from AND :to AND (:job IS NULL OR s.job = :job) AND (:customer IS NULL OR j.customer = :customer)
    AND (:site IS NULL OR s.site = :site))
SELECT cause, count(*) AS stops, sum(minutes) AS minutes, sum(minutes * charge) AS chargeable_minutes,
       (SELECT sum(minutes) FROM stops) AS all_minutes,
       (SELECT sum(lumber) FROM v_run WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
          AND (:customer IS NULL OR customer = :customer) AND (:site IS NULL OR site = :site)) AS lumber
FROM stops GROUP BY cause ORDER BY sum(minutes) DESC, cause;
-- table:   stops | Every stop
-- column:  day day "Day"
-- column:  began text "At"
-- column:  cause text "Cause"
-- column:  minutes minutes "Time" total=sum
-- column:  charged_to text "Charge"
-- column:  text text "What"
-- empty:   no stop in this period
SELECT s.day, CASE WHEN s.from_minute IS NOT NULL THEN printf('%d:%02d', s.from_minute / 60, s.from_minute % 60) END AS began, s.cause, s.minutes,
       CASE WHEN s.charge THEN coalesce(s.job, 'yes') END AS charged_to, nullif(s.text, '') AS text
FROM v_stop s LEFT JOIN v_job j ON j.code = s.job
WHERE s.day BETWEEN :from AND :to AND (:job IS NULL OR s.job = :job) AND (:customer IS NULL OR j.customer = :customer)
  AND (:site IS NULL OR s.site = :site)
ORDER BY s.day, s.shift, s.number;
