// draft.cpp -- what is not billed yet, as lines: new sheets whole, corrected sheets as their difference.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"
#include "billing/bill.h"
#include "billing/price.h"

namespace kerfbook::billing {

namespace {

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

struct Sorted {
  std::vector<Item> fresh;     ///< of sheets not billed before
  std::vector<Item> adjusted;  ///< differences of sheets billed before
  std::vector<Item> hung;      ///< differences of sheets that stand as billed, by another sheet's correction
  std::vector<Item> again;  ///< the same, where the sheet did not change but an invoice on it was cancelled
};

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

Line line_of(const Rate& rate, const std::vector<const Item*>& items, int money_places) {
  Line line;
  const Sum sum = price_items(rate, items, money_places);
  line.kind = rate.sawing ? LineKind::sawing : LineKind::charge;
  line.title = rate.title;
  line.description = rate.title;
  line.quantity = sum.quantity;
  line.timed = rate.per == kMinutesPerHour;
  line.unit = rate.unit;
  line.rate = rate.rate;
  line.amount = sum.amount;
  line.tax = rate.tax;
  line.counted = rate.counted;
  line.sawing = rate.sawing;
  for (const Item* item : items) line.pieces += item->pieces;
  return line;
}

bool by_rate(const Rate& a, const Rate& b) {
  return std::tie(a.order, a.title, a.unit, a.rate, a.places, a.per, a.each_line, a.counted, a.tax) <
         std::tie(b.order, b.title, b.unit, b.rate, b.places, b.per, b.each_line, b.counted, b.tax);
}
struct ByRate {
  bool operator()(const Rate& a, const Rate& b) const { return by_rate(a, b); }
};
using Groups = std::map<Rate, std::vector<const Item*>, ByRate>;

void fresh_lines(const std::vector<Item>& fresh, int money_places, std::vector<Line>& lines) {
  Groups summed;
  for (const Item& item : fresh)
    if ((item.role == Role::price || item.role == Role::surcharge) && item.waived.empty())
      summed[item.rate].push_back(&item);
  for (const auto& [rate, items] : summed) lines.push_back(line_of(rate, items, money_places));
  std::vector<const Item*> single;
  for (const Item& item : fresh)
    if (item.role == Role::flat || item.role == Role::rated ||
        (!item.waived.empty() && item.role != Role::share))
      single.push_back(&item);
  std::stable_sort(single.begin(), single.end(), [](const Item* a, const Item* b) {
    return std::tie(a->sheet.day, a->sheet.shift, a->rate.order) <
           std::tie(b->sheet.day, b->sheet.shift, b->rate.order);
  });
  for (const Item* item : single) {
    Line line = line_of(item->rate, {item}, money_places);
    if (!item->words.empty()) line.description += ": " + item->words;
    if (item->sheet.shift != 0) line.day = item->sheet.day;
    if (!item->waived.empty()) {
      line.kind = LineKind::waived;
      line.description += " (waived: " + item->waived + ")";
    } else if (item->unpriced) {
      line.kind = LineKind::unpriced;
      line.description += " (no price yet)";
    }
    if (item->unpriced) line.rate.reset();
    lines.push_back(std::move(line));
  }
}

std::string signed_count(std::int64_t count) {
  return (count > 0 ? "+" : "") + std::to_string(count);
}

void adjustment_lines(const std::vector<Item>& adjusted, const std::string& what, int money_places,
                      std::vector<Line>& lines) {
  std::map<SheetKey, Groups> sheets;
  for (const Item& item : adjusted)
    if (item.role != Role::share && item.waived.empty())
      sheets[key_of(item.sheet)][item.rate].push_back(&item);
  for (const auto& [sheet, groups] : sheets) {
    for (const auto& [rate, items] : groups) {
      Line line = line_of(rate, items, money_places);
      if (line.amount.minor == 0 && line.quantity.units == 0) continue;
      std::vector<std::string> changes;
      for (const Item* item : items)
        changes.push_back(item->pieces == 0 ? item->words : item->words + " " + signed_count(item->pieces));
      changes.erase(std::remove(changes.begin(), changes.end(), std::string()), changes.end());
      line.kind = LineKind::adjustment;
      line.day = sheet.first;
      const SheetRef& ref = items.front()->sheet;
      line.description = what + " of " + write_day(ref.day) +
                         (ref.shift > 1 ? " shift " + std::to_string(ref.shift) : "") +
                         (ref.why.empty() ? "" : " (" + ref.why + ")") + ": " + rate.title +
                         (changes.empty() ? "" : ": " + join(changes, ", "));
      lines.push_back(std::move(line));
    }
  }
}

void minimum_line(const std::optional<LeastSum>& least, const std::vector<Billed>& before, Draft& draft) {
  if (!least) return;
  Money sawing = draft.sawing;
  Money added;
  for (const Billed& paper : before) {
    if (paper.cancelled) continue;
    sawing = sawing + paper.sawing;
    added = added + paper.minimum;
  }
  const Money wanted = sawing < least->sum ? least->sum - sawing : Money{};
  if (wanted == added) return;
  Line line;
  line.kind = LineKind::minimum;
  line.title = "Minimum charge for the job";
  line.description = wanted < added ? "Minimum charge billed before, set against this work" : line.title;
  line.quantity = {1, 0};
  line.amount = wanted - added;
  line.tax = least->tax;
  draft.minimum = line.amount;
  draft.lines.push_back(std::move(line));
}

void percent_lines(const Terms& terms, const JobTerms& job, Day today, Draft& draft) {
  const Agreement* agreement = find_agreement(terms, job.job);
  const Day day = agreement != nullptr && agreement->agreed ? *agreement->agreed : today;
  const Question asked{job.job, job.customer, "", "", std::nullopt, std::nullopt, day};
  const Rational sawing(draft.sawing.minor);
  for (const ChargeTerm& charge : terms.charges) {
    if (charge.per != Per::percent || !charge.automatic || draft.sawing.minor == 0) continue;
    if (find_charge(terms, charge.name, asked) != &charge) continue;
    Line line;
    line.kind = LineKind::percent;
    line.title = charge.title;
    line.description = charge.title + " on sawing";
    line.quantity = shown(charge.rate, 2);
    line.unit = "%";
    line.amount = {(sawing * charge.rate / Rational(100)).rounded(0)};
    line.tax = charge.tax;
    draft.lines.push_back(std::move(line));
  }
}

/// A sheet that is billed as it stands, and of which nothing is on the draft, has nothing more to be said of it.
std::vector<std::string> still_said(const std::vector<Said>& all, const Frozen& before, const Draft& draft) {
  std::vector<std::string> some;
  for (const Said& one : all) {
    const auto billed = before.revision.find(key_of(one.sheet));
    const bool on_draft = std::any_of(draft.sheets.begin(), draft.sheets.end(),
                                      [&](const SheetRef& sheet) { return sheet.same_sheet(one.sheet); });
    const bool done = billed != before.revision.end() && billed->second == one.sheet.revision &&
                      before.reopened.count(key_of(one.sheet)) == 0 && !on_draft;
    if (!done) some.push_back(one.words);
  }
  return some;
}

void finish(Draft& draft) {
  for (const Item& item : draft.items)
    if (!item.note.empty()) draft.notes.push_back(item.note);

  for (const Line& line : draft.lines) {
    draft.subtotal = draft.subtotal + line.amount;
    const bool known =
        std::find(draft.counted.begin(), draft.counted.end(), line.counted) != draft.counted.end();
    if (!line.counted.empty() && !known) draft.counted.push_back(line.counted);
  }
  for (const SheetRef& sheet : draft.sheets) {
    if (sheet.shift == 0) continue;
    if (!draft.from || sheet.day < *draft.from) draft.from = sheet.day;
    if (!draft.to || sheet.day > *draft.to) draft.to = sheet.day;
  }
}

}  // namespace

namespace {

/// Each sheet at the prices it was billed by, if it was; at the terms of now, if not or if a paper on it was cancelled.
Itemised itemise_as_billed(const Terms& terms, const JobTerms& job, const std::vector<Fact>& facts,
                           const std::vector<Waiver>& waivers, const Frozen& before) {
  std::map<std::shared_ptr<const Priced>, std::vector<Fact>> by_prices;
  const bool changed =
      std::any_of(before.by.begin(), before.by.end(), [](const auto& one) { return one.second != nullptr; });
  if (!changed) return itemise(terms, job, facts, waivers);
  for (const Fact& fact : facts) {
    const auto at = before.by.find(key_of(fact.sheet));
    const bool as_billed = at != before.by.end() && before.reopened.count(key_of(fact.sheet)) == 0;
    by_prices[as_billed ? at->second : nullptr].push_back(fact);
  }
  Itemised all;
  const auto add = [](auto& to, auto& from) { std::move(from.begin(), from.end(), std::back_inserter(to)); };
  for (const auto& [by, some] : by_prices) {
    Itemised part = itemise(by ? *by->terms : terms, by ? by->job : job, some, waivers);
    add(all.items, part.items);
    add(all.problems, part.problems);
    add(all.remarks, part.remarks);
    if (part.minimum && (!all.minimum || all.minimum->sum < part.minimum->sum)) all.minimum = part.minimum;
  }
  return all;
}

}  // namespace

Rational quantity_of(const Line& line) {
  Rational quantity(line.quantity.units);
  for (int i = 0; i < line.quantity.places; ++i) quantity = quantity / Rational(10);
  return line.timed ? quantity / Rational(kMinutesPerHour) : quantity;
}

Sum price_items(const Rate& rate, const std::vector<const Item*>& items, int money_places) {
  std::map<std::string, Rational> parts;
  for (const Item* item : items) {
    const bool free = !item->waived.empty();
    Rational& part = parts[rate.each_line ? item->size_line : std::string()];
    part = part + (free ? Rational(0) : item->quantity);
  }
  std::int64_t units = 0;
  for (const auto& [line, quantity] : parts) units += shown(quantity, rate.places).units;
  std::int64_t scale = 1;
  for (int i = 0; i < rate.places; ++i) scale *= 10;
  int per_places = 0;
  for (std::int64_t per = rate.per == kMinutesPerHour ? 1 : rate.per; per > 1; per /= 10) ++per_places;
  const Rational quantity = Rational(units, scale) / Rational(rate.per);
  return {{units, rate.places + per_places}, measure::priced(quantity, rate.rate, money_places)};
}

Draft make_draft(const Terms& terms, const JobTerms& job, const JobFacts& now,
                 const std::vector<Billed>& before, const std::vector<Waiver>& waivers, Day today,
                 bool division) {
  Draft draft;
  draft.job = job.job;
  draft.customer = job.customer;
  const Frozen earlier = frozen(before, division);
  Itemised all = itemise_as_billed(terms, job, now.facts, waivers, earlier);
  std::erase_if(all.items, [&](const Item& item) { return (item.role == Role::share) != division; });
  Sorted sorted = sort_out(all.items, now, earlier, draft);
  draft.problems = still_said(all.problems, earlier, draft);
  if (!division) draft.remarks = still_said(all.remarks, earlier, draft);
  fresh_lines(sorted.fresh, job.money_places, draft.lines);
  adjustment_lines(sorted.adjusted, "Correction of the sheet", job.money_places, draft.lines);
  adjustment_lines(sorted.hung, "Correction of another sheet, which changes that", job.money_places,
                   draft.lines);
  adjustment_lines(sorted.again, "Billed again, its invoice being cancelled: sheet", job.money_places,
                   draft.lines);
  draft.items = std::move(sorted.fresh);
  std::move(sorted.adjusted.begin(), sorted.adjusted.end(), std::back_inserter(draft.items));
  std::move(sorted.hung.begin(), sorted.hung.end(), std::back_inserter(draft.items));
  std::move(sorted.again.begin(), sorted.again.end(), std::back_inserter(draft.items));
  if (!division) {
    for (const Line& line : draft.lines)
      if (line.sawing) draft.sawing = draft.sawing + line.amount;
    minimum_line(all.minimum, before, draft);
    percent_lines(terms, job, today, draft);
  }
  finish(draft);
  Taxed taxed = add_taxes(terms.taxes, draft.lines, job.certificate, today);
  draft.taxes = std::move(taxed.rows);
  draft.total = taxed.total;
  return draft;
}

}  // namespace kerfbook::billing
