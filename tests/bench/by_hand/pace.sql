WITH r AS (SELECT job, count(DISTINCT day) AS days, sum(lumber) AS lumber, sum(pieces) AS pieces FROM run GROUP BY job),
s AS (SELECT job, sum(minutes) AS minutes FROM sawing WHERE job IS NOT NULL GROUP BY job),
d AS (SELECT day, job, sum(minutes) AS minutes FROM sawing WHERE job IS NOT NULL GROUP BY day, job),
f AS (SELECT day, sum(minutes) AS minutes FROM crew WHERE job IS NULL GROUP BY day),
a AS (SELECT day, sum(minutes) AS minutes FROM d GROUP BY day),
c AS (SELECT job, sum(micro) AS micro FROM (
        SELECT job, (2 * 1000000 * minutes + 60) / (2 * 60) AS micro FROM crew WHERE job IS NOT NULL
        UNION ALL SELECT d.job, (2 * 1000000 * d.minutes * f.minutes + 60 * a.minutes) / (2 * 60 * a.minutes)
        FROM d JOIN a ON a.day = d.day JOIN f ON f.day = d.day) GROUP BY job)
SELECT j.code, r.days, r.lumber, r.pieces, s.minutes, c.micro
FROM r LEFT JOIN job j ON j.id = r.job LEFT JOIN s ON s.job = r.job LEFT JOIN c ON c.job = r.job ORDER BY j.code;
