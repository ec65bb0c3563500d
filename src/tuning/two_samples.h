// two_samples.h -- two handfuls of readings (before and after a change, one saw and another): is the difference of their means
// more than chance makes, how large may it be, and how many readings would tell. Statistics are doubles: nothing here is
// stored or billed.
#pragma once

#include <optional>

#include "tuning/numbers.h"

namespace kerfbook::tuning {

/// Whether the two spreads are taken to be one (pooled, Student) or each its own (Welch). Where nothing is known of the spreads
/// the second is the safer.
enum class Spreads { pooled, unequal };

struct TwoSampleTest {
  double difference = 0;      ///< mean of the first less mean of the second
  double standard_error = 0;  ///< of the difference
  double pooled_spread = 0;   ///< root of the pooled variance; given for both kinds of test
  double t = 0;               ///< difference over its standard error
  double freedom = 0;         ///< with unequal spreads by Welch and Satterthwaite, seldom whole
  double p = 1;      ///< two-sided: the chance of a difference as large either way when the means are one
  double lower = 0;  ///< limits of the difference, two-sided
  double upper = 0;
};
/// nullopt when a sample has fewer than two numbers, neither has any spread, or the confidence is not between 0 and 1.
/// Sources: Student, 1908; B. L. Welch, 1947 (from memory, checked on published examples).
std::optional<TwoSampleTest> compare(const Sample& first, const Sample& second, Spreads spreads,
                                     double confidence = 0.95);

/// The chance that two samples of `each` numbers show, at two-sided `level`, a true difference of their means; by the
/// non-central t. nullopt when spread is not above 0, each is under 2, or the level is not between 0 and 1.
std::optional<double> power_of(double difference, double spread, std::size_t each, double level = 0.05);

/// How many numbers a sample would show a true difference with the wanted chance; the fewest for which `power_of` reaches `power`.
/// nullopt as above, for no difference, a power not between `level` and 1, and for more than a million.
/// J. Cohen, Psychological Bulletin, 1992, prints it for differences of 0.2, 0.5 and 0.8 spreads.
std::optional<std::size_t> sample_for(double difference, double spread, double power = 0.8,
                                      double level = 0.05);

}  // namespace kerfbook::tuning
