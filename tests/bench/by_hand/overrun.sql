SELECT day, j.code, s.code,
       coalesce(u.name, (SELECT su.name FROM setup_change c JOIN setup su ON su.id = c.setup
         WHERE (c.day, c.shift) < (r.day, r.shift) ORDER BY c.day DESC, c.shift DESC, c.number DESC LIMIT 1)),
       CASE WHEN logs > unscaled_logs THEN practice END, logs, CASE WHEN logs > unscaled_logs THEN net END, lumber,
       nullif(content, 0), unscaled_logs, pieces, t.name, unit,
       CASE WHEN counted THEN lumber END, CASE WHEN counted THEN net END, CASE WHEN counted THEN content END,
       CASE WHEN counted THEN wood END
FROM (SELECT *, logs > 0 AND unscaled_logs = 0 AND lumber > 0 AS counted FROM run) r
  LEFT JOIN job j ON j.id = r.job LEFT JOIN species s ON s.id = r.species LEFT JOIN setup u ON u.id = r.setup
  LEFT JOIN site t ON t.id = r.site
WHERE logs > 0 OR lines > 0 ORDER BY day, shift, run;
