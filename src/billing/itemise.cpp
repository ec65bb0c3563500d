// itemise.cpp -- what the facts of a job call for: each fact under the price or the charges that hold for it.
#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "billing/bill.h"
#include "billing/price.h"

namespace kerfbook::billing {

namespace {

// 1 ft = 0.3048 m exactly (international yard and pound agreement, 1959).
const Rational kCubicMetresPerCubicFoot = Rational(3048 * 3048, 1) * Rational(3048, 1) / Rational(1'000'000'000'000, 1);
const Rational kKilometresPerMile = Rational(1'609'344, 1'000'000);

bool one_of(const std::vector<std::string>& words, const std::string& word) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& one) { return same_word(one, word); });
}

bool whole_feet(measure::BillRounding r) {
  return r == measure::BillRounding::total_whole || r == measure::BillRounding::line_whole;
}
bool each_line(measure::BillRounding r) {
  return r == measure::BillRounding::line_hundredths || r == measure::BillRounding::line_whole;
}

/// The facts of one sheet, worked through together: a charge line on it goes before what would come unasked.
class SheetItems {
 public:
  SheetItems(const Terms& terms, const JobTerms& job, const std::vector<Waiver>& waivers, Itemised& out)
      : terms_(terms), job_(job), waivers_(waivers), out_(out) {}

  void add(const std::vector<const Fact*>& facts, bool first_of_day);

 private:
  Question question(const Fact& fact) const;
  void lumber(const Fact& fact);
  void log(const Fact& fact);
  void sawing(const Fact& fact, bool first_of_day);
  void stop(const Fact& fact);
  void charge_line(const Fact& fact);
  void move(const Fact& fact);
  void strikes(const std::vector<const Fact*>& facts);
  void surcharges(const Fact& fact);
  void once(const Fact& fact);

  bool written(const std::string& charge) const { return written_.count(lower(charge)) != 0; }
  Item item(const Fact& fact, Role role) const;
  void price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit, int places);
  void charge_items(const Fact& fact, const ChargeTerm& charge, const Rational& times, const Rational& quantity,
                    const std::string& note);
  void push_charge(Item item, const ChargeTerm& charge);
  void problem(const Fact& fact, const std::string& what);
  std::vector<const ChargeTerm*> charges_for(const Fact& fact) const;

  const Terms& terms_;
  const JobTerms& job_;
  const std::vector<Waiver>& waivers_;
  Itemised& out_;
  std::set<std::string> written_;  ///< names of the sheet's charge lines, lower case
};

Question SheetItems::question(const Fact& fact) const {
  Question asked{job_.job, job_.customer, fact.species, fact.grade, std::nullopt, std::nullopt, fact.sheet.day};
  const bool lumber = fact.kind == FactKind::pieces || fact.kind == FactKind::lineal;
  if (lumber) asked.size = fact.size;
  if (fact.kind == FactKind::pieces) asked.length = fact.length;
  const Agreement* agreement = find_agreement(terms_, job_.job);
  if (agreement != nullptr && agreement->agreed) asked.day = *agreement->agreed;
  return asked;
}

void SheetItems::problem(const Fact& fact, const std::string& what) {
  const std::string where = fact.kind == FactKind::once ? "job " + job_.job : write_day(fact.sheet.day) + ", job " + job_.job;
  const std::string sentence = where + ": " + what;
  if (!one_of(out_.problems, sentence)) out_.problems.push_back(sentence);
}

/// Every charge that fits the fact, one of each name.
std::vector<const ChargeTerm*> SheetItems::charges_for(const Fact& fact) const {
  std::vector<const ChargeTerm*> found;
  const Question asked = question(fact);
  for (const ChargeTerm& one : terms_.charges) {
    const ChargeTerm* best = find_charge(terms_, one.name, asked);
    if (best != nullptr && std::find(found.begin(), found.end(), best) == found.end()) found.push_back(best);
  }
  return found;
}

