#include "report/ratios.h"

#include <algorithm>
#include <string_view>

namespace kerfbook::report {
namespace {

/// Parts of one whole.
Figures parts_of(const Figures& parts, const Exact& whole, const Rational& times) {
  Figures out = parts;
  if (!whole || whole->is_zero()) {
    for (std::size_t r = 0; r < out.size(); ++r) out.drop(r);
  } else {
    multiply(out, {times / *whole}, std::vector<char>(out.size(), 0));
  }
  return out;
}

/// The whole that every row is a part of. A workbook cannot add it, so such a total stands as a figure.
Exact same_in_all(const ColumnSpec& spec, const Figures& rows) {
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

void keep_pairs(Figures& tops, Figures& bottoms) {
  for (std::size_t r = 0; r < tops.size(); ++r) {
    if (tops.there[r] == bottoms.there[r]) continue;
    tops.drop(r);
    bottoms.drop(r);
  }
}

}  // namespace

void Ratios::work_out(std::size_t c) {
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

bool Ratios::is_part_of_whole(std::size_t c) const {
  return c < spec_.columns.size() && spec_.columns[c].under_once &&
         spec_.columns[c].kind != Kind::percent_over;
}

/// A workbook works a ratio's total out from the totals of its sides, also of those nobody sees.
void Ratios::total_hidden(std::size_t side) {
  if (!table_.columns[side].hidden) return;
  table_.columns[side].total = render::TotalKind::sum;
  figures_[side].total = summed(figures_[side], struck_);
}

Rational Ratios::multiplier(const ColumnSpec& spec) const {
  if (spec.kind != Kind::ratio) return 100;
  return spec.per_mbf && !setting_.metric_book ? 1000 : 1;
}

/// Lumber over a log scale is counted in the scale's unit.
bool Ratios::is_lumber_over_scale(std::size_t over, std::size_t under) const {
  return spec_.columns[over].kind == Kind::lumber && !spec_.columns[under].unit_from.empty();
}

bool Ratios::needs_own_sides(std::size_t over, std::size_t under) const {
  if (are_hidden(over, under) && figures_[over].there != figures_[under].there) return true;
  if (!is_lumber_over_scale(over, under)) return false;
  const std::size_t units = raw_.column_of(spec_.columns[under].unit_from);
  const std::string_view same = setting_.metric_book ? "m3" : "bf";  // the unit lumber is counted in
  for (std::size_t r = 0; r < raw_.rows(); ++r) {
    if (figures_[over].there[r] != 0 && raw_.text(r, units) != same) return true;
  }
  return false;
}

bool Ratios::are_hidden(std::size_t over, std::size_t under) const {
  return spec_.columns[over].hidden && spec_.columns[under].hidden;
}

/// Lumber of a row without a scale is counted in the unit of the others.
void Ratios::convert_to_scale(std::size_t over, std::size_t under, Figures& tops) const {
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

std::size_t Ratios::add_hidden(const std::string& name, Figures figures) {
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

}  // namespace kerfbook::report
