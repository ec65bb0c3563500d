// checked_sum.h -- adding whole numbers that may outgrow their 63 bits.
#pragma once

#include <cstdint>
#include <stdexcept>

namespace kerfbook {

/// a + b. Throws std::overflow_error when the answer needs > 63 bits.
inline std::int64_t checked_sum(std::int64_t a, std::int64_t b) {
  std::int64_t sum = 0;
  if (__builtin_add_overflow(a, b, &sum)) throw std::overflow_error("a sum grew past 63 bits");
  return sum;
}

}  // namespace kerfbook
