// text_bar.h -- a bar of blocks beside each row, for a table that declares a chart.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace kerfbook::render {

/// One bar a value, `width` columns at most, to one scale from nothing to the greatest. Values below nothing
/// run left from an axis line. Absent gives an empty bar.
std::vector<std::string> bars(const std::vector<std::optional<double>>& values, int width);

}  // namespace kerfbook::render
