-- The views reports read. A report sees these and nothing else. Made anew whenever a book is opened by a program
-- whose views differ, so they are not numbered. Units are those of 001_book.sql; `day` is days since 1970-01-01.

CREATE VIEW v_sheet AS   -- one row a sheet (day and shift) with the totals of its runs, kept by posting: quick over many years
SELECT day, shift, revision, sawing_minutes, stop_minutes, crew_minutes, charge_minutes, runs, sites, rules,
       units AS scale_units, lines, logs, unscaled_logs, net, pieces, lumber, lineal, counted_lumber, counted_net
FROM sheet;

CREATE VIEW v_run AS     -- one row a run: logs in and boards out of one site, job, species and set-up in a sheet
SELECT r.day, r.shift, r.run, site.name AS site, job.code AS job, job.owner AS owner, customer.code AS customer,
       species.code AS species, species.kind AS species_group,
       coalesce(setup.name, (SELECT su.name FROM setup_change c JOIN setup su ON su.id = c.setup
          WHERE (c.day, c.shift) < (r.day, r.shift) ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1)) AS setup,
       r.practice AS rule, r.unit AS scale_unit, r.logs, r.unscaled_logs, r.gross, r.net, r.content,
       r.lines, r.pieces, r.lumber, r.wood
FROM run r LEFT JOIN site ON site.id = r.site LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer LEFT JOIN species ON species.id = r.species
  LEFT JOIN setup ON setup.id = r.setup;

CREATE VIEW v_run_id AS  -- v_run in numbers, which v_job, v_site, v_species and v_setup name: quicker to add up by
SELECT r.day, r.shift, r.run, r.site AS site_id, r.job AS job_id, (SELECT customer FROM job WHERE id = r.job) AS customer_id,
       r.species AS species_id,
       coalesce(r.setup, (SELECT c.setup FROM setup_change c WHERE (c.day, c.shift) < (r.day, r.shift)
          ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1)) AS setup_id,
       r.practice AS rule, r.unit AS scale_unit, r.logs, r.unscaled_logs, r.gross, r.net, r.content,
       r.lines, r.pieces, r.lumber, r.wood
FROM run r;

CREATE VIEW v_tally AS   -- one row a tally line
SELECT t.day, t.shift, t.number, t.run, job.code AS job, job.owner AS owner, customer.code AS customer,
       site.name AS site, species.code AS species, grade.code AS grade, t.bundle, t.sense AS entry, t.form,
       size.label AS size, size.thickness, size.width, t.metric, t.length, t.pieces, t.lumber, t.wood, t.reason,
       CASE t.metric WHEN 1 THEN 32 ELSE 127 END * CASE t.form WHEN 'lineal' THEN 1 - 2 * (t.sense <> 'sawn') ELSE t.pieces END
         * t.length AS lineal
FROM tally t JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN size ON size.id = t.size LEFT JOIN grade ON grade.id = t.grade LEFT JOIN site ON site.id = r.site
  LEFT JOIN job ON job.id = r.job LEFT JOIN customer ON customer.id = job.customer
  LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_tally_id AS   -- v_tally in numbers; v_run_id has the line's job and species, v_size and v_grade the names
SELECT day, shift, number, run, size AS size_id, grade AS grade_id, bundle, sense AS entry, form, metric, length, pieces, lumber, wood,
       reason,
       CASE metric WHEN 1 THEN 32 ELSE 127 END * CASE form WHEN 'lineal' THEN 1 - 2 * (sense <> 'sawn') ELSE pieces END * length
         AS lineal
FROM tally;

CREATE VIEW v_log AS     -- one row a log received, sawn, or left half-sawn
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, CASE WHEN l.practice IS NOT NULL THEN r.unit END AS scale_unit, l.gross, l.deduction, l.net, l.cull,
       l.content, l.defect, l.origin, job.code AS job, customer.code AS customer, site.name AS site, species.code AS species
FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  LEFT JOIN site ON site.id = r.site LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_deck AS    -- one row a log that lies on the deck today: received or left half-sawn, and not sawn since
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, CASE WHEN l.practice IS NOT NULL THEN r.unit END AS scale_unit, l.gross, l.deduction, l.net, l.cull,
       l.content, l.defect, l.origin, r.job AS job_id, job.code AS job, job.customer AS customer_id, r.site AS site_id,
       r.species AS species_id, species.code AS species
FROM on_deck d CROSS JOIN log l ON l.day = d.day AND l.shift = d.shift AND l.number = d.number
  JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run LEFT JOIN job ON job.id = r.job
  LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_log_id AS  -- v_log in numbers; v_run_id has the log's job, species and site
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, CASE WHEN l.practice IS NOT NULL THEN (SELECT unit FROM run r WHERE r.day = l.day
         AND r.shift = l.shift AND r.run = l.run) END AS scale_unit,
       l.gross, l.deduction, l.net, l.cull, l.content, l.defect, l.origin
FROM log l;

CREATE VIEW v_sawing AS  -- one row a span of sawing time
SELECT day, shift, number, job AS job_id, (SELECT code FROM job j WHERE j.id = sawing.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = sawing.job) AS customer_id,
       site AS site_id, (SELECT name FROM site s WHERE s.id = sawing.site) COLLATE NOCASE AS site, from_minute, minutes
FROM sawing;

CREATE VIEW v_stop AS    -- one row a stop
SELECT day, shift, number, job AS job_id, (SELECT code FROM job j WHERE j.id = stop.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = stop.job) AS customer_id,
       site AS site_id, (SELECT name FROM site s WHERE s.id = stop.site) COLLATE NOCASE AS site, from_minute, minutes, cause,
       text, charge
FROM stop;

CREATE VIEW v_crew AS    -- one row a hand and activity
SELECT day, shift, number, job AS job_id, (SELECT code FROM job j WHERE j.id = crew.job) COLLATE NOCASE AS job, name, minutes,
       activity
FROM crew;

CREATE VIEW v_job_crew AS   -- v_crew with what stands under no job shared out by the day's sawing time; the parts add up exactly
SELECT day, job AS job_id, (SELECT code FROM job j WHERE j.id = crew.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = crew.job) AS customer_id, name, activity, 1000000 * minutes AS minutes_micro
FROM crew WHERE job IS NOT NULL OR NOT EXISTS (SELECT 1 FROM sawing WHERE sawing.day = crew.day)
UNION ALL
SELECT s.day, s.job, (SELECT code FROM job j WHERE j.id = s.job) COLLATE NOCASE, (SELECT customer FROM job j WHERE j.id = s.job),
       c.name, c.activity, times_over(1000000 * c.minutes, s.upto, s.whole) - times_over(1000000 * c.minutes, s.upto - s.minutes, s.whole)
FROM (SELECT day, job, sum(minutes) AS minutes, sum(sum(minutes)) OVER (PARTITION BY day ORDER BY job) AS upto,
             sum(sum(minutes)) OVER (PARTITION BY day) AS whole
      FROM sawing GROUP BY day, job) s CROSS JOIN crew c ON c.day = s.day AND c.job IS NULL;
CREATE VIEW v_tooth_work AS  -- one row a piece of work on teeth or blades
SELECT day, shift, number, job AS job_id, (SELECT code FROM job j WHERE j.id = w.job) COLLATE NOCASE AS job, saw, action, teeth,
       cause, log_tag, text,
       (SELECT species FROM run r WHERE r.day = w.day AND r.shift = w.shift AND r.run = w.run) AS species_id,
       (SELECT code FROM run r JOIN species s ON s.id = r.species WHERE r.day = w.day AND r.shift = w.shift AND r.run = w.run)
          COLLATE NOCASE AS species
FROM tooth_work w;

