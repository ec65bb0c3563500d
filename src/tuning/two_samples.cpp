#include "tuning/two_samples.h"

#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace kerfbook::tuning {

namespace {

constexpr std::size_t kMostEach = 1'000'000;

bool is_share(double number) {
  return number > 0 && number < 1;
}

void add_pooled(TwoSampleTest& out, double n1, double n2) {
  out.freedom = n1 + n2 - 2;
  out.standard_error = out.pooled_spread * std::sqrt(1 / n1 + 1 / n2);
}

void add_unequal(TwoSampleTest& out, const Sample& first, const Sample& second, double n1, double n2) {
  const double v1 = first.spread * first.spread / n1;
  const double v2 = second.spread * second.spread / n2;
  const double share = v1 / (v1 + v2);  // so that tiny spreads do not vanish when squared
  out.freedom = 1 / (share * share / (n1 - 1) + (1 - share) * (1 - share) / (n2 - 1));
  out.standard_error = std::sqrt(v1 + v2);
}

}  // namespace

std::optional<TwoSampleTest> compare(const Sample& first, const Sample& second, Spreads spreads,
                                     double confidence) {
  if (first.count < 2 || second.count < 2 || !is_share(confidence)) return std::nullopt;
  if (!(first.spread > 0) && !(second.spread > 0)) return std::nullopt;
  const auto n1 = static_cast<double>(first.count);
  const auto n2 = static_cast<double>(second.count);
  TwoSampleTest out;
  out.difference = first.mean - second.mean;
  out.pooled_spread = std::sqrt(
      ((n1 - 1) * first.spread * first.spread + (n2 - 1) * second.spread * second.spread) / (n1 + n2 - 2));
  if (spreads == Spreads::pooled) {
    add_pooled(out, n1, n2);
  } else {
    add_unequal(out, first, second, n1, n2);
  }
  out.t = out.difference / out.standard_error;
  const boost::math::students_t student(out.freedom);
  out.p = 2 * boost::math::cdf(boost::math::complement(student, std::abs(out.t)));
  const double reach =
      boost::math::quantile(boost::math::complement(student, (1 - confidence) / 2)) * out.standard_error;
  out.lower = out.difference - reach;
  out.upper = out.difference + reach;
  return out;
}

std::optional<double> power_of(double difference, double spread, std::size_t each, double level) {
  if (!(spread > 0) || each < 2 || !is_share(level) || !std::isfinite(difference)) return std::nullopt;
  const auto n = static_cast<double>(each);
  const double freedom = 2 * n - 2;
  const double needed =
      boost::math::quantile(boost::math::complement(boost::math::students_t(freedom), level / 2));
  const double shift = std::abs(difference) / spread * std::sqrt(n / 2);
  if (shift > 30 + needed) return 1.0;  // beyond what the distribution is worked out for, and certain
  const boost::math::non_central_t shifted(freedom, shift);
  return boost::math::cdf(boost::math::complement(shifted, needed)) + boost::math::cdf(shifted, -needed);
}

std::optional<std::size_t> sample_for(double difference, double spread, double power, double level) {
  if (!power_of(difference, spread, 2, level) || difference == 0) return std::nullopt;
  if (!(power > level && power < 1)) return std::nullopt;
  const auto enough = [&](std::size_t each) { return *power_of(difference, spread, each, level) >= power; };
  std::size_t most = 2;
  while (!enough(most)) {
    if (most >= kMostEach) return std::nullopt;
    most *= 2;
  }
  std::size_t least = most / 2;  // not enough, or 1
  while (most - least > 1) {
    const std::size_t middle = least + (most - least) / 2;
    (enough(middle) ? most : least) = middle;
  }
  return most;
}

}  // namespace kerfbook::tuning
