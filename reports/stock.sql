-- report:  stock
-- title:   Lumber stock
-- meaning: Own lumber: what was there before the period, what was cut for the mill itself and came from share
--          settlements, less what was sold, is on hand. Sold lumber is off the stock at the sale, whether it has left or
--          not. Customers' lumber: what was cut for a job, less the mill's part of a settlement and what load slips took
--          away, is still to be fetched; lumber that never went on a load slip stays in that list.
-- filters: from to species
-- example: stock -o stock.xlsx
-- table:   own | Own lumber
-- column:  bundle text "Bundle"
-- column:  species text "Species"
-- column:  grade text "Grade"
-- column:  size text "Size"
-- column:  length_ft feet "Length" metric-from=metric
-- column:  before count "Before" total=sum
-- column:  cut count "Cut" total=sum
-- column:  shares count "From shares" total=sum
-- column:  sold count "Sold" total=sum
-- column:  delivered count "Delivered" total=sum
-- column:  pieces count "On hand" total=sum
-- column:  bf lumber "On hand" total=sum
-- column:  metric count "" hidden
-- empty:   no own lumber
SELECT bundle, species, grade, size, length AS length_ft,
       coalesce(sum(pieces) FILTER (WHERE day < :from AND movement <> 'delivered'), 0) AS before,
       coalesce(sum(pieces) FILTER (WHERE day >= :from AND movement = 'cut'), 0) AS cut,
       coalesce(sum(pieces) FILTER (WHERE day >= :from AND movement = 'share'), 0) AS shares,
       coalesce(-sum(pieces) FILTER (WHERE day >= :from AND movement = 'sold'), 0) AS sold,
       coalesce(-sum(pieces) FILTER (WHERE day >= :from AND movement = 'delivered'), 0) AS delivered,
       coalesce(sum(pieces) FILTER (WHERE movement <> 'delivered'), 0) AS pieces,
       coalesce(sum(lumber) FILTER (WHERE movement <> 'delivered'), 0) AS bf, metric
FROM v_stock WHERE owner = 'own' AND day <= :to AND (:species IS NULL OR species = :species)
GROUP BY bundle, species, grade, size, metric, thickness, width, length
HAVING sum(lumber) FILTER (WHERE movement <> 'delivered') <> 0 OR max(day) >= :from
ORDER BY bundle, species, grade, metric, thickness, width, size, length;
-- notes:
SELECT 'More sold than there is: ' || coalesce(species || ' ', '') || coalesce(grade || ' ', '') || size || ', '
       || -sum(pieces) || ' pieces' || coalesce(' of bundle ' || bundle, ' of no bundle') || '.'
FROM v_stock WHERE owner = 'own' AND movement <> 'delivered' AND day <= :to AND (:species IS NULL OR species = :species)
GROUP BY bundle, species, grade, size, metric, thickness, width, length HAVING sum(pieces) < 0;
-- table:   grades | Own lumber on hand by grade
-- column:  species text "Species"
-- column:  grade text "Grade"
-- column:  pieces count "Pieces" total=sum
-- column:  bf lumber "Lumber" total=sum
-- column:  share_percent percent "Share" of=bf/all_bf once
-- column:  all_bf lumber "" hidden
-- chart:   bar x=grade y=bf title="Own lumber by grade"
SELECT species, grade, sum(pieces) AS pieces, sum(lumber) AS bf, sum(sum(lumber)) OVER () AS all_bf
FROM v_stock WHERE owner = 'own' AND movement <> 'delivered' AND day <= :to AND (:species IS NULL OR species = :species)
GROUP BY species, grade HAVING sum(lumber) <> 0 ORDER BY species, grade;
-- table:   customers | Customers' lumber
-- column:  job text "Job"
-- column:  bundle text "Bundle"
-- column:  cut count "Cut" total=sum
-- column:  to_mill count "To the mill" total=sum
-- column:  delivered count "Delivered" total=sum
-- column:  pieces count "Still here" total=sum
-- column:  bf lumber "Still here" total=sum
-- empty:   no customer's lumber
-- foot:    Grades are the mill's own yard grades, not grade stamps.
WITH moved AS (   -- what was cut: by runs, less the lines with a bundle, and those by themselves
  SELECT job, NULL AS bundle, 'cut' AS movement, day, lines, pieces, lumber FROM v_run
  WHERE owner <> 'own' AND day <= :to AND lines > 0 AND (:species IS NULL OR species = :species)
  UNION ALL
  SELECT job, CASE side WHEN 1 THEN bundle END, 'cut', day, side, side * pieces, side * lumber
  FROM v_tally JOIN (SELECT 1 AS side UNION ALL SELECT -1)
  WHERE bundle IS NOT NULL AND owner <> 'own' AND day <= :to AND (:species IS NULL OR species = :species)
  UNION ALL
  SELECT job, bundle, movement, day, 1, pieces, lumber FROM v_stock
  WHERE owner <> 'own' AND movement <> 'cut' AND day <= :to AND (:species IS NULL OR species = :species))
SELECT job, bundle, coalesce(sum(pieces) FILTER (WHERE movement = 'cut'), 0) AS cut,
       coalesce(-sum(pieces) FILTER (WHERE movement = 'share'), 0) AS to_mill,
       coalesce(-sum(pieces) FILTER (WHERE movement = 'delivered'), 0) AS delivered, sum(pieces) AS pieces, sum(lumber) AS bf
FROM moved
GROUP BY job, bundle HAVING sum(lines) > 0 AND (sum(lumber) <> 0 OR max(day) >= :from)
ORDER BY job, bundle;