CREATE VIEW v_struck AS  -- one row a struck line, beside which the sheet in force has what replaced it
SELECT s.day, s.shift, s.revision, s.number, s.kind, job.code AS job, species.code AS species, size.label AS size,
       size.thickness, size.width, grade.code AS grade, s.length, s.metric, s.pieces, s.lumber, s.text, s.why,
       j.at AS struck_at
FROM struck s JOIN journal j ON j.entry = s.entry LEFT JOIN job ON job.id = s.job
  LEFT JOIN species ON species.id = s.species LEFT JOIN size ON size.id = s.size LEFT JOIN grade ON grade.id = s.grade;

CREATE VIEW v_cut_list AS   -- one row a line of a job's cut list
SELECT job.code AS job, c.job AS job_id, c.line, size.label AS size, size.thickness, size.width, size.stack, c.length, c.metric,
       grade.code AS grade, c.grade AS grade_id, c.pieces
FROM cut_list c JOIN job ON job.id = c.job JOIN size ON size.id = c.size LEFT JOIN grade ON grade.id = c.grade;

CREATE VIEW v_fuel  AS SELECT day, shift, number, quantity_micro, unit, price_minor FROM fuel;   -- fuel filled in
CREATE VIEW v_meter AS   -- engine hour readings, each with the hours since the reading before it
SELECT day, shift, number, tenths, tenths - (SELECT b.tenths FROM meter b
         WHERE (b.day, b.shift, b.number) < (meter.day, meter.shift, meter.number)
         ORDER BY b.day DESC, b.shift DESC, b.number DESC LIMIT 1) AS since_tenths
FROM meter;
CREATE VIEW v_note  AS SELECT day, shift, number, text FROM note;                                -- remarks of the day
CREATE VIEW v_move  AS   -- one row a move between sites
SELECT m.day, m.shift, m.number, job.code AS job, a.name AS from_site, b.name AS to_site, m.distance_micro, m.unit, m.minutes
FROM move m LEFT JOIN job ON job.id = m.job JOIN site a ON a.id = m.from_site JOIN site b ON b.id = m.to_site;
CREATE VIEW v_charge AS  -- one row a small charge noted on a sheet
SELECT c.day, c.shift, c.number, job.code AS job, c.name, c.quantity_micro, c.text FROM charge c LEFT JOIN job ON job.id = c.job;
CREATE VIEW v_use AS     -- one row a sheet and thing that costs: `per` what it goes by, `who` the hand or saw
SELECT day, 'crew-hour' AS per, name AS who, minutes AS quantity FROM crew
UNION ALL SELECT day, 'sawing-hour', '', sawing_minutes FROM sheet
UNION ALL SELECT day, 'engine-hour', '', since_tenths FROM v_meter
UNION ALL SELECT day, 'day', '', 1 FROM sheet GROUP BY day HAVING sum(logs) > 0 OR sum(lines) > 0
UNION ALL SELECT day, 'lumber', '', lumber FROM sheet
UNION ALL SELECT day, 'log', '', logs FROM sheet
UNION ALL SELECT day, 'tooth', saw, teeth FROM tooth_work WHERE action IN ('replaced', 'full-set')
UNION ALL SELECT day, unit, '', quantity_micro FROM fuel WHERE price_minor IS NULL
UNION ALL SELECT day, unit, '', distance_micro FROM move;
CREATE VIEW v_cost AS    -- one row a cost of the mill file; `whole` of v_use.quantity is one unit
SELECT line, name, rate_micro, per, whole, unit, who, from_day, to_day FROM cost;
CREATE VIEW v_spent AS   -- one row a use and cost: what was used of it, in v_use's counts
SELECT u.day, c.line, c.name, c.unit, c.whole, c.rate_micro, u.quantity
FROM cost c JOIN v_use u ON u.per = c.per AND u.day BETWEEN c.from_day AND c.to_day
  AND (c.who = u.who COLLATE NOCASE OR c.who = '' AND NOT EXISTS (SELECT 1 FROM cost own WHERE own.per = c.per
       AND own.who = u.who COLLATE NOCASE AND own.who <> '' AND u.day BETWEEN own.from_day AND own.to_day))
