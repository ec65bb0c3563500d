// rules_cubic.cpp -- the rules that answer in cubic feet, cubic metres or hoppus feet.
#include <array>

#include "scaling/arithmetic.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {
namespace {

constexpr Wide kFoot3 = Wide{kFoot} * kFoot * kFoot;
constexpr Wide kMetre3 = Wide{kMetre} * kMetre * kMetre;
/// cm x cm x m, the way the centimetre rules write a product.
constexpr Wide kCm2Metre = Wide{kCentimetre} * kCentimetre * kMetre;

constexpr Wide square(Ticks d) {
  return Wide{d} * d;
}

/// pi/4 x (sum of squared diameters) x length / kParts, in millionths of a unit whose cube is kUnit3.
template <Wide kParts, Wide kUnit3>
Exact of_circles(Wide squares, Ticks length) {
  return over<kPiNum * kMillion, 4 * kParts * kPiDen * kUnit3>(squares * length);
}

template <Wide kUnit3>
Exact smalian(const Piece& log) {
  return of_circles<2, kUnit3>(square(log.small) + square(log.large), log.length);
}

template <Wide kUnit3>
Exact huber(const Piece& log) {
  if (log.mid > 0) return of_circles<1, kUnit3>(square(log.mid), log.length);
  return over<kQuarterOverPiNum * kMillion, kQuarterOverPiDen * kUnit3>(square(log.girth) * log.length);
}

template <Wide kUnit3>
Exact newton(const Piece& log) {
  const Wide ends = square(log.small) + square(log.large);
  if (log.mid > 0) return of_circles<6, kUnit3>(ends + 4 * square(log.mid), log.length);
  // 4 mid^2 = 4 girth^2 / pi^2, to the nearest square tick, which is far under a millionth of any unit
  const Wide middle = round_half_up(4 * square(log.girth) * kPiSquaredDen, kPiSquaredNum);
  return of_circles<6, kUnit3>(ends + middle, log.length);
}

template <Wide kUnit3>
Exact conic(const Piece& log) {
  return of_circles<3, kUnit3>(square(log.small) + Wide{log.small} * log.large + square(log.large),
                               log.length);
}

/// Under 6 m: D^2 L / 10 000. From 6 m: (D + (L' - 4)/2)^2 L / 10 000, L' the whole metres of the length.
Exact small_end_squared(const Piece& log) {
  constexpr Ticks kLong = 6 * kMetre;
  Ticks d = log.small;
  if (log.length >= kLong) d += (log.length / kMetre - 4) * kCentimetre / 2;
  return over<kMillion, 10'000 * kCm2Metre>(square(d) * log.length);
}

/// 0.7854 D^2 L / 10 000, D the mean of both ends.
Exact brereton(const Piece& log) {
  return over<7'854 * kMillion, Wide{4} * 10'000 * 10'000 * kCm2Metre>(square(log.small + log.large) *
                                                                       log.length);
}

/// (quarter girth in)^2 L ft / 144; a middle diameter stands for its girth.
Exact hoppus(const Piece& log) {
  constexpr Wide kUnit = 16 * kFoot3;  // (g/4)^2 in2 x ft / 144 = g^2 L / 16 with all three in feet
  if (log.girth > 0) return over<kMillion, kUnit>(square(log.girth) * log.length);
  return over<kPiSquaredNum * kMillion, kPiSquaredDen * kUnit>(square(log.mid) * log.length);
}

constexpr std::string_view kCubicCustoms =
    "inside bark, diameters and length as measured; not rounded; cubic feet for "
    "a log measured in inches, cubic metres in centimetres";
constexpr std::string_view kBriggs =
    "D. Briggs, Forest Products Measurements and Conversion Factors, University of Washington, 1994, Table "
    "2-1";

void korean_conventions(Practice& by) {
  by.diameter = DiameterRounding::down;
  by.readings = ReadingsJoin::smaller;
  by.length_step = measure::centimetres(10);
  by.result = ResultRounding::thousandth;
}

