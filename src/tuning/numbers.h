// numbers.h -- what every part of the room says of a handful of numbers. Statistics are doubles: nothing here is stored,
// billed or totalled in the book.
#pragma once

#include <vector>

#include "base/exact.h"

namespace kerfbook::tuning {

/// How many numbers, their mean, and their standard deviation over n - 1.
struct Sample {
  std::size_t count = 0;
  double mean = 0;    ///< 0 of no numbers
  double spread = 0;  ///< standard deviation, over n - 1; 0 of fewer than two numbers
};
/// In two passes, so that a large mean with a small spread loses no digit.
Sample sample_of(const std::vector<double>& numbers);

/// An exact number as a double comes near it.
double as_double(const Rational& number);

}  // namespace kerfbook::tuning
