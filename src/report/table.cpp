#include "report/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "measure/size.h"
#include "render/cell.h"
#include "report/column_kinds.h"
#include "report/figures.h"
#include "report/raw_view.h"
#include "scaling/practice.h"

namespace kerfbook::report {
namespace {

constexpr int kHiddenPlaces = 6;  // a figure of a workbook's hidden columns is shown so to who looks there

class TableMaker {
 public:
  TableMaker(const TableSpec& spec, Raw raw, const Setting& setting)
      : spec_(spec), raw_(spec, std::move(raw)), setting_(setting), figures_(spec.columns.size()) {}

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
    struck_.resize(raw_.rows());
    for (const auto& column : spec_.columns) {
      if (!column.strikes) continue;
      struck_ = raw_.flags(column.name);
      for (std::size_t r = 0; r < raw_.rows(); ++r) table_.rows[r].struck = struck_[r] != 0;
    }
  }

  /// The exact figures of a column that SQL gives.
  Figures measured(std::size_t c) const {
    const ColumnSpec& column = spec_.columns[c];
    Figures out;
    out.resize(raw_.rows());
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      if (const auto given = raw_.number(r, c)) out.set(r, *given);
    }
    const bool length = column.kind == Kind::feet || column.kind == Kind::inches;
    std::vector<char> metric_rows(raw_.rows(), 0);
    if (length && !column.metric_from.empty()) metric_rows = raw_.flags(column.metric_from);
    out.metric = setting_.metric_book;
    if (length && !column.metric_from.empty() && raw_.rows() > 0) {
      out.metric = std::find(metric_rows.begin(), metric_rows.end(), 0) == metric_rows.end();
    } else if (length && out.metric) {
      std::fill(metric_rows.begin(), metric_rows.end(), 1);
    }
    multiply(out, {one_count(column.kind, false, out.metric), one_count(column.kind, length, out.metric)},
             metric_rows);
    out.unit = out.metric ? row_of(column.kind).metric_unit : row_of(column.kind).unit;
    if (!column.unit_from.empty()) take_units(column, out);
    if (out.one_unit) out.total = summed(out, struck_);
    return out;
  }

  /// What one of SQL's counts stands for in the unit shown.
  [[nodiscard]] Rational one_count(Kind kind, bool metric_row, bool shown_metric) const {
    const Rational one = exact_value(kind, 1, {setting_.metric_book, metric_row, setting_.money_places});
    return metric_row && !shown_metric ? as_inch_unit(kind, one) : one;
  }

  /// A metric row among inch rows: metres to feet, centimetres to inches (1 in = 25.4 mm exactly).
  static Rational as_inch_unit(Kind kind, const Rational& metric) {
    return kind == Kind::feet ? metric * Rational(10'000, 3'048) : metric * Rational(100, 254);
  }

