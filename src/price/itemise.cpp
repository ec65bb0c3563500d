// itemise.cpp -- what the facts of a job call for: each fact under the price or the charges that hold for it.
#include <map>

#include "price/sheet_items.h"
#include "sheet/raw_log.h"

namespace kerfbook::billing {

Question SheetItems::question(const Fact& fact) const {
  Question asked{job_.job,     job_.customer, fact.species,  fact.grade,
                 std::nullopt, std::nullopt,  fact.sheet.day};
  const bool pieces = fact.kind == FactKind::pieces || fact.kind == FactKind::sold;
  if (pieces || fact.kind == FactKind::lineal) asked.size = fact.size;
  if (pieces && fact.length.count != 0) asked.length = fact.length;
  if (fact.kind == FactKind::log && fact.measured) {
    asked.length = fact.length;
    asked.diameter = book::mean_small_end(fact.log);
  }
  if (agreed_) asked.day = *agreed_;
  return asked;
}

std::string SheetItems::where(const Fact& fact) const {
  const std::string job = job_.job.empty() ? "sold to " + job_.customer : "job " + job_.job;
  return fact.kind == FactKind::once ? job : write_day(fact.sheet.day) + ", " + job;
}

void SheetItems::problem(const Fact& fact, const std::string& what) {
  Said said{fact.sheet, where(fact) + ": " + what};
  const bool known = std::any_of(out_.problems.begin(), out_.problems.end(),
                                 [&](const Said& one) { return one.words == said.words; });
  if (!known) out_.problems.push_back(std::move(said));
}

Item SheetItems::item(const Fact& fact, Role role) const {
  Item item;
  item.sheet = fact.sheet;
  item.role = role;
  item.key = key_of(fact);
  item.words = words_of(fact);
  item.size_line = fact.species + "\n" + fact.grade + "\n" + item.words;
  item.count = fact.count;
  item.hangs = fact.source_corrected;
  const bool pieces = fact.kind == FactKind::pieces || fact.kind == FactKind::sold;
  item.pieces = pieces && fact.length.count != 0 ? fact.count : 0;
  return item;
}

/// Everything but the unit, the places and what is said of the counting: one for all facts under the price.
const Rate& SheetItems::rate_of(const Price& price) {
  const auto known = rates_.find(price.line);
  if (known != rates_.end() && price.line != 0) return known->second;
  Rate rate;
  rate.title = price_title(price);
  rate.rate = price.rate;
  rate.sawing = true;
  rate.tax = price.tax;
  rate.order = price.line;
  if (price.basis == Basis::mbf || price.basis == Basis::log_mbf) rate.per = 1000;
  const measure::Convention by = joined(job_.convention, price.count);
  rate.each_line = each_line(by.rounding);
  rate.places = whole_feet(by.rounding) ? 0 : 2;
  switch (price.basis) {
    case Basis::bf:
    case Basis::mbf:
      rate.counted = in_words(by);
      break;
    case Basis::lineal_foot:
    case Basis::lineal_metre:
      rate.counted = in_words_of_length(by, price.basis == Basis::lineal_foot ? "foot" : "metre");
      break;
    case Basis::m3_sawn:
      rate.counted =
          "nominal thickness and width, lengths as written; only the total is rounded, to "
          "thousandths of a cubic metre";
      rate.places = 3;
      break;
    case Basis::m3_log:
      rate.counted =
          "volume of the logs sawn, inside bark, by their measured ends and lengths" + minimum_words(price);
      rate.places = 3;
      break;
    default:
      rate.each_line = false;
      break;
  }
  if (price.minimum_job && !price.own_lumber && (!out_.minimum || out_.minimum->sum < *price.minimum_job))
    out_.minimum = LeastSum{*price.minimum_job, price.tax};
  return rates_.insert_or_assign(price.line, std::move(rate)).first->second;
}

Item& SheetItems::price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit) {
  Item& made = out_.items.emplace_back(item(fact, Role::price));
  made.quantity = quantity;
  made.rate = rate_of(price);
  made.rate.unit = std::move(unit);
  return made;
}

measure::Pieces pieces_of(const Fact& fact) {
  // lineal feet, sawn or sold, are so many counts of length
  const bool lineal = fact.length.count == 0;
  return {fact.size, lineal ? Length{1, fact.length.system} : fact.length, fact.count};
}

measure::Convention counting(const Fact& fact, measure::Convention by) {
  if (fact.length.count == 0) {
    by.length = measure::LengthRule::as_written;
    by.width = measure::WidthRule::as_cut;
  }
  return by;
}

