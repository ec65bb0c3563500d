-- The views reports read: a report sees these, in schema/views/, and nothing else. They are made anew whenever a book
-- is opened by a program that has other words for them, so they are not numbered; but a view that is new, or goes,
-- makes a new edition, for a book with a view that is none of ours is not opened. Units are those of 002_book.sql. The
-- remark behind a view's name says what a row of it is (VIEWS.md is made from these remarks).
--
-- This file: sheets and their runs, and what happened in the day beside logs and lumber.

CREATE VIEW v_sheet AS   -- one row a sheet (day and shift) with the totals of its runs, kept by posting: quick over
                         -- many years
SELECT day, shift, revision, sawing_minutes, stop_minutes, crew_minutes, charge_minutes,
       runs, sites, rules, units AS scale_units, lines, logs, unscaled_logs, net, pieces, lumber, lineal,
       counted_lumber, counted_net
FROM sheet;

CREATE VIEW v_run AS     -- one row a run: logs in and boards out of one site, job, species and set-up in a sheet
SELECT r.day, r.shift, r.run, site.name AS site, job.code AS job, job.owner AS owner, customer.code AS customer,
       species.code AS species, species.kind AS species_group,
       coalesce(setup.name,
                (SELECT su.name
                 FROM setup_change c
                   JOIN setup su ON su.id = c.setup
                 WHERE (c.day, c.shift) < (r.day, r.shift)
                 ORDER BY c.day DESC, c.shift DESC, c.number DESC
                 LIMIT 1)) AS setup,
       r.practice AS rule, r.unit AS scale_unit, r.logs, r.unscaled_logs, r.gross, r.net, r.content,
       r.lines, r.pieces, r.lumber, r.wood, r.scaled, r.counted
FROM run r
  LEFT JOIN site ON site.id = r.site
  LEFT JOIN job ON job.id = r.job
  LEFT JOIN customer ON customer.id = job.customer
  LEFT JOIN species ON species.id = r.species
  LEFT JOIN setup ON setup.id = r.setup;

CREATE VIEW v_run_id AS  -- v_run in numbers, which v_job, v_site, v_species and v_setup name: quicker to add up by
SELECT r.day, r.shift, r.run, r.site AS site_id, r.job AS job_id,
       (SELECT customer FROM job WHERE id = r.job) AS customer_id, r.species AS species_id,
       coalesce(r.setup,
                (SELECT c.setup
                 FROM setup_change c
                 WHERE (c.day, c.shift) < (r.day, r.shift)
                 ORDER BY c.day DESC, c.shift DESC, c.number DESC
                 LIMIT 1)) AS setup_id,
       r.practice AS rule, r.unit AS scale_unit, r.logs, r.unscaled_logs, r.gross, r.net, r.content,
       r.lines, r.pieces, r.lumber, r.wood, r.scaled, r.counted
FROM run r;

CREATE VIEW v_sawing AS  -- one row a span of sawing time
SELECT day, shift, number,
       job AS job_id, (SELECT code FROM job j WHERE j.id = sawing.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = sawing.job) AS customer_id,
       site AS site_id, (SELECT name FROM site s WHERE s.id = sawing.site) COLLATE NOCASE AS site,
       from_minute, minutes
FROM sawing;

CREATE VIEW v_stop AS    -- one row a stop
SELECT day, shift, number,
       job AS job_id, (SELECT code FROM job j WHERE j.id = stop.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = stop.job) AS customer_id,
       site AS site_id, (SELECT name FROM site s WHERE s.id = stop.site) COLLATE NOCASE AS site,
       from_minute, minutes, cause, text, charge
FROM stop;

CREATE VIEW v_crew AS    -- one row a hand and activity
SELECT day, shift, number,
       job AS job_id, (SELECT code FROM job j WHERE j.id = crew.job) COLLATE NOCASE AS job,
       name, minutes, activity
FROM crew;

CREATE VIEW v_job_crew AS   -- v_crew with what stands under no job shared out by the day's sawing time; the parts add
                            -- up exactly
SELECT day, job AS job_id, (SELECT code FROM job j WHERE j.id = crew.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = crew.job) AS customer_id,
       name, activity, 1000000 * minutes AS minutes_micro
FROM crew
WHERE job IS NOT NULL OR NOT EXISTS (SELECT 1 FROM sawing WHERE sawing.day = crew.day)
UNION ALL
SELECT s.day, s.job, (SELECT code FROM job j WHERE j.id = s.job) COLLATE NOCASE,
       (SELECT customer FROM job j WHERE j.id = s.job),
       c.name, c.activity,
       times_over(1000000 * c.minutes, s.upto, s.whole) - times_over(1000000 * c.minutes, s.upto - s.minutes, s.whole)
FROM (SELECT day, job, sum(minutes) AS minutes,
             sum(sum(minutes)) OVER (PARTITION BY day ORDER BY job) AS upto,
             sum(sum(minutes)) OVER (PARTITION BY day) AS whole
      FROM sawing
      GROUP BY day, job) s
  CROSS JOIN crew c ON c.day = s.day AND c.job IS NULL;

CREATE VIEW v_tooth_work AS  -- one row a piece of work on teeth or blades
SELECT day, shift, number,
       job AS job_id, (SELECT code FROM job j WHERE j.id = w.job) COLLATE NOCASE AS job,
       saw, action, teeth, cause, log_tag, text,
       (SELECT species FROM run r WHERE r.day = w.day AND r.shift = w.shift AND r.run = w.run) AS species_id,
       (SELECT code
        FROM run r
          JOIN species s ON s.id = r.species
        WHERE r.day = w.day AND r.shift = w.shift AND r.run = w.run) COLLATE NOCASE AS species
