// heap.h -- what slabs, dust and the like are measured in as they lie, stacked or loose.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "base/exact.h"

namespace kerfbook::measure {

enum class HeapUnit : std::uint8_t {
  cubic_foot,
  cubic_yard,
  cubic_metre,
  cord  ///< 128 ft3: a stack of 4 x 4 x 8 ft (NIST Handbook 130, from memory)
};

std::string_view word_of(HeapUnit unit);  ///< "ft3", "yd3", "m3", "cord"
/// Of that word, or another it goes by (`yards`, `cords`), in any case; nullopt of none.
std::optional<HeapUnit> heap_unit(std::string_view word);
/// Cubic feet that a heap takes up, exact.
Rational heap_feet3(const Rational& quantity, HeapUnit unit);

}  // namespace kerfbook::measure