Rational lineal(const Fact& fact, const measure::Convention& by, bool metres) {
  measure::Pieces pieces = pieces_of(fact);
  pieces.length = counted_length(pieces.length, counting(fact, by));
  return metres ? in_metres(pieces.length) * Rational(pieces.count) : lineal_feet(pieces);
}

void SheetItems::lumber(const Fact& fact) {
  const Price* price = find_price(terms_, question(fact));
  if (price == nullptr) {
    problem(fact, "no price fits " + words_of(fact) + (fact.species.empty() ? "" : " " + fact.species) +
                      "; add a [[price]] that does (rate = 0 when it is for nothing)");
    return;
  }
  by_price(fact, *price);
}

void SheetItems::by_price(const Fact& fact, const Price& price) {
  const measure::Pieces pieces = pieces_of(fact);
  const measure::Convention by = counting(fact, joined(job_.convention, price.count));
  switch (price.basis) {
    case Basis::bf:
      price_item(fact, price, counted_bf(pieces, by), "bf");
      return;
    case Basis::mbf:
      price_item(fact, price, counted_bf(pieces, by), "MBF");
      return;
    case Basis::m3_sawn:
      price_item(fact, price, cubic_metres(volume(pieces.size, pieces.length, pieces.count)), "m3");
      return;
    case Basis::lineal_foot:
      price_item(fact, price, lineal(fact, by, false), "lineal ft");
      return;
    case Basis::lineal_metre:
      price_item(fact, price, lineal(fact, by, true), "lineal m");
      return;
    case Basis::piece:
      if (fact.length.count == 0)
        problem(fact, words_of(fact) + " was counted by its length, its price is by the piece");
      else
        price_item(fact, price, Rational(fact.count), "pc").rate.places = 0;
      return;
    case Basis::shares: {
      Item share = item(fact, Role::share);
      share.quantity = counted_bf(pieces, by);
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
  Price agreed;
  agreed.own_lumber = true;
  agreed.tax = "lumber";
  agreed.name = "Lumber";
  const Price* price = &agreed;
  if (fact.agreed) {
    agreed.rate = *fact.agreed;
    agreed.basis = fact.agreed_per == "piece" ? Basis::piece
                   : fact.agreed_per == "lf"  ? Basis::lineal_foot
                   : fact.agreed_per == "lm"  ? Basis::lineal_metre
                                              : Basis::bf;
  } else {
    price = find_price(terms_, question(fact), true);
  }
  if (price == nullptr) {
    problem(fact, "no price with 'own_lumber = true' fits " + words_of(fact) +
                      "; add one, or write 'at PRICE' on the sheet's line");
    return;
  }
  const std::size_t before = out_.items.size();
  by_price(fact, *price);
  for (std::size_t i = before; i < out_.items.size(); ++i) {
    out_.items[i].role = Role::rated;
    out_.items[i].rate.sawing = false;
  }
}

void SheetItems::bundle(const Fact& fact) {
  if (fact.text.empty()) {
    problem(fact, "bundle " + fact.name +
                      " has nothing in it: no own lumber was tallied under this tag, or all of it is sold");
    return;
  }
  Item& made = out_.items.emplace_back(item(fact, Role::rated));
  made.quantity = Rational(1);
  made.rate.title = "Lumber";
  made.rate.unit = "bundle";
  made.rate.rate = fact.agreed.value_or(Rational(0));
  made.rate.places = 0;
  made.rate.tax = "lumber";
}

void SheetItems::sawing(const Fact& fact) {
  const Price* price = find_price(terms_, question(fact));  // none: the lumber says so too, with its size
  if (price != nullptr && price->basis == Basis::hour)
    by_the_minute(price_item(fact, *price, Rational(fact.count), "h").rate);
}

/// The first sheet of a day on which the job was worked at bears the day.
void SheetItems::day(const SheetRef& sheet) {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::sawing;
  const Price* price = find_price(terms_, question(fact));
  if (price != nullptr && price->basis == Basis::day)
    price_item(fact, *price, Rational(1), "days").rate.places = 2;
}

bool is_work(const Fact& fact) {
  return fact.kind == FactKind::pieces || fact.kind == FactKind::lineal || fact.kind == FactKind::log ||
         fact.kind == FactKind::sawing;
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
        sawing(*fact);
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
      case FactKind::bundle:
        bundle(*fact);
        break;
      case FactKind::teeth:
        break;
    }
  }
  strikes(facts);
  if (first_of_day) day(facts.front()->sheet);
  overlooked(facts);
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
    const bool worked = std::any_of(own.begin(), own.end(), [](const Fact* f) { return is_work(*f); });
    work.add(own, worked && day_before != sheet.first);
    if (worked) day_before = sheet.first;
  }
  return out;
}

}  // namespace kerfbook::billing
