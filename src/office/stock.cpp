// stock.cpp -- own lumber sold that was not there.
#include <algorithm>
#include <map>
#include <tuple>

#include "base/text.h"
#include "book/store.h"
#include "office/bundle.h"
#include "office/office.h"
#include "paper/mill_words.h"

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

/// Boards of one kind, whatever bundle they lie in.
struct Stack {
  std::optional<std::int64_t> species;
  std::optional<std::int64_t> grade;
  std::int64_t size = 0;
  std::int64_t metric = 0;
  std::optional<std::int64_t> length;
  auto operator<=>(const Stack&) const = default;
};

/// Of the columns species_id, grade_id, size_id, metric, length, from the given one on.
Stack stack_in(const book::Row& row, int from) {
  return {row.maybe(from), row.maybe(from + 1), row.number(from + 2), row.number(from + 3),
          row.maybe(from + 4)};
}

struct Count {
  std::int64_t pieces = 0;
  std::int64_t along = 0;
};

/// The mill's own lumber as it lay at the end of a day, worked back from what lies there today.
class OwnStock {
 public:
  /// `earliest`: it will be asked for no day before this one.
  OwnStock(book::Store& store, Day earliest) {
    store.each("SELECT species_id, grade_id, size_id, metric, length, pieces, along FROM v_on_hand",
               [&](const book::Row& row) {
                 move(stack_in(row, 0), {row.number(5), row.number(6)}, 1);
               });
    store.each(
        "SELECT species_id, grade_id, size_id, metric, length, pieces, along, day FROM v_stock_id "
        "WHERE owner = 'own' AND movement <> 'delivered' AND day > ? ORDER BY day",
        [&](const book::Row& row) {
          later_.push_back({Day{static_cast<std::int32_t>(row.number(7))},
                            stack_in(row, 0),
                            {row.number(5), row.number(6)}});
        },
        earliest);
  }

  /// From day to day, the newest first.
  void back_to(Day day) {
    for (; !later_.empty() && later_.back().day > day; later_.pop_back())
      move(later_.back().stack, later_.back().count, -1);
  }
  [[nodiscard]] std::vector<Stack> all() const {
    std::vector<Stack> stacks;
    for (const auto& [stack, left] : left_) stacks.push_back(stack);
    return stacks;
  }
  [[nodiscard]] Count left(const Stack& stack) const {
    const auto found = left_.find(stack);
    return found == left_.end() ? Count{} : found->second;
  }

 private:
  struct Movement {
    Day day;
    Stack stack;
    Count count;
  };
  void move(const Stack& stack, const Count& count, int sign) {
    Count& left = left_[stack];
    left.pieces += sign * count.pieces;
    left.along += sign * count.along;
  }
  std::map<Stack, Count> left_;
  std::vector<Movement> later_;
};

std::vector<Stack> stacks_sold_on(book::Store& store, const SheetKey& sheet) {
  std::vector<Stack> stacks;
  store.each(
      "SELECT DISTINCT species_id, grade_id, size_id, metric, length FROM v_stock_id "
      "WHERE movement = 'sold' AND day = ? AND shift = ?",
      [&](const book::Row& row) { stacks.push_back(stack_in(row, 0)); }, sheet.first, sheet.second);
  return stacks;
}

/// A sentence for each of the stacks of which there is less than nothing, by species, grade and size.
std::vector<std::string> short_of(book::Store& store, const OwnStock& stock,
                                  const std::vector<Stack>& stacks) {
  std::map<std::tuple<std::string, std::string, std::int64_t, std::int64_t, std::int64_t>, std::string> all;
  for (const Stack& stack : stacks) {
    const Count left = stock.left(stack);
    if (left.pieces >= 0 && left.along >= 0) continue;
    const auto system = stack.metric != 0 ? measure::System::metric : measure::System::inch;
    store.each(
        "SELECT z.label, coalesce(s.code, ''), coalesce(g.code, ''), z.thickness, z.width FROM v_size z "
        "LEFT JOIN v_species s ON s.id = ? LEFT JOIN v_grade g ON g.id = ? WHERE z.id = ?",
        [&](const book::Row& row) {
          std::string words = row.text(0);
          if (stack.length) words += "x" + measure::write_feet({*stack.length, system});
          for (const int code : {1, 2}) words += row.text(code).empty() ? "" : " " + row.text(code);
          words += ", " + too_many(-left.pieces, -left.along, system);
          all.emplace(
              std::tuple(row.text(1), row.text(2), row.number(3), row.number(4), stack.length.value_or(0)),
              "Sold more than is there: " + words + ".");
        },
        stack.species, stack.grade, stack.size);
  }
  std::vector<std::string> sentences;
  for (auto& [place, words] : all) sentences.push_back(std::move(words));
  return sentences;
}

bool sold_anything(book::Store& store, const SheetKey& sheet) {
  return store
      .number(
          "SELECT 1 FROM v_sold WHERE day = ?1 AND shift = ?2 UNION ALL "
          "SELECT 1 FROM v_sold_bundle WHERE day = ?1 AND shift = ?2 LIMIT 1",
          sheet.first, sheet.second)
      .has_value();
}

/// Bundles sold whole from a day on, of one sheet where it is given, in which there was nothing.
std::vector<std::string> empty_bundles(const std::vector<SoldBundle>& sold,
                                       const std::optional<SheetKey>& sheet) {
  std::vector<std::string> all;
  for (const SoldBundle& bundle : sold) {
    if (bundle.lines.empty() && (!sheet || *sheet == SheetKey{bundle.day, bundle.shift}))
      all.push_back("Sold a bundle with nothing in it: " + bundle.tag + ", " + write_day(bundle.day) + ".");
  }
  return all;
}

}  // namespace

std::vector<std::string> stock_warnings(const book::Book& book, Day to) {
  book::Store store(book.database());
  std::vector<std::string> all = empty_bundles(sold_bundles(book, to), std::nullopt);
  OwnStock stock(store, to);
  stock.back_to(to);
  for (auto& words : short_of(store, stock, stock.all())) all.push_back(std::move(words));
  return all;
}

std::map<SheetKey, std::vector<std::string>> stock_warnings(const book::Book& book,
                                                            std::vector<SheetKey> sold_on) {
  book::Store store(book.database());
  std::erase_if(sold_on, [&](const SheetKey& sheet) { return !sold_anything(store, sheet); });
  if (sold_on.empty()) return {};
  std::sort(sold_on.rbegin(), sold_on.rend());
  OwnStock stock(store, sold_on.back().first);
  const auto bundles = sold_bundles(book, sold_on.front().first, sold_on.back().first);
  std::map<SheetKey, std::vector<std::string>> all;
  for (const SheetKey& sheet : sold_on) {
    stock.back_to(sheet.first);
    auto& said = all[sheet] = empty_bundles(bundles, sheet);
    for (auto& words : short_of(store, stock, stacks_sold_on(store, sheet))) said.push_back(std::move(words));
  }
  return all;
}

}  // namespace kerfbook::billing