WHERE u.quantity <> 0;
CREATE VIEW v_service AS SELECT line, name, every_tenths FROM service;   -- services due by engine hours
CREATE VIEW v_load AS    -- one row a line of a load slip; taken_back: the day its lumber was here again, NULL when it is gone
SELECT p.number, p.day, p.job, job.id AS job_id, coalesce(job.owner, 'customer') AS owner, p.customer, l.line, l.bundle, l.species,
       l.grade, l.size, l.thickness, l.width, l.length, l.metric, l.pieces,
       lumber_of(l.thickness, l.width, l.length, l.metric) * max(l.pieces, 1) AS lumber,
       (SELECT t.day FROM paper t WHERE t.slip = p.number) AS taken_back
FROM paper p LEFT JOIN job ON job.code = p.job JOIN paper_load l ON l.entry = p.entry;
CREATE VIEW v_sold AS    -- one row a line of own lumber sold in the yard
SELECT s.day, s.shift, s.number, s.buyer, species.code AS species, size.label AS size, size.thickness, size.width,
       grade.code AS grade, s.bundle, s.pieces, s.length, s.metric, s.lumber, s.rate_micro,
       s.rate_per, s.form
FROM sold s JOIN size ON size.id = s.size LEFT JOIN grade ON grade.id = s.grade LEFT JOIN species ON species.id = s.species;
CREATE VIEW v_sold_bundle AS  -- one row a bundle of own lumber sold whole
SELECT day, shift, number, buyer, bundle, price_micro FROM sold_bundle;
CREATE VIEW v_setup_change AS   -- one row a set-up written down; mils: thousandths of an inch, or hundredths of a mm
SELECT c.day, c.shift, c.number, setup.name AS setup, c.kerf_mils, c.over_mils, c.metric, c.text
FROM setup_change c JOIN setup ON setup.id = c.setup;
CREATE VIEW v_thickness AS  -- one row a caliper reading
SELECT t.day, t.shift, t.number, t.reading, size.label AS size, t.mils FROM thickness t JOIN size ON size.id = t.size;
CREATE VIEW v_job AS     -- one row a job; owner: customer, own or shares
SELECT id, code, name, owner, customer AS customer_id,
       (SELECT c.code FROM customer c WHERE c.id = job.customer) COLLATE NOCASE AS customer,
       (SELECT c.name FROM customer c WHERE c.id = job.customer) AS customer_name, site
FROM job;
CREATE VIEW v_species AS SELECT id, code, name, kind AS species_group FROM species;   -- words met so far
CREATE VIEW v_site  AS SELECT id, name FROM site;                                     -- words met so far
CREATE VIEW v_grade AS SELECT id, code, name FROM grade;                              -- words met so far
CREATE VIEW v_setup AS SELECT id, name FROM setup;                                    -- words met so far
CREATE VIEW v_size  AS SELECT id, label, thickness, width, metric, stack FROM size;   -- sizes met so far; `stack`: the first of its measure
CREATE VIEW v_entry AS SELECT entry, kind, subject, revision, at, why FROM journal;   -- the journal without its texts
CREATE VIEW v_paper AS   -- one row a paper issued; amounts in minor units
SELECT p.entry, p.kind, p.number, p.called, p.day, p.due, p.job, p.customer, customer.name AS customer_name,
       p.amount, p.subtotal, p.invoice, p.cancels, p.method, p.note
FROM paper p LEFT JOIN customer ON customer.code = p.customer;
CREATE VIEW v_paper_line AS   -- one row a line of an invoice; `cancelled` when a credit note took the invoice back
SELECT p.number AS invoice, p.called, p.day AS invoice_day, p.job, p.customer, l.line, l.kind, l.title, l.description,
       l.day, l.quantity_micro, l.unit, l.amount, l.tax,
       EXISTS (SELECT 1 FROM paper c WHERE c.kind = 'credit' AND c.cancels = 1 AND c.invoice = p.number) AS cancelled
