// reading.h -- how a scanned number and its unit become a length. For length_read.cpp and size.cpp.
#pragma once

#include <string>

#include "measure/length.h"
#include "measure/notation.h"

namespace kerfbook::measure {

constexpr bool is_metric(Unit unit) {
  return unit == Unit::millimetre || unit == Unit::centimetre || unit == Unit::metre;
}

/// `value` of `unit` (not Unit::none) as a length; `typed` is quoted in a Slip, placed at `at`. A Slip when
/// it is no whole count of 1/64 in or 1/10 mm, or over 100,000 ft.
Result<Length> to_length(const Rational& value, Unit unit, const std::string& typed, int at);

}  // namespace kerfbook::measure
