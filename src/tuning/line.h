// line.h -- a straight line through points by least squares, with what it leaves uncertain: does the mill slow as teeth dull.
// Statistics are doubles: nothing here is stored or billed.
#pragma once

#include <optional>
#include <vector>

namespace kerfbook::tuning {

struct Point {
  double x = 0;
  double y = 0;
};

struct Line {
  std::size_t points = 0;
  double intercept = 0;
  double slope = 0;
  double intercept_error = 0;  ///< standard error
  double slope_error = 0;      ///< standard error
  double slope_lower = 0;      ///< two-sided limits of the slope by Student's t with points - 2 of freedom
  double slope_upper = 0;
  double spread = 0;  ///< residual standard deviation
  double explained =
      0;  ///< share of the squares that the line takes up (R squared); 1 where all y are one and on the line
  double p = 1;  ///< two-sided: the chance of a slope as steep either way when there is none
};
/// nullopt of fewer than three points, when all x are one, a number is not finite, or the confidence is not between 0 and 1.
std::optional<Line> line_through(const std::vector<Point>& points, double confidence = 0.95);

}  // namespace kerfbook::tuning
