// too_large.h -- what is said when a figure has outgrown what is counted exactly.
#pragma once

#include <string_view>

namespace kerfbook {

constexpr std::string_view kTooLarge =
    "a sum, a volume or a price here is larger than can be counted exactly; look for a number with too many "
    "digits";

/// Is this what SQLite says of its own sums, or what the functions of the trade say through it?
constexpr bool is_overflow(std::string_view what) {
  return what.find("integer overflow") != std::string_view::npos ||
         what.find("grew past") != std::string_view::npos;
}

}  // namespace kerfbook
