SELECT sum(lumber), sum(pieces), group_concat(DISTINCT practice), sum(logs), sum(net), sum(unscaled_logs) FROM run WHERE day = :day;
SELECT sum(sawing_minutes), sum(stop_minutes), sum(crew_minutes) FROM sheet WHERE day = :day;
SELECT job.code, species.code, site.name, practice, logs, net, lumber, pieces, content, wood
FROM run r LEFT JOIN job ON job.id = r.job LEFT JOIN species ON species.id = r.species LEFT JOIN site ON site.id = r.site
WHERE day = :day ORDER BY shift, run;
SELECT tag, job.code, species.code, spec, l.gross, deduction, l.net, l.content, l.practice
FROM log l JOIN run r USING (day, shift, run) LEFT JOIN job ON job.id = r.job LEFT JOIN species ON species.id = r.species
WHERE state = 'sawn' AND l.day = :day ORDER BY l.shift, number;
SELECT cause, count(*), sum(minutes), sum(minutes * charge), group_concat(text, '; ') FROM stop WHERE day = :day GROUP BY cause;
SELECT saw, action, teeth, cause, log_tag, text FROM tooth_work WHERE day = :day ORDER BY shift, number;
SELECT size.label, grade.code, length, sum(pieces), sum(lumber)
FROM tally t JOIN size ON size.id = t.size LEFT JOIN grade ON grade.id = t.grade
WHERE t.day = :day GROUP BY 1, 2, 3 ORDER BY size.thickness, size.width, 2, 3;
SELECT text, pieces, lumber, why FROM struck WHERE day = :day ORDER BY shift, revision, number;
