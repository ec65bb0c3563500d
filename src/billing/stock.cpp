// stock.cpp -- own lumber sold that was not there.
#include "base/text.h"
#include "billing/bundle.h"
#include "billing/letter.h"
#include "billing/office.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

/// "7 too many", or "20 lf too many" of what is counted by its length.
std::string too_many(std::int64_t pieces, std::int64_t along, measure::System system) {
  if (pieces != 0) return std::to_string(pieces) + " too many";
  const measure::Length length{along, system};
  const bool metric = system == measure::System::metric;
  return plain(shortest(metric ? in_metres(length) : in_feet(length), 0, 2)) +
         (metric ? " lm too many" : " lf too many");
}

/// Stacks of own lumber of which less than nothing is left on a day, whatever bundles it lay in; of a sheet, those it
/// sold of.
constexpr std::string_view kShort =
    "WITH short AS (SELECT species_id, grade_id, size_id, metric, length, sum(pieces) AS pieces, "
    "sum(along) AS along FROM ("
    "SELECT species_id, grade_id, size_id, metric, length, pieces, along FROM v_on_hand UNION ALL "
    "SELECT species_id, grade_id, size_id, metric, length, -pieces, -along FROM v_stock_id "
    "WHERE owner = 'own' AND movement <> 'delivered' AND day > ?1) "
    "GROUP BY species_id, grade_id, size_id, metric, length HAVING sum(pieces) < 0 OR sum(along) < 0) "
    "SELECT z.label, coalesce(length, 0), short.metric, s.code, g.code, pieces, along "
    "FROM short JOIN v_size z ON z.id = size_id LEFT JOIN v_species s ON s.id = species_id "
    "LEFT JOIN v_grade g ON g.id = grade_id WHERE ?2 IS NULL OR EXISTS (SELECT 1 FROM v_stock_id x "
    "WHERE x.movement = 'sold' AND x.day = ?2 AND x.shift = ?3 AND x.species_id IS short.species_id "
    "AND x.grade_id IS short.grade_id AND x.size_id = short.size_id AND x.metric = short.metric "
    "AND x.length IS short.length) ORDER BY s.code, g.code, z.thickness, z.width, length";

std::string words_of(const book::Row& row) {
  const auto system = row.number(2) != 0 ? measure::System::metric : measure::System::inch;
  std::string words = row.text(0);
  if (row.number(1) != 0) words += "x" + measure::write_feet({row.number(1), system});
  for (const int code : {3, 4}) words += row.is_null(code) ? "" : " " + row.text(code);
  return words + ", " + too_many(-row.number(5), -row.number(6), system);
}

bool sold_anything(book::Store& store, const SheetKey& sheet) {
  return store
      .number(
          "SELECT 1 FROM v_sold WHERE day = ?1 AND shift = ?2 UNION ALL "
          "SELECT 1 FROM v_sold_bundle WHERE day = ?1 AND shift = ?2 LIMIT 1",
          sheet.first, sheet.second)
      .has_value();
}

}  // namespace

std::vector<std::string> stock_warnings(const book::Book& book, Day to,
                                        const std::optional<SheetKey>& sold_on) {
  book::Store store(book.database());
  if (sold_on && !sold_anything(store, *sold_on)) return {};
  const auto day = sold_on ? std::optional(sold_on->first) : std::nullopt;
  std::vector<std::string> all;
  for (const SoldBundle& sold : sold_bundles(book, to, day))
    if (sold.lines.empty() && (!sold_on || *sold_on == SheetKey{sold.day, sold.shift}))
      all.push_back("Sold a bundle with nothing in it: " + sold.tag + ", " + write_day(sold.day) + ".");
  store.each(
      kShort, [&](const book::Row& row) { all.push_back("Sold more than is there: " + words_of(row) + "."); },
      to, day, sold_on ? sold_on->second : 0);
  return all;
}

}  // namespace kerfbook::billing
