#include "tuning/what_if.h"

#include <algorithm>
#include <map>
#include <stdexcept>

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

/// The yields of all logs, mill after mill. A mill without logs needs no model.
std::vector<LogYield> yields_by(const std::vector<SawMill>& as, const std::vector<MillLogs>& mills,
                                unsigned threads) {
  if (as.size() != mills.size())
    throw std::invalid_argument("a change of more or fewer mills than there are");
  std::vector<LogYield> all;
  for (std::size_t m = 0; m < mills.size(); ++m) {
    if (mills[m].logs.empty()) continue;
    const auto own = yields_of(model_for(as[m], mills[m].logs), mills[m].logs, threads);
    all.insert(all.end(), own.begin(), own.end());
  }
  return all;
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

std::optional<double> mean_price(const std::vector<Billed>& billed) {
  Billed all;
  for (const auto& one : billed) {
    all.amount += one.amount;
    all.bf += one.bf;
  }
  if (!(all.bf > 0)) return std::nullopt;
  return all.amount / all.bf;
}

WhatIfTable what_if(const std::vector<MillLogs>& mills, const std::vector<MillChange>& changes,
                    const MillYear& year, Fine class_step, unsigned threads) {
  WhatIfTable table;
  std::vector<SawMill> as_it_is;
  std::vector<SawLog> logs;
  for (const auto& one : mills) {
    as_it_is.push_back(one.mill);
    logs.insert(logs.end(), one.logs.begin(), one.logs.end());
  }
  std::vector<std::vector<LogYield>> changed;
  const auto now = yields_by(as_it_is, mills, threads);
  table.now = sum_of(now);
  for (const auto& change : changes) {
    changed.push_back(yields_by(change.mills, mills, threads));
    WhatIf made;
    made.name = change.name;
    made.yield = sum_of(changed.back());
    made.recovery_points = recovery(made.yield) - recovery(table.now);
    made.gain_percent = gain_percent(table.now, made.yield);
    made.money_a_year = made.gain_percent / 100 * year.money;
    if (table.now.bf_counts > 0) {
      const double more = made.yield.bf() / table.now.bf() - 1;
      made.bf_of_these = more * year.of_these;
      made.bf_a_year = more * year.bf;
    }
    table.changes.push_back(std::move(made));
  }
  table.classes = classes_of(logs, now, changed, class_step);
  return table;
}

}  // namespace kerfbook::tuning
