#include "tuning/yield_curve.h"

#include <Eigen/Cholesky>
#include <cmath>

namespace kerfbook::tuning {
namespace {

using Square = Eigen::Matrix<double, 3, 3>;
using Three = Eigen::Matrix<double, 3, 1>;

}  // namespace

YieldTerms terms_of(double diameter, double length) {
  return {diameter * diameter * length / 1000, diameter * length / 100, 1};
}

double YieldCurve::expected(const YieldTerms& terms_there) const {
  double sum = 0;
  for (std::size_t i = 0; i < factor.size(); ++i) sum += factor[i] * terms_there[i];
  return sum;
}

int terms_for(std::size_t runs) {
  constexpr std::size_t kForTwo = 6;
  constexpr std::size_t kForThree = 15;
  return runs < kForTwo ? 1 : runs < kForThree ? 2 : 3;
}

std::optional<YieldCurve> fit_yield(const std::vector<RunYield>& runs, int terms,
                                    const std::vector<int>& times) {
  Square normal = Square::Zero();
  Three right = Three::Zero();
  for (std::size_t r = 0; r < runs.size(); ++r) {
    const double weight = (times.empty() ? 1.0 : times[r]) / runs[r].logs;
    if (weight <= 0 || !std::isfinite(weight)) continue;
    for (int i = 0; i < terms; ++i) {
      const double by = weight * runs[r].terms[static_cast<std::size_t>(i)];
      right(i) += by * runs[r].got;
      for (int k = 0; k < terms; ++k) normal(i, k) += by * runs[r].terms[static_cast<std::size_t>(k)];
    }
  }
  for (int i = terms; i < 3; ++i) normal(i, i) = 1;  // a term that is not used is 0
  const Eigen::LDLT<Square> solver(normal);
  constexpr double kLeast = 1e-10;  // of the largest: less is rounding, not a difference between runs
  const Three pivots = solver.vectorD().cwiseAbs();
  if (terms < 1 || pivots.head(3).minCoeff() <= kLeast * pivots.maxCoeff()) return std::nullopt;
  const Three solved = solver.solve(right);
  YieldCurve curve;
  curve.terms = terms;
  for (int i = 0; i < terms; ++i) curve.factor[static_cast<std::size_t>(i)] = solved(i);
  return curve;
}

}  // namespace kerfbook::tuning
