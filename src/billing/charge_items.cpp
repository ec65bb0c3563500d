// charge_items.cpp -- charges: what a sheet's charge lines, marked stops, moves and metal strikes call for, and what
// comes unasked with lumber, logs or the job itself.
#include "billing/sheet_items.h"

namespace kerfbook::billing {

namespace {

// 1 mile = 1,609.344 m exactly (international yard and pound agreement, 1959).
const Rational kKilometresPerMile = Rational(1'609'344, 1'000'000);

std::string unit_of(Per per) {
  switch (per) {
    case Per::each:
      return "";
    case Per::hour:
      return "h";
    case Per::day:
      return "days";
    case Per::mile:
      return "mi";
    case Per::tooth:
      return "teeth";
    case Per::lineal_foot:
      return "lineal ft";
    case Per::mbf:
      return "MBF";
    case Per::piece:
      return "pc";
    case Per::log:
      return "logs";
    case Per::bundle:
      return "bundles";
    default:
      return std::string(word_of(per));
  }
}

std::string noted(const Fact& fact) {
  std::vector<std::string> parts;
  if (!fact.log_tag.empty()) parts.push_back("log " + fact.log_tag);
  if (!fact.text.empty()) parts.push_back(fact.text);
  return join(parts, ", ");
}

bool is_strike(const Fact& fact) {
  return (fact.kind == FactKind::stop && same_word(fact.name, "metal")) ||
         (fact.kind == FactKind::teeth && same_word(fact.cause, "metal"));
}

}  // namespace

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

void SheetItems::push_charge(Item made, const ChargeTerm& charge) {
  for (const Waiver& waiver : waivers_) {
    const bool same = waiver.day == made.sheet.day && waiver.shift == made.sheet.shift;
    if (same && same_word(waiver.charge, charge.name)) made.waived = waiver.note;
  }
  out_.items.push_back(std::move(made));
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
                      " is marked 'charge', and no charge has stop = \"" + fact.name +
                      "\"; add one, or waive it");
}

void SheetItems::charge_line(const Fact& fact) {
  const ChargeTerm* charge = find_charge(terms_, fact.name, question(fact));
  if (charge == nullptr) {
    std::vector<std::string> names;
    for (const ChargeTerm& one : terms_.charges) names.push_back(one.name);
    const std::string near = nearest(fact.name, names);
    problem(fact, "no [[charge]] is called '" + fact.name + "'" +
                      (near.empty() ? "" : "; did you mean " + near + "?"));
    return;
  }
  if (charge->strike) {  // its teeth come from what was noted about teeth
    charge_items(fact, *charge, fact.quantity, 0, noted(fact));
    return;
  }
  // With a flat sum alone the quantity counts how often; with a rate it is how much of it.
  charge_items(fact, *charge, charge->rate.is_zero() ? fact.quantity : Rational(1), fact.quantity,
               noted(fact));
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

/// A strike is noted by a charge line, by a stop for metal, or by teeth gone to metal in a log; it is charged once.
void SheetItems::strikes(const std::vector<const Fact*>& facts) {
  const bool stopped = std::any_of(facts.begin(), facts.end(),
                                   [](const Fact* f) { return f->kind == FactKind::stop && is_strike(*f); });
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
    const measure::Pieces pieces = pieces_of(fact);
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

}  // namespace kerfbook::billing
