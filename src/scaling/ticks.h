// ticks.h -- the one fine count this room works in, in which inch and metric readings, and the mean of two of
// them, are all whole numbers. It never leaves the room: what goes out is a Length.
#pragma once

#include <cstdint>

#include "measure/length.h"

namespace kerfbook::scaling {

/// 1/128 of 0.1 mm, which is 1/508 of 1/64 in: 1/64 in = 25.4/64 mm = 254/64 tenths of a millimetre exactly, and
/// one more halving holds the mean of two readings.
using Ticks = std::int64_t;

constexpr Ticks kTicksPerInchCount = 508;    ///< in 1/64 in
constexpr Ticks kTicksPerMetricCount = 128;  ///< in 0.1 mm
constexpr Ticks kInch = 64 * kTicksPerInchCount;
constexpr Ticks kFoot = 12 * kInch;
constexpr Ticks kCentimetre = 100 * kTicksPerMetricCount;
constexpr Ticks kMetre = 100 * kCentimetre;
// 1 in = 2.54 cm exactly (yard and pound agreement, 1959)
static_assert(kInch * 100 == kCentimetre * 254);

constexpr Ticks ticks(measure::Length length) {
  return length.count * (length.system == measure::System::inch ? kTicksPerInchCount : kTicksPerMetricCount);
}

/// The nearest Length, an exact half up; exact for everything that was read or rounded to an inch or centimetre.
constexpr measure::Length length_of(Ticks count, measure::System system) {
  const Ticks per = system == measure::System::inch ? kTicksPerInchCount : kTicksPerMetricCount;
  return {(count + per / 2) / per, system};
}

constexpr Ticks down_to(Ticks value, Ticks step) {
  return value - value % step;
}  ///< `value` >= 0, `step` > 0

}  // namespace kerfbook::scaling
