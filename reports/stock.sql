-- report:  stock
-- title:   Lumber stock
-- meaning: Own lumber: what was there before the period, what was cut for the mill itself and came from shares,
--          less what was sold, is on hand. Sold lumber is off the stock at the sale, whether it has left or
--          not. Lumber counted by its length has no pieces. Customers' lumber: what was cut for a job, less the mill's
--          part of a division and what load slips took away, is still to be fetched; lumber that never went on a load
--          slip stays in that list.
-- takes:   from to species
-- example: stock -o stock.xlsx
-- table:   own | Own lumber
-- shows:   bundle text "Bundle"
-- shows:   species text "Species"
-- shows:   grade text "Grade"
-- shows:   size text "Size"
-- shows:   length_ft feet "Length" metric-from=metric
-- shows:   before count "Before" total=sum
-- shows:   cut count "Cut" total=sum
-- shows:   shares count "From shares" total=sum
-- shows:   sold count "Sold" total=sum
-- shows:   delivered count "Delivered" total=sum
-- shows:   pieces count "On hand" total=sum
-- shows:   lineal_ft feet "By length" metric-from=metric
-- shows:   bf lumber "On hand" total=sum
-- shows:   metric count "" hidden
-- empty:   no own lumber
WITH moved AS (   -- what lies there now, and what moved since the period began
  SELECT tag, species_id, grade_id, size_id, metric, length, NULL AS movement, NULL AS day, pieces, along, lumber
  FROM v_on_hand WHERE (:species_id IS NULL OR species_id = :species_id)
  UNION ALL
  SELECT tag, species_id, grade_id, size_id, metric, length, movement, day, pieces, along, lumber
  FROM v_stock_id WHERE owner = 'own' AND day >= :from AND (:species_id IS NULL OR species_id = :species_id)),
stack AS (
  SELECT tag, species_id, grade_id, size_id, metric, length,
         coalesce(sum(pieces) FILTER (WHERE movement = 'cut' AND day <= :to), 0) AS cut,
         coalesce(sum(pieces) FILTER (WHERE movement = 'share' AND day <= :to), 0) AS shares,
         coalesce(-sum(pieces) FILTER (WHERE movement = 'sold' AND day <= :to), 0) AS sold,
         coalesce(-sum(pieces) FILTER (WHERE movement = 'delivered' AND day <= :to), 0) AS delivered,
         sum(CASE WHEN day IS NULL THEN pieces WHEN day > :to AND movement <> 'delivered' THEN -pieces ELSE 0 END) AS pieces,
         sum(CASE WHEN day IS NULL THEN along WHEN day > :to AND movement <> 'delivered' THEN -along ELSE 0 END) AS along,
         sum(CASE WHEN day IS NULL THEN lumber WHEN day > :to AND movement <> 'delivered' THEN -lumber ELSE 0 END) AS lumber,
         count(*) FILTER (WHERE day <= :to) AS moves
  FROM moved GROUP BY tag, species_id, grade_id, size_id, metric, length)
SELECT coalesce((SELECT t.bundle FROM v_tally_id t WHERE t.bundle = tag COLLATE NOCASE ORDER BY t.day, t.shift, t.number LIMIT 1), tag)
         AS bundle,
       s.code AS species, g.code AS grade, z.label AS size, length AS length_ft,
       pieces - cut - shares + sold AS before, cut, shares, sold, delivered, pieces,
       CASE WHEN length IS NULL THEN along END AS lineal_ft, lumber AS bf, stack.metric
FROM stack JOIN v_size z ON z.id = size_id LEFT JOIN v_species s ON s.id = species_id LEFT JOIN v_grade g ON g.id = grade_id
WHERE lumber <> 0 OR moves > 0
ORDER BY tag, s.code, g.code, stack.metric, z.thickness, z.width, length;
-- notes:
WITH stack AS (
  SELECT tag, species_id, grade_id, size_id, metric, length, sum(pieces) AS pieces, sum(along) AS along FROM (
    SELECT tag, species_id, grade_id, size_id, metric, length, pieces, along FROM v_on_hand
    UNION ALL
    SELECT tag, species_id, grade_id, size_id, metric, length, -pieces, -along FROM v_stock_id
    WHERE owner = 'own' AND movement <> 'delivered' AND day > :to)
  WHERE (:species_id IS NULL OR species_id = :species_id)
  GROUP BY tag, species_id, grade_id, size_id, metric, length HAVING sum(pieces) < 0 OR sum(along) < 0)
