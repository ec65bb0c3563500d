-- report:  stock
-- title:   Own lumber cut
-- meaning: Lumber sawn for the mill's own stock, by bundle, species, grade, size and length. It is what was cut: what
--          was sold, delivered or taken over from shares is on the papers of those jobs.
-- filters: from to species site
-- table:   stock |
-- column:  bundle text "Bundle"
-- column:  species text "Species"
-- column:  grade text "Grade"
-- column:  size text "Size"
-- column:  length_ft feet "Length" metric-from=metric
-- column:  pieces count "Pieces" total=sum
-- column:  bf lumber "Lumber" total=sum
-- column:  metric count "" hidden
-- grid:    rows=bundle?,species?,grade?,size column=length_ft cell=pieces sums=pieces,bf
-- empty:   no lumber cut for stock
SELECT bundle, species, grade, size, CASE WHEN form <> 'lineal' THEN length END AS length_ft, sum(pieces) AS pieces,
       sum(lumber) AS bf, metric
FROM v_tally WHERE owner = 'own' AND day BETWEEN :from AND :to AND (:species IS NULL OR species = :species)
  AND (:site IS NULL OR site = :site)
GROUP BY bundle, species, grade, size, metric, thickness, width, length_ft
HAVING sum(pieces) <> 0 OR sum(lumber) <> 0
ORDER BY bundle, species, grade, metric, thickness, width, size, length_ft;
-- table:   grades | By grade
-- column:  species text "Species"
-- column:  grade text "Grade"
-- column:  pieces count "Pieces" total=sum
-- column:  bf lumber "Lumber" total=sum
-- column:  share_percent percent "Share" of=bf/all_bf once
-- column:  all_bf lumber "" hidden
-- chart:   bar x=grade y=bf title="Own lumber by grade"
-- foot:    Grades are the mill's own yard grades, not grade stamps.
WITH own AS (SELECT * FROM v_tally WHERE owner = 'own' AND day BETWEEN :from AND :to
               AND (:species IS NULL OR species = :species) AND (:site IS NULL OR site = :site))
SELECT species, grade, sum(pieces) AS pieces, sum(lumber) AS bf, (SELECT sum(lumber) FROM own) AS all_bf
FROM own GROUP BY species, grade ORDER BY species, grade;
