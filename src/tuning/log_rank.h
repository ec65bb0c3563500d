// log_rank.h -- do the teeth of one saw (or species, or kind) last as long as those of another: the log-rank test. Statistics are
// doubles: nothing here is stored or billed.
#pragma once

#include <optional>
#include <vector>

#include "tuning/lives.h"

namespace kerfbook::tuning {

struct GroupLives {
  std::size_t lives = 0;
  std::size_t ended = 0;
  double expected = 0;  ///< how many would have ended, had all groups lasted alike
};

struct LogRank {
  std::vector<GroupLives> groups;  ///< in the order handed in
  double chi_square = 0;
  int freedom = 0;  ///< groups that could be told apart, less one
  double p = 1;     ///< the chance of differences as large as these when all last alike
};
/// Two or more groups; groups none of whose lives got to a length at which any ended count for nothing. nullopt when fewer than two
/// are left, no life ended, or nothing can differ (at each end all at risk ended at once). With few lives the chance is rough.
/// Source: J. M. Bland and D. G. Altman, BMJ, 2004; ties by the hypergeometric variance (from memory).
std::optional<LogRank> log_rank(const std::vector<std::vector<Life>>& groups);

}  // namespace kerfbook::tuning
