SELECT cause, count(*), sum(minutes), sum(minutes * charge), sum(sum(minutes)) OVER (), (SELECT sum(lumber) FROM run)
FROM stop GROUP BY cause ORDER BY 3 DESC, cause;
SELECT s.day, CASE WHEN s.from_minute IS NOT NULL THEN printf('%d:%02d', s.from_minute / 60, s.from_minute % 60) END, s.cause,
       s.minutes, CASE WHEN s.charge THEN coalesce(job.code, 'yes') END, nullif(s.text, '')
FROM stop s LEFT JOIN job ON s.charge AND job.id = s.job ORDER BY s.day, s.shift, s.number;
