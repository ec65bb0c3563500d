-- A part of a report: what was paid for lumber by the board foot, by the thousand and by the m3, on the invoices of the
-- 365 days to the last day sawn, and of those after it up to the last day asked for. Its rows are the worker's input `price`.

-- input:   price
WITH newest AS (SELECT max(day) AS day FROM v_sheet WHERE day <= :to)
SELECT unit, sum(amount) AS amount, sum(quantity_micro) AS quantity_micro
FROM v_paper_line, newest
WHERE unit IN ('bf', 'MBF', 'm3') AND NOT cancelled AND quantity_micro > 0
  AND invoice_day > newest.day - 365 AND invoice_day <= :to
GROUP BY unit;
