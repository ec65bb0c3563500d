// changes.h -- what the sheets say now against what earlier papers froze of them: what is new, what was corrected, what
// another sheet's correction changed, what a cancelled invoice leaves open. Its lines are made in draft.cpp.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "price/bill.h"

namespace kerfbook::billing {

/// Items of one identity on one sheet, added up.
struct Stack {
  std::vector<const Item*> items;
  std::int64_t count = 0;
  void add(const Item& item) {
    items.push_back(&item);
    count += item.count;
  }
};
using Stacks = std::map<std::string, Stack>;

/// What earlier papers of this kind froze.
struct Frozen {
  std::set<SheetKey> reopened;  ///< of a cancelled paper: what is left billed of them must be looked at anew
  std::map<SheetKey, int> revision;  ///< the newest revision billed
  std::map<SheetKey, Stacks> items;
  std::map<SheetKey, std::shared_ptr<const Priced>> by;  ///< of the first paper that bills the sheet
};

/// `division`: of the papers that divide lumber, else of those that ask for money.
Frozen frozen(const std::vector<Billed>& before, bool division);

struct Sorted {
  std::vector<Item> fresh;     ///< of sheets not billed before
  std::vector<Item> adjusted;  ///< differences of sheets billed before
  std::vector<Item> hung;      ///< differences of sheets that stand as billed, by another sheet's correction
  std::vector<Item> again;  ///< the same, where the sheet did not change but an invoice on it was cancelled
};

/// The items not billed yet; the sheets they stand on, and those corrected, go on the draft.
Sorted sort_out(const std::vector<Item>& items, const JobFacts& now, const Frozen& before, Draft& draft);

}  // namespace kerfbook::billing
