// log_end.h -- the boards of a log, drawn on its small end as one SVG drawing. What may lie there is worked out elsewhere.
#pragma once

#include <string>
#include <vector>

namespace kerfbook::render {

/// A board's end; x to the right and y down from the log's centre, inches (or any other unit, the same for all).
struct LogEndBoard {
  double left = 0;
  double top = 0;
  double across = 0;
  double down = 0;
  std::string size;      ///< written on it where there is room: "2x6"
  std::string in_full;   ///< as it is told: "2x6, 16 ft"
  bool shorter = false;  ///< lies partly in the taper: drawn with a broken line
};
struct LogEnd {
  std::string title;
  double small_end = 0;  ///< diameter
  double large_end = 0;  ///< diameter; drawn when larger
  std::vector<LogEndBoard> boards;
};

/// `<svg>...</svg>`: colours from the page's style, and in shades of grey where there is none; every board is told in words
/// as well, alike ones together. Nothing when the log has no diameter. It holds no script.
std::string log_end_svg(const LogEnd& end);

}  // namespace kerfbook::render