Item SheetItems::item(const Fact& fact, Role role) const {
  Item item;
  item.sheet = fact.sheet;
  item.role = role;
  item.key = key_of(fact);
  item.words = words_of(fact);
  item.size_line = fact.species + "\n" + fact.grade + "\n" + item.words;
  item.count = fact.count;
  item.pieces = fact.kind == FactKind::pieces ? fact.count : 0;
  return item;
}

void SheetItems::price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit, int places) {
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
  out_.items.push_back(std::move(made));
}

void SheetItems::lumber(const Fact& fact) {
  const Choice chosen = choose_price(terms_, question(fact));
  if (chosen.price == nullptr) {
    problem(fact, "no price fits " + words_of(fact) + (fact.species.empty() ? "" : " " + fact.species) +
                      "; add a [[price]] that does, or `sawn for nothing` as rate = 0");
    return;
  }
  const Price& price = *chosen.price;
  const bool lineal = fact.kind == FactKind::lineal;
  // Lineal feet are one long piece as far as volume goes; their length is what was counted.
  const measure::Pieces pieces{fact.size, lineal ? Length{1, fact.length.system} : fact.length, fact.count};
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
      price_item(fact, price, counted_bf(pieces, exact), thousand ? "MBF" : "bf", whole_feet(by.rounding) ? 0 : 2);
      return;
    }
    case Basis::m3_sawn:
      price_item(fact, price, cubic_metres(volume(pieces.size, pieces.length, pieces.count)), "m3", 3);
      return;
    case Basis::lineal_foot: price_item(fact, price, lineal_feet(pieces), "lineal ft", 2); return;
    case Basis::piece:
      if (lineal) problem(fact, words_of(fact) + " was counted in lineal feet, its price is by the piece");
      else price_item(fact, price, Rational(fact.count), "pc", 0);
      return;
    case Basis::shares: {
      Item share = item(fact, Role::share);
      share.quantity = counted_bf(pieces, exact);
      share.fact = fact;
      out_.items.push_back(std::move(share));
      return;
    }
    default: return;  // the work is paid for by its logs or its hours
  }
}

bool counts_logs(Basis basis) {
  return basis == Basis::log_scale || basis == Basis::log_mbf || basis == Basis::log || basis == Basis::m3_log;
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
    problem(fact, "the price at line " + std::to_string(price.line) + " names the log rule `" + price.rule + "`, which is not known");
    return;
  }
  const auto scaled = scaling::scale(at_least(fact.log, price.minimum_log), fact.defects, *practice);
  if (!scaled) {
    problem(fact, words_of(fact) + ": " + scaled.slip().what);
    return;
  }
  const bool whole = whole_feet(joined(job_.convention, price.count).rounding);
  const std::string unit(scaling::unit_word(scaled->unit));
  price_item(fact, price, Rational(scaled->net, scaling::kPerUnit), price.basis == Basis::log_mbf ? "MBF scale" : unit + " scale",
             whole ? 0 : 2);
  out_.items.back().rate.counted = "net log scale by " + practice->name;
}

void SheetItems::sawing(const Fact& fact, bool first_of_day) {
  const Choice chosen = choose_price(terms_, question(fact));
  if (chosen.price == nullptr) return;  // the lumber says so too, with its size
  if (chosen.price->basis == Basis::hour)
    price_item(fact, *chosen.price, Rational(fact.count, 60), "h", 2);
  if (chosen.price->basis == Basis::day && first_of_day) {
    price_item(fact, *chosen.price, Rational(1), "days", 2);
    out_.items.back().count = 1;
  }
}

void SheetItems::push_charge(Item made, const ChargeTerm& charge) {
  for (const Waiver& waiver : waivers_) {
    const bool same = waiver.day == made.sheet.day && waiver.shift == made.sheet.shift;
    if (same && same_word(waiver.charge, charge.name)) made.waived = waiver.note;
  }
  out_.items.push_back(std::move(made));
}

