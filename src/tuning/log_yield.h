// log_yield.h -- what a sawing model expects of many logs: each log's best pattern in figures, worked out once for logs
// that are alike and by several threads.
#pragma once

#include <cstdint>
#include <vector>

#include "tuning/sawing_model.h"

namespace kerfbook::tuning {

/// A pattern's figures, or the sums of several. Volumes are cubic inches.
struct LogYield {
  std::int64_t bf_counts = 0;
  std::int64_t worth = 0;
  double log_in3 = 0;
  double lumber_in3 = 0;
  double sawdust_in3 = 0;
  LogYield& operator+=(const LogYield& other);
  [[nodiscard]] double bf() const;
};

/// The log that stands for all of its class: diameters and length taken down to whole steps. 0 = as they are.
SawLog classed(const SawLog& log, Fine diameter_step, Fine length_step);

/// The yield of each log, in their order; the same whatever the number of threads.
std::vector<LogYield> yields_of(const SawingModel& model, const std::vector<SawLog>& logs,
                                unsigned threads = 2);
LogYield sum_of(const std::vector<LogYield>& yields);

}  // namespace kerfbook::tuning
