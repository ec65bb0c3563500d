// sums.h -- what several of the reckoning's reports add up alike.
#pragma once

#include <string>
#include <vector>

#include "reckoning.h"

namespace reckoning {

inline const Fraction kMinute(1, 60);  ///< in hours

/// Sums a report makes of runs; what overrun and recovery count is kept beside, for their ratios.
struct Sums {
  std::int64_t runs = 0, logs = 0, unscaled = 0, lines = 0, pieces = 0, counted = 0;
  bool scaled = false;
  Fraction net, lumber, content, counted_lumber, counted_net, counted_content, counted_wood;

  void add(const Run& run) {
    ++runs;
    logs += run.logs;
    unscaled += run.unscaled;
    lines += run.lines;
    pieces += run.pieces;
    lumber += run.lumber;
    if (run.logs > run.unscaled) {
      scaled = true;
      net += run.net;
      content += run.content;
    }
    if (!run.counted()) return;
    ++counted;
    counted_lumber += run.lumber;
    counted_net += run.net;
    counted_content += run.content;
    counted_wood += run.wood;
  }
};

inline void put_counted(const Sums& sums, Row& row) {
  if (sums.counted == 0) return;
  row["counted_lumber"] = figure(sums.counted_lumber);
  row["counted_net"] = figure(sums.counted_net);
  row["counted_content"] = figure(sums.counted_content);
  row["counted_wood"] = figure(sums.counted_wood);
}

inline const Ratio kOverrun{"counted_lumber", "counted_net", 100, 100};

/// Replaced teeth and full sets are new ones.
inline bool gives_new_teeth(const Teeth& work) {
  return work.action == "replaced" || work.action == "full-set";
}

inline Fraction lumber_on(const std::vector<Run>& runs, const Period& period) {
  Fraction sum;
  for (const auto& run : runs)
    if (period.has(run.day)) sum += run.lumber;
  return sum;
}

}  // namespace reckoning
