#include "report/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "base/settle.h"
#include "measure/size.h"
#include "report/kinds.h"
#include "report/raw_view.h"

namespace kerfbook::report {
namespace {

constexpr int kHiddenPlaces = 6;  // a figure nobody sees keeps enough places for a workbook to divide by

using Exact = std::optional<Rational>;

/// One number column before rounding.
struct Figures {
  std::vector<Exact> rows;
  Exact total;
  std::string unit;
  bool one_unit = true;  ///< false: the rows' units differ, so there is nothing to total
  bool two_in_one_row = false;
  bool metric = false;  ///< shown in metric
};

/// Board feet in one of a scaling practice's units; absent for a unit that lumber is not counted in.
std::optional<Rational> per_board_foot(std::string_view unit, bool metric_book) {
  const Rational cubic_metre(measure::kMetricCountsPerBoardFoot, measure::kMetricCountsPerCubicMetre);
  if (metric_book) {
    if (unit == "m3") return Rational(1);
    if (unit == "bf") return Rational(1) / cubic_metre;
    if (unit == "ft3") return Rational(1, 12) / cubic_metre;
    return std::nullopt;
  }
  if (unit == "bf") return Rational(1);
  if (unit == "ft3") return Rational(1, 12);
  if (unit == "m3") return cubic_metre;
  return std::nullopt;
}

int places_needed(const Rational& value, int most) {
  Rational scaled = value;
  for (int places = 0; places < most; ++places) {
    if (scaled.den() == 1) return places;
    scaled = scaled * Rational(10);
  }
  return most;
}

class TableMaker {
 public:
  TableMaker(const TableSpec& spec, const Raw& raw, const Setting& setting)
      : spec_(spec), raw_(spec, raw), setting_(setting), figures_(spec.columns.size()) {}

