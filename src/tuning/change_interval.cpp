#include "tuning/change_interval.h"

#include <cmath>

namespace kerfbook::tuning {

namespace {

/// Hours to saw so many bf since sharpening.
double hours_for(const Pace& pace, double bf) {
  const double slowed = pace.change * bf / pace.sharp;
  if (std::abs(slowed) < 1e-8)
    return bf / pace.sharp * (1 - slowed / 2);  // where the logarithm has no digits left
  return std::log1p(slowed) / pace.change;
}

bool above_zero(double number) {
  return number > 0 && std::isfinite(number);
}

}  // namespace

std::optional<ChangeInterval> change_interval(const Survival& curve, double planned, double unplanned) {
  if (!above_zero(planned) || !above_zero(unplanned)) return std::nullopt;
  ChangeInterval out;
  double survival = 1;  // just before the next length
  double used = 0;      // mean use a change gets, up to it
  double from = 0;
  const auto consider = [&](double length) {
    used += survival * (length - from);
    from = length;
    if (!(used > 0)) return;
    const double cost = planned * survival + unplanned * (1 - survival);
    out.candidates.push_back({length, cost / used, survival});
  };
  for (const auto& step : curve.steps) {
    consider(step.at);
    survival = step.survival;
  }
  if (survival > 0 && curve.longest > from) consider(curve.longest);
  if (curve.steps.empty() || out.candidates.empty()) return std::nullopt;
  for (std::size_t i = 1; i < out.candidates.size(); ++i) {
    if (out.candidates[i].cost_rate <= out.candidates[out.best].cost_rate) out.best = i;
  }
  if (survival == 0) out.never = unplanned / used;
  const double least = out.candidates[out.best].cost_rate;
  out.plan_pays = out.never ? least < *out.never : out.best + 1 < out.candidates.size();
  return out;
}

std::optional<SharpenInterval> sharpen_interval(const Pace& pace, double cost_of_sharpening,
                                                double cost_of_hour, double most_bf) {
  if (!above_zero(pace.sharp) || !above_zero(cost_of_sharpening) || !above_zero(cost_of_hour) ||
      !above_zero(most_bf) || !(pace.sharp + pace.change * most_bf > 0))
    return std::nullopt;
  // The cost of a bf falls while one bf more takes less than the hours of the mean bf and its share of the sharpening.
  const auto still_falls = [&](double bf) {
    const double next = bf / (pace.sharp + pace.change * bf);
    return cost_of_hour * (next - hours_for(pace, bf)) < cost_of_sharpening;
  };
  SharpenInterval out{.every_bf = most_bf, .past_record = still_falls(most_bf)};
  if (!out.past_record) {
    double low = 0;
    double high = most_bf;
    for (int halving = 0; halving < 100; ++halving) {
      const double middle = (low + high) / 2;
      (still_falls(middle) ? low : high) = middle;
    }
    out.every_bf = high;
  }
  const double cost = cost_of_sharpening + cost_of_hour * hours_for(pace, out.every_bf);
  out.cost_per_mbf = 1000 * cost / out.every_bf;
  return out;
}

ChangeCosts change_costs(double teeth, double price_of_tooth, double minutes, double crew_hour,
                         double sawing_hour) {
  const double put_in = teeth * price_of_tooth;
  return {put_in + minutes / 60 * crew_hour, put_in + minutes / 60 * sawing_hour};
}

}  // namespace kerfbook::tuning
