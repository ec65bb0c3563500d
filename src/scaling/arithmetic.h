// arithmetic.h -- what the rules' functions share: exact pi, and a formula's constants brought to lowest terms
// when the program is compiled, so that a log costs one product and one division.
#pragma once

#include "base/exact.h"
#include "scaling/rules.h"
#include "scaling/ticks.h"

namespace kerfbook::scaling {

constexpr Wide kMillion = 1'000'000;

/// pi to 15 figures, which is a billionth of a billionth of a cubic metre on the largest log.
constexpr Wide kPiNum = 314'159'265'358'979;
constexpr Wide kPiDen = 100'000'000'000'000;
/// pi squared and 1 / (4 pi) to 15 figures, for girths.
constexpr Wide kPiSquaredNum = 986'960'440'108'936;
constexpr Wide kPiSquaredDen = 100'000'000'000'000;
constexpr Wide kQuarterOverPiNum = 795'774'715'459'477;
constexpr Wide kQuarterOverPiDen = 10'000'000'000'000'000;

constexpr Wide common_factor(Wide a, Wide b) {
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

/// value x kTimes / kUnder, the two constants in lowest terms.
template <Wide kTimes, Wide kUnder>
constexpr Exact over(Wide value) {
  constexpr Wide kCommon = common_factor(kTimes, kUnder);
  return {value * (kTimes / kCommon), kUnder / kCommon};
}

}  // namespace kerfbook::scaling
