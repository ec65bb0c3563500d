// stock_held.h -- the stock that posting keeps, held against the tally lines, sales and papers it follows from.
#pragma once

#include <string>

namespace kerfbook::tests {

/// How many rows stand on one side only, as a number SQL can give. Own lumber and customers' against all movements; and
/// when a bundle is sold whole, all that was ever tallied under its tag is gone.
inline std::string stock_wrongly_kept() {
  const std::string own =
      "SELECT tag, species_id, grade_id, size_id, metric, length, sum(pieces) AS p, sum(along) AS a, "
      "sum(lumber) AS l FROM v_stock_id WHERE owner = 'own' AND movement <> 'delivered' "
      "GROUP BY tag, species_id, grade_id, size_id, metric, length HAVING p <> 0 OR a <> 0 OR l <> 0";
  const std::string kept_own =
      "SELECT tag, species_id, grade_id, size_id, metric, length, pieces, along, lumber FROM v_on_hand";
  const std::string jobs =
      "SELECT job_id, tag, species_id, coalesce(sum(pieces) FILTER (WHERE movement = 'cut'), 0) AS c, "
      "coalesce(-sum(pieces) FILTER (WHERE movement = 'share'), 0) AS s, "
      "coalesce(-sum(pieces) FILTER (WHERE movement = 'delivered'), 0) AS d, sum(lumber) AS l FROM "
      "v_stock_id "
      "WHERE owner <> 'own' GROUP BY job_id, tag, species_id HAVING c <> 0 OR s <> 0 OR d <> 0 OR l <> 0";
  const std::string kept_jobs =
      "SELECT job_id, tag, species_id, cut, to_mill, delivered, lumber FROM v_still_here";
  const std::string not_empty =
      "SELECT 1 FROM sold_bundle b WHERE (SELECT coalesce(sum(t.lumber), 0) FROM tally t JOIN run r ON "
      "r.day = t.day AND r.shift = t.shift AND r.run = t.run JOIN job j ON j.id = r.job AND j.owner = 'own' "
      "WHERE lower(t.bundle) = lower(b.bundle) AND (t.day, t.shift, t.number) < (b.day, b.shift, b.number)) "
      "<> (SELECT coalesce(sum(lumber), 0) FROM sold x WHERE lower(x.bundle) = lower(b.bundle) "
      "AND (x.day, x.shift, x.number) < (b.day, b.shift, b.number)) + (SELECT coalesce(sum(l.lumber), 0) "
      "FROM sold_bundle_line l JOIN sold_bundle a ON a.day = l.day AND a.shift = l.shift AND a.number = "
      "l.number WHERE a.bundle = b.bundle AND (a.day, a.shift, a.number) <= (b.day, b.shift, b.number))";
  const auto only_in = [](const std::string& one, const std::string& other) {
    return "(SELECT count(*) FROM (SELECT * FROM (" + one + ") EXCEPT SELECT * FROM (" + other + ")))";
  };
  return only_in(own, kept_own) + " + " + only_in(kept_own, own) + " + " + only_in(jobs, kept_jobs) + " + " +
         only_in(kept_jobs, jobs) + " + (SELECT count(*) FROM (" + not_empty + "))";
}

}  // namespace kerfbook::tests
