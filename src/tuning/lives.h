// lives.h -- how long teeth and blades last, by a record in which some lives were cut short: survival curve, median, mean.
// Statistics are doubles: nothing here is stored or billed.
//
// A life may be counted in board feet, lineal feet or hours. One that ended told how long it lasted; one cut short (a strike,
// a planned change, still in the saw) told only that it lasted at least so long. Leaving the second kind out, or
// counting it as ended, makes teeth look shorter-lived than they are.
#pragma once

#include <optional>
#include <vector>

namespace kerfbook::tuning {

struct Life {
  double length = 0;  ///< at least 0
  bool ended = true;  ///< by what is being studied (dull, worn out); false = cut short by anything else
};

/// One length at which some life ended.
struct SurvivalStep {
  double at = 0;
  std::size_t at_risk =
      0;                  ///< lives of at least this length: what is cut short here counts as having got here
  std::size_t ended = 0;  ///< at this very length
  std::size_t cut_short = 0;  ///< from here to the next step, this length included
  double survival = 1;        ///< the share that lasts longer than this
  double hazard_sum = 0;      ///< sum of d / (n (n - d)) up to here (Greenwood); without end at survival 0
  /// Standard error of `survival` by Greenwood; nullopt at survival 0, where it has none.
  std::optional<double> error{};
};

/// The product-limit curve. Before the first step survival is 1; what is cut short after the last step changes nothing.
struct Survival {
  std::vector<SurvivalStep> steps;  ///< in order of length; empty when no life ended
  std::size_t lives = 0;
  std::size_t ended = 0;
  std::size_t left_out = 0;  ///< lengths below 0 or not a number
  double longest = 0;        ///< of all lives; the curve says nothing beyond it unless it is down to 0
};
/// At a tie what ended counts before what was cut short. Source: E. L. Kaplan and P. Meier, 1958; Greenwood's error as in
/// C. T. Le, Introductory Biostatistics (both from memory, checked on published examples).
Survival survival_of(const std::vector<Life>& lives);

/// The share that lasts longer than `length`; nullopt beyond the longest life while some are left, and of no lives.
std::optional<double> survival_at(const Survival& curve, double length);

/// How the limits of a curve are drawn: on survival itself, on its logarithm, or on the logarithm of that.
enum class LimitsOn { plain, log, log_log };

struct Limits {
  double lower = 0;
  double upper = 0;
};
/// Two-sided limits at one step, kept within 0 and 1; nullopt at survival 0 and for a confidence not between 0 and 1.
std::optional<Limits> limits_at(const SurvivalStep& step, LimitsOn on, double confidence = 0.95);

/// A length that so many do not outlast, with its limits.
struct LifeQuantile {
  std::optional<double>
      at;  ///< the first length with survival at or below the wanted; nullopt: more than that outlast the record
  /// Where survival is exactly the wanted from `at` on: the length at which it goes on falling (some publications
  /// print the middle of the two). Otherwise equal to `at`.
  std::optional<double> until;
  std::optional<double> lower;  ///< nullopt: none
  std::optional<double> upper;  ///< nullopt: none, as when the upper limit of survival stays above the wanted
};
/// Of the median `survival` is 1/2. The limits are those lengths whose own limits of survival hold the wanted one
/// (R. Brookmeyer and J. Crowley, Biometrics, 1982, from memory).
LifeQuantile life_quantile(const Survival& curve, double survival = 0.5, LimitsOn on = LimitsOn::log_log,
                           double confidence = 0.95);

/// Mean life up to a length: the area under the curve.
struct RestrictedMean {
  double up_to = 0;
  double mean = 0;
  double error = 0;  ///< standard error from Greenwood's sum; 0 when no life ended before `up_to`
};
/// `up_to` by default the longest life: with the curve down to 0 there it is the mean itself, otherwise less than it. nullopt
/// of no lives, and for a length beyond the longest life while some are left.
std::optional<RestrictedMean> mean_life(const Survival& curve, std::optional<double> up_to = std::nullopt);

}  // namespace kerfbook::tuning
