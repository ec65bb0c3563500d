#include "tuning/what_if.h"

#include <algorithm>
#include <map>

namespace kerfbook::tuning {

namespace {

double recovery(const LogYield& yield) {
  return yield.log_in3 > 0 ? 100 * yield.lumber_in3 / yield.log_in3 : 0;
}

double gain_percent(const LogYield& now, const LogYield& then) {
  return now.worth > 0 ? 100 * (static_cast<double>(then.worth) / static_cast<double>(now.worth) - 1) : 0;
}

std::vector<WhatIfClass> classes_of(const std::vector<SawLog>& logs, const std::vector<LogYield>& now,
                                    const std::vector<std::vector<LogYield>>& changed, Fine step) {
  std::map<Fine, std::vector<std::size_t>> of_class;
  for (std::size_t i = 0; i < logs.size(); ++i) of_class[logs[i].small_end / step].push_back(i);
  std::vector<WhatIfClass> classes;
  for (const auto& [number, members] : of_class) {
    WhatIfClass one;
    one.least = number * step;
    one.logs = members.size();
    for (const auto i : members) one.now += now[i];
    for (const auto& yields : changed) {
      LogYield then;
      for (const auto i : members) then += yields[i];
      one.gain_percent.push_back(gain_percent(one.now, then));
    }
    classes.push_back(std::move(one));
  }
  return classes;
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
                    const std::vector<SawLog>& logs, const MillYear& year, Fine class_step,
                    unsigned threads) {
  WhatIfTable table;
  std::vector<std::vector<LogYield>> changed;
  const auto now = yields_of(model_for(mill, logs), logs, threads);
  table.now = sum_of(now);
  for (const auto& change : changes) {
    changed.push_back(yields_of(model_for(change.mill, logs), logs, threads));
    WhatIf made;
    made.name = change.name;
    made.yield = sum_of(changed.back());
    made.recovery_points = recovery(made.yield) - recovery(table.now);
    made.gain_percent = gain_percent(table.now, made.yield);
    made.money_a_year = made.gain_percent / 100 * year.money;
    if (table.now.bf_counts > 0) made.bf_a_year = (made.yield.bf() / table.now.bf() - 1) * year.bf;
    table.changes.push_back(std::move(made));
  }
  table.classes = classes_of(logs, now, changed, class_step);
  return table;
}

}  // namespace kerfbook::tuning
