// run_yield.h -- what was got out of each run's logs, against the most a sawing model gets out of them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "tuning/log_yield.h"

namespace kerfbook::tuning {

/// The logs and lumber of one run: one site, job, species and set-up of a sheet.
struct SawnRun {
  std::size_t mill = 0;  ///< which of the mills: a set-up with its list of sizes
  std::vector<SawLog> logs;
  double bf = 0;          ///< lumber as counted
  double lumber_in3 = 0;  ///< lumber as cut, green
};

enum class YieldVerdict : std::uint8_t {
  no_logs,  ///< or nothing on the list comes out of them
  over_most,  ///< more than the model's best: logs measured too small, lumber of other logs, or sizes off the list
  told        ///< a share that can be told
};

/// Several runs, or one.
struct YieldShare {
  std::size_t logs = 0;
  LogYield expected;
  double bf = 0;
  double lumber_in3 = 0;
  [[nodiscard]] double percent() const { return expected.bf_counts > 0 ? 100 * bf / expected.bf() : 0; }
  [[nodiscard]] double recovery() const { return of_logs(lumber_in3); }
  [[nodiscard]] double expected_recovery() const { return of_logs(expected.lumber_in3); }
  [[nodiscard]] YieldVerdict verdict() const;

 private:
  [[nodiscard]] double of_logs(double volume) const {
    return expected.log_in3 > 0 ? 100 * volume / expected.log_in3 : 0;
  }
};

/// The kind of log there was most of, whole inches of small end and whole feet: what to draw a pattern of.
struct CommonLog {
  SawLog log;  ///< the first of its kind in the record, as it was measured
  std::size_t mill = 0;
  std::size_t count = 0;
};

struct YieldFinding {
  std::vector<YieldShare> runs;  ///< in their order
  YieldShare all;                ///< total over total of the runs that have both logs and lumber
  std::size_t over_most = 0;  ///< how many runs of that total are over what the model gets out of their logs
  std::optional<CommonLog> common;
};
/// Throws std::out_of_range of a run whose mill there is not.
YieldFinding find_yield(const std::vector<SawMill>& mills, const std::vector<SawnRun>& runs,
                        unsigned threads = 2);

/// The share as a sawyer would say it: "The mill gets 93 of every 100 board feet the best pattern would give: 1,561 of
/// 1,672 bf from 12 logs."
std::string yield_in_words(const YieldShare& share);

}  // namespace kerfbook::tuning
