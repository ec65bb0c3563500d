// itemise.cpp -- what the facts of a job call for: each fact under the price or the charges that hold for it.
#include <map>

#include "billing/sheet_items.h"
#include "book/log_spec.h"

namespace kerfbook::billing {

namespace {

// 1 ft = 0.3048 m exactly (international yard and pound agreement, 1959).
const Rational kCubicMetresPerCubicFoot =
    Rational(3048 * 3048, 1) * Rational(3048, 1) / Rational(1'000'000'000'000, 1);
}  // namespace

Question SheetItems::question(const Fact& fact) const {
  Question asked{job_.job,     job_.customer, fact.species,  fact.grade,
                 std::nullopt, std::nullopt,  fact.sheet.day};
  const bool pieces = fact.kind == FactKind::pieces || fact.kind == FactKind::sold;
  if (pieces || fact.kind == FactKind::lineal) asked.size = fact.size;
  if (pieces) asked.length = fact.length;
  const Agreement* agreement = find_agreement(terms_, job_.job);
  if (agreement != nullptr && agreement->agreed) asked.day = *agreement->agreed;
  return asked;
}

void SheetItems::problem(const Fact& fact, const std::string& what) {
  const std::string where =
      fact.kind == FactKind::once ? "job " + job_.job : write_day(fact.sheet.day) + ", job " + job_.job;
  const std::string sentence = where + ": " + what;
  if (!one_of(out_.problems, sentence)) out_.problems.push_back(sentence);
}

Item SheetItems::item(const Fact& fact, Role role) const {
  Item item;
  item.sheet = fact.sheet;
  item.role = role;
  item.key = key_of(fact);
  item.words = words_of(fact);
  item.size_line = fact.species + "\n" + fact.grade + "\n" + item.words;
  item.count = fact.count;
  item.pieces = fact.kind == FactKind::pieces || fact.kind == FactKind::sold ? fact.count : 0;
  return item;
}

void SheetItems::price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit,
                            int places) {
  Item made = item(fact, Role::price);
  made.quantity = quantity;
  made.rate.title = price_title(price);
  made.rate.unit = std::move(unit);
  made.rate.rate = price.rate;
  made.rate.places = places;
  made.rate.sawing = true;
  made.rate.tax = price.tax;
  made.rate.order = price.line;
  if (price.basis == Basis::mbf || price.basis == Basis::log_mbf) made.rate.per = 1000;
  const measure::Convention by = joined(job_.convention, price.count);
  if (price.basis == Basis::bf || price.basis == Basis::mbf) {
    made.rate.counted = in_words(by);
    made.rate.each_line = each_line(by.rounding);
  }
  if (price.basis == Basis::m3_sawn)
    made.rate.counted =
        "nominal thickness and width, lengths as written; exact to the total, which is rounded to "
        "thousandths of a cubic metre";
  if (price.basis == Basis::m3_log)
    made.rate.counted = "content of the logs sawn, worked out from their measured ends and lengths";
  out_.items.push_back(std::move(made));
}

measure::Pieces pieces_of(const Fact& fact) {
  const bool lineal = fact.kind == FactKind::lineal;  // then the count is of length
  return {fact.size, lineal ? Length{1, fact.length.system} : fact.length, fact.count};
}

void SheetItems::lumber(const Fact& fact) {
  const Choice chosen = choose_price(terms_, question(fact));
  if (chosen.price == nullptr) {
    problem(fact, "no price fits " + words_of(fact) + (fact.species.empty() ? "" : " " + fact.species) +
                      "; add a [[price]] that does (rate = 0 when it is for nothing)");
    return;
  }
  by_price(fact, *chosen.price);
}

void SheetItems::by_price(const Fact& fact, const Price& price) {
  const bool lineal = fact.kind == FactKind::lineal;
  const measure::Pieces pieces = pieces_of(fact);
  const measure::Convention by = joined(job_.convention, price.count);
  measure::Convention exact = by;
  if (lineal) {
    exact.length = measure::LengthRule::as_written;
    exact.width = measure::WidthRule::as_cut;
  }
  switch (price.basis) {
    case Basis::bf:
    case Basis::mbf: {
      const bool thousand = price.basis == Basis::mbf;
      price_item(fact, price, counted_bf(pieces, exact), thousand ? "MBF" : "bf",
                 whole_feet(by.rounding) ? 0 : 2);
      return;
    }
    case Basis::m3_sawn:
      price_item(fact, price, cubic_metres(volume(pieces.size, pieces.length, pieces.count)), "m3", 3);
      return;
    case Basis::lineal_foot:
      price_item(fact, price, lineal_feet(pieces), "lineal ft", 2);
      return;
    case Basis::piece:
      if (lineal)
        problem(fact, words_of(fact) + " was counted in lineal feet, its price is by the piece");
      else
        price_item(fact, price, Rational(fact.count), "pc", 0);
      return;
    case Basis::shares: {
      Item share = item(fact, Role::share);
      share.quantity = counted_bf(pieces, exact);
      share.fact = fact;
      out_.items.push_back(std::move(share));
      return;
    }
    default:
      return;  // the work is paid for by its logs or its hours
  }
}