FROM paper_line l JOIN paper p ON p.entry = l.entry WHERE p.kind = 'invoice';
CREATE VIEW v_paper_tax AS   -- one row a tax of an invoice (+) or of a credit note (-)
SELECT p.kind, p.number, p.day, p.job, p.customer, t.name, t.percent_micro, t.included, t.excused,
       CASE p.kind WHEN 'credit' THEN -t.base ELSE t.base END AS base,
       CASE WHEN t.excused <> '' THEN 0 WHEN p.kind = 'credit' THEN -t.amount ELSE t.amount END AS amount
FROM paper_tax t JOIN paper p ON p.entry = t.entry;
CREATE VIEW v_paper_share AS  -- one row a line of a division of lumber; length 0: to_customer and to_mill are lengths, not pieces
SELECT p.number, p.day, p.job, p.customer, s.line, s.bundle, s.species, s.grade, s.size, s.thickness, s.width, s.length, s.metric,
       s.to_customer, s.to_mill,
       CASE s.length WHEN 0 THEN lumber_of(s.thickness, s.width, s.to_mill, s.metric)
            ELSE lumber_of(s.thickness, s.width, s.length, s.metric) * s.to_mill END AS mill_lumber
FROM paper_share s JOIN paper p ON p.entry = s.entry;
CREATE VIEW v_whole_bundle AS  -- one row a line of a bundle of own lumber sold whole: what was in it since it was last sold whole
SELECT b.day, b.shift, b.number, b.buyer, b.bundle, (SELECT code FROM species s WHERE s.id = l.species) COLLATE NOCASE AS species,
       (SELECT code FROM grade g WHERE g.id = l.grade) COLLATE NOCASE AS grade, size.label AS size, size.thickness, size.width,
       nullif(l.length, 0) AS length, l.metric, l.pieces, l.along, l.lumber
FROM sold_bundle_line l JOIN sold_bundle b ON b.day = l.day AND b.shift = l.shift AND b.number = l.number
  JOIN size ON size.id = l.size;
CREATE VIEW v_stock_id AS  -- v_stock in numbers, a bundle by its tag in small letters, a size by that of its stack; shift: of a sheet
  -- (cast so that a column is of one kind in every part: SQLite then reads the parts without a copy between)
SELECT t.day, t.shift, 'cut' AS movement, job.owner, r.job AS job_id, lower(t.bundle) AS tag, r.species AS species_id, t.grade AS grade_id,
       s.stack AS size_id, t.metric, CASE WHEN t.form <> 'lineal' THEN t.length END AS length, +t.pieces AS pieces,
       CASE WHEN t.form <> 'lineal' THEN 0 WHEN t.sense = 'sawn' THEN t.length ELSE -t.length END AS along, +t.lumber AS lumber
FROM tally t JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run JOIN size s ON s.id = t.size
  LEFT JOIN job ON job.id = r.job
UNION ALL SELECT s.day, CAST(NULL AS INTEGER), 'share', CAST(o.owner AS TEXT),
       CAST(CASE o.owner WHEN 'shares' THEN (SELECT id FROM job WHERE code = s.job) END AS INTEGER),
       CASE o.owner WHEN 'shares' THEN lower(nullif(s.bundle, '')) END,
       (SELECT id FROM species WHERE code = s.species), (SELECT id FROM grade WHERE code = s.grade),
       CAST((SELECT min(z.stack) FROM size z WHERE z.metric = s.metric AND z.thickness = s.thickness AND z.width = s.width) AS INTEGER),
       s.metric, nullif(s.length, 0), CASE WHEN s.length > 0 THEN o.side * s.to_mill ELSE 0 END,
       CASE WHEN s.length > 0 THEN 0 ELSE o.side * s.to_mill END, o.side * s.mill_lumber
FROM v_paper_share s
  JOIN (SELECT 'shares' AS owner, -1 AS side UNION ALL SELECT 'own', 1) o WHERE s.to_mill <> 0
