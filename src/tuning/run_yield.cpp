#include "tuning/run_yield.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/count.h"
#include "base/exact.h"

namespace kerfbook::tuning {

namespace {

/// The larger diameter of two kinds as common goes last, so that the answer is always the same.
std::optional<CommonLog> commonest(const std::vector<SawnRun>& runs) {
  std::map<std::pair<Fine, Fine>, CommonLog> kinds;
  for (const auto& run : runs) {
    for (const auto& log : run.logs) {
      const SawLog kind = classed(log, kFineInch, kFineFoot);
      auto& common = kinds[{kind.small_end, kind.length - kind.trim}];
      if (common.count++ == 0) {
        common.log = log;
        common.mill = run.mill;
      }
    }
  }
  std::optional<CommonLog> most;
  for (const auto& [kind, common] : kinds)
    if (!most || common.count > most->count) most = common;
  return most;
}

}  // namespace

YieldVerdict YieldShare::verdict() const {
  if (logs == 0 || expected.bf_counts == 0) return YieldVerdict::no_logs;
  return bf > expected.bf() ? YieldVerdict::over_most : YieldVerdict::told;
}

YieldFinding find_yield(const std::vector<SawMill>& mills, const std::vector<SawnRun>& runs,
                        unsigned threads) {
  YieldFinding found;
  found.runs.resize(runs.size());
  std::vector<std::vector<std::size_t>> of_mill(mills.size());
  for (std::size_t i = 0; i < runs.size(); ++i) of_mill.at(runs[i].mill).push_back(i);
  for (std::size_t m = 0; m < mills.size(); ++m) {
    if (of_mill[m].empty()) continue;
    std::vector<SawLog> logs;
    for (const auto run : of_mill[m]) logs.insert(logs.end(), runs[run].logs.begin(), runs[run].logs.end());
    Fine widest = kFineInch;
    for (const auto& log : logs) widest = std::max({widest, log.small_end, log.large_end});
    const auto yields = yields_of(SawingModel(mills[m], widest), logs, threads);
    std::size_t at = 0;
    for (const auto run : of_mill[m]) {
      auto& share = found.runs[run];
      share.logs = runs[run].logs.size();
      share.bf = runs[run].bf;
      share.lumber_in3 = runs[run].lumber_in3;
      for (std::size_t i = 0; i < share.logs; ++i) share.expected += yields[at++];
    }
  }
  for (const auto& share : found.runs) {
    if (share.logs == 0 || share.bf == 0) continue;
    found.all.logs += share.logs;
    found.all.expected += share.expected;
    found.all.bf += share.bf;
    found.all.lumber_in3 += share.lumber_in3;
    found.over_most += share.verdict() == YieldVerdict::over_most ? 1 : 0;
  }
  found.common = commonest(runs);
  return found;
}

std::string yield_in_words(const YieldShare& share) {
  const auto figures = [&] {
    const auto whole = [](double bf) { return grouped({std::llround(bf), 0}); };
    return fmt::format("{} of {} bf from {}", whole(share.bf), whole(share.expected.bf()),
                       counted(static_cast<std::int64_t>(share.logs), "log"));
  };
  switch (share.verdict()) {
    case YieldVerdict::no_logs:
      return "There are no logs of which the list of sizes gives any board.";
    case YieldVerdict::over_most:
      return fmt::format(
          "More was tallied than the best pattern gives, {}: look for logs measured too small, lumber of "
          "other logs, or "
          "sizes that are not on the list.",
          figures());
    case YieldVerdict::told:
      break;
  }
  return fmt::format("The mill gets {:.0f} of every 100 board feet the best pattern would give: {}.",
                     share.percent(), figures());
}

}  // namespace kerfbook::tuning
