// bundle.cpp -- bundles sold whole, and what the book says was in them.
#include "office/bundle.h"

#include <map>
#include <tuple>

#include "base/text.h"
#include "book/store.h"
#include "paper/mill_words.h"

namespace kerfbook::billing {

namespace {

std::string words_of(const BundleLine& line, const book::Mill& mill) {
  std::string words;
  if (line.length.count == 0) {
    const bool metric = line.size.thickness.system == measure::System::metric;
    const Length along{line.count, line.size.thickness.system};
    words = plain(shortest(metric ? in_metres(along) : in_feet(along), 0, 2)) + (metric ? "lm " : "lf ") +
            write_size(line.size);
  } else {
    words = std::to_string(line.count) + " " + write_size(line.size) + "x" + measure::write_feet(line.length);
  }
  for (const std::string& word : {species_words(mill, line.species), grade_words(mill, line.grade)})
    words += word.empty() ? "" : " " + word;
  return words;
}

}  // namespace

std::string SoldBundle::words(const book::Mill& mill) const {
  std::vector<std::string> all;
  for (const BundleLine& line : lines) all.push_back(words_of(line, mill));
  return join(all, ", ");
}

std::vector<SoldBundle> sold_bundles(const book::Book& book, Day to, std::optional<Day> from) {
  const Day first = from.value_or(make_day(1900, 1, 1));  // no book begins before it
  std::vector<SoldBundle> all;
  std::map<std::tuple<std::int64_t, std::int64_t, std::int64_t>, std::size_t> place;
  book::Store store(book.database());
  store.each(
      "SELECT day, shift, number, buyer, bundle, price_micro FROM v_sold_bundle WHERE day BETWEEN ? AND ? "
      "ORDER BY day, shift, number",
      [&](const book::Row& row) {
        SoldBundle sold{Day{static_cast<std::int32_t>(row.number(0))},
                        static_cast<int>(row.number(1)),
                        row.text(3),
                        row.text(4),
                        {},
                        {}};
        if (const auto price = row.maybe(5)) sold.price = Rational(*price, 1'000'000);
        place.emplace(std::tuple(row.number(0), row.number(1), row.number(2)), all.size());
        all.push_back(std::move(sold));
      },
      first, to);
  store.each(
      "SELECT day, shift, number, species, grade, size, metric, coalesce(length, 0), pieces + along "
      "FROM v_whole_bundle WHERE day BETWEEN ? AND ? AND pieces + along > 0 "
      "ORDER BY day, shift, number, species, thickness, width, grade, length",
      [&](const book::Row& row) {
        const auto system = row.number(6) != 0 ? measure::System::metric : measure::System::inch;
        BundleLine line;
        line.species = row.text(3);
        line.grade = row.text(4);
        if (const auto size = measure::read_size(row.text(5), system == measure::System::metric))
          line.size = *size;
        line.length = {row.number(7), system};
        line.count = row.number(8);
        all[place.at({row.number(0), row.number(1), row.number(2)})].lines.push_back(std::move(line));
      },
      first, to);
  return all;
}

}  // namespace kerfbook::billing
