// paper_words.cpp -- sizes, lengths, volumes and log rules in a customer's words.
#include "paper/paper_words.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "render/cell.h"
#include "render/renderer.h"
#include "scaling/rules.h"

namespace kerfbook::billing {

namespace {

/// The decimal point of a measure as the mill writes decimals.
std::string marked(std::string words, const book::Mill& mill) {
  std::replace(words.begin(), words.end(), '.', mill.currency.decimal_mark);
  return words;
}

std::string without(std::string text, std::string_view part) {
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at))
    text.erase(at, part.size());
  return text;
}

}  // namespace

render::Column LumberUnit::column() const {
  return metric_ ? decimal_column("m3", "Lumber", unit(), places())
                 : decimal_column("bf", "Lumber", unit(), places());
}

Rational LumberUnit::of(const measure::Pieces& pieces, const measure::Convention& by) const {
  return metric_ ? cubic_metres(measure::volume(pieces.size, pieces.length, pieces.count))
                 : counted_bf(pieces, by);
}

Rational LumberUnit::of(const measure::Volume& volume) const {
  return metric_ ? cubic_metres(volume) : board_feet(volume);
}

Rational LumberUnit::from_bf(const Rational& bf) const {
  if (!metric_) return bf;
  return bf * Rational(measure::kMetricCountsPerBoardFoot, measure::kMetricCountsPerCubicMetre);
}

std::string LumberUnit::how_counted(const measure::Convention& by) const {
  return metric_
             ? "Cubic metres: nominal thickness and width, lengths as written; only the total is rounded, to "
               "thousandths of a cubic metre."
             : "Board feet: " + in_words(by) + ".";
}

std::string number_words(const Decimal& value, const book::Mill& mill) {
  render::Column column;
  column.kind = render::ColumnKind::decimal;
  return render::shown_cell(value, column, paper_style(mill));
}

std::string percent_words(const Rational& percent, const book::Mill& mill) {
  return number_words(shortest(percent, 0, 4), mill) + " %";
}

std::string length_words(const measure::Length& length, const book::Mill& mill) {
  return marked(measure::spoken_length(length), mill);
}

std::string diameter_words(const measure::Length& across, const book::Mill& mill) {
  if (across.system == measure::System::inch) return measure::write_inches(across) + " in";
  return number_words(shortest(in_metres(across) * Rational(100), 0, 2), mill) + " cm";
}

std::string size_words(const measure::Size& size, const book::Mill& mill) {
  return write_size(size, mill.units == measure::System::metric);
}

std::string unit_words(const std::string& unit, const Rational& quantity) {
  static const std::map<std::string, std::string> kOne{
      {"teeth", "tooth"}, {"days", "day"}, {"logs", "log"}, {"bundles", "bundle"}};
  const auto one = kOne.find(unit);
  const bool single = quantity == Rational(1) || quantity == Rational(-1);
  return render::printed_unit(one != kOne.end() && single ? one->second : unit);
}

std::string rule_words(const std::string& practice, const book::Mill& mill) {
  if (const scaling::Rule* rule = scaling::find_rule(practice)) return std::string(rule->title);
  const auto own = book::practice_named(mill, practice);
  const scaling::Rule* rule = own ? scaling::find_rule(own->rule) : nullptr;
  return rule == nullptr ? practice : practice + " (" + std::string(rule->title) + ")";
}

LogMeasures log_measures(const std::vector<std::string>& specs, const book::Mill& mill) {
  const bool metric = mill.units == measure::System::metric;
  LogMeasures out{metric ? "cm x m" : "in x ft", {}};
  for (const std::string& spec : specs) out.shown.push_back(spec.substr(0, spec.find(" defect")));
  // A log measured in the other system says its units itself; then all do.
  const bool alike = std::all_of(out.shown.begin(), out.shown.end(), [&](const std::string& measure) {
    return measure.empty() || (measure.find("cm") != std::string::npos) == metric;
  });
  if (!alike) out.unit.clear();
  if (!metric) return out;
  for (std::string& measure : out.shown)
    measure = marked(alike ? without(without(measure, "c"), "m") : measure, mill);
  return out;
}

}  // namespace kerfbook::billing