FROM tooth_work w;

CREATE VIEW v_setup_change AS   -- one row a set-up written down; mils: thousandths of an inch, or hundredths of a mm
SELECT c.day, c.shift, c.number, setup.name AS setup, c.kerf_mils, c.over_mils, c.edger_mils, c.third_mils,
       c.lead_mils, c.zero_mils, c.feed_micro, c.tooth, c.metric, c.text
FROM setup_change c
  JOIN setup ON setup.id = c.setup;

CREATE VIEW v_setup_record AS   -- one row a time the saws were set anew: a set-up written down, a move, a full set of
                                -- teeth or another blade; with all that was said till then of the set-up in force.
                                -- Record: its place in the book
SELECT r.record, r.day, r.shift, r.number, r.begun, r.saw, site.name AS site,
       r.setup AS setup_id, (SELECT name FROM setup WHERE id = r.setup) COLLATE NOCASE AS setup,
       (SELECT c.kerf_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.kerf_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS kerf_mils,
       (SELECT c.over_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.over_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS over_mils,
       (SELECT c.edger_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.edger_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS edger_mils,
       (SELECT c.third_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.third_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS third_mils,
       (SELECT c.lead_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.lead_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS lead_mils,
       (SELECT c.zero_mils FROM setup_change c
        WHERE c.setup = r.setup AND c.zero_mils IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS zero_mils,
       (SELECT c.feed_micro FROM setup_change c
        WHERE c.setup = r.setup AND c.feed_micro IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS feed_micro,
       (SELECT c.tooth FROM setup_change c
        WHERE c.setup = r.setup AND c.tooth IS NOT NULL
          AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS tooth,
       (SELECT c.metric FROM setup_change c
        WHERE c.setup = r.setup AND (c.day, c.shift, c.number) <= (r.day, r.shift, r.number)
        ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS metric
FROM (SELECT (e.day * 16 + e.shift) * 1000000000 + e.number AS record, e.day, e.shift, e.number, e.begun, e.saw,
             e.site,
             (SELECT c.setup FROM setup_change c
              WHERE (c.day, c.shift, c.number) <= (e.day, e.shift, e.number)
              ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1) AS setup
      FROM setup_record e) r
  LEFT JOIN site ON site.id = r.site;

CREATE VIEW v_run_record AS     -- the set-up record (v_setup_record) that each run belongs to; NULL = to none that is known
SELECT r.day, r.shift, r.run,
       (SELECT (e.day * 16 + e.shift) * 1000000000 + e.number
        FROM setup_record e
        WHERE (e.day, e.shift, e.number) < (r.day, r.shift, r.first_number)
        ORDER BY e.day DESC, e.shift DESC, e.number DESC
        LIMIT 1) AS record
FROM run r;

CREATE VIEW v_residue AS        -- one row slabs, dust and the like taken away, as they lay
SELECT r.day, r.shift, r.number, r.job AS job_id,
       (SELECT code FROM job j WHERE j.id = r.job) COLLATE NOCASE AS job,
       (SELECT customer FROM job j WHERE j.id = r.job) AS customer_id,
       r.kind, r.quantity_micro, r.unit, r.text
FROM residue r;

CREATE VIEW v_thickness AS  -- one row a caliper reading
SELECT t.day, t.shift, t.number, t.reading, size.label AS size, t.mils
FROM thickness t
  JOIN size ON size.id = t.size;

CREATE VIEW v_meter AS   -- engine hour readings, each with the hours since the reading before it
SELECT day, shift, number, tenths,
       tenths - (SELECT b.tenths
                 FROM meter b
                 WHERE (b.day, b.shift, b.number) < (meter.day, meter.shift, meter.number)
                 ORDER BY b.day DESC, b.shift DESC, b.number DESC
                 LIMIT 1) AS since_tenths
FROM meter;

CREATE VIEW v_fuel AS    -- fuel filled in
SELECT day, shift, number, quantity_micro, unit, price_minor
FROM fuel;

CREATE VIEW v_move AS    -- one row a move between sites
SELECT m.day, m.shift, m.number, job.code AS job, a.name AS from_site, b.name AS to_site, m.distance_micro, m.unit,
       m.minutes
FROM move m
  LEFT JOIN job ON job.id = m.job
  JOIN site a ON a.id = m.from_site
  JOIN site b ON b.id = m.to_site;

CREATE VIEW v_charge AS  -- one row a small charge noted on a sheet
SELECT c.day, c.shift, c.number, job.code AS job, c.name, c.quantity_micro, c.text
FROM charge c
  LEFT JOIN job ON job.id = c.job;

CREATE VIEW v_note AS    -- remarks of the day
SELECT day, shift, number, text
FROM note;

CREATE VIEW v_struck AS  -- one row a struck line, beside which the sheet in force has what replaced it
SELECT s.day, s.shift, s.revision, s.number, s.kind, job.code AS job, species.code AS species, size.label AS size,
       size.thickness, size.width, grade.code AS grade, s.length, s.metric, s.pieces, s.lumber, s.text, s.why,
       j.at AS struck_at
FROM struck s
  JOIN journal j ON j.entry = s.entry
  LEFT JOIN job ON job.id = s.job
  LEFT JOIN species ON species.id = s.species
  LEFT JOIN size ON size.id = s.size
  LEFT JOIN grade ON grade.id = s.grade;

CREATE VIEW v_entry AS   -- the journal without its texts
SELECT entry, kind, subject, revision, at, why
FROM journal;
