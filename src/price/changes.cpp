#include "price/changes.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

/// `part` of a stack's last item: so many of its count, the quantity in proportion.
Item taken(const Stack& stack, std::int64_t count, const SheetRef& sheet) {
  Item item = *stack.items.back();
  const Item& whole = *stack.items.back();
  item.sheet = sheet;
  item.quantity = whole.count == 0 ? Rational(0) : whole.quantity * Rational(count, whole.count);
  item.count = count;
  if (whole.pieces != 0) item.pieces = count;
  if (item.fact) item.fact->count = count;
  return item;
}

/// A stack parted by the rates its items were billed at.
std::vector<Stack> by_rates(const Stack& whole) {
  std::vector<Stack> parts;
  for (const Item* item : whole.items) {
    const auto at = std::find_if(parts.begin(), parts.end(),
                                 [&](const Stack& one) { return one.items.front()->rate == item->rate; });
    (at == parts.end() ? parts.emplace_back() : *at).add(*item);
  }
  return parts;
}

/// Takes back what was billed, but at the rate to keep.
void take_back(const Stack& billed, const Rate* keep, const SheetRef& sheet, std::vector<Item>& all) {
  for (const Stack& part : by_rates(billed))
    if (part.count != 0 && (keep == nullptr || !(part.items.front()->rate == *keep)))
      all.push_back(taken(part, -part.count, sheet));
}

/// So that of one thing all stands at the rate of now, and nothing at any other.
void set_right(const Stack& now, const Stack& billed, const SheetRef& sheet, std::vector<Item>& all) {
  const Rate& rate = now.items.back()->rate;
  std::int64_t at_rate = 0;
  for (const Stack& part : by_rates(billed))
    if (part.items.front()->rate == rate) at_rate = part.count;
  if (at_rate == 0)
    for (const Item* item : now.items) all.push_back(*item);
  else if (at_rate != now.count)
    all.push_back(taken(now, now.count - at_rate, sheet));
  take_back(billed, &rate, sheet, all);
}

/// How a corrected sheet differs from what was billed of it. `anew`: what a cancelled paper billed is billed again, at
/// the rates of now; what other papers changed of it they changed at theirs.
std::vector<Item> differences(const Stacks& now, const Stacks& billed, const SheetRef& sheet, bool anew) {
  std::vector<Item> all;
  for (const auto& [what, stack] : now) {
    const auto old = billed.find(what);
    if (old == billed.end()) {
      for (const Item* item : stack.items) all.push_back(*item);
    } else if (anew) {
      set_right(stack, old->second, sheet, all);
    } else if (old->second.count != stack.count) {
      // What was billed once keeps its rate: the difference is of the same thing.
      const Stack& rated = old->second.items.back()->count != 0 ? old->second : stack;
      all.push_back(taken(rated, stack.count - old->second.count, sheet));
    }
  }
  for (const auto& [what, stack] : billed) {
    if (now.count(what) == 0) take_back(stack, nullptr, sheet, all);
  }
  return all;
}