/// A sale is a line of its own for each size, at the price agreed on the spot or the price list's.
void SheetItems::sold(const Fact& fact) {
  Price price;
  price.sells = true;
  price.tax = "lumber";
  price.name = "Lumber";
  if (fact.agreed) {
    price.rate = *fact.agreed;
  } else {
    const Choice chosen = choose_price(terms_, question(fact), true);
    if (chosen.price == nullptr) {
      problem(fact, "no price with `sells = true` fits " + words_of(fact) +
                        "; add one, or write `at PRICE` on the sheet's line");
      return;
    }
    price = *chosen.price;
  }
  by_price(fact, price);
  Item& made = out_.items.back();
  made.role = Role::rated;
  made.rate.sawing = false;
}

namespace {

bool counts_logs(Basis basis) {
  return basis == Basis::log_scale || basis == Basis::log_mbf || basis == Basis::log ||
         basis == Basis::m3_log;
}

const scaling::Practice* practice_named(const JobTerms& job, const std::string& name,
                                        std::optional<scaling::Practice>& found) {
  if (name.empty()) return &job.practice;
  for (const scaling::Practice& one : job.practices)
    if (same_word(one.name, name)) return &one;
  found = scaling::find_practice(name);
  return found ? &*found : nullptr;
}

scaling::LogMeasure at_least(scaling::LogMeasure log, const std::optional<MinimumLog>& minimum) {
  if (!minimum) return log;
  for (Length& reading : log.small)
    if (in_inches(reading) < in_inches(minimum->diameter)) reading = minimum->diameter;
  if (in_inches(log.length) < in_inches(minimum->length)) log.length = minimum->length;
  return log;
}

}  // namespace

void SheetItems::log(const Fact& fact) {
  const Choice chosen = choose_price(terms_, question(fact));
  if (chosen.price == nullptr || !counts_logs(chosen.price->basis)) return;
  const Price& price = *chosen.price;
  if (price.basis == Basis::log) {
    price_item(fact, price, Rational(1), "logs", 0);
    return;
  }
  if (!fact.measured) {
    problem(fact, words_of(fact) + " was not measured and its price is by what it measures");
    return;
  }
  if (price.basis == Basis::m3_log) {
    price_item(fact, price, Rational(fact.content, 1'000'000) * kCubicMetresPerCubicFoot, "m3", 3);
    return;
  }
  std::optional<scaling::Practice> found;
  const scaling::Practice* practice = practice_named(job_, price.rule, found);
  if (practice == nullptr) {
    problem(fact, "the price at line " + std::to_string(price.line) + " names the log rule `" + price.rule +
                      "`, which is not known");
    return;
  }
  const auto scaled =
      book::scaled({at_least(fact.log, price.minimum_log), fact.defects}, *practice, job_.system);
  if (!scaled) {
    problem(fact, words_of(fact) + " cannot be scaled by " + practice->name + " from what was measured");
    return;
  }
  const bool whole = whole_feet(joined(job_.convention, price.count).rounding);
  const std::string unit(scaling::unit_word(scaled->unit));
  price_item(fact, price, Rational(scaled->net, scaling::kPerUnit),
             price.basis == Basis::log_mbf ? "MBF scale" : unit + " scale", whole ? 0 : 2);
  out_.items.back().rate.counted = "net log scale by " + practice->name;
}

void SheetItems::sawing(const Fact& fact, bool first_of_day) {
  const Choice chosen = choose_price(terms_, question(fact));
  if (chosen.price == nullptr) return;  // the lumber says so too, with its size
  if (chosen.price->basis == Basis::hour) price_item(fact, *chosen.price, Rational(fact.count, 60), "h", 2);
  if (chosen.price->basis == Basis::day && first_of_day) {
    price_item(fact, *chosen.price, Rational(1), "days", 2);
    out_.items.back().count = 1;
  }
}

void SheetItems::add(const std::vector<const Fact*>& facts, bool first_of_day) {
  written_.clear();
  for (const Fact* fact : facts)
    if (fact->kind == FactKind::charge) written_.insert(lower(fact->name));
  for (const Fact* fact : facts) {
    switch (fact->kind) {
      case FactKind::pieces:
      case FactKind::lineal:
        lumber(*fact);
        surcharges(*fact);
        break;
      case FactKind::log:
        log(*fact);
        surcharges(*fact);
        break;
      case FactKind::sawing:
        sawing(*fact, first_of_day);
        break;
      case FactKind::stop:
        stop(*fact);
        break;
      case FactKind::charge:
        charge_line(*fact);
        break;
      case FactKind::move:
        move(*fact);
        break;
      case FactKind::once:
        once(*fact);
        break;
      case FactKind::sold:
        sold(*fact);
        break;
      case FactKind::teeth:
        break;
    }
  }
  strikes(facts);
}

std::string identity(const Item& item) {
  return std::to_string(static_cast<int>(item.role)) + "\n" + lower(item.charge) + "\n" + item.key;
}

Itemised itemise(const Terms& terms, const JobTerms& job, const std::vector<Fact>& facts,
                 const std::vector<Waiver>& waivers) {
  Itemised out;
  std::map<std::pair<Day, int>, std::vector<const Fact*>> sheets;
  for (const Fact& fact : facts) sheets[{fact.sheet.day, fact.sheet.shift}].push_back(&fact);
  SheetItems work(terms, job, waivers, out);
  std::optional<Day> day_before;
  for (const auto& [sheet, own] : sheets) {
    const bool sawn =
        std::any_of(own.begin(), own.end(), [](const Fact* f) { return f->kind == FactKind::sawing; });
    work.add(own, sawn && day_before != sheet.first);
    if (sawn) day_before = sheet.first;
  }
  return out;
}

}  // namespace kerfbook::billing
