// outputs_grid.cpp -- rows laid out as a tally is printed, worked out from the cells as another form shows them and not
// by the renderers' own layout.
#include <algorithm>
#include <map>

#include "render/cell.h"
#include "render/outputs.h"

namespace kerfbook::render {
namespace {

using Words = std::vector<std::string>;

std::string sum_words(const Rational& sum) {
  Column number;
  number.kind = ColumnKind::decimal;
  return canonical(plain(shown(sum, 9)), number);
}

/// Figures met so far; one that was never met is no figure, which is not nought.
class Sums {
 public:
  void add(const Words& at, const std::string& cell) {
    if (cell.empty()) return;
    auto& sum = sums_[at];
    sum = sum + number_of(cell);
  }
  [[nodiscard]] std::string of(const Words& at) const {
    const auto found = sums_.find(at);
    return found == sums_.end() ? "" : sum_words(found->second);
  }

 private:
  std::map<Words, Rational> sums_;
};

class Crossing {
 public:
  Crossing(const Figures& rows, const Table& table) : rows_(rows), table_(table) {
    const auto shown = shown_columns(table);
    for (std::size_t i = 0; i < shown.size(); ++i) at_[shown[i]] = i;
    for (const std::size_t key : table.grid->row_keys) {
      if (says_anything(key)) keys_.push_back(key);
    }
    if (keys_.empty()) keys_ = table.grid->row_keys;
    figures_ = {table.grid->cell};
    for (const std::size_t sum : table.grid->row_sums) {
      if (sum != table.grid->cell) figures_.push_back(sum);
    }
    for (std::size_t r = 0; r < rows.rows.size(); ++r) {
      if (!rows.struck[r]) take(rows.rows[r]);
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
  [[nodiscard]] const std::string& cell(const Words& row, std::size_t column) const {
    return row.at(at_.at(column));
  }
  [[nodiscard]] bool says_anything(std::size_t key) const {
    return std::any_of(rows_.rows.begin(), rows_.rows.end(),
                       [&](const Words& row) { return !cell(row, key).empty(); });
  }

  void take(const Words& row) {
    Words line;
    for (const std::size_t key : keys_) line.push_back(canonical(cell(row, key)));
    const std::string& head = cell(row, table_.grid->column_key);
    if (std::find(lines_.begin(), lines_.end(), line) == lines_.end()) lines_.push_back(line);
    if (std::find(heads_.begin(), heads_.end(), head) == heads_.end()) heads_.push_back(head);
    for (std::size_t f = 0; f < figures_.size(); ++f) {
      const std::string& figure = cell(row, figures_[f]);
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

  const Figures& rows_;
  const Table& table_;
  std::map<std::size_t, std::size_t> at_;
  std::vector<std::size_t> keys_;
  std::vector<std::size_t> figures_;
  Words heads_;
  std::vector<Words> lines_;
  Sums sums_;
};

}  // namespace

Figures crossed(const Figures& long_form, const Table& table) {
  return Crossing(long_form, table).printed();
}

Figures as_printed(const Figures& long_form, const Table& table) {
  if (table.rows.empty()) return {};
  if (table.grid) return crossed(long_form, table);
  Figures out = long_form;
  out.headings.clear();
  for (const std::size_t i : shown_columns(table)) out.headings.push_back(heading_words(table.columns[i]));
  return out;
}

}  // namespace kerfbook::render