/// One thing taken back under the name it was billed by and asked for again under another, at one rate, is no difference.
void drop_even(std::vector<Item>& all) {
  const auto undone = [](const Item& a, const Item& b) {
    return a.role != Role::share && a.role == b.role && a.charge == b.charge && a.rate == b.rate &&
           a.size_line == b.size_line && a.waived == b.waived && a.unpriced == b.unpriced &&
           a.count + b.count == 0 && (a.quantity + b.quantity).is_zero();
  };
  for (std::size_t i = 0; i < all.size();) {
    const auto from = all.begin() + static_cast<std::ptrdiff_t>(i);
    const auto other = std::find_if(from + 1, all.end(), [&](const Item& one) { return undone(*from, one); });
    if (other == all.end()) {
      ++i;
    } else {
      all.erase(other);
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
}

/// Empty for anything that is no log, and for a log without a tag.
std::string tag_of(const Item& item) {
  if (!item.key.starts_with("log\n")) return {};
  const std::size_t tag = item.key.find('\n', 4) + 1;  // log, species, tag
  return tag == 0 ? std::string() : lower(item.key.substr(tag, item.key.find('\n', tag) - tag));
}

bool is_of_the_day(const Item& item) {
  return item.role == Role::price && item.rate.unit == "days";
}

/// What of a sheet that stands as it was billed may have changed with another sheet: a log that was measured on the day it
/// was received; and the day itself, when another sheet of it was corrected.
struct Hanging {
  Stacks now;
  Stacks billed;
};
Hanging hanging(const Stacks& now, const Stacks& billed, bool day_corrected) {
  Hanging some;
  std::set<std::string> gone;  // tags of logs that are not what they were
  for (const auto& [what, stack] : billed) {
    const Item& item = *stack.items.front();
    const std::string tag = tag_of(item);
    if (!tag.empty() && now.count(what) == 0) gone.insert(tag);
    if (!tag.empty() || (day_corrected && is_of_the_day(item))) some.billed.emplace(what, stack);
  }
  for (const auto& [what, stack] : now) {
    const Item& item = *stack.items.front();
    if (item.hangs || some.billed.count(what) != 0 || gone.count(tag_of(item)) != 0 ||
        (day_corrected && is_of_the_day(item)))
      some.now.emplace(what, stack);
  }
  return some;
}

/// Days of which a billed sheet was corrected since.
std::set<Day> corrected_days(const Frozen& before, const Sheets& now) {
  std::set<Day> days;
  for (const auto& [key, revision] : before.revision) {
    const auto at = now.find(key);
    if (at != now.end() && at->second.revision != revision) days.insert(key.first);
  }
  return days;
}

/// Why the sheet is no longer as it was billed, as far as it concerns the job.
std::string why_since(const JobFacts& now, const SheetRef& sheet, int billed) {
  const auto at = now.reasons.find(key_of(sheet));
  if (at == now.reasons.end()) return sheet.why;
  std::vector<std::string> all;
  for (const Reason& one : at->second)
    if (one.revision > billed && std::find(all.begin(), all.end(), one.why) == all.end())
      all.push_back(one.why);
  return join(all, "; ");
}

}  // namespace

Frozen frozen(const std::vector<Billed>& before, bool division) {
  Frozen all;
  for (const Billed& paper : before) {
    if (paper.division != division) continue;
    if (paper.cancelled) {
      for (const SheetRef& sheet : paper.sheets) all.reopened.insert(key_of(sheet));
      continue;
    }
    for (const SheetRef& sheet : paper.sheets) {
      int& newest = all.revision[key_of(sheet)];
      newest = std::max(newest, sheet.revision);
      all.by.emplace(key_of(sheet), paper.by);
    }
    for (const Item& item : paper.items) all.items[key_of(item.sheet)][identity(item)].add(item);
  }
  return all;
}

Sorted sort_out(const std::vector<Item>& items, const JobFacts& now, const Frozen& before, Draft& draft) {
  std::map<SheetKey, Stacks> current;
  Sorted sorted;
  std::map<SheetKey, SheetRef> fresh;
  for (const Fact& fact : now.facts)
    if (before.revision.count(key_of(fact.sheet)) == 0) fresh.emplace(key_of(fact.sheet), fact.sheet);
  for (const Item& item : items) {
    if (before.revision.count(key_of(item.sheet)) == 0)
      sorted.fresh.push_back(item);
    else
      current[key_of(item.sheet)][identity(item)].add(item);
  }
  for (const auto& [key, sheet] : fresh) draft.sheets.push_back(sheet);
  static const Stacks kNone;
  const std::set<Day> corrected = corrected_days(before, *now.sheets);
  for (const auto& [key, revision] : before.revision) {
    const auto at = now.sheets->find(key);
    if (at == now.sheets->end()) continue;
    SheetRef sheet = at->second;
    sheet.why = why_since(now, sheet, revision);
    const bool as_billed = revision == sheet.revision;
    const bool reopened = before.reopened.count(key) != 0;
    const auto items_now = current.find(key);
    const auto items_then = before.items.find(key);
    const Stacks& all_now = items_now == current.end() ? kNone : items_now->second;
    const Stacks& all_then = items_then == before.items.end() ? kNone : items_then->second;
    const bool by_others = as_billed && !reopened;
    const Hanging hang =
        by_others ? hanging(all_now, all_then, corrected.count(key.first) != 0) : Hanging{all_now, all_then};
    std::vector<Item> found = differences(hang.now, hang.billed, sheet, reopened);
    drop_even(found);
    if (as_billed && found.empty()) continue;
    for (Item& item : found) item.sheet = sheet;
    draft.sheets.push_back(sheet);
    draft.corrected.emplace(key, revision);
    std::vector<Item>& to = by_others ? sorted.hung : as_billed ? sorted.again : sorted.adjusted;
    std::move(found.begin(), found.end(), std::back_inserter(to));
  }
  return sorted;
}

}  // namespace kerfbook::billing
