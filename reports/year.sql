-- report:  year
-- title:   Volume of the year
-- meaning: For the year's return: logs sawn and lumber made by species group, the logs also by where they came from.
--          The origin is what 'in ... from' said when the log was received; a log never received has none. Scale is
--          net, by the rule it was scaled under. Check with the authority which rule and unit it wants.
-- filters: from to site
-- example: year --period "last year" -o return.csv
-- table:   logs | Logs sawn
-- column:  year text "Year"
-- column:  species_group text "Species"
-- column:  origin text "From"
-- column:  rule text "Rule"
-- column:  logs count "Logs" total=sum
-- column:  net_bf scale "Net scale" total=sum unit-from=scale_unit
-- column:  log_ft3 ft3 "Log content" total=sum
-- column:  scale_unit text "" hidden
-- empty:   no log sawn
SELECT strftime('%Y', l.day * 86400, 'unixepoch') AS year, coalesce(nullif(r.species_group, ''), r.species) AS species_group,
       coalesce(l.origin, (SELECT i.origin FROM v_log i WHERE i.tag = l.tag AND i.state = 'received'
         AND (i.day, i.shift, i.number) < (l.day, l.shift, l.number)
         ORDER BY i.day DESC, i.shift DESC, i.number DESC LIMIT 1)) AS origin,
       l.rule, count(*) AS logs, sum(l.net) AS net_bf, sum(l.content) AS log_ft3,
       CASE WHEN l.rule IS NOT NULL THEN scale_unit(l.rule) END AS scale_unit
FROM v_log l JOIN v_run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run
WHERE l.state = 'sawn' AND l.day BETWEEN :from AND :to AND (:site IS NULL OR l.site = :site)
GROUP BY 1, 2, 3, l.rule ORDER BY 1, 2, 3, l.rule;
-- table:   lumber | Lumber made
-- column:  year text "Year"
-- column:  species_group text "Species"
-- column:  owner text "Whose"
-- column:  pieces count "Pieces" total=sum
-- column:  lumber_bf lumber "Lumber" total=sum
-- empty:   nothing sawn
SELECT strftime('%Y', day * 86400, 'unixepoch') AS year, coalesce(nullif(species_group, ''), species) AS species_group,
       CASE owner WHEN 'customer' THEN 'custom' ELSE owner END AS owner, sum(pieces) AS pieces, sum(lumber) AS lumber_bf
FROM v_run WHERE day BETWEEN :from AND :to AND (:site IS NULL OR site = :site)
GROUP BY 1, 2, 3 HAVING sum(lines) > 0 ORDER BY 1, 2, 3;
