// draft.cpp -- what is not billed yet, as lines: new sheets whole, corrected sheets as their difference.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"
#include "price/bill.h"
#include "price/changes.h"
#include "price/price.h"

namespace kerfbook::billing {

namespace {

BillLine line_of(const Rate& rate, const std::vector<const Item*>& items, int money_places) {
  BillLine line;
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

void fresh_lines(const std::vector<Item>& fresh, int money_places, std::vector<BillLine>& lines) {
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
    BillLine line = line_of(item->rate, {item}, money_places);
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
                      std::vector<BillLine>& lines) {
  std::map<SheetKey, Groups> sheets;
  for (const Item& item : adjusted)
    if (item.role != Role::share && item.waived.empty())
      sheets[key_of(item.sheet)][item.rate].push_back(&item);
  for (const auto& [sheet, groups] : sheets) {
    for (const auto& [rate, items] : groups) {
      BillLine line = line_of(rate, items, money_places);
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
  BillLine line;
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
    BillLine line;
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

  for (const BillLine& line : draft.lines) {
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

Rational quantity_of(const BillLine& line) {
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
    for (const BillLine& line : draft.lines)
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
