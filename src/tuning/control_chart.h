// control_chart.h -- Shewhart charts of board means and of their spreads: centre, limits, points outside them and long runs
// on one side. Statistics are doubles: nothing here is stored or billed.
//
// The limits come from the spread WITHIN boards. Where boards differ by more than their readings explain (the set-works, the
// carriage, the sawyer), many means stand outside, and that is what the chart is for: those boards were set differently.
#pragma once

#include <optional>
#include <vector>

#include "tuning/size_control.h"

namespace kerfbook::tuning {

/// What a normal spread of 1 gives in a handful of n readings, and the factors charts are drawn by. Worked out, not looked up:
/// d2 and d3 by numerical integration of the distribution of the range, c4 by the gamma function.
struct ChartConstants {
  int n = 0;
  double d2 = 0;  ///< mean of the range
  double d3 = 0;  ///< standard deviation of the range
  double c4 = 0;  ///< mean of the standard deviation (over n - 1)
  double A2 = 0;  ///< limits of means: centre -+ A2 x mean range
  double A3 = 0;  ///< limits of means: centre -+ A3 x mean standard deviation
  double D3 = 0;  ///< lower limit of ranges over their mean; 0 where it would be negative
  double D4 = 0;  ///< upper limit of ranges over their mean
  double B3 = 0;  ///< lower limit of standard deviations over their mean; 0 where it would be negative
  double B4 = 0;  ///< upper limit of standard deviations over their mean
};
/// Of n from 2 to 1,000 readings; nullopt of others. Sources: the constants' definitions, from memory; their figures as
/// printed for n 2 to 10 (T. Pyzdek and P. Keller, 2012) and, from memory, to 25.
std::optional<ChartConstants> chart_constants(int n);

/// What the limits are worked out from.
enum class ChartBy {
  ranges,      ///< each board's largest less its smallest reading (X-bar and R)
  deviations,  ///< each board's standard deviation (X-bar and s)
  pooled  ///< X-bar and s, the mean deviation taken from the pooled variance: used where readings a board are unequal
          ///< (D. C. Montgomery, Introduction to Statistical Quality Control, from memory)
};

/// One board on one chart.
struct ChartPoint {
  std::size_t board = 0;  ///< its place among the boards handed in, from 0
  double value = 0;
  double centre =
      0;  ///< with unequal readings a board the centre of spreads differs by board, and so do all limits
  double lower = 0;
  double upper = 0;
  bool outside = false;  ///< above the upper or below the lower limit; on it is inside
  bool in_run = false;   ///< in eight or more boards running on one side of the centre; on it ends a run
};
/// Eight running on one side: from memory, NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.
inline constexpr std::size_t kRunOnOneSide = 8;

struct ControlChart {
  std::vector<ChartPoint> means;    ///< of every board with a reading, in the order handed in
  std::vector<ChartPoint> spreads;  ///< of every board with two readings, ranges or standard deviations
  double grand_mean = 0;            ///< of all readings
  double mean_spread =
      0;  ///< of the boards with two readings, each counted once; `pooled`: root of the pooled variance
  double spread_within = 0;    ///< standard deviation within boards that the limits rest on
  bool equal_readings = true;  ///< all boards have as many, and one set of limits serves
};
/// nullopt when no board has two readings, or one has more than 1,000. With readings all equal every limit is the mean and
/// nothing is outside. The spread within is the mean of range / d2 (or deviation / c4), each by its board's own n.
std::optional<ControlChart> control_chart(const std::vector<BoardReadings>& boards, ChartBy by);

/// Single values (board means, say) in the order they came, with limits from their moving ranges: |each - the one before|. Where
/// boards always differ by more than their readings explain, this tells a board out of the ordinary from the ordinary
/// differences, which limits from within boards cannot. `means` are the values, `spreads` the moving ranges, each at the
/// later of its two; spread_within is mean moving range / d2 of 2. nullopt of fewer than two values.
/// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (from memory).
std::optional<ControlChart> single_values_chart(const std::vector<double>& values);

}  // namespace kerfbook::tuning
