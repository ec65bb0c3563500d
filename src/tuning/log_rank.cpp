#include "tuning/log_rank.h"

#include <Eigen/Dense>
#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <set>

namespace kerfbook::tuning {

namespace {

struct AtLength {
  Eigen::VectorXd risk;
  Eigen::VectorXd ended;
};

/// How many of each group got to a length, and how many ended there.
AtLength count_at(double length, const std::vector<std::vector<Life>>& groups) {
  const auto size = static_cast<Eigen::Index>(groups.size());
  AtLength out{Eigen::VectorXd::Zero(size), Eigen::VectorXd::Zero(size)};
  for (Eigen::Index g = 0; g < size; ++g) {
    for (const auto& life : groups[static_cast<std::size_t>(g)]) {
      if (life.length >= length) ++out.risk[g];
      if (life.ended && life.length == length) ++out.ended[g];
    }
  }
  return out;
}

std::vector<std::vector<Life>> usable(const std::vector<std::vector<Life>>& groups) {
  std::vector<std::vector<Life>> out(groups.size());
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (const auto& life : groups[g]) {
      if (life.length >= 0 && std::isfinite(life.length)) out[g].push_back(life);
    }
  }
  return out;
}

/// Differences and their variance summed over all lengths at which a life ended.
struct Sums {
  Eigen::VectorXd ended;
  Eigen::VectorXd expected;
  Eigen::MatrixXd variance;
};

Sums sums_of(const std::vector<std::vector<Life>>& groups) {
  const auto size = static_cast<Eigen::Index>(groups.size());
  Sums out{Eigen::VectorXd::Zero(size), Eigen::VectorXd::Zero(size), Eigen::MatrixXd::Zero(size, size)};
  std::set<double> lengths;
  for (const auto& group : groups) {
    for (const auto& life : group) {
      if (life.ended) lengths.insert(life.length);
    }
  }
  for (const double length : lengths) {
    const auto at = count_at(length, groups);
    const double risk = at.risk.sum();
    const double ended = at.ended.sum();
    const Eigen::VectorXd share = at.risk / risk;
    out.ended += at.ended;
    out.expected += ended * share;
    if (risk < 2) continue;
    const double spread = ended * (risk - ended) / (risk - 1);
    const Eigen::MatrixXd own = share.asDiagonal();
    out.variance += spread * (own - share * share.transpose());
  }
  return out;
}

}  // namespace

std::optional<LogRank> log_rank(const std::vector<std::vector<Life>>& groups) {
  const auto lives = usable(groups);
  const Sums sums = sums_of(lives);
  LogRank out;
  for (std::size_t g = 0; g < lives.size(); ++g) {
    const auto at = static_cast<Eigen::Index>(g);
    out.groups.push_back({lives[g].size(), static_cast<std::size_t>(sums.ended[at]), sums.expected[at]});
  }
  if (groups.size() < 2 || !(sums.variance.trace() > 0)) return std::nullopt;
  // One row too many by nature, and more where groups never met: the least-norm solution passes over those.
  Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> solver(sums.variance.rows(), sums.variance.cols());
  solver.setThreshold(1e-10);
  solver.compute(sums.variance);
  const Eigen::VectorXd difference = sums.ended - sums.expected;
  out.chi_square = std::max(0.0, difference.dot(solver.solve(difference)));
  out.freedom = static_cast<int>(solver.rank());
  out.p = boost::math::cdf(boost::math::complement(boost::math::chi_squared(out.freedom), out.chi_square));
  return out;
}

}  // namespace kerfbook::tuning