  /// The units of the rows' scales. A row whose unit is none (two practices added by the SELECT) is absent.
  void take_units(const ColumnSpec& column, Figures& out) const {
    const std::size_t units = raw_.column_of(column.unit_from);
    std::string_view first;
    bool any = false;
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      if (out.there[r] == 0) continue;
      const std::string_view unit = raw_.text(r, units);
      if (unit.find_first_of(",/") != std::string_view::npos) {
        out.drop(r);
        out.two_in_one_row = true;
        continue;
      }
      if (any && unit != first) out.one_unit = false;
      first = unit;
      any = true;
    }
    if (any) out.unit = out.one_unit ? first : std::string_view();
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
    column.unit = render::printed_unit(column.unit);
    if (column.name == "rule" && spec.kind == Kind::text) column.words = scaling::rule_words;
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
    return places_needed(figures_[c], 0, most);
  }

  /// Money in millionths: the currency's places, or more where the header allows them and a rate needs them.
  int rate_places(std::size_t c) const {
    return places_needed(figures_[c], setting_.money_places,
                         std::max(setting_.money_places, spec_.columns[c].places));
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
  /// another unit. Its total is over the sums that are printed under its sides, whatever rows have but one of them; of
  /// two sides that nobody sees, whose sums are not printed, only the rows that have both count.
  void work_out(std::size_t c) {
    const ColumnSpec& spec = spec_.columns[c];
    std::size_t over = raw_.column_of(spec.over);
    std::size_t under = raw_.column_of(spec.under);
    const bool one_unit = figures_[over].one_unit && figures_[under].one_unit;
    if (needs_own_sides(over, under)) {
      Figures tops = figures_[over];
      Figures bottoms = figures_[under];
      convert_to_scale(over, under, tops);
      if (are_hidden(over, under)) keep_pairs(tops, bottoms);
      over = add_hidden(spec.name + "_over", std::move(tops));
      under = add_hidden(spec.name + "_under", std::move(bottoms));
    }
    const Rational times = multiplier(spec);
    render::Column& column = table_.columns[c];
    const Exact once = spec.under_once ? same_in_all(spec, figures_[under]) : Exact{};
    figures_[c] = is_part_of_whole(c) ? parts_of(figures_[over], once, times)
                                      : divided(spec.kind, figures_[over], figures_[under], times);
    column.ratio = render::Column::Ratio{over, under, times.rounded(0), spec.kind == Kind::percent_over};
    if (!totalled_ || spec.total == Totalled::none || !one_unit) return;
    column.total = render::TotalKind::ratio;
    total_hidden(over);
    if (!spec.under_once) total_hidden(under);
    const Exact whole = spec.under_once ? once : summed(figures_[under], struck_);
    figures_[c].total = divided(spec.kind, summed(figures_[over], struck_), whole, times);
  }

  /// Parts of one whole.
  static Figures parts_of(const Figures& parts, const Exact& whole, const Rational& times) {
    Figures out = parts;
    if (!whole || whole->is_zero()) {
      for (std::size_t r = 0; r < out.size(); ++r) out.drop(r);
    } else {
      multiply(out, {times / *whole}, std::vector<char>(out.size(), 0));
    }
    return out;
  }

  bool is_part_of_whole(std::size_t c) const {
    return c < spec_.columns.size() && spec_.columns[c].under_once &&
           spec_.columns[c].kind != Kind::percent_over;
  }

  /// A workbook works a ratio's total out from the totals of its sides, also of those nobody sees.
  void total_hidden(std::size_t side) {
    if (!table_.columns[side].hidden) return;
    table_.columns[side].total = render::TotalKind::sum;
    figures_[side].total = summed(figures_[side], struck_);
  }

  /// The whole that every row is a part of. A workbook cannot add it, so such a total stands as a figure.
  static Exact same_in_all(const ColumnSpec& spec, const Figures& rows) {
    std::optional<Wide> whole;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (rows.there[r] == 0) continue;
      if (whole && rows.tops[r] != *whole) {
        throw SqlFault(
            "column " + spec.name + " says 'once', but " + spec.under + " is not the same in every row", -1);
      }
      whole = rows.tops[r];
    }
    return whole ? Exact(Rational(*whole, rows.under)) : Exact{};
  }

  Rational multiplier(const ColumnSpec& spec) const {
    if (spec.kind != Kind::ratio) return 100;
    return spec.per_mbf && !setting_.metric_book ? 1000 : 1;
  }

  /// Lumber over a log scale is counted in the scale's unit.
  [[nodiscard]] bool is_lumber_over_scale(std::size_t over, std::size_t under) const {
    return spec_.columns[over].kind == Kind::lumber && !spec_.columns[under].unit_from.empty();
  }

  [[nodiscard]] bool needs_own_sides(std::size_t over, std::size_t under) const {
    if (are_hidden(over, under) && figures_[over].there != figures_[under].there) return true;
    if (!is_lumber_over_scale(over, under)) return false;
    const std::size_t units = raw_.column_of(spec_.columns[under].unit_from);
    const std::string_view same = setting_.metric_book ? "m3" : "bf";  // the unit lumber is counted in
    for (std::size_t r = 0; r < raw_.rows(); ++r) {
      if (figures_[over].there[r] != 0 && raw_.text(r, units) != same) return true;
    }
    return false;
  }

  [[nodiscard]] bool are_hidden(std::size_t over, std::size_t under) const {
    return spec_.columns[over].hidden && spec_.columns[under].hidden;
  }

  /// Lumber of a row without a scale is counted in the unit of the others.
  void convert_to_scale(std::size_t over, std::size_t under, Figures& tops) const {
    if (!is_lumber_over_scale(over, under)) return;
    const std::size_t units = raw_.column_of(spec_.columns[under].unit_from);
    std::vector<std::string_view> known;
    std::vector<Rational> factors;
    std::vector<char> which(tops.size(), 0);
    for (std::size_t r = 0; r < tops.size(); ++r) {
      if (tops.there[r] == 0) continue;
      const bool scaled = figures_[under].there[r] != 0;
      const std::string_view unit = scaled ? raw_.text(r, units) : figures_[under].unit;
      const auto factor = per_board_foot(unit, setting_.metric_book);
      if (!factor) {
        tops.drop(r);
        continue;
      }
      const auto at = std::find(known.begin(), known.end(), unit);
      which[r] = static_cast<char>(at - known.begin());
      if (at != known.end()) continue;
      known.push_back(unit);
      factors.push_back(*factor);
    }
    if (!factors.empty()) multiply(tops, factors, which);
  }

  static void keep_pairs(Figures& tops, Figures& bottoms) {
    for (std::size_t r = 0; r < tops.size(); ++r) {
      if (tops.there[r] == bottoms.there[r]) continue;
      tops.drop(r);
      bottoms.drop(r);
    }
  }

  std::size_t add_hidden(const std::string& name, Figures figures) {
    render::Column column;
    column.name = name;
    column.kind = render::ColumnKind::decimal;
    column.places = kHiddenPlaces;
    column.hidden = true;
    table_.columns.push_back(column);
    figures.total.reset();
    figures.one_unit = true;
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
    if (!spec_.chart.empty()) table_.chart = read_chart(spec_);
    for (std::size_t c = 0; c < table_.columns.size(); ++c) {
      if (c < spec_.columns.size() && !is_number(spec_.columns[c].kind)) continue;
      fill_figures(c);
    }
    if (!spec_.grid.empty()) table_.grid = read_grid(spec_, table_);  // with the sums that a row has
  }

  void fill_words(std::size_t c) {
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      const View value = raw_.value(r, c);
      render::Cell& out = table_.rows[r].cells[c];
      if (std::holds_alternative<std::monostate>(value)) continue;
      if (spec_.columns[c].kind == Kind::day) {
        out = Day{static_cast<std::int32_t>(raw_.number(r, c).value_or(0))};
      } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        out = std::to_string(*whole);
      } else {
        out = std::string(std::get<std::string_view>(value));
      }
    }
  }

  void fill_figures(std::size_t c) {
    const render::Column& column = table_.columns[c];
    const Figures& figures = figures_[c];
    for (std::size_t r = 0; r < table_.rows.size(); ++r)
      table_.rows[r].cells[c] = figures.cell(r, column.places);
    if (table_.totals.empty() || !figures.total || column.total == render::TotalKind::none) return;
    Figures total;
    total.under = figures.total->den();
    total.resize(1);
    total.set(0, figures.total->num());
    table_.totals[c] = total.cell(0, column.places);
  }

  const TableSpec& spec_;
  RawView raw_;
  const Setting& setting_;
  render::Table table_;
  std::vector<Figures> figures_;  ///< one a column; empty for text and day
  Struck struck_;
  bool totalled_ = false;
};

}  // namespace

render::Table make_table(const TableSpec& spec, Raw raw, const Setting& setting) {
  return TableMaker(spec, std::move(raw), setting).make();
}

}  // namespace kerfbook::report
