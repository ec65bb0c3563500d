#include "tuning/line.h"

#include <Eigen/Dense>
#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace kerfbook::tuning {

namespace {

bool usable(const std::vector<Point>& points) {
  if (points.size() < 3) return false;
  const bool finite = std::all_of(points.begin(), points.end(),
                                  [](const Point& p) { return std::isfinite(p.x) && std::isfinite(p.y); });
  return finite &&
         std::any_of(points.begin(), points.end(), [&](const Point& p) { return p.x != points.front().x; });
}

void add_limits(Line& line, double freedom, double confidence) {
  const boost::math::students_t student(freedom);
  const double reach = boost::math::quantile(boost::math::complement(student, (1 - confidence) / 2));
  line.slope_lower = line.slope - reach * line.slope_error;
  line.slope_upper = line.slope + reach * line.slope_error;
  if (line.slope_error > 0) {
    const double t = std::abs(line.slope) / line.slope_error;
    line.p = 2 * boost::math::cdf(boost::math::complement(student, t));
  } else {
    line.p = line.slope == 0 ? 1 : 0;
  }
}

}  // namespace

std::optional<Line> line_through(const std::vector<Point>& points, double confidence) {
  if (!usable(points) || !(confidence > 0 && confidence < 1)) return std::nullopt;
  const auto size = static_cast<Eigen::Index>(points.size());
  Eigen::VectorXd x(size);
  Eigen::VectorXd y(size);
  for (Eigen::Index i = 0; i < size; ++i) {
    x[i] = points[static_cast<std::size_t>(i)].x;
    y[i] = points[static_cast<std::size_t>(i)].y;
  }
  const double middle =
      x.mean();  // about their middle x and 1 are at right angles, and no digit is lost to a large x
  Eigen::MatrixXd design(size, 2);
  design << Eigen::VectorXd::Ones(size), (x.array() - middle).matrix();
  const Eigen::VectorXd fitted = design.colPivHouseholderQr().solve(y);
  const double across = design.col(1).squaredNorm();
  const double left = (y - design * fitted).squaredNorm();
  const double all = (y.array() - y.mean()).matrix().squaredNorm();
  const auto count = static_cast<double>(size);
  Line line;
  line.points = points.size();
  line.slope = fitted[1];
  line.intercept = fitted[0] - fitted[1] * middle;
  line.spread = std::sqrt(left / (count - 2));
  line.slope_error = line.spread / std::sqrt(across);
  line.intercept_error = line.spread * std::sqrt(1 / count + middle * middle / across);
  line.explained = all > 0 ? 1 - left / all : 1;
  add_limits(line, count - 2, confidence);
  return line;
}

}  // namespace kerfbook::tuning
