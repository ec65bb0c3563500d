// rules_scribner.cpp -- Scribner Decimal C: the printed table in 20-ft segments, and the factors in pieces to 40 ft. The
// figures, and the choice made in each disputed cell, are in scribner_table.h.
#include <array>

#include "scaling/arithmetic.h"
#include "scaling/rules.h"
#include "scaling/scribner_table.h"

namespace kerfbook::scaling {
namespace {

/// A table has no fractions: what the practice left of an inch or a foot is dropped.
template <std::int64_t (*kTens)(int inches, int feet)>
Exact tens(const Piece& log) {
  const auto inches = static_cast<int>(log.small / kInch);
  const auto feet = static_cast<int>(log.length / kFoot);
  return {kTens(inches, feet) * kMillion, 1};
}

void conventions(Practice& by) {
  by.diameter = DiameterRounding::nearest_half_up;
  by.length_step = measure::feet(1);
  by.longest_segment = measure::feet(20);
  by.taper = TaperShare::even;
}

void long_conventions(Practice& by) {
  conventions(by);
  by.longest_segment = measure::feet(40);
}

constexpr Ticks kMostInches = (kScribnerMostInches + 1) * kInch - 1;
constexpr std::int64_t kTen = std::int64_t{10} * 1'000'000;

constexpr std::array kRules{
    Rule{
        .name = "scribner-c",
        .shown = "Scribner C",
        .title = "Scribner Decimal C, 20-ft segments",
        .source =
            "USDA Forest Service, National Volume Estimator Library, Scribner factor table, 2003 (factors "
            "and departures of the printed table); E. Wengert, Log Volume charts, 2001; Idaho Board of "
            "Scaling Practices, How to Determine the Scale of a Log (diameters); USDA Forest Service, FSH "
            "2409.11 (segments, deductions)",
        .formula = "the printed table: tens of board feet (half entries of 5 bf for the smallest logs)",
        .range = "6 to 120 in and 4 to 20 ft; zero under 6 in and under 4 ft, no scale past 120 in",
        .customs =
            "diameter to the nearest inch, 9-1/2 up to just under 10-1/2 is 10; lengths come down to the "
            "whole "
            "foot; logs past 20 ft in pieces as equal as possible in even feet, the longer at the butt, the "
            "taper shared evenly (from memory: check each segment's diameter); deductions to whole tens, 5 "
            "bf "
            "and more going up. Publications differ in 20 cells: of the smallest logs the printed half "
            "entries "
            "are taken (5 bf: 6 in x 4-9 ft, 7 in x 4-6 ft, 8 in x 4 ft), in the 19-ft column the Forest "
            "Service's figures (10, 12, 18, 23, 32, 38, 40, 42, 47 and 49 in). A mill that scales longer "
            "pieces by it gets the factors of scribner-c-40 past 20 ft",
        .least_diameter = kScribnerLeastInches * kInch,
        .greatest_diameter = kMostInches,
        .least_length = kScribnerLeastFeet * kFoot,
        .deduction_step = kTen,
        .unrounded = "in tens of board feet, as the table",
        .scale = tens<scribner_decimal_c>,
        .conventions = conventions,
    },
    Rule{
        .name = "scribner-c-40",
        .shown = "Scribner C 40",
        .title = "Scribner Decimal C, pieces to 40 ft",
        .source =
            "USDA Forest Service, National Volume Estimator Library, Scribner factor table, 2003; Hart, "
            "Timber Measurement Society, 2018 (the count of small logs); USDA Forest Service, FSH 2409.11, "
            "R-10 Supplement 2409.11-2004-1 (40-ft maximum)",
        .formula =
            "factor x L to the nearest ten board feet, a half up; the factor is of the diameter, under 12 "
            "in also of the length (to 15, 31 and 40 ft)",
        .range = "1 to 120 in and to 40 ft; zero at 1 in, no scale past 120 in",
        .customs =
            "as scribner-c, but one piece to 40 ft, and by the factors alone at every length: no half "
            "entries, "
            "and none of the printed table's departures. Logs under 6 in, which the printed table leaves "
            "out, "
            "have a scale: 5 in x 14 ft reads 10. West of the Cascades every fraction of an inch is dropped, "
            "from memory: scribner-c-40-down does so. A mill that scales pieces past 40 ft gets the factor "
            "for "
            "32 to 40 ft",
        .least_diameter = kFactorLeastInches * kInch,
        .greatest_diameter = kMostInches,
        .least_length = kFoot,
        .deduction_step = kTen,
        .unrounded = "in tens of board feet",
        .scale = tens<scribner_by_factor>,
        .conventions = long_conventions,
    },
};

}  // namespace

std::span<const Rule> scribner_rules() {
  return kRules;
}

}  // namespace kerfbook::scaling
