// unpaid_work.cpp -- work that no price pays for, or two do, because what it is priced by was not written down.
#include <map>

#include "price/sheet_items.h"

namespace kerfbook::billing {

namespace {

bool by_log(const Price* price) {
  return price != nullptr && (price->basis == Basis::log_scale || price->basis == Basis::log_mbf ||
                              price->basis == Basis::log || price->basis == Basis::m3_log);
}
bool by_time(const Price* price) {
  return price != nullptr && price->basis == Basis::hour;
}

/// What the lumber and the logs of one species on a sheet go by.
struct Seen {
  bool lumber_by_log = false;
  bool lumber_by_lumber = false;
  bool logs_by_log = false;
};

}  // namespace

void SheetItems::overlooked(const std::vector<const Fact*>& facts) {
  std::map<std::string, Seen> species;
  bool time_wanted = false;
  bool time_there = false;
  for (const Fact* fact : facts) {
    const bool log = fact->kind == FactKind::log;
    if (fact->kind == FactKind::sawing) time_there = true;
    if (!log && fact->kind != FactKind::pieces && fact->kind != FactKind::lineal) continue;
    const Price* price = find_price(terms_, question(*fact));
    Seen& seen = species[fact->species];
    if (log) {
      seen.logs_by_log = seen.logs_by_log || by_log(price);
      continue;
    }
    time_wanted = time_wanted || by_time(price);
    if (by_log(price))
      seen.lumber_by_log = true;
    else if (price != nullptr && !by_time(price) && price->basis != Basis::day)
      seen.lumber_by_lumber = true;
  }
  const auto remark = [&](const std::string& what) {
    out_.remarks.push_back({facts.front()->sheet, where(*facts.front()) + ": " + what});
  };
  if (time_wanted && !time_there)
    remark("sawing is priced by the hour and the sheet has no sawing time under it, so nothing is charged");
  for (const auto& [name, seen] : species) {
    const std::string of = name.empty() ? "" : " of " + name;
    if (seen.lumber_by_log && !seen.logs_by_log)
      remark("lumber" + of + " is priced by its logs and the sheet has no log" + of +
             ", so nothing is charged for it here");
    if (seen.lumber_by_lumber && seen.logs_by_log)
      remark("both the lumber and the logs" + of + " are charged");
  }
}

}  // namespace kerfbook::billing
