#include "tuning/lives.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

namespace kerfbook::tuning {

namespace {

/// A survival that is a product of fractions may miss the fraction it stands for by its last digits.
constexpr double kSame = 1e-9;

std::optional<double> two_sided(double confidence) {
  if (!(confidence > 0 && confidence < 1)) return std::nullopt;
  return boost::math::quantile(boost::math::complement(boost::math::normal(), (1 - confidence) / 2));
}

void take_step(Survival& curve, SurvivalStep step) {
  const auto risk = static_cast<double>(step.at_risk);
  const auto ended = static_cast<double>(step.ended);
  const bool first = curve.steps.empty();
  const double before = first ? 1 : curve.steps.back().survival;
  const double sum = first ? 0 : curve.steps.back().hazard_sum;
  step.survival = before * (risk - ended) / risk;
  step.hazard_sum = sum;
  if (step.ended < step.at_risk) {
    step.hazard_sum += ended / (risk * (risk - ended));
    step.error = step.survival * std::sqrt(step.hazard_sum);
  }
  curve.ended += step.ended;
  curve.steps.push_back(step);
}

}  // namespace

Survival survival_of(const std::vector<Life>& lives) {
  Survival curve;
  std::vector<Life> ordered;
  for (const auto& life : lives) {
    if (life.length >= 0 && std::isfinite(life.length)) ordered.push_back(life);
  }
  curve.lives = ordered.size();
  curve.left_out = lives.size() - ordered.size();
  std::sort(ordered.begin(), ordered.end(), [](const Life& a, const Life& b) { return a.length < b.length; });
  for (std::size_t i = 0; i < ordered.size();) {
    SurvivalStep step{.at = ordered[i].length, .at_risk = ordered.size() - i};
    for (; i < ordered.size() && ordered[i].length == step.at; ++i) {
      ++(ordered[i].ended ? step.ended : step.cut_short);
    }
    curve.longest = step.at;
    if (step.ended > 0) {
      take_step(curve, step);
    } else if (!curve.steps.empty()) {
      curve.steps.back().cut_short += step.cut_short;
    }
  }
  return curve;
}

std::optional<double> survival_at(const Survival& curve, double length) {
  if (curve.lives == 0 || std::isnan(length)) return std::nullopt;
  double survival = 1;
  for (const auto& step : curve.steps) {
    if (step.at > length) break;
    survival = step.survival;
  }
  if (length > curve.longest && survival > 0) return std::nullopt;
  return survival;
}

std::optional<Limits> limits_at(const SurvivalStep& step, LimitsOn on, double confidence) {
  const auto reach = two_sided(confidence);
  if (!reach || !step.error) return std::nullopt;
  const double s = step.survival;
  const double off = *reach * std::sqrt(step.hazard_sum);  // of the logarithm of survival
  switch (on) {
    case LimitsOn::plain:
      return Limits{std::max(0.0, s - s * off), std::min(1.0, s + s * off)};
    case LimitsOn::log:
      return Limits{s * std::exp(-off), std::min(1.0, s * std::exp(off))};
    case LimitsOn::log_log:
      break;
  }
  const double of_log = off / std::abs(std::log(s));
  return Limits{std::pow(s, std::exp(of_log)), std::pow(s, std::exp(-of_log))};
}

LifeQuantile life_quantile(const Survival& curve, double survival, LimitsOn on, double confidence) {
  LifeQuantile out;
  for (std::size_t i = 0; i < curve.steps.size(); ++i) {
    const auto& step = curve.steps[i];
    if (!out.at && step.survival <= survival + kSame) {
      out.at = out.until = step.at;
      const bool flat = step.survival >= survival - kSame;
      if (flat && i + 1 < curve.steps.size()) out.until = curve.steps[i + 1].at;
    }
    const auto limits = limits_at(step, on, confidence);
    if (!limits) continue;
    if (!out.lower && limits->lower <= survival + kSame) out.lower = step.at;
    if (!out.upper && limits->upper <= survival + kSame) out.upper = step.at;
  }
  return out;
}

std::optional<RestrictedMean> mean_life(const Survival& curve, std::optional<double> up_to) {
  RestrictedMean out;
  out.up_to = up_to.value_or(curve.longest);
  if (!(out.up_to >= 0) || !survival_at(curve, out.up_to)) return std::nullopt;
  double from = out.up_to;  // from the far end, so that each step knows the area beyond it
  double variance = 0;
  for (auto step = curve.steps.rbegin(); step != curve.steps.rend(); ++step) {
    if (step->at >= out.up_to) continue;
    out.mean += step->survival * (from - step->at);
    from = step->at;
    const double before = std::next(step) == curve.steps.rend() ? 0 : std::next(step)->hazard_sum;
    variance += out.mean * out.mean * (step->hazard_sum - before);
  }
  out.mean += from;
  out.error = std::sqrt(variance);
  return out;
}

}  // namespace kerfbook::tuning