  render::Table make() {
    table_.name = spec_.name;
    table_.title = spec_.title;
    table_.notes = spec_.notes;
    if (!spec_.when_empty.empty()) table_.when_empty = spec_.when_empty;
    mark_struck();
    totalled_ = std::any_of(spec_.columns.begin(), spec_.columns.end(),
                            [](const ColumnSpec& c) { return c.total == Totalled::sum; });
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) {
      if (is_number(spec_.columns[c].kind) && !is_ratio(spec_.columns[c].kind)) figures_[c] = measured(c);
    }
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) describe(c);
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) {
      if (is_ratio(spec_.columns[c].kind)) work_out(c);
    }
    fill();
    return std::move(table_);
  }

 private:
  void mark_struck() {
    table_.rows.resize(raw_.rows());
    for (const auto& column : spec_.columns) {
      if (!column.strikes) continue;
      for (std::size_t r = 0; r < raw_.rows(); ++r) table_.rows[r].struck = raw_.flag(r, column.name);
    }
  }

  /// The exact figures of a column that SQL gives.
  Figures measured(std::size_t c) const {
    const ColumnSpec& column = spec_.columns[c];
    const bool length = column.kind == Kind::feet || column.kind == Kind::inches;
    Figures out;
    out.metric = length && column.metric_from.empty() ? setting_.metric_book : length && all_metric(column);
    if (!length) out.metric = setting_.metric_book;
    out.unit = out.metric ? row_of(column.kind).metric_unit : row_of(column.kind).unit;
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      const auto given = raw_.number(r, c);
      if (!given) {
        out.rows.emplace_back();
        continue;
      }
      const bool metric_row =
          length && (column.metric_from.empty() ? out.metric : raw_.flag(r, column.metric_from));
      Rational exact =
          exact_value(column.kind, *given, {setting_.metric_book, metric_row, setting_.money_places});
      if (metric_row && !out.metric) exact = as_inch_unit(column.kind, exact);
      out.rows.emplace_back(exact);
    }
    if (!column.unit_from.empty()) take_units(column, out);
    out.total = out.one_unit ? summed(out.rows) : Exact{};
    return out;
  }

  bool all_metric(const ColumnSpec& column) const {
    if (raw_.rows() == 0) return setting_.metric_book;
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      if (!raw_.flag(r, column.metric_from)) return false;
    }
    return true;
  }

  /// A metric row among inch rows: metres to feet, centimetres to inches (1 in = 25.4 mm exactly).
  static Rational as_inch_unit(Kind kind, const Rational& metric) {
    return kind == Kind::feet ? metric * Rational(10'000, 3'048) : metric * Rational(100, 254);
  }

  /// The units of the rows' scales. A row whose unit is none (two practices added by the SELECT) is absent.
  void take_units(const ColumnSpec& column, Figures& out) const {
    std::set<std::string> units;
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      if (!out.rows[r]) continue;
      const std::string unit = raw_.text(r, column.unit_from);
      if (unit.find_first_of(",/") != std::string::npos) {
        out.rows[r].reset();
        out.two_in_one_row = true;
      } else {
        units.insert(unit);
      }
    }
    out.one_unit = units.size() <= 1;
    if (units.size() == 1) out.unit = *units.begin();
    if (!out.one_unit) out.unit.clear();
  }

  Exact summed(const std::vector<Exact>& rows) const {
    Exact sum;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (rows[r] && !table_.rows[r].struck) sum = sum ? *sum + *rows[r] : *rows[r];
    }
    return sum;
  }

  /// Name, heading, unit and places of a column, as shown.
  void describe(std::size_t c) {
    const ColumnSpec& spec = spec_.columns[c];
    render::Column column;
    column.name = spec.name;
    column.heading = spec.heading;
    column.hidden = spec.hidden;
    column.width_hint = spec.width;
    const bool metric = is_ratio(spec.kind) ? setting_.metric_book : figures_[c].metric;
    column.unit = spec.unit.empty() ? figures_[c].unit : spec.unit;
    if (spec.unit == "money") column.unit.clear();  // the sign stands in every cell
    if (is_ratio(spec.kind)) column.unit = ratio_unit(spec);
    if (metric) {
      column.name = metric_name(spec.name);
      column.heading = metric_heading(spec.heading);
      column.unit = spec.unit.empty() ? column.unit : metric_heading(column.unit);
    }
    if (spec.kind == Kind::scale && !column.unit.empty() && column.name.ends_with("_bf") &&
        column.unit != "bf") {
      column.name.replace(column.name.size() - 2, 2, column.unit == "hoppus ft" ? "hoppus_ft" : column.unit);
    }
    column.places = places_of(c, metric);
    column.kind = spec.unit == "money" ? render::ColumnKind::money : shown_kind(spec.kind, column.places);
    if (spec.total == Totalled::sum && figures_[c].one_unit) column.total = render::TotalKind::sum;
    if (!figures_[c].one_unit) table_.notes.push_back(spec.heading + ": in several units, so not added.");
    if (figures_[c].two_in_one_row && !spec.hidden)
      table_.notes.push_back(spec.heading + ": in two units in one line, so not added there: a dash.");
    table_.columns.push_back(std::move(column));
  }

  std::string ratio_unit(const ColumnSpec& spec) const {
    if (spec.unit == "money") {
      return spec.per_mbf ? setting_.money_sign + (setting_.metric_book ? "/m3" : "/MBF")
                          : setting_.money_sign;
    }
    return spec.unit.empty() ? std::string(row_of(spec.kind).unit) : spec.unit;
  }

  int places_of(std::size_t c, bool metric) const {
    const ColumnSpec& spec = spec_.columns[c];
    const KindRow& kind = row_of(spec.kind);
    if (!is_number(spec.kind)) return 0;
    if (spec.kind == Kind::money) return setting_.money_places;
    if (spec.unit == "money" && kind.fewest) return rate_places(c);
    if (spec.unit == "money") return std::max(spec.places, setting_.money_places);
    if (spec.hidden && kind.places > 0) return kHiddenPlaces;
    if (spec.places >= 0) return setting_.metric_book ? metric_places(spec) : spec.places;
    const int most = metric ? kind.metric_places : kind.places;
    if (!kind.fewest) return most;
    return fewest_places(c, 0, most);
  }

  int fewest_places(std::size_t c, int least, int most) const {
    int places = least;
    for (const auto& value : figures_[c].rows) {
      if (value) places = std::max(places, places_needed(*value, most));
    }
    return places;
  }

  /// Money in millionths: the currency's places, or more where the header allows them and a rate needs them.
  int rate_places(std::size_t c) const {
    return fewest_places(c, setting_.money_places, std::max(setting_.money_places, spec_.columns[c].places));
  }

  /// Places are written for inch books. A cubic metre is 424 board feet, so its figures need more of them.
  int metric_places(const ColumnSpec& spec) const {
    if (is_volume(spec.kind)) return spec.places + row_of(spec.kind).metric_places - row_of(spec.kind).places;
    if (!is_ratio(spec.kind)) return spec.places;
    const bool volume_per_other = is_volume(spec_.columns[raw_.column_of(spec.over)].kind) &&
                                  !is_volume(spec_.columns[raw_.column_of(spec.under)].kind);
    return volume_per_other ? std::max(spec.places, row_of(Kind::lumber).metric_places) : spec.places;
  }

  /// A ratio column: its two sides row by row, made alike where one side is lumber and the other a log scale in
  /// another unit, and limited to the rows that have both where the total would else count half a row.
  void work_out(std::size_t c) {
    const ColumnSpec& spec = spec_.columns[c];
    std::size_t over = raw_.column_of(spec.over);
    std::size_t under = raw_.column_of(spec.under);
    std::vector<Exact> tops = figures_[over].rows;
    std::vector<Exact> bottoms = figures_[under].rows;
    const bool one_unit = figures_[over].one_unit && figures_[under].one_unit;
    bool own_columns = convert_to_scale(over, under, tops);
    for (std::size_t r = 0; r < tops.size(); ++r) {
      if (tops[r].has_value() == bottoms[r].has_value()) continue;
      own_columns = true;
      tops[r].reset();
      bottoms[r].reset();
    }
    figures_[c].rows.resize(tops.size());
    const Rational times = multiplier(spec);
    for (std::size_t r = 0; r < tops.size(); ++r) {
      figures_[c].rows[r] = divided(spec.kind, tops[r], bottoms[r], times);
    }
    if (own_columns) {
      over = add_hidden(spec.name + "_over", tops);
      under = add_hidden(spec.name + "_under", bottoms);
    }
    render::Column& column = table_.columns[c];
    column.ratio = render::Column::Ratio{over, under, times.rounded(0), spec.kind == Kind::percent_over};
    if (!totalled_ || spec.total == Totalled::none || !one_unit) return;
    column.total = render::TotalKind::ratio;
    total_hidden(over);
    if (!spec.under_once) total_hidden(under);
    const Exact whole = spec.under_once ? same_in_all(spec, bottoms) : summed(bottoms);
    figures_[c].total = divided(spec.kind, summed(tops), whole, times);
  }

  /// A workbook works a ratio's total out from the totals of its sides, also of those nobody sees.
  void total_hidden(std::size_t side) {
    if (!table_.columns[side].hidden) return;
    table_.columns[side].total = render::TotalKind::sum;
    figures_[side].total = summed(figures_[side].rows);
  }

  /// The whole that every row is a part of. A workbook cannot add it, so such a total stands as a figure.
  static Exact same_in_all(const ColumnSpec& spec, const std::vector<Exact>& rows) {
    Exact whole;
    for (const auto& row : rows) {
      if (row && whole && *row != *whole) {
        throw SqlFault(
            "column " + spec.name + " says 'once', but " + spec.under + " is not the same in every row", -1);
      }
      if (row) whole = row;
    }
    return whole;
  }

  Rational multiplier(const ColumnSpec& spec) const {
    if (spec.kind != Kind::ratio) return 100;
    return spec.per_mbf && !setting_.metric_book ? 1000 : 1;
  }

  static Exact divided(Kind kind, const Exact& over, const Exact& under, const Rational& times) {
    if (!over || !under || under->is_zero()) return {};
    const Rational top = kind == Kind::percent_over ? *over - *under : *over;
    return top * times / *under;
  }

  /// Lumber over a log scale is counted in the scale's unit. True when that changed any row.
  bool convert_to_scale(std::size_t over, std::size_t under, std::vector<Exact>& tops) const {
    if (spec_.columns[over].kind != Kind::lumber || spec_.columns[under].unit_from.empty()) return false;
    bool changed = false;
    for (std::size_t r = 0; r < tops.size(); ++r) {
      if (!tops[r] || !figures_[under].rows[r]) continue;
      const auto factor = per_board_foot(raw_.text(r, spec_.columns[under].unit_from), setting_.metric_book);
      changed = changed || !factor || *factor != Rational(1);
      tops[r] = factor ? Exact(*tops[r] * *factor) : Exact{};
    }
    return changed;
  }

  std::size_t add_hidden(const std::string& name, const std::vector<Exact>& rows) {
    render::Column column;
    column.name = name;
    column.kind = render::ColumnKind::decimal;
    column.places = kHiddenPlaces;
    column.hidden = true;
    table_.columns.push_back(column);
    Figures figures;
    figures.rows = rows;
    figures_.push_back(std::move(figures));
    return table_.columns.size() - 1;
  }

  // ---- cells -------------------------------------------------------------------------------------------------
  void fill() {
    for (auto& row : table_.rows) row.cells.resize(table_.columns.size());
    if (totalled_ && !table_.rows.empty()) table_.totals.resize(table_.columns.size());
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) {
      if (!is_number(spec_.columns[c].kind)) fill_words(c);
    }
    if (!spec_.grid.empty()) table_.grid = read_grid(spec_, table_);
    if (!spec_.chart.empty()) table_.chart = read_chart(spec_);
    for (std::size_t c = 0; c < table_.columns.size(); ++c) {
      if (c < spec_.columns.size() && !is_number(spec_.columns[c].kind)) continue;
      if (table_.columns[c].total == render::TotalKind::sum || is_part_of_whole(c)) {
        fill_settled(c);
      } else {
        fill_rounded(c);
      }
    }
  }

  /// Parts of one whole are added up by who reads them, as sums are.
  bool is_part_of_whole(std::size_t c) const {
    return c < spec_.columns.size() && spec_.columns[c].under_once &&
           spec_.columns[c].kind != Kind::percent_over;
  }

  static render::Cell cell(std::int64_t units, const render::Column& column) {
    if (column.places == 0) return units;
    return Decimal{units, column.places};
  }

  void fill_words(std::size_t c) {
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      const Value& value = raw_.value(r, c);
      render::Cell& out = table_.rows[r].cells[c];
      if (std::holds_alternative<std::monostate>(value)) continue;
      if (spec_.columns[c].kind == Kind::day) {
        out = Day{static_cast<std::int32_t>(raw_.number(r, c).value_or(0))};
      } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        out = std::to_string(*whole);
      } else {
        out = std::get<std::string>(value);
      }
    }
  }

  void fill_rounded(std::size_t c) {
    const render::Column& column = table_.columns[c];
    const Figures& figures = figures_[c];
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      if (figures.rows[r]) table_.rows[r].cells[c] = cell(figures.rows[r]->rounded(column.places), column);
    }
    if (!table_.totals.empty() && column.ratio && figures.total) {
      table_.totals[c] = cell(figures.total->rounded(column.places), column);
    }
  }

  void fill_settled(std::size_t c) {
    fill_rounded(c);  // struck rows, and all rows when there is no total to meet
    const Figures& figures = figures_[c];
    if (!figures.total || table_.totals.empty()) return;
    const render::Column& column = table_.columns[c];
    std::vector<std::size_t> at;
    std::vector<Rational> exact;
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      if (!figures.rows[r] || table_.rows[r].struck) continue;
      at.push_back(r);
      exact.push_back(*figures.rows[r]);
    }
    const std::int64_t total = figures.total->rounded(column.places);
    const auto settled = in_grid(c) ? settle_in_groups(exact, grid_groups(at), column.places, total)
                                    : settle(exact, column.places, total);
    for (std::size_t i = 0; i < at.size(); ++i) table_.rows[at[i]].cells[c] = cell(settled[i], column);
    table_.totals[c] = cell(total, column);
  }

  bool in_grid(std::size_t c) const {
    if (!table_.grid) return false;
    const auto& sums = table_.grid->row_sums;
    return table_.grid->cell == c || std::find(sums.begin(), sums.end(), c) != sums.end();
  }

  /// The grid row of each table row: rows with the same keys stand in one line of the grid.
  std::vector<std::size_t> grid_groups(const std::vector<std::size_t>& rows) const {
    std::map<std::vector<std::string>, std::size_t> known;
    std::vector<std::size_t> groups;
    for (const std::size_t r : rows) {
      std::vector<std::string> key;
      for (const std::size_t c : table_.grid->row_keys) key.push_back(raw_.text(r, spec_.columns[c].name));
      groups.push_back(known.emplace(std::move(key), known.size()).first->second);
    }
    return groups;
  }

  const TableSpec& spec_;
  RawView raw_;
  const Setting& setting_;
  render::Table table_;
  std::vector<Figures> figures_;  ///< one a column; empty for text and day
  bool totalled_ = false;
};

}  // namespace

render::Table make_table(const TableSpec& spec, const Raw& raw, const Setting& setting) {
  return TableMaker(spec, raw, setting).make();
}

}  // namespace kerfbook::report
