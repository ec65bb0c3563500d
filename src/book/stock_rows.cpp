#include "book/stock_rows.h"

#include <fmt/format.h>

#include <vector>

#include "base/text.h"

namespace kerfbook::book {
namespace {

/// Adds rows (bundle, species, grade, size, metric, length, pieces, along, lumber), times the sign ?1, to own stock.
std::string to_own_stock(const std::string& rows) {
  return "INSERT INTO own_stock (bundle, species, grade, size, metric, length, pieces, along, lumber) "
         "SELECT bundle, species, grade, size, metric, length, ?1 * sum(pieces), ?1 * sum(along), "
         "?1 * sum(lumber) FROM (" +
         rows +
         ") GROUP BY bundle, species, grade, size, metric, length "
         "ON CONFLICT DO UPDATE SET pieces = pieces + excluded.pieces, along = along + excluded.along, "
         "lumber = lumber + excluded.lumber";
}

/// Adds rows (job, bundle, species, cut, to_mill, delivered, lumber), times the sign ?1, to customers' lumber.
std::string to_job_stock(const std::string& rows) {
  return "INSERT INTO job_stock (job, bundle, species, cut, to_mill, delivered, lumber) "
         "SELECT job, bundle, species, ?1 * sum(cut), ?1 * sum(to_mill), ?1 * sum(delivered), "
         "?1 * sum(lumber) FROM (" +
         rows +
         ") GROUP BY job, bundle, species "
         "ON CONFLICT DO UPDATE SET cut = cut + excluded.cut, to_mill = to_mill + excluded.to_mill, "
         "delivered = delivered + excluded.delivered, lumber = lumber + excluded.lumber";
}

void clear_gone(Store& store) {
  store.run("DELETE FROM own_stock WHERE pieces = 0 AND along = 0 AND lumber = 0");
  store.run("DELETE FROM job_stock WHERE cut = 0 AND to_mill = 0 AND delivered = 0 AND lumber = 0");
}

/// Own lumber tallied (+) and sold by the piece or the foot (-): a row a line, of the lines `where` says. `size` as the
/// line has it; `stack` is that of its stack.
std::string own_lines(const std::string& tallied_where, const std::string& sold_where) {
  return "SELECT lower(coalesce(t.bundle, '')) AS bundle, coalesce(r.species, 0) AS species, "
         "coalesce(t.grade, 0) AS grade, t.size AS line_size, s.stack AS size, t.metric, "
         "CASE t.form WHEN 'lineal' THEN 0 ELSE t.length END AS length, t.pieces, "
         "CASE WHEN t.form <> 'lineal' THEN 0 WHEN t.sense = 'sawn' THEN t.length ELSE -t.length END AS "
         "along, "
         "t.lumber FROM tally t JOIN size s ON s.id = t.size "
         "JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run "
         "JOIN job j ON j.id = r.job AND j.owner = 'own' WHERE " +
         tallied_where +
         " UNION ALL SELECT lower(coalesce(x.bundle, '')), coalesce(x.species, 0), coalesce(x.grade, 0), "
         "x.size, s.stack, x.metric, CASE x.form WHEN 'lineal' THEN 0 ELSE x.length END, -x.pieces, "
         "CASE x.form WHEN 'lineal' THEN -x.length ELSE 0 END, -x.lumber "
         "FROM sold x JOIN size s ON s.id = x.size WHERE " +
         sold_where;
}

/// What the sheet tallied for the mill itself and for customers, and sold by the piece or the foot.
void move_sheet(Store& store, SheetKey key, int sign) {
  static const std::string kOwn =
      to_own_stock(own_lines("t.day = ?2 AND t.shift = ?3", "x.day = ?2 AND x.shift = ?3"));
  static const std::string kJobs = to_job_stock(
      "SELECT r.job, lower(coalesce(t.bundle, '')) AS bundle, coalesce(r.species, 0) AS species, "
      "t.pieces AS cut, 0 AS to_mill, 0 AS delivered, t.lumber FROM tally t JOIN run r ON r.day = t.day AND "
      "r.shift = t.shift AND r.run = t.run JOIN job j ON j.id = r.job AND j.owner <> 'own' "
      "WHERE t.day = ?2 AND t.shift = ?3");
  store.run(kOwn, sign, key.day, key.shift);
  store.run(kJobs, sign, key.day, key.shift);
}

/// The bundles of a tag that were sold whole, out of the stock (-1) or back in it (+1).
void move_sold_bundles(Store& store, const std::string& tag, int sign) {
  static const std::string kSql = to_own_stock(
      "SELECT lower(b.bundle) AS bundle, l.species, l.grade, "
      "s.stack AS size, l.metric, l.length, l.pieces, l.along, l.lumber FROM sold_bundle b JOIN "
      "sold_bundle_line l "
      "ON l.day = b.day AND l.shift = b.shift AND l.number = b.number JOIN size s ON s.id = l.size "
      "WHERE b.bundle = ?2");
  store.run(kSql, sign, tag);
}

void drop_sold_bundles(Store& store, const std::string& tag) {
  move_sold_bundles(store, tag, 1);
  store.run(
      "DELETE FROM sold_bundle_line WHERE (day, shift, number) IN "
      "(SELECT day, shift, number FROM sold_bundle WHERE bundle = ?)",
      tag);
}

/// A place in the order of all sheets. Of a bundle sold whole: where it was sold.
struct Place {
  std::int64_t day = -1'000'000;
  std::int64_t shift = 0;
  std::int64_t number = 0;
};

void write_sold_bundle(Store& store, const std::string& tag, const Place& from, const Place& to) {
  const auto between = [](const std::string& line) {
    const std::string place = "(" + line + ".day, " + line + ".shift, " + line + ".number)";
    return line + ".bundle = ?1 COLLATE NOCASE AND " + place + " > (?2, ?3, ?4) AND " + place +
           " < (?5, ?6, ?7)";
  };
  static const std::string kSql =
      "INSERT INTO sold_bundle_line (day, shift, number, species, grade, size, metric, length, pieces, "
      "along, lumber) "
      "SELECT ?5, ?6, ?7, species, grade, min(line_size), metric, length, sum(pieces), sum(along), "
      "sum(lumber) FROM (" +
      own_lines(between("t"), between("x")) +
      ") GROUP BY species, grade, size, metric, length "
      "HAVING sum(pieces) <> 0 OR sum(along) <> 0 OR sum(lumber) <> 0";
  store.run(kSql, tag, from.day, from.shift, from.number, to.day, to.shift, to.number);
}

void write_sold_bundles(Store& store, const std::string& tag) {
  std::vector<Place> places;
  store.each(
      "SELECT day, shift, number FROM sold_bundle WHERE bundle = ? ORDER BY day, shift, number",
      [&](const Row& row) {
        places.push_back({row.number(0), row.number(1), row.number(2)});
      },
      tag);
  Place last;
  for (const Place& place : places) {
    write_sold_bundle(store, tag, last, place);
    last = place;
  }
  if (!places.empty()) move_sold_bundles(store, tag, -1);
}

std::set<std::string> bundle_tags(Store& store, SheetKey key) {
  std::set<std::string> tags;
  store.each(
      "SELECT bundle FROM tally WHERE day = ?1 AND shift = ?2 AND bundle IS NOT NULL UNION "
      "SELECT bundle FROM sold WHERE day = ?1 AND shift = ?2 AND bundle IS NOT NULL UNION "
      "SELECT bundle FROM sold_bundle WHERE day = ?1 AND shift = ?2",
      [&](const Row& row) { tags.insert(lower(row.text(0))); }, key.day, key.shift);
  return tags;
}

}  // namespace

std::set<std::string> take_out(Store& store, SheetKey key) {
  auto tags = bundle_tags(store, key);
  for (const auto& tag : tags) drop_sold_bundles(store, tag);
  move_sheet(store, key, -1);
  return tags;
}

void put_in(Store& store, SheetKey key, std::set<std::string> tags) {
  for (const auto& tag : bundle_tags(store, key)) {
    if (tags.insert(tag).second) drop_sold_bundles(store, tag);
  }
  move_sheet(store, key, 1);
  for (const auto& tag : tags) write_sold_bundles(store, tag);
  clear_gone(store);
}

void put_in_paper(Store& store, std::int64_t entry) {
  static const std::string kLumber =
      "lumber_of(s.thickness, s.width, CASE s.length WHEN 0 THEN s.to_mill ELSE s.length END, s.metric) "
      "* CASE s.length WHEN 0 THEN 1 ELSE s.to_mill END AS lumber ";
  static const std::string kMillsPart = to_own_stock(
      "SELECT '' AS bundle, coalesce((SELECT id FROM species WHERE code = s.species), 0) AS species, "
      "coalesce((SELECT id FROM grade WHERE code = s.grade), 0) AS grade, (SELECT min(z.stack) FROM size z "
      "WHERE z.metric = s.metric AND z.thickness = s.thickness AND z.width = s.width) AS size, s.metric, "
      "s.length, CASE WHEN s.length > 0 THEN s.to_mill ELSE 0 END AS pieces, "
      "CASE WHEN s.length > 0 THEN 0 ELSE s.to_mill END AS along, " +
      kLumber + "FROM paper_share s WHERE s.entry = ?2 AND s.to_mill <> 0");
  static const std::string kGiven = to_job_stock(
      "SELECT j.id AS job, lower(s.bundle) AS bundle, "
      "coalesce((SELECT id FROM species WHERE code = s.species), 0) AS species, 0 AS cut, "
      "CASE WHEN s.length > 0 THEN s.to_mill ELSE 0 END AS to_mill, 0 AS delivered, -" +
      kLumber +
      "FROM paper_share s JOIN paper p ON p.entry = s.entry JOIN job j ON j.code = p.job "
      "WHERE s.entry = ?2 AND s.to_mill <> 0");
  static const std::string kLoaded = to_job_stock(
      "SELECT j.id AS job, lower(l.bundle) AS bundle, "
      "coalesce((SELECT id FROM species WHERE code = l.species), 0) AS species, 0 AS cut, 0 AS to_mill, "
      "l.pieces AS delivered, -lumber_of(l.thickness, l.width, l.length, l.metric) * max(l.pieces, 1) AS "
      "lumber FROM paper_load l JOIN paper p ON p.entry = l.entry JOIN job j ON j.code = p.job "
      "WHERE l.entry = ?2 AND j.owner <> 'own'");
  for (const std::string* sql : {&kMillsPart, &kGiven, &kLoaded}) store.run(*sql, 1, entry);
  const auto taken_back = store.number(
      "SELECT l.entry FROM paper t JOIN paper l ON l.kind = 'load' AND l.number = t.slip WHERE t.entry = ?",
      entry);
  if (taken_back) store.run(kLoaded, -1, *taken_back);
  clear_gone(store);
}

std::string own_jobs(Store& store) {
  std::string jobs;
  store.each("SELECT id FROM job WHERE owner = 'own' ORDER BY id",
             [&](const Row& row) { jobs += row.text(0) + " "; });
  return jobs;
}

void count_all_anew(Store& store) {
  for (const char* table : {"own_stock", "job_stock", "sold_bundle_line"}) {
    store.run(fmt::format("DELETE FROM {}", table));
  }
  std::vector<SheetKey> sheets;
  store.each("SELECT day, shift FROM sheet ORDER BY day, shift", [&](const Row& row) {
    sheets.push_back({Day{static_cast<std::int32_t>(row.number(0))}, static_cast<int>(row.number(1))});
  });
  for (const SheetKey key : sheets) move_sheet(store, key, 1);
  std::vector<std::string> tags;
  store.each("SELECT DISTINCT lower(bundle) FROM sold_bundle ORDER BY 1",
             [&](const Row& row) { tags.push_back(row.text(0)); });
  for (const auto& tag : tags) write_sold_bundles(store, tag);
  std::vector<std::int64_t> papers;
  store.each("SELECT entry FROM paper WHERE kind IN ('division', 'load', 'take-back') ORDER BY entry",
             [&](const Row& row) { papers.push_back(row.number(0)); });
  for (const auto entry : papers) put_in_paper(store, entry);
  clear_gone(store);
}

}  // namespace kerfbook::book
