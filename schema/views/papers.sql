-- The views of papers and of what the work costs.

CREATE VIEW v_paper AS   -- one row a paper issued; amounts in minor units
SELECT p.entry, p.kind, p.number, p.called, p.day, p.due, p.job, p.customer, customer.name AS customer_name,
       p.amount, p.subtotal, p.invoice, p.cancels, p.method, p.note
FROM paper p
  LEFT JOIN customer ON customer.code = p.customer;

CREATE VIEW v_paper_line AS   -- one row a line of an invoice; `cancelled` when a credit note took the invoice back
SELECT p.number AS invoice, p.called, p.day AS invoice_day, p.job, p.customer, l.line, l.kind, l.title, l.description,
       l.day, l.quantity_micro, l.unit, l.amount, l.tax,
       EXISTS (SELECT 1 FROM paper c WHERE c.kind = 'credit' AND c.cancels = 1 AND c.invoice = p.number) AS cancelled
FROM paper_line l
  JOIN paper p ON p.entry = l.entry
WHERE p.kind = 'invoice';

CREATE VIEW v_paper_tax AS   -- one row a tax of an invoice (+) or of a credit note (-)
SELECT p.kind, p.number, p.day, p.job, p.customer, t.name, t.percent_micro, t.included, t.excused,
       CASE p.kind WHEN 'credit' THEN -t.base ELSE t.base END AS base,
       CASE WHEN t.excused <> '' THEN 0 WHEN p.kind = 'credit' THEN -t.amount ELSE t.amount END AS amount
FROM paper_tax t
  JOIN paper p ON p.entry = t.entry;

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
SELECT line, name, rate_micro, per, whole, unit, who, from_day, to_day
FROM cost;

CREATE VIEW v_spent AS   -- one row a use and cost: what was used of it, in v_use's counts
SELECT u.day, c.line, c.name, c.unit, c.whole, c.rate_micro, u.quantity
FROM cost c
  JOIN v_use u ON u.per = c.per AND u.day BETWEEN c.from_day AND c.to_day
    AND (c.who = u.who COLLATE NOCASE
         OR c.who = '' AND NOT EXISTS (SELECT 1
                                       FROM cost own
                                       WHERE own.per = c.per AND own.who = u.who COLLATE NOCASE AND own.who <> ''
                                         AND u.day BETWEEN own.from_day AND own.to_day))
WHERE u.quantity <> 0;

CREATE VIEW v_service AS -- services due by engine hours
SELECT line, name, every_tenths
FROM service;
