-- The views of lumber: tallied, sold, divided, loaded, and what lies on the yard.

CREATE VIEW v_tally AS   -- one row a tally line
SELECT t.day, t.shift, t.number, t.run, job.code AS job, job.owner AS owner, customer.code AS customer,
       site.name AS site, species.code AS species, grade.code AS grade, t.bundle, t.sense AS entry, t.form,
       size.label AS size, size.thickness, size.width, t.metric, t.length, t.pieces, t.lumber, t.wood, t.reason,
       CASE t.metric WHEN 1 THEN 32 ELSE 127 END
         * CASE t.form WHEN 'lineal' THEN 1 - 2 * (t.sense <> 'sawn') ELSE t.pieces END
         * t.length AS lineal
FROM tally t
  JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN size ON size.id = t.size
  LEFT JOIN grade ON grade.id = t.grade
  LEFT JOIN site ON site.id = r.site
  LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer
  LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_tally_id AS   -- v_tally in numbers; v_run_id has the line's job and species, v_size and v_grade the names
SELECT day, shift, number, run, size AS size_id, grade AS grade_id, bundle, sense AS entry, form, metric, length,
       pieces, lumber, wood, reason,
       CASE metric WHEN 1 THEN 32 ELSE 127 END
         * CASE form WHEN 'lineal' THEN 1 - 2 * (sense <> 'sawn') ELSE pieces END
         * length AS lineal
FROM tally;

CREATE VIEW v_cut_list AS   -- one row a line of a job's cut list
SELECT job.code AS job, c.job AS job_id, c.line, size.label AS size, size.thickness, size.width, size.stack, c.length,
       c.metric, grade.code AS grade, c.grade AS grade_id, c.pieces
FROM cut_list c
  JOIN job ON job.id = c.job
  JOIN size ON size.id = c.size
  LEFT JOIN grade ON grade.id = c.grade;

CREATE VIEW v_sold AS    -- one row a line of own lumber sold in the yard
SELECT s.day, s.shift, s.number, s.buyer, species.code AS species, size.label AS size, size.thickness, size.width,
       grade.code AS grade, s.bundle, s.pieces, s.length, s.metric, s.lumber, s.rate_micro,
       s.rate_per, s.form
FROM sold s
  JOIN size ON size.id = s.size
  LEFT JOIN grade ON grade.id = s.grade
  LEFT JOIN species ON species.id = s.species;

CREATE VIEW v_sold_bundle AS  -- one row a bundle of own lumber sold whole
SELECT day, shift, number, buyer, bundle, price_micro
FROM sold_bundle;

CREATE VIEW v_whole_bundle AS  -- one row a line of a bundle of own lumber sold whole: what was in it since it was last
                               -- sold whole
SELECT b.day, b.shift, b.number, b.buyer, b.bundle,
       (SELECT code FROM species s WHERE s.id = l.species) COLLATE NOCASE AS species,
       (SELECT code FROM grade g WHERE g.id = l.grade) COLLATE NOCASE AS grade,
       size.label AS size, size.thickness, size.width,
       nullif(l.length, 0) AS length, l.metric, l.pieces, l.along, l.lumber
FROM sold_bundle_line l
  JOIN sold_bundle b ON b.day = l.day AND b.shift = l.shift AND b.number = l.number
  JOIN size ON size.id = l.size;

CREATE VIEW v_load AS    -- one row a line of a load slip; taken_back: the day its lumber was here again, NULL when it
                         -- is gone
SELECT p.number, p.day, p.job, job.id AS job_id, coalesce(job.owner, 'customer') AS owner, p.customer,
       l.line, l.bundle, l.species, l.grade, l.size, l.thickness, l.width, l.length, l.metric, l.pieces,
       lumber_of(l.thickness, l.width, l.length, l.metric) * max(l.pieces, 1) AS lumber,
       (SELECT t.day FROM paper t WHERE t.slip = p.number) AS taken_back
FROM paper p
  LEFT JOIN job ON job.code = p.job
  JOIN paper_load l ON l.entry = p.entry;

CREATE VIEW v_paper_share AS  -- one row a line of a division of lumber; length 0: to_customer and to_mill are lengths,
                              -- not pieces
SELECT p.number, p.day, p.job, p.customer, s.line, s.bundle, s.species, s.grade, s.size, s.thickness, s.width,
       s.length, s.metric, s.to_customer, s.to_mill,
       CASE s.length WHEN 0 THEN lumber_of(s.thickness, s.width, s.to_mill, s.metric)
            ELSE lumber_of(s.thickness, s.width, s.length, s.metric) * s.to_mill END AS mill_lumber
FROM paper_share s
  JOIN paper p ON p.entry = s.entry;

CREATE VIEW v_stock_id AS  -- v_stock in numbers, a bundle by its tag in small letters, a size by that of its
                           -- stack; shift: of a sheet
-- (cast so that a column is of one kind in every part: SQLite then reads the parts without a copy between)
-- what was cut
SELECT t.day, t.shift, 'cut' AS movement, job.owner, r.job AS job_id, lower(t.bundle) AS tag,
       r.species AS species_id, t.grade AS grade_id, s.stack AS size_id, t.metric,
       CASE WHEN t.form <> 'lineal' THEN t.length END AS length, +t.pieces AS pieces,
       CASE WHEN t.form <> 'lineal' THEN 0 WHEN t.sense = 'sawn' THEN t.length ELSE -t.length END AS along,
       +t.lumber AS lumber
