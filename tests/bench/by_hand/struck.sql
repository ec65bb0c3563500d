SELECT s.day, s.kind, j.code, p.code, s.text, s.pieces, s.lumber, s.why, e.at, 1
FROM struck s JOIN journal e ON e.entry = s.entry LEFT JOIN job j ON j.id = s.job LEFT JOIN species p ON p.id = s.species
ORDER BY s.day, s.shift, s.revision, s.number;
SELECT subject, revision, at, why FROM journal WHERE revision > 1 AND kind IN ('sheet', 'mill') ORDER BY entry;
