// rules_board_foot.cpp -- the board-foot rules that are a formula. Decimal C, a table, is in rules_scribner.cpp.
#include <array>

#include "scaling/arithmetic.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {
namespace {

// Every formula is brought over one denominator: with D and L in ticks, D inches = D / kInch, L feet = L / kFoot.
constexpr Wide kInch2 = Wide{kInch} * kInch;
constexpr Wide kInch2Foot = kInch2 * kFoot;

/// (0.79 D^2 - 2 D - 4) L / 16; negative under about 4 in, which is no scale.
Exact scribner_formula(const Piece& log) {
  const Wide d = log.small;
  const Wide hundredths = 79 * d * d - 200 * d * kInch - 400 * kInch2;
  if (hundredths <= 0) return {};
  return over<kMillion, 1600 * kInch2Foot>(hundredths * log.length);
}

/// ((D - 4) / 4)^2 L; the square rises again under 4 in, which the table's least diameter keeps out.
Exact doyle(const Piece& log) {
  const Wide beyond = log.small - 4 * kInch;
  return over<kMillion, 16 * kInch2Foot>(beyond * beyond * log.length);
}

/// The sum over 4-ft sections of 0.22 d^2 - 0.71 d, d growing 1/2 in a section from the small end, in hundredths
/// x kInch2 x 4 ft: whole sections count 4 ft, the rest at the butt counts its length.
Wide international_sections(const Piece& log) {
  constexpr Ticks kSection = 4 * kFoot;
  Wide sum = 0;
  Wide d = log.small;
  for (Ticks left = log.length; left > 0; left -= kSection, d += kInch / 2) {
    sum += (22 * d * d - 71 * d * kInch) * (left < kSection ? left : kSection);
  }
  return sum;
}

Exact international_quarter(const Piece& log) {
  return over<905 * kMillion, Wide{1000} * 100 * 4 * kInch2Foot>(international_sections(log));
}

Exact international_eighth(const Piece& log) {
  return over<kMillion, Wide{100} * 4 * kInch2Foot>(international_sections(log));
}

/// D x D/2 for 12 ft, in proportion for other lengths.
Exact vermont(const Piece& log) {
  return over<kMillion, 24 * kInch2Foot>(Wide{log.small} * log.small * log.length);
}

/// (D - 1)^2 L / 20
Exact roy(const Piece& log) {
  const Wide d = log.small - kInch;
  return over<kMillion, 20 * kInch2Foot>(d * d * log.length);
}

/// (0.55 D^2 - 1.2 D) L / 12
Exact ontario(const Piece& log) {
  const Wide d = log.small;
  return over<kMillion, 1200 * kInch2Foot>((55 * d * d - 120 * d * kInch) * log.length);
}

/// (D - 1.5)^2 x pi/4 x 8/11 x L / 12
Exact bc_board_foot(const Piece& log) {
  const Wide d = log.small - 3 * kInch / 2;
  return over<2 * kPiNum * kMillion, Wide{11} * 12 * kPiDen * kInch2Foot>(d * d * log.length);
}

void whole_feet(Practice& by) {
  by.length_step = measure::feet(1);
}

void international_conventions(Practice& by) {
  whole_feet(by);
  by.taper = TaperShare::rule;
  by.squared_divisor = 16;
}

constexpr std::string_view kQuarterCustoms =
    "small end inside bark with its fraction; taper 1/2 in per 4 ft is built in; a part section stands at "
    "the "
    "butt and counts in proportion; lengths come down to the whole foot; logs past 20 ft are scaled in one "
    "piece "
    "with the rule's own taper, which gives what Clark's advice to scale them as multiples gives (Larsen); "
    "to "
    "the nearest 5 bf. Printed tables leave this formula by 5 bf in two cells: 15 in x 16 ft prints 160 "
    "(formula "
    "157.33) and 17 in x 14 ft prints 180 (177.42). The statutes print the factor 0.904762; 0.905 is what "
    "makes "
    "the tables";
constexpr std::string_view kEighthCustoms =
    "small end inside bark with its fraction; taper 1/2 in per 4 ft is built in; a part section stands at "
    "the butt "
    "and counts in proportion; lengths come down to the whole foot; logs past 20 ft are scaled in one piece "
    "with the "
    "rule's own taper, which gives what Clark's advice to scale them as multiples gives (Larsen)";

const std::array kRules{
    Rule{
        .name = "scribner-formula",
        .shown = "Scribner formula",
        .title = "Scribner, by formula",
        .source =
            "Bruce and Schumacher, 1950, through D. R. Larsen, Forest Functions, University of Missouri, "
            "2017",
        .formula = "(0.79 D^2 - 2 D - 4) L / 16",
        .range = "the original Scribner covers 12 to 44 in and 10 to 24 ft (Larsen); zero where the formula "
                 "is negative",
        .customs =
            "small end inside bark with its fraction; lengths come down to the whole foot; no taper; not "
            "rounded. It is not Decimal C: rounded to tens it differs from that table in about half the "
            "cells",
        .scale = scribner_formula,
        .conventions = whole_feet,
    },
    Rule{
        .name = "doyle",
        .shown = "Doyle",
        .title = "Doyle",
        .source = "Louisiana R.S. 3:4641 (Acts 1992, No. 55); E. A. Chase, Timber Cruising Manual and "
                  "Record, Chicago, 1913, p. 11",
        .formula = "((D - 4) / 4)^2 L",
        .range = "zero at and under 4 in; Chase prints single logs to 36 ft",
        .customs = "small end inside bark with its fraction; a part of a foot in length is dropped; no "
                   "taper, one piece "
                   "at any length; not rounded. Printed tables give the nearest board foot and round exact "
                   "halves both "
                   "ways: doyle-table rounds, an exact half up",
        .least_diameter = 4 * kInch,
        .scale = doyle,
        .conventions = whole_feet,
    },
    Rule{
        .name = "international-quarter",
        .shown = "Int. 1/4",
        .title = "International 1/4-inch",
        .source =
            "Massachusetts G.L. c. 96 s. 11A (section formula and taper); Michigan MCL 290.401 (the same); "
            "E. Wengert, Log Volume charts, 2001 (table)",
        .formula = "0.905 x sum over 4-ft sections of (0.22 d^2 - 0.71 d), d growing 1/2 in a section",
        .range =
            "published from 6 in; 4 to 6 in by the formula, which rounds the smallest to 0; zero under 4 in",
        .customs = kQuarterCustoms,
        .least_diameter = 4 * kInch,
        .taper_per_foot = kInch / 8,
        .scale = international_quarter,
        .conventions =
            [](Practice& by) {
              international_conventions(by);
              by.result = ResultRounding::nearest_5;
            },
    },
    Rule{
        .name = "international-eighth",
        .shown = "Int. 1/8",
        .title = "International 1/8-inch",
        .source = "Clark, 1906, through D. R. Larsen, Forest Functions, University of Missouri, 2017",
        .formula = "sum over 4-ft sections of (0.22 d^2 - 0.71 d), d growing 1/2 in a section",
        .range = "zero under 4 in",
        .customs = kEighthCustoms,
        .least_diameter = 4 * kInch,
        .taper_per_foot = kInch / 8,
        .scale = international_eighth,
        .conventions = international_conventions,
    },
    Rule{
        .name = "vermont",
        .shown = "Vermont",
        .title = "Vermont",
        .source = "9 V.S.A. s. 2693",
        .formula = "D x D/2 for 12 ft, in proportion for other lengths",
        .range = "none stated",
        .customs =
            "mean top diameter, under half an inch dropped, over half an inch a full inch (the statute says "
            "nothing of an exact half: here it goes up); past 12 ft in 12-ft sections from the upper end, "
            "each "
            "with its own diameter; lengths come down to the whole foot",
        .division = Division::full_from_top,
        .scale = vermont,
        .conventions =
            [](Practice& by) {
              whole_feet(by);
              by.diameter = DiameterRounding::nearest_half_up;
              by.longest_segment = measure::feet(12);
              by.taper = TaperShare::even;
            },
    },
    Rule{
        .name = "roy",
        .shown = "Roy",
        .title = "Roy (Quebec)",
        .source =
            "from memory; Association forestiere du sud du Quebec, Le mesurage du bois, 2024 (one value, "
            "which agrees)",
        .formula = "(D - 1)^2 L / 20",
        .range = "none stated; zero under 1 in",
        .customs = "small end with its fraction; lengths come down to the whole foot; nearest board foot",
        .least_diameter = kInch,
        .scale = roy,
        .conventions =
            [](Practice& by) {
              whole_feet(by);
              by.result = ResultRounding::nearest_1;
            },
    },
    Rule{
        .name = "ontario",
        .shown = "Ontario",
        .title = "Ontario",
        .source = "from memory",
        .formula = "(0.55 D^2 - 1.2 D) L / 12",
        .range =
            "official in 1952 for 4 to 40 in and 8 to 18 ft (Freese, FPL-GTR-1, as quoted); zero under 4 in",
        .customs = "small end to the nearest inch; whole feet; not rounded",
        .least_diameter = 4 * kInch,
        .scale = ontario,
        .conventions =
            [](Practice& by) {
              whole_feet(by);
              by.diameter = DiameterRounding::nearest_half_up;
            },
    },
    Rule{
        .name = "bc-board-foot",
        .shown = "BC board foot",
        .title = "British Columbia board foot",
        .source = "from memory",
        .formula = "(D - 1.5)^2 x pi/4 x 8/11 x L / 12",
        .range = "none stated; zero under 1-1/2 in. Logs past 40 ft had an allowance that is not known here",
        .customs = "small end with its fraction; lengths come down to the whole foot; no taper; not rounded",
        .least_diameter = 3 * kInch / 2,
        .scale = bc_board_foot,
        .conventions = whole_feet,
    },
};

}  // namespace

std::span<const Rule> board_foot_rules() {
  return kRules;
}

}  // namespace kerfbook::scaling
