// outputs_grid.cpp -- a table as it must be printed: every figure rounded, a tally's rows laid out, worked out from the
// exact figures and not by the renderers' own rounding and layout.
#include <algorithm>
#include <map>

#include "render/cell.h"
#include "render/outputs.h"

namespace kerfbook::render {
namespace {

using Words = std::vector<std::string>;

/// A figure as it is printed, by the one rule; `places` of its column or its own.
std::string rounded(const Rational& exact, int places) {
  Column number;
  number.kind = ColumnKind::decimal;
  return canonical(plain(Decimal{exact.rounded(places), places}), number);
}

std::string nearest(const Cell& cell, const Column& column) {
  if (const auto* figure = std::get_if<Figure>(&cell)) return rounded(figure->exact(), figure->places());
  const std::string words = plain_cell(cell);
  return canonical(holds_units(column) ? printed_unit(words) : words, column);
}

/// Figures met so far; one that was never met is no figure, which is not nought.
class Sums {
 public:
  void add(const Words& at, const Cell& cell) {
    if (!is_number(cell)) return;
    auto& [sum, places] = sums_[at];
    sum = sum + as_figure(cell).exact();
    places = std::max(places, as_figure(cell).places());
  }
  [[nodiscard]] std::string of(const Words& at) const {
    const auto found = sums_.find(at);
    return found == sums_.end() ? "" : rounded(found->second.first, found->second.second);
  }

 private:
  std::map<Words, std::pair<Rational, int>> sums_;
};

class Crossing {
 public:
  explicit Crossing(const Table& table) : table_(table) {
    for (const std::size_t key : table.grid->row_keys) {
      if (says_anything(key)) keys_.push_back(key);
    }
    if (keys_.empty()) keys_ = table.grid->row_keys;
    figures_ = {table.grid->cell};
    for (const std::size_t sum : table.grid->row_sums) {
      if (sum != table.grid->cell) figures_.push_back(sum);
    }
    for (const Row& row : table.rows) {
      if (!row.struck) take(row);
    }
    std::stable_sort(heads_.begin(), heads_.end(), [](const auto& a, const auto& b) {
      return !a.empty() && (b.empty() || number_of(a) < number_of(b));
    });
  }

  [[nodiscard]] Figures printed() const {
    Figures out;
    for (const std::size_t key : keys_) out.headings.push_back(heading_of(table_.columns[key]));
    const std::string& unit = table_.columns[table_.grid->column_key].unit;
    for (const auto& head : heads_)
      out.headings.push_back(head.empty() ? "-" : unit.empty() ? head : head + " " + unit);
    for (const std::size_t figure : figures_) out.headings.push_back(heading_words(table_.columns[figure]));
    for (const auto& line : lines_) {
      out.rows.push_back(line);
      for (const auto& head : heads_) out.rows.back().push_back(sums_.of(at("cell", 0, line, head)));
      for (std::size_t f = 0; f < figures_.size(); ++f)
        out.rows.back().push_back(sums_.of(at("line", f, line, "")));
      out.struck.push_back(false);
    }
    for (std::size_t f = 0; f < figures_.size() && !lines_.empty(); ++f) out.feet.push_back(foot(f));
    return out;
  }

 private:
  static Words at(const std::string& what, std::size_t figure, Words line, const std::string& head) {
    line.insert(line.end(), {head, what, std::to_string(figure)});
    return line;
  }
  [[nodiscard]] std::string words(const Row& row, std::size_t column) const {
    return nearest(row.cells.at(column), table_.columns[column]);
  }
  [[nodiscard]] bool says_anything(std::size_t key) const {
    return std::any_of(table_.rows.begin(), table_.rows.end(),
                       [&](const Row& row) { return !words(row, key).empty(); });
  }

  void take(const Row& row) {
    Words line;
    for (const std::size_t key : keys_) line.push_back(canonical(words(row, key)));
    const std::string head = words(row, table_.grid->column_key);
    if (std::find(lines_.begin(), lines_.end(), line) == lines_.end()) lines_.push_back(line);
    if (std::find(heads_.begin(), heads_.end(), head) == heads_.end()) heads_.push_back(head);
    for (std::size_t f = 0; f < figures_.size(); ++f) {
      const Cell& figure = row.cells[figures_[f]];
      if (f == 0) sums_.add(at("cell", f, line, head), figure);
      sums_.add(at("line", f, line, ""), figure);
      sums_.add(at("head", f, {}, head), figure);
      sums_.add(at("all", f, {}, ""), figure);
    }
  }

  /// "Lumber, bf", its sum under every length, and in its own column at the right the total.
  [[nodiscard]] Words foot(std::size_t f) const {
    const Column& column = table_.columns[figures_[f]];
    Words out(keys_.size());
    out.front() = canonical(heading_of(column) + (column.unit.empty() ? "" : ", " + column.unit));
    for (const auto& head : heads_) out.push_back(sums_.of(at("head", f, {}, head)));
    for (std::size_t i = 0; i < figures_.size(); ++i)
      out.push_back(i == f ? sums_.of(at("all", f, {}, "")) : "");
    return out;
  }

  const Table& table_;
  std::vector<std::size_t> keys_;
  std::vector<std::size_t> figures_;
  Words heads_;
  std::vector<Words> lines_;
  Sums sums_;
};

}  // namespace

Figures crossed(const Table& table) {
  return Crossing(table).printed();
}

Figures printed_of(const Table& table) {
  if (table.rows.empty()) return {};
  if (table.grid) return crossed(table);
  Figures out;
  const auto columns = shown_columns(table);
  const auto cells_of = [&](const std::vector<Cell>& cells) {
    Words words;
    for (const std::size_t i : columns) words.push_back(nearest(cells[i], table.columns[i]));
    return words;
  };
  for (const std::size_t i : columns) out.headings.push_back(heading_words(table.columns[i]));
  for (const Row& row : table.rows) {
    out.rows.push_back(cells_of(row.cells));
    out.struck.push_back(row.struck);
  }
  if (!table.totals.empty()) out.feet.push_back(cells_of(table.totals));
  return out;
}

}  // namespace kerfbook::render
