// what_if.h -- what one change at the mill would be worth on the mill's own logs: kerf, target, one more size.
#pragma once

#include <string>
#include <vector>

#include "tuning/log_yield.h"

namespace kerfbook::tuning {

/// A change, and the mill that has made it.
struct MillChange {
  std::string name;  ///< "kerf 1/32 in less"
  SawMill mill;
};
/// Both saws' kerf less by so much; never under 0.
SawMill with_less_kerf(SawMill mill, Fine less);
/// Every size cut so much thinner and so much narrower, counted as before. A target never goes under a step.
SawMill with_less_target(SawMill mill, Fine less_thick, Fine less_wide);
SawMill with_size(SawMill mill, SawProduct product);

/// What the mill makes of its logs in a year. The model's gain in percent is laid on what the mill did make, not on what
/// the model says it could: a mill that gets nine boards for the model's ten gains nine for its ten as well.
struct MillYear {
  double bf = 0;     ///< lumber
  double money = 0;  ///< what that was worth, in units of the currency; 0 = not known
};

struct WhatIf {
  std::string name;
  LogYield yield;              ///< of all the logs
  double gain_percent = 0;     ///< of board feet, or of money if the mill's worth is money
  double bf_a_year = 0;        ///< gained or lost
  double money_a_year = 0;     ///< gained or lost; 0 when the year's money is not known
  double recovery_points = 0;  ///< lumber as cut in percent of the logs, against that of the mill as it is
};
struct WhatIfTable {
  LogYield now;
  std::vector<WhatIf> changes;
};
/// Nothing comes out of the logs as the mill is: gains are 0. The expected yield of each log is asked of a model of each
/// mill, so a table takes as long as there are changes, and one.
WhatIfTable what_if(const SawMill& mill, const std::vector<MillChange>& changes,
                    const std::vector<SawLog>& logs, const MillYear& year, unsigned threads = 2);

}  // namespace kerfbook::tuning
