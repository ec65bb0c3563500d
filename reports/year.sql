-- report:  year
-- title:   Volume of the year
-- meaning: For the year's return: logs sawn and lumber sawn by species group, the logs also by where they came from.
--          The origin is what 'in ... from' said when the log was received; a log never received has none. Scale is
--          net, by the rule it was scaled under. Check with the authority which rule and unit it wants.
-- takes:   from to site
-- example: year --period "last year" -o return.csv
-- table:   logs | Logs sawn
-- shows:   year text "Year"
-- shows:   species_group text "Species"
-- shows:   origin text "From"
-- shows:   rule text "Rule"
-- shows:   logs count "Logs" total=sum
-- shows:   net_bf scale "Net scale" total=sum unit-from=scale_unit
-- shows:   log_ft3 ft3 "Log volume" total=sum
-- shows:   scale_unit text "" hidden
-- empty:   no log sawn
WITH logs AS (
  SELECT l.day, r.species_id, l.rule, r.scale_unit, coalesce(l.origin, (SELECT i.origin FROM v_log_id i
           WHERE i.tag = l.tag AND i.state = 'received' AND (i.day, i.shift, i.number) < (l.day, l.shift, l.number)
           ORDER BY i.day DESC, i.shift DESC, i.number DESC LIMIT 1)) AS origin,
         count(*) AS logs, sum(l.net) AS net, sum(l.content) AS content
  FROM v_log_id l JOIN v_run_id r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
  WHERE l.state = 'sawn' AND l.day BETWEEN :from AND :to AND (:site_id IS NULL OR r.site_id = :site_id)
  GROUP BY l.day, r.species_id, l.rule, r.scale_unit, 5)
SELECT strftime('%Y', day * 86400, 'unixepoch') AS year, coalesce(nullif(s.species_group, ''), s.code) AS species_group,
       origin, rule, sum(logs) AS logs, sum(net) AS net_bf, sum(content) AS log_ft3,
       CASE WHEN rule IS NOT NULL THEN scale_unit END AS scale_unit
FROM logs LEFT JOIN v_species s ON s.id = species_id
GROUP BY 1, 2, origin, rule ORDER BY 1, 2, origin, rule;
-- table:   lumber | Lumber sawn
-- shows:   year text "Year"
-- shows:   species_group text "Species"
-- shows:   owner text "Owner"
-- shows:   pieces count "Pieces" total=sum
-- shows:   lumber_bf lumber "Lumber" total=sum
-- empty:   nothing sawn
WITH runs AS (
  SELECT strftime('%Y', day * 86400, 'unixepoch') AS year, species_id, job_id, sum(lines) AS lines, sum(pieces) AS pieces,
         sum(lumber) AS lumber
  FROM v_run_id WHERE day BETWEEN :from AND :to AND (:site_id IS NULL OR site_id = :site_id)
  GROUP BY 1, species_id, job_id)
SELECT year, coalesce(nullif(s.species_group, ''), s.code) AS species_group,
       CASE j.owner WHEN 'customer' THEN 'custom' ELSE j.owner END AS owner, sum(pieces) AS pieces, sum(lumber) AS lumber_bf
FROM runs LEFT JOIN v_species s ON s.id = species_id LEFT JOIN v_job j ON j.id = job_id
GROUP BY 1, 2, 3 HAVING sum(lines) > 0 ORDER BY 1, 2, 3;
