-- The views of words and sizes met so far, and of jobs.

CREATE VIEW v_job AS     -- one row a job; owner: customer, own or shares
SELECT id, code, name, owner, customer AS customer_id,
       (SELECT c.code FROM customer c WHERE c.id = job.customer) COLLATE NOCASE AS customer,
       (SELECT c.name FROM customer c WHERE c.id = job.customer) AS customer_name, site
FROM job;

CREATE VIEW v_species AS -- words met so far
SELECT id, code, name, kind AS species_group
FROM species;

CREATE VIEW v_site AS    -- words met so far
SELECT id, name
FROM site;

CREATE VIEW v_grade AS   -- words met so far
SELECT id, code, name
FROM grade;

CREATE VIEW v_setup AS   -- words met so far
SELECT id, name
FROM setup;

CREATE VIEW v_size AS    -- sizes met so far; `stack`: the first of its measure
SELECT id, label, thickness, width, metric, stack
FROM size;
