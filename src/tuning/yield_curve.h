// yield_curve.h -- what this mill gets out of a log of some diameter and length, by its own record: a curve through runs by
// least squares. Boards cannot be traced to logs, so a run counts with the sums of its logs. Statistics are doubles: nothing
// here is stored or billed.
#pragma once

#include <array>
#include <optional>
#include <vector>

namespace kerfbook::tuning {

/// Terms of the curve, per log: D x D x L / 1000 (what a log holds), D x L / 100 (what goes round its outside: slabs and
/// edgings, as in the International rule's formula) and 1. D the small end in inches, L in feet.
using YieldTerms = std::array<double, 3>;
YieldTerms terms_of(double diameter, double length);

/// The sums over a run's logs, and what came out of them (board feet, or the wood really cut).
struct RunYield {
  YieldTerms terms{};
  double logs = 0;
  double got = 0;
};

struct YieldCurve {
  int terms = 0;        ///< how many of the terms are used, from the first on
  YieldTerms factor{};  ///< 0 for the others
  [[nodiscard]] double expected(const YieldTerms& terms) const;
};

/// The terms that so many runs bear: one under 6, two under 15, else three (common practice, no source: several runs a term).
int terms_for(std::size_t runs);

/// Least squares, a run weighing as one over its logs (a sum of n logs scatters as the root of n). `times` says how often each
/// run counts, empty = once each. nullopt when the runs do not tell the terms apart, or there are none.
std::optional<YieldCurve> fit_yield(const std::vector<RunYield>& runs, int terms,
                                    const std::vector<int>& times = {});

}  // namespace kerfbook::tuning