SELECT 'More sold than there is, below 0 on hand: ' || coalesce(s.code || ' ', '') || coalesce(g.code || ' ', '') || z.label
       || coalesce(' of bundle ' || (SELECT t.bundle FROM v_tally_id t WHERE t.bundle = tag COLLATE NOCASE
                     ORDER BY t.day, t.shift, t.number LIMIT 1), ' of no bundle') || '.'
FROM stack JOIN v_size z ON z.id = size_id LEFT JOIN v_species s ON s.id = species_id LEFT JOIN v_grade g ON g.id = grade_id
ORDER BY tag, s.code, g.code, z.thickness, z.width, length;
-- table:   grades | Own lumber on hand by grade
-- shows:   species text "Species"
-- shows:   grade text "Grade"
-- shows:   pieces count "Pieces" total=sum
-- shows:   bf lumber "Lumber" total=sum
-- shows:   share_percent percent "Share" of=bf/all_bf once
-- shows:   all_bf lumber "" hidden
-- picture: bar across=grade up=bf title="Own lumber by grade"
WITH stack AS (
  SELECT species_id, grade_id, sum(pieces) AS pieces, sum(lumber) AS lumber FROM (
    SELECT species_id, grade_id, pieces, lumber FROM v_on_hand
    UNION ALL
    SELECT species_id, grade_id, -pieces, -lumber FROM v_stock_id
    WHERE owner = 'own' AND movement <> 'delivered' AND day > :to)
  WHERE (:species_id IS NULL OR species_id = :species_id) GROUP BY species_id, grade_id HAVING sum(lumber) <> 0)
SELECT s.code AS species, g.code AS grade, pieces, lumber AS bf, sum(lumber) OVER () AS all_bf
FROM stack LEFT JOIN v_species s ON s.id = species_id LEFT JOIN v_grade g ON g.id = grade_id ORDER BY s.code, g.code;
-- table:   customers | Customers' lumber
-- shows:   job text "Job"
-- shows:   bundle text "Bundle"
-- shows:   cut count "Cut" total=sum
-- shows:   to_mill count "To the mill" total=sum
-- shows:   delivered count "Delivered" total=sum
-- shows:   pieces count "Still here" total=sum
-- shows:   bf lumber "Still here" total=sum
-- empty:   no customer's lumber
-- foot:    Grades are the mill's own yard grades, not grade stamps.
WITH moved AS (   -- jobs that were cut for, settled or fetched in the period
  SELECT job_id FROM v_run_id WHERE day BETWEEN :from AND :to AND lines > 0
  UNION
  SELECT j.id FROM v_paper p JOIN v_job j ON j.code = p.job
  WHERE p.kind IN ('load', 'take-back', 'division') AND p.day BETWEEN :from AND :to),
later AS (
  SELECT job_id, tag, -sum(pieces) FILTER (WHERE movement = 'cut') AS cut, sum(pieces) FILTER (WHERE movement = 'share') AS to_mill,
         sum(pieces) FILTER (WHERE movement = 'delivered') AS delivered, -sum(lumber) AS lumber
  FROM v_stock_id WHERE owner <> 'own' AND day > :to AND (:species_id IS NULL OR species_id = :species_id) GROUP BY job_id, tag),
here AS (
  SELECT job_id, tag, sum(cut) AS cut, sum(to_mill) AS to_mill, sum(delivered) AS delivered, sum(lumber) AS lumber FROM (
    SELECT job_id, tag, cut, to_mill, delivered, lumber FROM v_still_here
    WHERE lumber <> 0 AND (:species_id IS NULL OR species_id = :species_id)
    UNION ALL
    SELECT job_id, tag, cut, to_mill, delivered, lumber FROM v_still_here
    WHERE job_id IN (SELECT job_id FROM moved UNION SELECT job_id FROM later) AND lumber = 0
      AND (:species_id IS NULL OR species_id = :species_id)
    UNION ALL
    SELECT job_id, tag, coalesce(cut, 0), coalesce(to_mill, 0), coalesce(delivered, 0), lumber FROM later)
  GROUP BY job_id, tag)
SELECT j.code AS job, coalesce((SELECT t.bundle FROM v_tally_id t WHERE t.bundle = tag COLLATE NOCASE
         ORDER BY t.day, t.shift, t.number LIMIT 1), tag) AS bundle,
       cut, to_mill, delivered, cut - to_mill - delivered AS pieces, lumber AS bf
FROM here JOIN v_job j ON j.id = job_id AND j.owner <> 'own'
WHERE lumber <> 0 OR job_id IN (SELECT job_id FROM moved) AND (cut <> 0 OR to_mill <> 0 OR delivered <> 0)
ORDER BY j.code, tag;