const std::array kRules{
    Rule{
        .name = "smalian",
        .shown = "Smalian",
        .title = "Smalian",
        .source = kBriggs,
        .formula = "pi/4 x (ds^2 + dl^2) / 2 x L",
        .range = "any",
        .customs = kCubicCustoms,
        .needs = Needs::both_ends,
        .answers = Answers::cubic,
        .diameter_class = DiameterClass::by_log,
        .scale = smalian<kFoot3>,
        .scale_metric = smalian<kMetre3>,
    },
    Rule{
        .name = "huber",
        .shown = "Huber",
        .title = "Huber",
        .source = kBriggs,
        .formula = "pi/4 x dm^2 x L, or from the girth g^2 / (4 pi) x L",
        .range = "any",
        .customs = kCubicCustoms,
        .needs = Needs::middle,
        .answers = Answers::cubic,
        .diameter_class = DiameterClass::by_log,
        .scale = huber<kFoot3>,
        .scale_metric = huber<kMetre3>,
    },
    Rule{
        .name = "newton",
        .shown = "Newton",
        .title = "Newton",
        .source = kBriggs,
        .formula = "pi/4 x (ds^2 + 4 dm^2 + dl^2) / 6 x L",
        .range = "any",
        .customs = kCubicCustoms,
        .needs = Needs::ends_and_mid,
        .answers = Answers::cubic,
        .diameter_class = DiameterClass::by_log,
        .scale = newton<kFoot3>,
        .scale_metric = newton<kMetre3>,
    },
    Rule{
        .name = "conic",
        .shown = "Conic",
        .title = "Two-end conic",
        .source = kBriggs,
        .formula = "pi/4 x (ds^2 + ds dl + dl^2) / 3 x L",
        .range = "any",
        .customs = kCubicCustoms,
        .needs = Needs::both_ends,
        .answers = Answers::cubic,
        .diameter_class = DiameterClass::by_log,
        .scale = conic<kFoot3>,
        .scale_metric = conic<kMetre3>,
    },
    Rule{
        .name = "firmwood",
        .shown = "BC firmwood",
        .title = "Metric firmwood (British Columbia)",
        .source = "from memory",
        .formula = "pi x (r1^2 + r2^2) / 2 x L / 10 000, r the end radii in cm, L in m",
        .range = "any",
        .customs = "end radii to the nearest centimetre (diameters to 2 cm), lengths down to 0.1 m, result "
                   "to 0.001 m³; "
                   "rot, hole, char and missing wood are deducted",
        .needs = Needs::both_ends,
        .answers = Answers::cubic_metres,
        .diameter_class = DiameterClass::two_centimetres,
        .scale = smalian<kMetre3>,
        .conventions =
            [](Practice& by) {
              by.diameter = DiameterRounding::nearest_half_up;
              by.length_step = measure::centimetres(10);
              by.result = ResultRounding::thousandth;
            },
    },
    Rule{
        .name = "jas",
        .shown = "JAS",
        .title = "JAS (Japanese Agricultural Standard)",
        .source = "common practice, no source (formula); from memory (diameter classes and decimals)",
        .formula = "D^2 L / 10 000 under 6 m; (D + (L' - 4)/2)^2 L / 10 000 from 6 m, L' whole metres",
        .range = "any",
        .customs = "the shorter of two diameters, cut to 1 cm under 14 cm and to even centimetres from 14 cm "
                   "(from memory); "
                   "length as measured; 0.001 m³ (from memory); no allowance is made for oval ends",
        .answers = Answers::cubic_metres,
        .diameter_class = DiameterClass::jas,
        .scale = small_end_squared,
        .conventions =
            [](Practice& by) {
              korean_conventions(by);
              by.length_step = {};
            },
    },
    Rule{
        .name = "korean",
        .shown = "Korean",
        .title = "Korean small-end squared",
        .source = "common practice, no source",
        .formula = "as JAS",
        .range = "any",
        .customs = "the shorter of two diameters, cut to 1 cm; length cut to 0.1 m; 0.001 m³",
        .answers = Answers::cubic_metres,
        .diameter_class = DiameterClass::centimetre,
        .scale = small_end_squared,
        .conventions = korean_conventions,
    },
    Rule{
        .name = "hoppus",
        .shown = "Hoppus",
        .title = "Hoppus",
        .source =
            "E. Hoppus, Practical Measuring, London, 1736 (the quarter girth); common practice, no source",
        .formula = "(quarter girth in)^2 x L ft / 144; 1 hoppus ft = 4/pi = 1.273 ft³",
        .range = "any",
        .customs = "girth at mid length, or a middle diameter taken for its girth; as measured; not rounded",
        .needs = Needs::middle,
        .answers = Answers::hoppus_feet,
        .diameter_class = DiameterClass::by_log,
        .scale = hoppus,
    },
    Rule{
        .name = "brereton",
        .shown = "Brereton",
        .title = "Brereton (metric)",
        .source = "common practice, no source",
        .formula = "0.7854 D^2 L / 10 000, D the mean of two readings at each end in cm, L in m",
        .range = "any",
        .customs = "as measured; not rounded",
        .needs = Needs::both_ends,
        .answers = Answers::cubic_metres,
        .diameter_class = DiameterClass::centimetre,
        .scale = brereton,
    },
};

}  // namespace

std::span<const Rule> cubic_rules() {
  return kRules;
}

}  // namespace kerfbook::scaling
