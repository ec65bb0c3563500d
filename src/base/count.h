// count.h -- a count with its noun, in the number it stands in.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace kerfbook {

/// Thousands grouped: "1 log", "1,560 logs"; `many` where it is not one and an s: "22 teeth".
std::string counted(std::int64_t count, std::string_view one, std::string_view many = {});

}  // namespace kerfbook
