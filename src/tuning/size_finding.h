// size_finding.h -- what caliper readings of one size say to the sawyer: leave it, set it thinner, set it thicker, or measure
// more. Statistics are doubles: nothing here is stored or billed.
#pragma once

#include <optional>
#include <vector>

#include "tuning/size_control.h"

namespace kerfbook::tuning {

/// Fewer boards of one size and set-up than these are called too few to tell: common practice, no source.
inline constexpr std::size_t kBoardsToTell = 10;

struct SizeAsked {
  double critical = 0;            ///< what a board must be at least, green: critical_size()
  double undersize_share = 0.05;  ///< of readings that may be less
  double kerf = 0;                ///< of the saw that sets the size
  double bf_a_year = 0;           ///< sawn of this size
  double price_per_mbf = 0;
};

enum class SizeVerdict {
  too_few_boards,  ///< under kBoardsToTell, or no spread can be worked out
  thin,            ///< set too thin for the share of undersize, by more than its uncertainty
  well_set,        ///< no further from the needed target than the uncertainty
  thick            ///< set thicker than needed, by more than the uncertainty
};

struct SizeFinding {
  SizeSpread spread;
  double undersize_today =
      0;  ///< share of readings below the critical size, a normal spread assumed; with no total spread 0 or 1
  std::optional<double>
      holds;  ///< the size that all but the share of readings hold today: what can be promised
  std::optional<double> target;  ///< the size to set
  std::optional<double>
      error;  ///< standard error of mean less target, boards (not readings) being what is drawn
  std::optional<Oversize> today;  ///< against the target; given for few boards too
  SizeVerdict verdict = SizeVerdict::too_few_boards;
};
/// The total spread is that of all readings, as EM 8731 has it. Thin or thick is beyond two standard errors: that of the mean, from
/// the spread of board means, and that of Z standard deviations (Z S / root of 2 (boards - 1)), a large-sample rule: from memory.
SizeFinding find_size(const std::vector<BoardReadings>& boards, const SizeAsked& asked);

}  // namespace kerfbook::tuning
