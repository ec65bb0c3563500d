-- report:  ownership
-- title:   Lumber by owner
-- meaning: All lumber of the period by its owner: custom (the customer's), own (the mill's stock), shares (sawn on
--          shares; the split itself is on the job's paper). The parts add exactly to everything tallied.
-- takes:   from to species site
-- example: ownership --period 2026-05
-- table:   ownership |
-- shows:   owner text "Owner"
-- shows:   jobs count "Jobs"
-- shows:   logs count "Logs" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   share_percent percent "Share" of=lumber_bf/all_lumber once
-- shows:   all_lumber lumber "" hidden
-- picture: bar across=owner up=lumber_bf title="Lumber by owner"
WITH runs AS (
  SELECT job_id, sum(logs) AS logs, sum(lines) AS lines, sum(pieces) AS pieces, sum(lumber) AS lumber FROM v_run_id
  WHERE day BETWEEN :from AND :to AND (:species_id IS NULL OR species_id = :species_id)
    AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY job_id)
SELECT CASE j.owner WHEN 'customer' THEN 'custom' WHEN 'own' THEN 'own' WHEN 'shares' THEN 'shares'
                  ELSE 'no job named' END AS owner,
       count(job_id) AS jobs, sum(logs) AS logs, sum(pieces) AS pieces, sum(lumber) AS lumber_bf,
       (SELECT sum(lumber) FROM runs) AS all_lumber
FROM runs LEFT JOIN v_job j ON j.id = job_id
GROUP BY 1 HAVING sum(logs) > 0 OR sum(lines) > 0 ORDER BY sum(lumber) DESC, 1;
-- table:   jobs | By job
-- shows:   owner text "Owner"
-- shows:   job text "Job"
-- shows:   customer text "Customer"
-- shows:   logs count "Logs" total=sum
-- shows:   pieces count "Pieces" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
WITH runs AS (
  SELECT job_id, sum(logs) AS logs, sum(lines) AS lines, sum(pieces) AS pieces, sum(lumber) AS lumber FROM v_run_id
  WHERE day BETWEEN :from AND :to AND (:species_id IS NULL OR species_id = :species_id)
    AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY job_id)
SELECT CASE j.owner WHEN 'customer' THEN 'custom' WHEN 'own' THEN 'own' WHEN 'shares' THEN 'shares'
                  ELSE 'no job named' END AS owner, j.code AS job, j.customer, logs, pieces, lumber AS lumber_bf
FROM runs LEFT JOIN v_job j ON j.id = job_id WHERE logs > 0 OR lines > 0 ORDER BY 1, j.code;
