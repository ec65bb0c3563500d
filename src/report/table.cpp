#include "report/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "measure/size.h"
#include "render/cell.h"
#include "report/column_kinds.h"
#include "report/figures.h"
#include "report/measured.h"
#include "report/ratios.h"
#include "report/raw_view.h"
#include "scaling/practice.h"

namespace kerfbook::report {
namespace {

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
      if (is_number(spec_.columns[c].kind) && !is_ratio(spec_.columns[c].kind))
        figures_[c] = measured(raw_, c, spec_.columns[c], struck_, setting_);
    }
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) describe(c);
    Ratios ratios(spec_, raw_, setting_, struck_, totalled_, table_, figures_);
    for (std::size_t c = 0; c < spec_.columns.size(); ++c) {
      if (is_ratio(spec_.columns[c].kind)) ratios.work_out(c);
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
