#include "tuning/size_finding.h"

#include <cmath>

namespace kerfbook::tuning {

namespace {

SizeVerdict verdict_of(const SizeFinding& finding) {
  if (finding.spread.boards < kBoardsToTell || !finding.today || !finding.error) {
    return SizeVerdict::too_few_boards;
  }
  const double uncertain = 2 * *finding.error;
  if (finding.today->size > uncertain) return SizeVerdict::thick;
  return finding.today->size < -uncertain ? SizeVerdict::thin : SizeVerdict::well_set;
}

}  // namespace

SizeFinding find_size(const std::vector<BoardReadings>& boards, const SizeAsked& asked) {
  SizeFinding out;
  out.spread = spread_of(boards);
  const auto& spread = out.spread;
  if (spread.readings > 0) {
    out.undersize_today = undersize_share(spread.mean, asked.critical, spread.of_all_readings.value_or(0));
  }
  const auto deviations = deviations_for(asked.undersize_share);
  if (!spread.of_all_readings || !deviations) return out;
  const double reach = *deviations * *spread.of_all_readings;
  out.holds = spread.mean - reach;
  out.target = asked.critical + reach;
  out.today = oversize_of(spread.mean, *out.target, asked.kerf, asked.bf_a_year, asked.price_per_mbf);
  if (spread.of_board_means) {
    const auto count = static_cast<double>(spread.boards);
    out.error = std::hypot(*spread.of_board_means / std::sqrt(count), reach / std::sqrt(2 * (count - 1)));
  }
  out.verdict = verdict_of(out);
  return out;
}

}  // namespace kerfbook::tuning