std::string unit_of(Per per) {
  switch (per) {
    case Per::each: return "";
    case Per::hour: return "h";
    case Per::day: return "days";
    case Per::mile: return "mi";
    case Per::tooth: return "teeth";
    case Per::lineal_foot: return "lineal ft";
    case Per::mbf: return "MBF";
    case Per::piece: return "pc";
    case Per::log: return "logs";
    case Per::bundle: return "bundles";
    default: return std::string(word_of(per));
  }
}

void SheetItems::charge_items(const Fact& fact, const ChargeTerm& charge, const Rational& times,
                              const Rational& quantity, const std::string& note) {
  Item made = item(fact, Role::flat);
  made.charge = charge.name;
  made.words = note;
  made.rate.title = charge.title;
  made.rate.tax = charge.tax;
  made.rate.order = charge.line;
  if (!charge.flat.is_zero() && !times.is_zero()) {
    made.rate.rate = charge.flat;
    made.quantity = times;
    push_charge(made, charge);
  }
  Rational counted = quantity - (fact.kind == FactKind::once ? Rational(0) : charge.free);
  if (quantity < charge.free) counted = Rational(0);
  if (charge.rate.is_zero() || counted.is_zero()) return;
  made.role = Role::rated;
  made.rate.rate = charge.rate;
  made.rate.unit = unit_of(charge.per);
  made.quantity = counted;
  push_charge(std::move(made), charge);
}

std::string noted(const Fact& fact) {
  std::vector<std::string> parts;
  if (!fact.log_tag.empty()) parts.push_back("log " + fact.log_tag);
  if (!fact.text.empty()) parts.push_back(fact.text);
  return join(parts, ", ");
}

void SheetItems::stop(const Fact& fact) {
  bool found = false;
  for (const ChargeTerm* charge : charges_for(fact)) {
    if (charge->strike && same_word(fact.name, "metal")) found = true;  // strikes() charges it
    if (!one_of(charge->stop, fact.name)) continue;
    found = true;
    if (!fact.chargeable || written(charge->name)) continue;
    const Rational hours(fact.minutes, 60);
    charge_items(fact, *charge, 1, charge->per == Per::hour ? hours : Rational(1), noted(fact));
  }
  if (fact.chargeable && !found)
    problem(fact, "a stop for " + fact.name + " of " + write_duration(fact.minutes) +
                      " is marked `charge`, and no charge has stop = \"" + fact.name + "\"; add one, or waive it");
}

void SheetItems::charge_line(const Fact& fact) {
  const ChargeTerm* charge = find_charge(terms_, fact.name, question(fact));
  if (charge == nullptr) {
    std::vector<std::string> names;
    for (const ChargeTerm& one : terms_.charges) names.push_back(one.name);
    const std::string near = nearest(fact.name, names);
    problem(fact, "no [[charge]] is called `" + fact.name + "`" + (near.empty() ? "" : "; did you mean `" + near + "`?"));
    return;
  }
  if (charge->strike) {  // its teeth come from what was noted about teeth
    charge_items(fact, *charge, fact.quantity, 0, noted(fact));
    return;
  }
  // With a flat sum alone the quantity counts how often; with a rate it is how much of it.
  charge_items(fact, *charge, charge->rate.is_zero() ? fact.quantity : Rational(1), fact.quantity, noted(fact));
}

void SheetItems::move(const Fact& fact) {
  for (const ChargeTerm* charge : charges_for(fact)) {
    if (!charge->move || written(charge->name)) continue;
    Rational distance = fact.quantity;
    if (charge->per == Per::km && !fact.kilometres) distance = distance * kKilometresPerMile;
    if (charge->per == Per::mile && fact.kilometres) distance = distance / kKilometresPerMile;
    if (charge->per == Per::hour) distance = Rational(fact.minutes, 60);
    if (charge->per == Per::each) distance = 1;
    if (charge->round_trip) distance = distance * Rational(2);
    const std::string way = fact.name + " to " + fact.text + (charge->round_trip ? " and back" : "");
    charge_items(fact, *charge, 1, distance, way);
  }
}

