#include "report/measured.h"

#include <algorithm>
#include <string_view>

namespace kerfbook::report {
namespace {

/// A metric row among inch rows: metres to feet, centimetres to inches (1 in = 25.4 mm exactly).
Rational as_inch_unit(Kind kind, const Rational& metric) {
  return kind == Kind::feet ? metric * Rational(10'000, 3'048) : metric * Rational(100, 254);
}

/// What one of SQL's counts stands for in the unit shown.
Rational one_count(Kind kind, bool metric_row, bool shown_metric, const Setting& setting) {
  const Rational one = exact_value(kind, 1, {setting.metric_book, metric_row, setting.money_places});
  return metric_row && !shown_metric ? as_inch_unit(kind, one) : one;
}

/// The units of the rows' scales. A row whose unit is none (two practices added by the SELECT) is absent.
void take_units(const RawView& raw, const ColumnSpec& column, Figures& out) {
  const std::size_t units = raw.column_of(column.unit_from);
  std::string_view first;
  bool any = false;
  for (std::size_t r = 0; r < raw.rows(); ++r) {
    if (out.there[r] == 0) continue;
    const std::string_view unit = raw.text(r, units);
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

/// Of lengths, which rows were measured in metric; and whether the column is shown so: only when all of them were.
std::vector<char> take_metric(const RawView& raw, const ColumnSpec& column, bool length, Figures& out) {
  std::vector<char> metric_rows(raw.rows(), 0);
  if (!length) return metric_rows;
  if (column.metric_from.empty()) {
    if (out.metric) std::fill(metric_rows.begin(), metric_rows.end(), 1);
    return metric_rows;
  }
  metric_rows = raw.flags(column.metric_from);
  if (raw.rows() > 0) out.metric = std::find(metric_rows.begin(), metric_rows.end(), 0) == metric_rows.end();
  return metric_rows;
}

}  // namespace

Figures measured(const RawView& raw, std::size_t c, const ColumnSpec& column, const Struck& struck,
                 const Setting& setting) {
  Figures out;
  out.resize(raw.rows());
  for (std::size_t r = 0; r < raw.rows(); ++r) {
    if (const auto given = raw.number(r, c)) out.set(r, *given);
  }
  const bool length = column.kind == Kind::feet || column.kind == Kind::inches;
  out.metric = setting.metric_book;
  const std::vector<char> metric_rows = take_metric(raw, column, length, out);
  multiply(out,
           {one_count(column.kind, false, out.metric, setting),
            one_count(column.kind, length, out.metric, setting)},
           metric_rows);
  out.unit = out.metric ? row_of(column.kind).metric_unit : row_of(column.kind).unit;
  if (!column.unit_from.empty()) take_units(raw, column, out);
  if (out.one_unit) out.total = summed(out, struck);
  return out;
}

}  // namespace kerfbook::report
