// charge_items.cpp -- charges: what a sheet's charge lines, marked stops, moves and metal strikes call for, and what
// comes by itself with lumber, logs or the job itself.
#include "price/sheet_items.h"

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
    case Per::lineal_metre:
      return "lineal m";
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

/// Hours become whole minutes: a tenth of an hour typed by hand is 6 minutes.
void in_minutes(Item& item) {
  item.quantity = item.quantity * Rational(kMinutesPerHour);
  by_the_minute(item.rate);
}

bool is_strike(const Fact& fact) {
  return (fact.kind == FactKind::stop && same_word(fact.name, "metal")) ||
         (fact.kind == FactKind::teeth && same_word(fact.cause, "metal"));
}

}  // namespace

template <class Wanted>
std::vector<const ChargeTerm*> SheetItems::charges_for(const Fact& fact, Wanted&& wanted) const {
  std::vector<const ChargeTerm*> found;
  std::optional<Question> asked;
  for (const ChargeTerm& one : terms_.charges) {
    if (!wanted(one)) continue;
    if (!asked) asked = question(fact);
    if (find_charge(terms_, one.name, *asked) == &one) found.push_back(&one);
  }
  return found;
}

void SheetItems::take_waiver(Item& item, const std::string& charge) const {
  for (const Waiver& waiver : waivers_) {
    const bool same = waiver.day == item.sheet.day && waiver.shift == item.sheet.shift;
    if (same && same_word(waiver.charge, charge)) item.waived = waiver.note;
  }
}

void SheetItems::push_charge(Item made, const ChargeTerm& charge) {
  take_waiver(made, charge.name);
  out_.items.push_back(std::move(made));
}

void SheetItems::unpriced(const Fact& fact, const Rational& quantity, const std::string& unit,
                          const std::string& what) {
  Item made = item(fact, Role::rated);
  made.charge = fact.name;
  made.words = noted(fact);
  made.unpriced = true;
  made.quantity = quantity;
  made.rate.title = (fact.kind == FactKind::stop ? "Stop, " : "") + fact.name;
  made.rate.unit = unit;
  if (unit == "h") in_minutes(made);
  made.rate.tax = "service";
  take_waiver(made, fact.name);
  if (made.waived.empty()) problem(fact, what);
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
  const Rational counted = quantity < charge.free ? Rational(0) : quantity - charge.free;
  if (charge.rate.is_zero() || counted.is_zero()) return;
  made.role = Role::rated;
  made.rate.rate = charge.rate;
  made.rate.unit = unit_of(charge.per);
  made.quantity = counted;
  if (charge.per == Per::hour) in_minutes(made);
  push_charge(std::move(made), charge);
}

void SheetItems::stop(const Fact& fact) {
  bool found = false;
  const bool metal = same_word(fact.name, "metal");
  const auto wanted = [&](const ChargeTerm& one) {
    return (metal && one.strike) || one_of(one.stop, fact.name);
  };
  for (const ChargeTerm* charge : charges_for(fact, wanted)) {
    found = true;
    if (!one_of(charge->stop, fact.name)) continue;  // strikes() charges it
    if (!fact.chargeable || written(charge->name)) continue;
    const Rational hours(fact.minutes, 60);
    charge_items(fact, *charge, 1, charge->per == Per::hour ? hours : Rational(1), noted(fact));
  }
  if (fact.chargeable && !found)
    unpriced(fact, Rational(fact.minutes, 60), "h",
             "a stop for " + fact.name + " of " + write_duration(fact.minutes) +
                 " is marked 'charge', and no charge has stop = \"" + fact.name +
                 "\"; add one, or waive it: waive " + job_.job + " " + write_day(fact.sheet.day) + " " +
                 fact.name);
}

/// Why no charge of that name holds: there is none, or one that is for something else.
std::string SheetItems::no_such_charge(const Fact& fact) const {
  std::vector<std::string> names;
  for (const ChargeTerm& one : terms_.charges) {
    names.push_back(one.name);
    if (!same_word(one.name, fact.name)) continue;
    const std::string conditions = condition_words(one.when, false);
    return "the [[charge]] '" + one.name + "' is only for " + conditions +
           ", and a charge line says no such thing; write one without these conditions";
  }
  const std::string near = nearest(fact.name, names);
  return "no [[charge]] is called '" + fact.name + "'" +
         (near.empty() ? "; add one to the mill file" : "; did you mean '" + near + "'?");
}

void SheetItems::charge_line(const Fact& fact) {
  const ChargeTerm* charge = find_charge(terms_, fact.name, question(fact));
  if (charge == nullptr) {
    unpriced(fact, fact.quantity, "", no_such_charge(fact));
    return;
  }
  if (charge->per == Per::percent) {
    problem(fact, "'" + charge->name +
                      "' is a per cent of the sum for sawing and comes by itself; take the " +
                      "charge line off the sheet");
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
  for (const ChargeTerm* charge : charges_for(fact, [](const ChargeTerm& one) { return one.move; })) {
    if (written(charge->name)) continue;
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
    for (const ChargeTerm* charge : charges_for(*fact, [](const ChargeTerm& one) { return one.strike; })) {
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
  const bool log = fact.kind == FactKind::log;
  const auto wanted = [&](const ChargeTerm& one) {
    return one.automatic && one.per != Per::percent && log == (one.per == Per::log);
  };
  for (const ChargeTerm* charge : charges_for(fact, wanted)) {
    if (written(charge->name)) continue;
    const measure::Convention by = counting(fact, job_.convention);
    Item made = item(fact, Role::surcharge);
    made.charge = charge->name;
    made.rate.title = charge->title;
    made.rate.unit = unit_of(charge->per);
    made.rate.rate = charge->rate;
    made.rate.tax = charge->tax;
    made.rate.order = charge->line;
    switch (charge->per) {
      case Per::bf:
      case Per::mbf:
        made.quantity = counted_bf(pieces_of(fact), by);
        made.rate.per = charge->per == Per::mbf ? 1000 : 1;
        made.rate.counted = in_words(job_.convention);
        break;
      case Per::lineal_foot:
      case Per::lineal_metre:
        made.quantity = lineal(fact, by, charge->per == Per::lineal_metre);
        made.rate.counted =
            in_words_of_length(job_.convention, charge->per == Per::lineal_foot ? "foot" : "metre");
        break;
      default:  // logs and pieces
        if (!log && fact.length.count == 0) {
          problem(fact, words_of(fact) + " was counted by its length, and '" + charge->name +
                            "' is charged by the piece");
          continue;
        }
        made.quantity = fact.count;
        break;
    }
    const bool measured = !made.rate.counted.empty();
    made.rate.places = measured && !whole_feet(job_.convention.rounding) ? 2 : 0;
    made.rate.each_line = measured && each_line(job_.convention.rounding);
    push_charge(std::move(made), *charge);
  }
}

void SheetItems::once(const Fact& fact) {
  for (const ChargeTerm* charge : charges_for(fact, [](const ChargeTerm& one) { return one.once; }))
    charge_items(fact, *charge, 1, 0, "");
}

}  // namespace kerfbook::billing
