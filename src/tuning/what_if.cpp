#include "tuning/what_if.h"

#include <algorithm>

namespace kerfbook::tuning {

namespace {

double recovery(const LogYield& yield) {
  return yield.log_in3 > 0 ? 100 * yield.lumber_in3 / yield.log_in3 : 0;
}

/// A model for logs as large as these, and no larger, so that it is quickly made.
SawingModel model_for(const SawMill& mill, const std::vector<SawLog>& logs) {
  Fine most = kFineInch;
  for (const auto& log : logs) most = std::max({most, log.small_end, log.large_end});
  return SawingModel(mill, most);
}

}  // namespace

SawMill with_less_kerf(SawMill mill, Fine less) {
  mill.head_kerf = std::max<Fine>(0, mill.head_kerf - less);
  mill.edger_kerf = std::max<Fine>(0, mill.edger_kerf - less);
  return mill;
}

SawMill with_less_target(SawMill mill, Fine less_thick, Fine less_wide) {
  for (auto& product : mill.products) {
    product.thickness = std::max(mill.step, product.thickness - less_thick);
    product.width = std::max(mill.step, product.width - less_wide);
  }
  return mill;
}

SawMill with_size(SawMill mill, SawProduct product) {
  mill.products.push_back(std::move(product));
  return mill;
}

WhatIfTable what_if(const SawMill& mill, const std::vector<MillChange>& changes,
                    const std::vector<SawLog>& logs, const MillYear& year, unsigned threads) {
  WhatIfTable table;
  table.now = sum_of(yields_of(model_for(mill, logs), logs, threads));
  for (const auto& change : changes) {
    WhatIf made;
    made.name = change.name;
    made.yield = sum_of(yields_of(model_for(change.mill, logs), logs, threads));
    made.recovery_points = recovery(made.yield) - recovery(table.now);
    if (table.now.worth > 0) {
      const double gain = static_cast<double>(made.yield.worth) / static_cast<double>(table.now.worth) - 1;
      const double more_bf = table.now.bf_counts > 0 ? made.yield.bf() / table.now.bf() - 1 : 0;
      made.gain_percent = 100 * gain;
      made.bf_a_year = more_bf * year.bf;
      made.money_a_year = gain * year.money;
    }
    table.changes.push_back(std::move(made));
  }
  return table;
}

}  // namespace kerfbook::tuning
