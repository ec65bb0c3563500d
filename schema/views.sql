-- The views reports read. A report sees these and nothing else. Made anew whenever a book is opened by a program
-- whose views differ, so they are not numbered. Units are those of 001_book.sql; `day` is days since 1970-01-01.

CREATE VIEW v_sheet AS   -- one row a sheet (day and shift)
SELECT s.day, s.shift, s.revision, s.sawing_minutes, s.stop_minutes, s.crew_minutes, s.charge_minutes,
       (SELECT group_concat(name, ' / ') FROM (SELECT DISTINCT site.name FROM run JOIN site ON site.id = run.site
         WHERE run.day = s.day AND run.shift = s.shift ORDER BY run.run)) AS sites
FROM sheet s;

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

CREATE VIEW v_tally AS   -- one row a tally line
SELECT t.day, t.shift, t.number, t.run, job.code AS job, job.owner AS owner, customer.code AS customer,
       site.name AS site, species.code AS species, grade.code AS grade, t.bundle, t.sense, t.form,
       size.label AS size, size.thickness, size.width, t.metric, t.length, t.pieces, t.lumber, t.wood, t.reason
FROM tally t JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
  JOIN size ON size.id = t.size LEFT JOIN grade ON grade.id = t.grade LEFT JOIN site ON site.id = r.site
  LEFT JOIN job ON job.id = r.job LEFT JOIN customer ON customer.id = job.customer
  LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_log AS     -- one row a log received, sawn, or left half-sawn
SELECT l.day, l.shift, l.number, l.run, l.tag, l.state, l.spec, l.borrowed, l.diameter, l.length, l.metric,
       l.practice AS rule, l.gross, l.deduction, l.net, l.cull, l.content, l.defect, l.origin,
       job.code AS job, customer.code AS customer, site.name AS site, species.code AS species
FROM log l JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  LEFT JOIN site ON site.id = r.site LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_sawing AS  -- one row a span of sawing time
SELECT s.day, s.shift, s.number, job.code AS job, site.name AS site, s.from_minute, s.minutes
FROM sawing s LEFT JOIN job ON job.id = s.job LEFT JOIN site ON site.id = s.site;

CREATE VIEW v_stop AS    -- one row a stop
SELECT s.day, s.shift, s.number, job.code AS job, site.name AS site, s.from_minute, s.minutes, s.cause, s.text, s.charge
FROM stop s LEFT JOIN job ON job.id = s.job LEFT JOIN site ON site.id = s.site;

CREATE VIEW v_crew AS    -- one row a hand and activity
SELECT c.day, c.shift, c.number, job.code AS job, c.name, c.minutes, c.activity FROM crew c LEFT JOIN job ON job.id = c.job;

CREATE VIEW v_tooth_work AS  -- one row a piece of work on teeth or blades
SELECT w.day, w.shift, w.number, job.code AS job, w.saw, w.action, w.teeth, w.cause, w.log_tag, w.text,
       species.code AS species
FROM tooth_work w LEFT JOIN job ON job.id = w.job
  LEFT JOIN run r ON r.day = w.day AND r.shift = w.shift AND r.run = w.run LEFT JOIN species ON species.id = r.species;

CREATE VIEW v_struck AS  -- one row a struck line, beside which the sheet in force has what replaced it
SELECT s.day, s.shift, s.revision, s.number, s.kind, job.code AS job, species.code AS species, size.label AS size,
       size.thickness, size.width, grade.code AS grade, s.length, s.metric, s.pieces, s.lumber, s.text, s.why,
       j.at AS struck_at
FROM struck s JOIN journal j ON j.entry = s.entry LEFT JOIN job ON job.id = s.job
  LEFT JOIN species ON species.id = s.species LEFT JOIN size ON size.id = s.size LEFT JOIN grade ON grade.id = s.grade;

CREATE VIEW v_cut_list AS   -- one row a line of a job's cut list
SELECT job.code AS job, c.line, size.label AS size, size.thickness, size.width, c.length, c.metric,
       grade.code AS grade, c.pieces
FROM cut_list c JOIN job ON job.id = c.job JOIN size ON size.id = c.size LEFT JOIN grade ON grade.id = c.grade;

CREATE VIEW v_fuel  AS SELECT day, shift, number, quantity_micro, unit, price_minor FROM fuel;   -- fuel filled in
CREATE VIEW v_meter AS SELECT day, shift, number, tenths FROM meter;                             -- engine hour readings
CREATE VIEW v_note  AS SELECT day, shift, number, text FROM note;
CREATE VIEW v_move  AS   -- one row a move between sites
SELECT m.day, m.shift, m.number, job.code AS job, a.name AS from_site, b.name AS to_site, m.distance_micro, m.unit, m.minutes
FROM move m LEFT JOIN job ON job.id = m.job JOIN site a ON a.id = m.from_site JOIN site b ON b.id = m.to_site;
CREATE VIEW v_charge AS  -- one row a small charge noted on a sheet
SELECT c.day, c.shift, c.number, job.code AS job, c.name, c.quantity_micro, c.text FROM charge c LEFT JOIN job ON job.id = c.job;
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
CREATE VIEW v_job AS SELECT job.code, job.name, job.owner, customer.code AS customer, customer.name AS customer_name, job.site
FROM job LEFT JOIN customer ON customer.id = job.customer;
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
CREATE VIEW v_paper_share AS  -- one row a line of a share settlement
SELECT p.number, p.day, p.job, p.customer, s.line, s.species, s.grade, s.size, s.thickness, s.width, s.length, s.metric,
       s.to_customer, s.to_mill
FROM paper_share s JOIN paper p ON p.entry = s.entry;
