WITH part AS (SELECT activity, name, sum(minutes) AS minutes FROM crew GROUP BY activity, name)
SELECT coalesce(nullif(activity, ''), 'the day''s work'), count(DISTINCT name), 1000000 * sum(minutes), 1000000 * sum(sum(minutes)) OVER ()
FROM part GROUP BY 1 ORDER BY 3 DESC, 1;
SELECT name, count(DISTINCT day), 1000000 * sum(minutes) FROM crew GROUP BY name ORDER BY name;
