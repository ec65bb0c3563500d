-- report:  production
-- title:   Production by day
-- meaning: Board feet are nominal, exact from every tally line. Overrun is board feet over net log scale, less 100 %,
--          of the runs whose logs were all scaled. Board feet an hour is all board feet over all sawing hours; under
--          a job, its own sawing spans count, else the whole day's. A dash: not known, never nothing.
-- filters: from to job customer species site
-- example: production --period "this week"
-- table:   production |
-- column:  day day "Day"
-- column:  site text "Site"
-- column:  logs count "Logs" total=sum
-- column:  net_scale_bf scale "Net scale" total=sum unit-from=scale_unit
-- column:  lumber_bf lumber "Lumber" total=sum
-- column:  pieces count "Pieces" total=sum
-- column:  overrun_percent percent-over "Overrun" of=counted_lumber/counted_scale
-- column:  sawing_hours hours "Sawing" total=sum
-- column:  bf_per_sawing_hour ratio:0 "bf per sawing hour" of=lumber_bf/sawing_hours
-- column:  stop_hours hours "Stops" total=sum
-- column:  crew_hours hours "Crew" total=sum
-- column:  bf_per_crew_hour ratio:0 "bf per crew hour" of=lumber_bf/crew_hours
-- column:  unscaled_logs count "Logs without scale" total=sum
-- column:  rule text "Rule"
-- column:  counted_lumber lumber "" hidden
-- column:  counted_scale scale "" hidden unit-from=scale_unit
-- column:  scale_unit text "" hidden
-- chart:   bar x=day y=lumber_bf title="Lumber a day"
WITH runs AS (
  SELECT day, sum(logs) AS logs, sum(unscaled_logs) AS unscaled_logs,
         sum(net) FILTER (WHERE logs > unscaled_logs) AS net_scale, sum(lumber) AS lumber, sum(pieces) AS pieces,
         sum(lumber) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS counted_lumber,
         sum(net) FILTER (WHERE logs > 0 AND unscaled_logs = 0 AND lumber > 0) AS counted_scale,
         group_concat(DISTINCT scale_unit) FILTER (WHERE logs > unscaled_logs) AS scale_unit,
         group_concat(DISTINCT rule) FILTER (WHERE logs > unscaled_logs) AS rule
  FROM v_run
  WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
    AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
  GROUP BY day),
jobs AS (SELECT code FROM v_job WHERE (:job IS NULL OR code = :job) AND (:customer IS NULL OR customer = :customer)),
hours AS (
  SELECT day, sum(sawing_minutes) AS sawing, sum(stop_minutes) AS stops, sum(crew_minutes) AS crew
  FROM v_sheet
  WHERE day BETWEEN :from AND :to AND coalesce(:job, :customer, :species, :site) IS NULL
  GROUP BY day
  UNION ALL                     -- under a job, customer or site: the time written under it; a species has none
  SELECT day, sum(sawing), sum(stops), sum(crew) FROM (
    SELECT day, job, site, minutes AS sawing, NULL AS stops, NULL AS crew FROM v_sawing WHERE day BETWEEN :from AND :to
    UNION ALL SELECT day, job, site, NULL, minutes, NULL FROM v_stop WHERE day BETWEEN :from AND :to
    UNION ALL SELECT day, job, NULL, NULL, NULL, minutes FROM v_crew WHERE day BETWEEN :from AND :to AND :site IS NULL)
  WHERE coalesce(:job, :customer, :site) IS NOT NULL AND :species IS NULL
    AND (coalesce(:job, :customer) IS NULL OR job IN jobs) AND (:site IS NULL OR site = :site)
  GROUP BY day)
SELECT d.day,
       (SELECT group_concat(site, ' / ') FROM (SELECT site FROM v_run WHERE v_run.day = d.day
          AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
          AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
          GROUP BY site ORDER BY min(shift * 1000 + run))) AS site,
       r.logs, r.net_scale AS net_scale_bf, r.lumber AS lumber_bf, r.pieces,
       nullif(h.sawing, 0) AS sawing_hours, h.stops AS stop_hours, nullif(h.crew, 0) AS crew_hours,
       r.unscaled_logs, replace(r.rule, ',', ', ') AS rule, r.counted_lumber, r.counted_scale, r.scale_unit
FROM (SELECT day FROM runs UNION SELECT day FROM hours) d
  LEFT JOIN runs r ON r.day = d.day LEFT JOIN hours h ON h.day = d.day
ORDER BY d.day;
-- notes:
SELECT sum(unscaled_logs) || ' of ' || sum(logs) || ' logs have no scale; overrun counts the runs whose logs all have one.'
FROM v_run
WHERE day BETWEEN :from AND :to AND (:job IS NULL OR job = :job) AND (:customer IS NULL OR customer = :customer)
  AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site)
HAVING sum(unscaled_logs) > 0
UNION ALL
SELECT 'Net scale here is by ' || replace(group_concat(DISTINCT rule), ',', ' and by ') || ': not one measure.'
FROM v_run
WHERE logs > unscaled_logs AND day BETWEEN :from AND :to AND (:job IS NULL OR job = :job)
  AND (:customer IS NULL OR customer = :customer) AND (:species IS NULL OR species = :species)
  AND (:site IS NULL OR site = :site)
HAVING count(DISTINCT rule) > 1;
