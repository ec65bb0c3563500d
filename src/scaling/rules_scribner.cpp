// rules_scribner.cpp -- Scribner Decimal C, the table rule, with its two longest segments. The figures and the choice
// made in each disputed cell are in scribner_table.h.
#include <algorithm>
#include <array>

#include "scaling/arithmetic.h"
#include "scaling/rules.h"
#include "scaling/scribner_table.h"

namespace kerfbook::scaling {
namespace {

/// A table has no fractions: what the practice left of an inch or a foot is dropped.
Exact decimal_c(const Piece& log) {
  const auto inches = static_cast<int>(log.small / kInch);
  const auto feet = static_cast<int>(std::min<Ticks>(log.length / kFoot, kScribnerPieceFeet));
  return {scribner_decimal_c(inches, feet) * kMillion, 1};
}

void conventions(Practice& by) {
  by.diameter = DiameterRounding::nearest_half_up;
  by.length_step = measure::feet(1);
  by.longest_segment = measure::feet(20);
  by.taper = TaperShare::even;
}

constexpr std::string_view kRange =
    "6 to 120 in and 4 ft up; zero under 6 in and under 4 ft, no scale past 120 in";

Rule decimal_c_rule() {
  Rule rule;
  rule.formula = "a table: tens of board feet (half entries of 5 bf for the smallest logs)";
  rule.range = kRange;
  rule.least_diameter = kScribnerLeastInches * kInch;
  rule.greatest_diameter = (kScribnerMostInches + 1) * kInch - 1;
  rule.least_length = kScribnerLeastFeet * kFoot;
  rule.deduction_step = std::int64_t{10} * 1'000'000;
  rule.scale = decimal_c;
  return rule;
}

std::array<Rule, 2> make_rules() {
  Rule east = decimal_c_rule();
  east.name = "scribner-c";
  east.title = "Scribner Decimal C, 20-ft segments";
  east.source =
      "USDA Forest Service National Volume Estimator Library (factors and departures of the printed table); "
      "Log "
      "Volume charts, courtesy Prof. Gene Wengert, WoodWeb Knowledge Base, 4 May 2001; Idaho Board of "
      "Scaling "
      "Practices, How to Determine the Scale of a Log (diameters); FSH 2409.11 (segments, deductions)";
  east.customs =
      "diameter to the nearest inch, 9-1/2 up to just under 10-1/2 is 10; lengths come down to the whole "
      "foot; logs "
      "past 20 ft in pieces as equal as possible in even feet, the longer at the butt, the taper shared "
      "evenly "
      "(from memory: check each segment's diameter); deductions to whole tens, 5 bf and more going up. "
      "Publications differ in 20 cells: of the smallest logs the "
      "printed half entries are taken (5 bf: 6 in x 4-9 ft, 7 in x 4-6 ft, 8 in x 4 ft), in the 19-ft column "
      "the "
      "Forest Service library's figures (10, 12, 18, 23, 32, 38, 40, 42, 47 and 49 in)";
  east.conventions = conventions;
  Rule west = decimal_c_rule();
  west.name = "scribner-c-40";
  west.title = "Scribner Decimal C, pieces to 40 ft";
  west.source =
      "USDA Forest Service National Volume Estimator Library (factor table); FSH 2409.11, R-10 Supplement "
      "2409.11-2004-1 (40-ft maximum)";
  west.customs =
      "as scribner-c, but one piece to 40 ft: the table to 20 ft, the factors alone beyond. West of the "
      "Cascades "
      "every fraction of an inch is dropped, from memory: scribner-c-40-down does so";
  west.conventions = [](Practice& by) {
    conventions(by);
    by.longest_segment = measure::feet(40);
  };
  return {east, west};
}

}  // namespace

std::span<const Rule> scribner_rules() {
  static const std::array<Rule, 2> rules = make_rules();
  return rules;
}

}  // namespace kerfbook::scaling