bool is_strike(const Fact& fact) {
  return (fact.kind == FactKind::stop && same_word(fact.name, "metal")) ||
         (fact.kind == FactKind::teeth && same_word(fact.cause, "metal"));
}

/// A strike is noted by a charge line, by a stop for metal, or by teeth gone to metal in a log; it is charged once.
void SheetItems::strikes(const std::vector<const Fact*>& facts) {
  const bool stopped = std::any_of(facts.begin(), facts.end(), [](const Fact* f) {
    return f->kind == FactKind::stop && is_strike(*f);
  });
  std::set<std::string> logs;
  for (const Fact* fact : facts) {
    if (!is_strike(*fact)) continue;
    for (const ChargeTerm* charge : charges_for(*fact)) {
      if (!charge->strike) continue;
      const bool teeth = fact->kind == FactKind::teeth;
      const bool evidence = teeth ? !stopped && logs.insert(fact->log_tag).second : true;
      const Rational times = evidence && !written(charge->name) ? fact->count : 0;
      Rational quantity = teeth && charge->per == Per::tooth ? fact->quantity : Rational(0);
      if (!teeth && charge->per == Per::hour) quantity = Rational(fact->minutes, 60);
      charge_items(*fact, *charge, times, quantity, noted(*fact));
    }
  }
}

void SheetItems::surcharges(const Fact& fact) {
  for (const ChargeTerm* charge : charges_for(fact)) {
    if (!charge->unasked || charge->per == Per::percent || written(charge->name)) continue;
    const bool log = fact.kind == FactKind::log;
    if (log != (charge->per == Per::log)) continue;
    const bool lineal = fact.kind == FactKind::lineal;
    const measure::Pieces pieces{fact.size, lineal ? Length{1, fact.length.system} : fact.length, fact.count};
    Item made = item(fact, Role::surcharge);
    made.charge = charge->name;
    made.rate.title = charge->title;
    made.rate.unit = unit_of(charge->per);
    made.rate.rate = charge->rate;
    made.rate.tax = charge->tax;
    made.rate.order = charge->line;
    if (charge->per == Per::log || charge->per == Per::piece) {
      made.quantity = fact.count;
      made.rate.places = 0;
    } else if (charge->per == Per::lineal_foot) {
      made.quantity = lineal_feet(pieces);
    } else if (charge->per == Per::bf || charge->per == Per::mbf) {
      made.quantity = counted_bf(pieces, job_.convention);
      made.rate.per = charge->per == Per::mbf ? 1000 : 1;
      made.rate.places = whole_feet(job_.convention.rounding) ? 0 : 2;
      made.rate.each_line = each_line(job_.convention.rounding);
      made.rate.counted = in_words(job_.convention);
    } else {
      continue;
    }
    push_charge(std::move(made), *charge);
  }
}

void SheetItems::once(const Fact& fact) {
  for (const ChargeTerm* charge : charges_for(fact))
    if (charge->once) charge_items(fact, *charge, 1, 0, "");
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
      case FactKind::sawing: sawing(*fact, first_of_day); break;
      case FactKind::stop: stop(*fact); break;
      case FactKind::charge: charge_line(*fact); break;
      case FactKind::move: move(*fact); break;
      case FactKind::once: once(*fact); break;
      case FactKind::teeth: break;
    }
  }
  strikes(facts);
}

}  // namespace

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
    const bool sawn = std::any_of(own.begin(), own.end(), [](const Fact* f) { return f->kind == FactKind::sawing; });
    work.add(own, sawn && day_before != sheet.first);
    if (sawn) day_before = sheet.first;
  }
  return out;
}

}  // namespace kerfbook::billing
