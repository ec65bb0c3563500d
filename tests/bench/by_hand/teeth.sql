WITH lines AS (
  SELECT day, shift, sum(lumber) AS lumber, sum(CASE metric WHEN 1 THEN 32 ELSE 127 END * length
           * CASE form WHEN 'lineal' THEN 1 - 2 * (sense <> 'sawn') ELSE pieces END) AS lineal
  FROM tally GROUP BY day, shift),
sheets AS (
  SELECT s.day, s.shift, sum(coalesce(l.lumber, 0)) OVER w - coalesce(l.lumber, 0) AS lumber,
         sum(coalesce(l.lineal, 0)) OVER w - coalesce(l.lineal, 0) AS lineal, sum(s.sawing_minutes) OVER (ORDER BY s.day) AS minutes
  FROM sheet s LEFT JOIN lines l ON l.day = s.day AND l.shift = s.shift WINDOW w AS (ORDER BY s.day, s.shift)),
placed AS (
  SELECT w.*, s.minutes, s.lumber + (SELECT coalesce(sum(t.lumber), 0) FROM tally t
           WHERE t.day = w.day AND t.shift = w.shift AND t.number < w.number) AS lumber,
         s.lineal + (SELECT coalesce(sum(CASE t.metric WHEN 1 THEN 32 ELSE 127 END * t.length
             * CASE t.form WHEN 'lineal' THEN 1 - 2 * (t.sense <> 'sawn') ELSE t.pieces END), 0) FROM tally t
           WHERE t.day = w.day AND t.shift = w.shift AND t.number < w.number) AS lineal
  FROM tooth_work w JOIN sheets s ON s.day = w.day AND s.shift = w.shift)
SELECT p.day, p.saw, replace(p.action, '-', ' '), p.teeth, nullif(p.cause, ''), n.code, nullif(p.log_tag, ''), nullif(p.text, ''),
       p.lumber - lag(p.lumber) OVER saw_work, p.lineal - lag(p.lineal) OVER saw_work, p.minutes - lag(p.minutes) OVER saw_work
FROM placed p LEFT JOIN run r ON r.day = p.day AND r.shift = p.shift AND r.run = p.run LEFT JOIN species n ON n.id = r.species
WINDOW saw_work AS (PARTITION BY saw ORDER BY p.day, p.shift, p.number) ORDER BY p.day, p.shift, p.number;
SELECT 'Before any work on teeth or blades: power locked out, as the mill''s manual and local safety rules say.'
WHERE EXISTS (SELECT 1 FROM tooth_work);
SELECT saw, replace(action, '-', ' '), nullif(cause, ''), count(*), sum(teeth), (SELECT sum(lumber) FROM run)
FROM tooth_work GROUP BY saw, action, cause ORDER BY saw, 2, cause;
WITH p AS (
  SELECT r.species, count(*) AS times, sum(teeth) FILTER (WHERE action IN ('replaced', 'full-set')) AS replaced,
         sum(teeth) FILTER (WHERE action IN ('replaced', 'full-set') AND cause = 'metal') AS metal, NULL AS lumber
  FROM tooth_work w LEFT JOIN run r ON r.day = w.day AND r.shift = w.shift AND r.run = w.run GROUP BY r.species
  UNION ALL SELECT species, NULL, NULL, NULL, sum(lumber) FROM run GROUP BY species)
SELECT s.code, coalesce(sum(times), 0), sum(replaced), sum(metal), sum(lumber) FROM p LEFT JOIN species s ON s.id = p.species
GROUP BY p.species ORDER BY s.code;
