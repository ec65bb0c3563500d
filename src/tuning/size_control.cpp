#include "tuning/size_control.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

#include "tuning/numbers.h"

namespace kerfbook::tuning {

namespace {

/// Sums of squares about each board's mean, and of the board means about the mean of all; each with its freedom.
struct Squares {
  double within = 0;
  double between = 0;
  std::size_t within_freedom = 0;
  std::size_t between_freedom = 0;
  double readings_a_board = 0;  ///< n0: the mean number when all boards have as many, a little less otherwise
};

Squares squares_of(const std::vector<Sample>& boards, std::size_t readings, double mean) {
  Squares out;
  double squared_counts = 0;
  for (const auto& board : boards) {
    const auto count = static_cast<double>(board.count);
    squared_counts += count * count;
    out.between += count * (board.mean - mean) * (board.mean - mean);
    if (board.count < 2) continue;
    out.within += (count - 1) * board.spread * board.spread;
    out.within_freedom += board.count - 1;
  }
  if (boards.size() < 2) return out;
  out.between_freedom = boards.size() - 1;
  const auto all = static_cast<double>(readings);
  out.readings_a_board = (all - squared_counts / all) / static_cast<double>(out.between_freedom);
  return out;
}

void add_components(SizeSpread& out, const Squares& squares) {
  if (squares.within_freedom > 0) {
    out.within_mean_square = squares.within / static_cast<double>(squares.within_freedom);
    out.within = std::sqrt(*out.within_mean_square);
  }
  if (squares.between_freedom > 0) {
    out.between_mean_square = squares.between / static_cast<double>(squares.between_freedom);
  }
  if (!out.within_mean_square || !out.between_mean_square) return;
  if (*out.within_mean_square > 0) out.variance_ratio = *out.between_mean_square / *out.within_mean_square;
  const double component = (*out.between_mean_square - *out.within_mean_square) / squares.readings_a_board;
  out.component_was_negative = component < 0;
  out.between_component = std::sqrt(std::max(component, 0.0));
  out.of_components = std::hypot(*out.within, *out.between_component);
}

}  // namespace

SizeSpread spread_of(const std::vector<BoardReadings>& boards) {
  std::vector<Sample> samples;
  std::vector<double> means;
  std::vector<double> all;
  for (const auto& board : boards) {
    if (board.empty()) continue;
    samples.push_back(sample_of(board));
    means.push_back(samples.back().mean);
    all.insert(all.end(), board.begin(), board.end());
  }
  const Sample every = sample_of(all);
  SizeSpread out;
  out.boards = samples.size();
  out.readings = every.count;
  out.mean = every.mean;
  if (every.count > 1) out.of_all_readings = every.spread;
  if (samples.size() > 1) out.of_board_means = sample_of(means).spread;
  add_components(out, squares_of(samples, every.count, every.mean));
  return out;
}

std::optional<double> deviations_for(double undersize_share) {
  if (!(undersize_share > 0 && undersize_share < 1)) return std::nullopt;
  return boost::math::quantile(boost::math::complement(boost::math::normal(), undersize_share));
}

std::optional<double> critical_size(const FinishedSize& finished) {
  const double dry = finished.final_size + finished.planing;
  if (finished.form == Shrinkage::added) return dry + finished.shrinkage;
  if (!(finished.shrinkage >= 0 && finished.shrinkage < 1)) return std::nullopt;
  return dry / (1 - finished.shrinkage);
}

std::optional<double> target_size(const FinishedSize& finished, double total_spread, double undersize_share) {
  const auto critical = critical_size(finished);
  const auto deviations = deviations_for(undersize_share);
  if (!critical || !deviations || !(total_spread >= 0)) return std::nullopt;
  return *critical + *deviations * total_spread;
}

double undersize_share(double mean, double critical, double total_spread) {
  if (!(total_spread > 0)) return mean < critical ? 1 : 0;
  return boost::math::cdf(boost::math::normal(mean, total_spread), critical);
}

std::optional<Oversize> oversize_of(double mean, double target, double kerf, double bf_a_year,
                                    double price_per_mbf) {
  if (!(mean + kerf > 0) || !(target + kerf > 0)) return std::nullopt;
  Oversize out;
  out.size = mean - target;
  const double over = std::max(out.size, 0.0);
  out.wood_share = over / (mean + kerf);
  out.lumber_gain = over / (target + kerf);
  out.bf_a_year = out.lumber_gain * bf_a_year;
  out.money_a_year = out.bf_a_year / 1000 * price_per_mbf;
  return out;
}

}  // namespace kerfbook::tuning
