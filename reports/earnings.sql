-- report:  earnings
-- title:   Earnings per hour, by job
-- meaning: Everything charged for a job before tax, from its first day on: invoices less credits, and what 'bill'
--          would come to now. Beside the money per board foot stands the same over the job's sawing hours and
--          over its paid crew hours (those under no job shared out by the day's sawing time), so that jobs priced by the foot, by the
--          hour and by the log can be compared. Jobs on shares bring lumber, not money, and own stock brings it when it is sold.
-- takes:   job customer
-- example: earnings --customer TER
-- table:   earnings |
-- shows:   job text "Job"
-- shows:   name text "Name"
-- shows:   billed money "Billed" total=sum
-- shows:   not_billed money "Not billed yet" total=sum
-- shows:   money money "Together" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- shows:   per_bf ratio:3 "Per bf" of=money/lumber_bf unit=money
-- shows:   sawing_hours hours "Sawing" total=sum
-- shows:   per_sawing_hour ratio "Per sawing hour" of=money/sawing_hours unit=money
-- shows:   crew_hours fine-hours "Crew" total=sum
-- shows:   per_crew_hour ratio "Per crew hour" of=money/crew_hours unit=money
-- picture: bar across=job up=per_sawing_hour title="Money per sawing hour"
-- empty:   no job for a customer yet
-- foot:    What the hours cost is in the report 'cost'.
WITH paid AS (
  SELECT job, sum(amount) AS amount FROM (
    SELECT job, amount FROM v_paper WHERE kind = 'invoice'
    UNION ALL SELECT job, -amount FROM v_paper WHERE kind = 'credit'
    UNION ALL SELECT job, -amount FROM v_paper_tax WHERE kind IN ('invoice', 'credit'))
  WHERE job <> '' GROUP BY job COLLATE NOCASE),
cut AS (SELECT job, sum(lumber) AS lumber FROM v_run GROUP BY job),
sawing AS (SELECT job, sum(minutes) AS minutes FROM v_sawing GROUP BY job),
crew AS (SELECT job, sum(minutes_micro) AS hours FROM v_job_crew GROUP BY job),
open AS (SELECT code AS job, name, customer, unbilled(code) AS amount FROM v_job WHERE owner = 'customer')
SELECT o.job, nullif(o.name, '') AS name, p.amount AS billed, o.amount AS not_billed,
       CASE WHEN p.amount IS NOT NULL OR o.amount IS NOT NULL THEN coalesce(p.amount, 0) + coalesce(o.amount, 0) END AS money,
       c.lumber AS lumber_bf, s.minutes AS sawing_hours, w.hours AS crew_hours
FROM open o LEFT JOIN paid p ON p.job = o.job COLLATE NOCASE LEFT JOIN cut c ON c.job = o.job
  LEFT JOIN sawing s ON s.job = o.job LEFT JOIN crew w ON w.job = o.job
WHERE (:job IS NULL OR o.job = :job) AND (:customer IS NULL OR o.customer = :customer)
  AND coalesce(p.amount, o.amount, c.lumber, s.minutes, w.hours) IS NOT NULL
ORDER BY o.job;
