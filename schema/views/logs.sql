-- The views of logs.

CREATE VIEW v_log AS     -- one row a log received, sawn, or left half-sawn
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, CASE WHEN l.practice IS NOT NULL THEN r.unit END AS scale_unit,
       l.gross, l.deduction, l.net, l.cull, l.content, l.defect, l.origin,
       job.code AS job, customer.code AS customer, site.name AS site, species.code AS species
FROM log l
  JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  LEFT JOIN site ON site.id = r.site
  LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer
  LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_log_id AS  -- v_log in numbers; v_run_id has the log's job, species and site
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule,
       CASE WHEN l.practice IS NOT NULL
            THEN (SELECT unit FROM run r WHERE r.day = l.day AND r.shift = l.shift AND r.run = l.run)
       END AS scale_unit,
       l.gross, l.deduction, l.net, l.cull, l.content, l.defect, l.origin
FROM log l;

CREATE VIEW v_deck AS    -- one row a log that lies on the deck today: received or left half-sawn, and not sawn since
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, CASE WHEN l.practice IS NOT NULL THEN r.unit END AS scale_unit,
       l.gross, l.deduction, l.net, l.cull, l.content, l.defect, l.origin,
       r.job AS job_id, job.code AS job, job.customer AS customer_id, r.site AS site_id,
       r.species AS species_id, species.code AS species
FROM on_deck d
  CROSS JOIN log l ON l.day = d.day AND l.shift = d.shift AND l.number = d.number
  JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  LEFT JOIN job ON job.id = r.job
  LEFT JOIN species ON species.id = r.species;