UNION ALL SELECT x.day, x.shift, 'sold', CAST('own' AS TEXT), CAST(NULL AS INTEGER), lower(x.bundle), x.species, x.grade,
       s.stack, x.metric, CASE WHEN x.form <> 'lineal' THEN x.length END, -x.pieces,
       CASE x.form WHEN 'lineal' THEN -x.length ELSE 0 END, -x.lumber
FROM sold x JOIN size s ON s.id = x.size
UNION ALL SELECT l.day, l.shift, 'sold', CAST('own' AS TEXT), CAST(NULL AS INTEGER), lower(b.bundle), CAST(nullif(l.species, 0) AS INTEGER), CAST(nullif(l.grade, 0) AS INTEGER),
       s.stack, l.metric, nullif(l.length, 0), -l.pieces, -l.along, -l.lumber
FROM sold_bundle_line l JOIN sold_bundle b ON b.day = l.day AND b.shift = l.shift AND b.number = l.number
  JOIN size s ON s.id = l.size
UNION ALL SELECT l.day, CAST(NULL AS INTEGER), 'delivered', CAST(l.owner AS TEXT), l.job_id, lower(nullif(l.bundle, '')),
       (SELECT id FROM species WHERE code = l.species), (SELECT id FROM grade WHERE code = l.grade),
       CAST((SELECT min(z.stack) FROM size z WHERE z.metric = l.metric AND z.thickness = l.thickness AND z.width = l.width) AS INTEGER),
       l.metric, CASE WHEN l.pieces > 0 THEN l.length END, -l.pieces, CASE WHEN l.pieces > 0 THEN 0 ELSE -l.length END,
       -l.lumber
FROM v_load l
UNION ALL SELECT l.taken_back, CAST(NULL AS INTEGER), 'delivered', CAST(l.owner AS TEXT), l.job_id, lower(nullif(l.bundle, '')),
       (SELECT id FROM species WHERE code = l.species), (SELECT id FROM grade WHERE code = l.grade),
       CAST((SELECT min(z.stack) FROM size z WHERE z.metric = l.metric AND z.thickness = l.thickness AND z.width = l.width) AS INTEGER),
       l.metric, CASE WHEN l.pieces > 0 THEN l.length END, +l.pieces, CASE WHEN l.pieces > 0 THEN 0 ELSE l.length END,
       +l.lumber
FROM v_load l WHERE l.taken_back IS NOT NULL;
CREATE VIEW v_stock AS   -- one row a movement of lumber: cut, share (to the mill's own stock), sold, delivered (and, above 0, a load taken back); going out is below 0
SELECT day, movement, owner, (SELECT code FROM job j WHERE j.id = job_id) COLLATE NOCASE AS job,
       coalesce((SELECT t.bundle FROM tally t WHERE t.bundle = tag COLLATE NOCASE ORDER BY t.day, t.shift, t.number LIMIT 1), tag)
         AS bundle,
       (SELECT code FROM species s WHERE s.id = species_id) COLLATE NOCASE AS species,
       (SELECT code FROM grade g WHERE g.id = grade_id) COLLATE NOCASE AS grade, size.label AS size, size.thickness, size.width,
       length, m.metric, pieces, along, lumber
FROM v_stock_id m JOIN size ON size.id = size_id;
CREATE VIEW v_on_hand AS -- one row a stack of own lumber that lies on the yard today, in numbers as v_stock_id: quick after many years
SELECT nullif(bundle, '') AS tag, nullif(species, 0) AS species_id, nullif(grade, 0) AS grade_id, size AS size_id, metric,
       nullif(length, 0) AS length, pieces, along, lumber
FROM own_stock;
CREATE VIEW v_still_here AS  -- one row a job, bundle and species of customers' lumber: pieces cut, given to the mill and delivered so far
SELECT job AS job_id, nullif(bundle, '') AS tag, nullif(species, 0) AS species_id, cut, to_mill, delivered,
       cut - to_mill - delivered AS pieces, lumber
FROM job_stock;
