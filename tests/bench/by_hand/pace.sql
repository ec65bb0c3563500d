WITH r AS (SELECT job, count(DISTINCT CASE WHEN logs > 0 OR lines > 0 THEN day END) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces
  FROM run GROUP BY job),
d AS (SELECT day, job, sum(minutes) AS minutes FROM sawing GROUP BY day, job),
w AS (SELECT day, job, minutes, sum(minutes) OVER (PARTITION BY day ORDER BY job) AS upto, sum(minutes) OVER (PARTITION BY day) AS whole FROM d),
c AS (SELECT job, 1000000 * minutes AS micro FROM crew WHERE job IS NOT NULL OR day NOT IN (SELECT day FROM d)
      UNION ALL SELECT w.job, (2000000 * c.minutes * w.upto + w.whole) / (2 * w.whole)
                              - (2000000 * c.minutes * (w.upto - w.minutes) + w.whole) / (2 * w.whole)
      FROM w JOIN crew c ON c.day = w.day AND c.job IS NULL),
p AS (SELECT job, days, lumber, pieces, NULL AS sawing, NULL AS micro FROM r
      UNION ALL SELECT job, NULL, NULL, NULL, sum(minutes), NULL FROM sawing GROUP BY job
      UNION ALL SELECT job, NULL, NULL, NULL, NULL, sum(micro) FROM c GROUP BY job),
g AS (SELECT job, sum(days) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces, sum(sawing) AS sawing, sum(micro) AS micro FROM p GROUP BY job)
SELECT j.code, coalesce(days, 0), lumber, pieces, sawing, micro FROM g LEFT JOIN job j ON j.id = g.job ORDER BY j.code;
