// bundle.cpp -- the contents of bundles sold whole, out of the tally lines under their tags.
#include "billing/bundle.h"

#include "base/text.h"
#include "billing/letter.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

std::string words_of(const BundleLine& line) {
  std::string words;
  if (line.length.count == 0) {
    const bool metric = line.size.thickness.system == measure::System::metric;
    const Length along{line.count, line.size.thickness.system};
    words = plain(shortest(metric ? in_metres(along) : in_feet(along), 0, 2)) + (metric ? "lm " : "lf ") +
            write_size(line.size);
  } else {
    words = std::to_string(line.count) + " " + write_size(line.size) + "x" + measure::write_feet(line.length);
  }
  for (const std::string& word : {line.species, line.grade}) words += word.empty() ? "" : " " + word;
  return words;
}

/// `from` is the place at which the bundle was sold whole before; the book's beginning when it never was.
struct Place {
  std::int64_t day = 0;
  std::int64_t shift = 0;
  std::int64_t number = 0;
};

std::vector<BundleLine> contents(book::Store& store, const std::string& tag, const Place& from,
                                 const Place& to) {
  static constexpr std::string_view kSql =
      "WITH line AS ("
      "SELECT r.species AS species, t.grade AS grade, t.size AS size, t.metric AS metric, "
      "CASE t.form WHEN 'lineal' THEN 0 ELSE t.length END AS length, "
      "CASE t.form WHEN 'lineal' THEN CASE t.sense WHEN 'sawn' THEN t.length ELSE -t.length END ELSE "
      "t.pieces "
      "END AS many "
      "FROM tally t JOIN run r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run "
      "JOIN job ON job.id = r.job WHERE t.bundle = ?1 COLLATE NOCASE AND job.owner = 'own' "
      "AND (t.day, t.shift, t.number) > (?2, ?3, ?4) AND (t.day, t.shift, t.number) < (?5, ?6, ?7) "
      "UNION ALL SELECT species, grade, size, metric, CASE form WHEN 'lineal' THEN 0 ELSE length END, "
      "CASE form WHEN 'lineal' THEN -length ELSE -pieces END FROM sold WHERE bundle = ?1 COLLATE NOCASE "
      "AND (day, shift, number) > (?2, ?3, ?4) AND (day, shift, number) < (?5, ?6, ?7)) "
      "SELECT species.code, grade.code, size.label, line.metric, line.length, sum(line.many) FROM line "
      "JOIN size ON size.id = line.size LEFT JOIN species ON species.id = line.species "
      "LEFT JOIN grade ON grade.id = line.grade GROUP BY line.species, line.grade, line.size, line.length "
      "HAVING sum(line.many) > 0 ORDER BY species.code, size.thickness, size.width, grade.code, line.length";
  std::vector<BundleLine> lines;
  store.each(
      kSql,
      [&](const book::Row& row) {
        const bool metric = row.number(3) != 0;
        BundleLine line;
        line.species = row.text(0);
        line.grade = row.text(1);
        if (const auto size = measure::read_size(row.text(2), metric)) line.size = *size;
        line.length = {row.number(4), metric ? measure::System::metric : measure::System::inch};
        line.count = row.number(5);
        lines.push_back(std::move(line));
      },
      tag, from.day, from.shift, from.number, to.day, to.shift, to.number);
  return lines;
}

}  // namespace

std::string SoldBundle::words() const {
  std::vector<std::string> all;
  for (const BundleLine& line : lines) all.push_back(words_of(line));
  return join(all, ", ");
}

std::vector<SoldBundle> sold_bundles(const book::Book& book, Day to) {
  std::vector<SoldBundle> all;
  std::vector<Place> places;
  std::map<std::string, Place> before;
  book::Store store(book.database());
  store.each(
      "SELECT day, shift, number, buyer, bundle, price_micro FROM sold_bundle WHERE day <= ? "
      "ORDER BY day, shift, number",
      [&](const book::Row& row) {
        SoldBundle sold{Day{static_cast<std::int32_t>(row.number(0))},
                        static_cast<int>(row.number(1)),
                        row.text(3),
                        row.text(4),
                        {},
                        {}};
        if (const auto price = row.maybe(5)) sold.price = Rational(*price, 1'000'000);
        all.push_back(std::move(sold));
        places.push_back({row.number(0), row.number(1), row.number(2)});
      },
      to);
  for (std::size_t i = 0; i < all.size(); ++i) {
    Place& last = before[lower(all[i].tag)];
    all[i].lines = contents(store, all[i].tag, last, places[i]);
    last = places[i];
  }
  return all;
}

}  // namespace kerfbook::billing
