// what_if.h -- what one change at the mill would be worth on the mill's own logs: kerf, target, one more size.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tuning/log_yield.h"

namespace kerfbook::tuning {

/// A mill (a set-up with its list of sizes) and the logs that were sawn with it.
struct MillLogs {
  SawMill mill;
  std::vector<SawLog> logs;
};
/// A change, and each of the mills when it has made it, in their order.
struct MillChange {
  std::string name;  ///< "kerf 1/32 in less"
  std::vector<SawMill> mills;
};
/// Both saws' kerf less by so much; never under 0.
SawMill with_less_kerf(SawMill mill, Fine less);
/// Every size cut so much thinner and so much narrower, counted as before. A target never goes under a step.
SawMill with_less_target(SawMill mill, Fine less_thick, Fine less_wide);
SawMill with_size(SawMill mill, SawProduct product);

/// What the mill makes of its logs in a year. The model's gain in percent is laid on what the mill did make, not on what
/// the model says it could: a mill that gets nine boards for the model's ten gains nine for its ten as well.
struct MillYear {
  double bf = 0;        ///< lumber
  double money = 0;     ///< what that was worth, in units of the currency; 0 = not known
  double of_these = 0;  ///< lumber that was cut of the very logs that are looked at
};

/// So much was paid for so much lumber.
struct Billed {
  double amount = 0;
  double bf = 0;
};
/// What a board foot brought: total over total; nullopt when nothing was billed.
std::optional<double> mean_price(const std::vector<Billed>& billed);

struct WhatIf {
  std::string name;
  LogYield yield;           ///< of all the logs
  double gain_percent = 0;  ///< of board feet, or of money if the mill's worth is money
  double bf_of_these = 0;   ///< gained or lost on what was cut of these logs
  double bf_a_year = 0;     ///< gained or lost
  double money_a_year = 0;  ///< gained or lost; 0 when the year's money is not known
  double recovery_points =
      0;  ///< lumber as cut in percent of the logs, against that of the mills as they are
};
/// The same of the logs whose small end is in one class: a change can be worth much in small logs and little in large ones.
struct WhatIfClass {
  Fine least = 0;  ///< small end from here to under the next class
  std::size_t logs = 0;
  LogYield now;
  std::vector<double> gain_percent;  ///< of each change, as WhatIf::gain_percent
};
struct WhatIfTable {
  LogYield now;
  std::vector<WhatIf> changes;
  std::vector<WhatIfClass> classes;  ///< the smallest first; only those with logs
};
/// Nothing comes out of the logs as the mills are: gains are 0. Classes begin at whole multiples of `class_step`, over 0. The
/// expected yield of each log is asked of a model of its mill, so a table takes as long as there are changes, and one. Throws
/// std::invalid_argument of a change that has not as many mills.
WhatIfTable what_if(const std::vector<MillLogs>& mills, const std::vector<MillChange>& changes,
                    const MillYear& year, Fine class_step = 3 * kFineInch, unsigned threads = 2);

}  // namespace kerfbook::tuning