FROM tally t
  JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN size s ON s.id = t.size
  LEFT JOIN job ON job.id = r.job
UNION ALL
-- what a division gave the mill: off the job, and on its own stock
SELECT s.day, CAST(NULL AS INTEGER), 'share', CAST(o.owner AS TEXT),
       CAST(CASE o.owner WHEN 'shares' THEN (SELECT id FROM job WHERE code = s.job) END AS INTEGER),
       CASE o.owner WHEN 'shares' THEN lower(nullif(s.bundle, '')) END,
       (SELECT id FROM species WHERE code = s.species), (SELECT id FROM grade WHERE code = s.grade),
       CAST((SELECT min(z.stack)
             FROM size z
             WHERE z.metric = s.metric AND z.thickness = s.thickness AND z.width = s.width) AS INTEGER),
       s.metric, nullif(s.length, 0), CASE WHEN s.length > 0 THEN o.side * s.to_mill ELSE 0 END,
       CASE WHEN s.length > 0 THEN 0 ELSE o.side * s.to_mill END, o.side * s.mill_lumber
FROM v_paper_share s
  JOIN (SELECT 'shares' AS owner, -1 AS side UNION ALL SELECT 'own', 1) o
WHERE s.to_mill <> 0
UNION ALL
-- what was sold by the piece or the foot
SELECT x.day, x.shift, 'sold', CAST('own' AS TEXT), CAST(NULL AS INTEGER), lower(x.bundle), x.species, x.grade,
       s.stack, x.metric, CASE WHEN x.form <> 'lineal' THEN x.length END, -x.pieces,
       CASE x.form WHEN 'lineal' THEN -x.length ELSE 0 END, -x.lumber
FROM sold x
  JOIN size s ON s.id = x.size
UNION ALL
-- what was sold by the bundle
SELECT l.day, l.shift, 'sold', CAST('own' AS TEXT), CAST(NULL AS INTEGER), lower(b.bundle),
       CAST(nullif(l.species, 0) AS INTEGER), CAST(nullif(l.grade, 0) AS INTEGER),
       s.stack, l.metric, nullif(l.length, 0), -l.pieces, -l.along, -l.lumber
FROM sold_bundle_line l
  JOIN sold_bundle b ON b.day = l.day AND b.shift = l.shift AND b.number = l.number
  JOIN size s ON s.id = l.size
UNION ALL
-- what was loaded
SELECT l.day, CAST(NULL AS INTEGER), 'delivered', CAST(l.owner AS TEXT), l.job_id, lower(nullif(l.bundle, '')),
       (SELECT id FROM species WHERE code = l.species), (SELECT id FROM grade WHERE code = l.grade),
       CAST((SELECT min(z.stack)
             FROM size z
             WHERE z.metric = l.metric AND z.thickness = l.thickness AND z.width = l.width) AS INTEGER),
       l.metric, CASE WHEN l.pieces > 0 THEN l.length END, -l.pieces,
       CASE WHEN l.pieces > 0 THEN 0 ELSE -l.length END, -l.lumber
FROM v_load l
UNION ALL
-- and what of it was taken back
SELECT l.taken_back, CAST(NULL AS INTEGER), 'delivered', CAST(l.owner AS TEXT), l.job_id,
       lower(nullif(l.bundle, '')),
       (SELECT id FROM species WHERE code = l.species), (SELECT id FROM grade WHERE code = l.grade),
       CAST((SELECT min(z.stack)
             FROM size z
             WHERE z.metric = l.metric AND z.thickness = l.thickness AND z.width = l.width) AS INTEGER),
       l.metric, CASE WHEN l.pieces > 0 THEN l.length END, +l.pieces,
       CASE WHEN l.pieces > 0 THEN 0 ELSE l.length END, +l.lumber
FROM v_load l
WHERE l.taken_back IS NOT NULL;

CREATE VIEW v_stock AS   -- one row a movement of lumber: cut, share (to the mill's own stock), sold, delivered (and,
                         -- above 0, a load taken back); going out is below 0
SELECT day, movement, owner, (SELECT code FROM job j WHERE j.id = job_id) COLLATE NOCASE AS job,
       coalesce((SELECT t.bundle
                 FROM tally t
                 WHERE t.bundle = tag COLLATE NOCASE
                 ORDER BY t.day, t.shift, t.number
                 LIMIT 1), tag) AS bundle,
       (SELECT code FROM species s WHERE s.id = species_id) COLLATE NOCASE AS species,
       (SELECT code FROM grade g WHERE g.id = grade_id) COLLATE NOCASE AS grade,
       size.label AS size, size.thickness, size.width, length, m.metric, pieces, along, lumber
FROM v_stock_id m
  JOIN size ON size.id = size_id;

CREATE VIEW v_on_hand AS -- one row a stack of own lumber that lies on the yard today, in numbers as v_stock_id: quick
                         -- after many years
SELECT nullif(bundle, '') AS tag, nullif(species, 0) AS species_id, nullif(grade, 0) AS grade_id, size AS size_id,
       metric, nullif(length, 0) AS length, pieces, along, lumber
FROM own_stock;

CREATE VIEW v_still_here AS  -- one row a job, bundle and species of customers' lumber: pieces cut, given to the mill
                             -- and delivered so far
SELECT job AS job_id, nullif(bundle, '') AS tag, nullif(species, 0) AS species_id, cut, to_mill, delivered,
       cut - to_mill - delivered AS pieces, lumber
FROM job_stock;
