#include "tuning/control_chart.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <limits>
#include <map>

#include "tuning/numbers.h"

namespace kerfbook::tuning {

namespace {

constexpr int kMostReadings = 1000;

/// 1 less the chance that the range of n standard normal readings is at most w: with the smallest at x, the others lie
/// between x and x + w. The integrand dies off at both ends, where the plain sum over even steps is as good as any rule.
class RangeTail {
 public:
  explicit RangeTail(int n) : n_(n) {
    const boost::math::normal normal;
    for (int i = -kSteps; i <= kSteps; ++i) {
      const double x = i * kStep;
      density_.push_back(boost::math::pdf(normal, x));
      below_.push_back(boost::math::cdf(normal, x));
    }
  }
  double operator()(double w) const {
    const boost::math::normal normal;
    double chance = 0;
    for (std::size_t i = 0; i < density_.size(); ++i) {
      const double x = (static_cast<double>(i) - kSteps) * kStep;
      chance += density_[i] * std::pow(boost::math::cdf(normal, x + w) - below_[i], n_ - 1);
    }
    return 1 - n_ * kStep * chance;
  }

 private:
  static constexpr int kSteps = 170;  ///< either way, to 8.5
  static constexpr double kStep = 0.05;
  int n_;
  std::vector<double> density_;
  std::vector<double> below_;
};

/// Mean and standard deviation of the range: the integral of its tail, and of w times it twice.
void range_moments(int n, ChartConstants& out) {
  const RangeTail tail(n);
  double mean = 0;
  double square = 0;
  for (double from = 0; from < 16; from += 2) {
    using Rule = boost::math::quadrature::gauss<double, 20>;
    mean += Rule::integrate(tail, from, from + 2);
    square += Rule::integrate([&](double w) { return 2 * w * tail(w); }, from, from + 2);
  }
  out.d2 = mean;
  out.d3 = std::sqrt(square - mean * mean);
}

ChartConstants worked_out(int n) {
  ChartConstants out;
  out.n = n;
  range_moments(n, out);
  const double m = n;
  out.c4 = std::sqrt(2 / (m - 1)) / boost::math::tgamma_delta_ratio((m - 1) / 2, 0.5);
  out.A2 = 3 / (out.d2 * std::sqrt(m));
  out.A3 = 3 / (out.c4 * std::sqrt(m));
  out.D3 = std::max(0.0, 1 - 3 * out.d3 / out.d2);
  out.D4 = 1 + 3 * out.d3 / out.d2;
  const double of_deviation = std::sqrt(1 - out.c4 * out.c4) / out.c4;
  out.B3 = std::max(0.0, 1 - 3 * of_deviation);
  out.B4 = 1 + 3 * of_deviation;
  return out;
}

/// One board, as a chart counts it.
struct Board {
  std::size_t place = 0;
  Sample sample;
  double range = 0;
};

std::vector<Board> boards_with_readings(const std::vector<BoardReadings>& boards) {
  std::vector<Board> out;
  for (std::size_t i = 0; i < boards.size(); ++i) {
    if (boards[i].empty()) continue;
    const auto [least, most] = std::minmax_element(boards[i].begin(), boards[i].end());
    out.push_back({i, sample_of(boards[i]), *most - *least});
  }
  return out;
}

/// Constants by n, each worked out once a chart.
using Constants = std::map<std::size_t, ChartConstants>;

/// Mean spread and the spread within that it stands for.
void add_spread(const std::vector<Board>& boards, const Constants& by_n, ChartBy by, ControlChart& out) {
  double spreads = 0;
  double within = 0;
  double squares = 0;
  double freedom = 0;
  double counted = 0;
  for (const auto& board : boards) {
    if (board.sample.count < 2) continue;
    const auto& c = by_n.at(board.sample.count);
    const double spread = by == ChartBy::ranges ? board.range : board.sample.spread;
    spreads += spread;
    within += spread / (by == ChartBy::ranges ? c.d2 : c.c4);
    const double own = static_cast<double>(board.sample.count) - 1;
    squares += own * board.sample.spread * board.sample.spread;
    freedom += own;
    ++counted;
  }
  out.mean_spread = by == ChartBy::pooled ? std::sqrt(squares / freedom) : spreads / counted;
  out.spread_within = by == ChartBy::pooled ? out.mean_spread : within / counted;
}

ChartPoint mean_point(const Board& board, const Constants& by_n, ChartBy by, const ControlChart& chart) {
  ChartPoint point{.board = board.place, .value = board.sample.mean, .centre = chart.grand_mean};
  const double root = std::sqrt(static_cast<double>(board.sample.count));
  double reach = 3 * chart.spread_within / root;
  if (by == ChartBy::pooled && board.sample.count > 1) {
    reach = by_n.at(board.sample.count).A3 * chart.mean_spread;
  }
  point.lower = point.centre - reach;
  point.upper = point.centre + reach;
  return point;
}

ChartPoint spread_point(const Board& board, const ChartConstants& c, ChartBy by, const ControlChart& chart) {
  ChartPoint point{.board = board.place};
  if (by == ChartBy::ranges) {
    point.value = board.range;
    point.centre = c.d2 * chart.spread_within;
    point.lower = c.D3 * point.centre;
    point.upper = c.D4 * point.centre;
    return point;
  }
  point.value = board.sample.spread;
  point.centre = by == ChartBy::pooled ? chart.mean_spread : c.c4 * chart.spread_within;
  point.lower = c.B3 * point.centre;
  point.upper = c.B4 * point.centre;
  return point;
}

/// What a limit may be passed by without a point being outside: the last digits of a double.
double slack(double value) {
  return 16 * std::numeric_limits<double>::epsilon() * std::abs(value);
}

int side_of(const ChartPoint& point) {
  const double off = point.value - point.centre;
  if (std::abs(off) <= slack(point.centre)) return 0;
  return off > 0 ? 1 : -1;
}

void mark(std::vector<ChartPoint>& points) {
  std::size_t first = 0;  // of the run that point i is in
  for (std::size_t i = 0; i < points.size(); ++i) {
    auto& point = points[i];
    point.outside =
        point.value > point.upper + slack(point.upper) || point.value < point.lower - slack(point.lower);
    if (side_of(point) == 0) {
      first = i + 1;
      continue;
    }
    if (i > first && side_of(point) != side_of(points[i - 1])) first = i;
    if (i + 1 - first < kRunOnOneSide) continue;
    for (std::size_t of_run = first; of_run <= i; ++of_run) points[of_run].in_run = true;
  }
}

}  // namespace

std::optional<ChartConstants> chart_constants(int n) {
  if (n < 2 || n > kMostReadings) return std::nullopt;
  return worked_out(n);
}

std::optional<ControlChart> control_chart(const std::vector<BoardReadings>& boards, ChartBy by) {
  const auto counted = boards_with_readings(boards);
  Constants by_n;
  ControlChart out;
  double sum = 0;
  double readings = 0;
  for (const auto& board : counted) {
    const auto n = static_cast<double>(board.sample.count);
    sum += n * (board.sample.mean - counted.front().sample.mean);
    readings += n;
    out.equal_readings = out.equal_readings && board.sample.count == counted.front().sample.count;
    if (board.sample.count > kMostReadings) return std::nullopt;
    if (board.sample.count > 1 && !by_n.contains(board.sample.count)) {
      by_n[board.sample.count] = worked_out(static_cast<int>(board.sample.count));
    }
  }
  if (by_n.empty()) return std::nullopt;
  out.grand_mean = counted.front().sample.mean + sum / readings;
  add_spread(counted, by_n, by, out);
  for (const auto& board : counted) {
    out.means.push_back(mean_point(board, by_n, by, out));
    if (board.sample.count < 2) continue;
    out.spreads.push_back(spread_point(board, by_n.at(board.sample.count), by, out));
  }
  mark(out.means);
  mark(out.spreads);
  return out;
}

std::optional<ControlChart> single_values_chart(const std::vector<double>& values) {
  if (values.size() < 2) return std::nullopt;
  const ChartConstants two = worked_out(2);
  ControlChart out;
  out.grand_mean = sample_of(values).mean;
  std::vector<double> ranges;
  for (std::size_t i = 1; i < values.size(); ++i) ranges.push_back(std::abs(values[i] - values[i - 1]));
  out.mean_spread = sample_of(ranges).mean;
  out.spread_within = out.mean_spread / two.d2;
  const double reach = 3 * out.spread_within;
  for (std::size_t i = 0; i < values.size(); ++i) {
    out.means.push_back({i, values[i], out.grand_mean, out.grand_mean - reach, out.grand_mean + reach});
    if (i == 0) continue;
    out.spreads.push_back({i, ranges[i - 1], out.mean_spread, 0, two.D4 * out.mean_spread});
  }
  mark(out.means);
  mark(out.spreads);
  return out;
}

}  // namespace kerfbook::tuning
