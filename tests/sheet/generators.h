// generators.h -- sheets of every line kind, as a mill could write them, for the properties of reader and writer.
#pragma once

#include <rapidcheck.h>

#include <string>
#include <vector>

#include "sheet/read.h"
#include "sheet/sheet.h"
#include "sheet/write.h"

namespace generate {

using namespace kerfbook;
using namespace kerfbook::sheet;
using measure::System;

inline int number(int least, int most) {
  return *rc::gen::inRange(least, most + 1);
}
inline bool chance(int one_in) {
  return number(1, one_in) == 1;
}
template <class T>
T one_of(const std::vector<T>& all) {
  return all[static_cast<std::size_t>(number(0, static_cast<int>(all.size()) - 1))];
}

/// A word that begins with a letter and has no digit.
inline std::string word() {
  return one_of<std::string>(
      {"oak", "Tervane", "O’Brien", "mühle", "sel", "DF", "yard", "North-End", "wet", "樹", "a.b", "xylo"});
}
inline std::string code() {
  return word() + (chance(2) ? std::to_string(number(0, 99)) : "");
}
/// Words with a little of everything the reader gives a meaning elsewhere.
inline std::string text(bool begins_with_word = false) {
  std::string out = begins_with_word || chance(2)
                        ? word()
                        : one_of<std::string>({"3", "½", "12″", "#2", "(dry)", "2x6", "10:20"});
  for (int more = number(0, 3); more > 0; --more) {
    out += " " + one_of<std::string>(
                     {"stack", "T17,", "3″", "7½", "–", "5/10", "rain", "12", "it's", "no.", "24/16", "×"});
  }
  return out;
}
/// Words no part of a line begins with, and no digit at their start.
inline std::string name() {
  std::string out = word();
  for (int more = number(0, 2); more > 0; --more)
    out += " " + one_of<std::string>({"Hill", "& sons", "farm", "of", "den2"});
  return out;
}
inline std::string remark() {
  return one_of<std::string>({"", "", "", "rain", "a  wide   gap", "both; of them", "½ ″ × –", "12 o'clock"});
}

inline Length length(System system, std::int64_t least, std::int64_t most) {
  return {*rc::gen::inRange<std::int64_t>(least, most + 1), system};
}
inline Length side(System system) {
  if (chance(2))
    return system == System::inch ? measure::inches(number(1, 12)) : measure::millimetres(number(10, 300));
  return length(system, 8, system == System::inch ? 900 : 4000);
}
inline Length board_length(System system) {
  if (chance(2))
    return system == System::inch ? measure::feet(number(4, 24))
                                  : Length{number(5, 60) * 1000, System::metric};
  return length(system, 100, 15'000);
}
inline System system() {
  return chance(3) ? System::metric : System::inch;
}

inline Size size(System of) {
  Size out{side(of), side(of), false};
  if (of == System::inch && chance(4)) {
    out.thickness.count = number(4, 16) * 16;
    out.quarters = true;
  }
  return out;
}
inline Rational decimal(int most, int places) {
  std::int64_t scale = 1;
  for (int i = 0; i < places; ++i) scale *= 10;
  return {*rc::gen::inRange<std::int64_t>(1, most * scale + 1), scale};
}
inline std::string grade() {
  return chance(2) ? "" : one_of<std::string>({"sel", "No2", "2A", "#1", "F1F", "fas"});
}
inline Sense sense() {
  return one_of<Sense>({Sense::sawn, Sense::sawn, Sense::less, Sense::resaw});
}
inline std::string reason(Sense of) {
  return of == Sense::less && chance(2) ? text(true) : "";
}

inline Span span() {
  const int from = number(0, 1439);
  const int to = number(0, 1440);
  return {from, to == from ? from + 1 : to};
}
inline std::vector<Span> spans() {
  std::vector<Span> out;
  for (int count = number(1, 3); count > 0; --count) out.push_back(span());
  return out;
}

inline Crew crew() {
  Crew out;
  for (int count = number(1, 3); count > 0; --count) {
    Hand hand{name(), number(0, 900), {}, chance(3) ? name() : ""};
    if (chance(2)) {
      hand.spans = spans();
      hand.minutes = 0;
      for (const Span& one : hand.spans) hand.minutes += one.minutes();
    }
    out.hands.push_back(hand);
  }
  return out;
}

inline std::string job() {
  return chance(4) ? "own" : code();
}

inline Stop stop() {
  Stop out;
  if (chance(2)) out.span = span();
  out.minutes = out.span ? out.span->minutes() : number(1, 700);
  out.cause = word();
  if (chance(2)) out.text = text();
  out.charge = chance(2);
  if (chance(3)) out.job = job();
  return out;
}

inline std::vector<Length> diameters(System of, int least, int most) {
  std::vector<Length> out;
  for (int count = number(least, most); count > 0; --count) {
    out.push_back(chance(2) && of == System::inch ? measure::inches(number(5, 60)) : length(of, 300, 6000));
  }
  return out;
}

inline scaling::Defect defect(System of) {
  scaling::Defect out;
  switch (number(0, 5)) {
    case 0:
      out.kind = scaling::DefectKind::percent;
      out.amount = decimal(99, 1);
      break;
    case 1:
      out.kind = scaling::DefectKind::volume;
      out.amount = decimal(200, 2);
      out.unit =
          one_of<scaling::VolumeUnit>({scaling::VolumeUnit::board_foot, scaling::VolumeUnit::cubic_foot,
                                       scaling::VolumeUnit::cubic_metre});
      break;
    case 2:
      out.kind = scaling::DefectKind::length;
      out.length = board_length(of);
      break;
    case 3:
      out.kind = scaling::DefectKind::diameter;
      out.diameter = side(of);
      break;
    case 4:
      out.kind = scaling::DefectKind::sector;
      out.amount = decimal(360, 0);
      if (chance(2)) out.length = board_length(of);
      break;
    default:
      out.kind = scaling::DefectKind::squared;
      out.width = side(of);
      out.height = side(of);
      out.length = board_length(of);
  }
  if (chance(2)) out.reason = text(true);
  return out;
}

inline LogLine log() {
  LogLine out;
  if (chance(4)) {
    out.tags = {one_of<std::string>({"T13", "A", "7", "Y-7"})};
    if (chance(2)) out.tags.push_back(one_of<std::string>({"T14-T22", "19-22", "B2"}));
    if (out.tags.size() == 2 && out.tags[0] != "7" && out.tags[1] == "19-22") out.tags.pop_back();
    out.left_on_mill = chance(2);
    for (int count = out.tags.size() == 1 ? number(0, 2) : 0; count > 0; --count) {
      out.defects.push_back(defect(system()));
    }
    return out;
  }
  const System of = system();
  out.received = chance(3);
  if (chance(2)) out.tags = {code()};
  scaling::LogMeasure measure;
  measure.small = diameters(of, 1, 2);
  measure.large = diameters(of, 0, 2);
  for (Length& end : measure.large) end.count += measure.small.front().count;  // a large end is the larger
  measure.length = board_length(of);
  if (chance(3)) measure.mid = diameters(of, 1, 2);
  if (chance(3)) measure.girth = diameters(of, 1, 1).front();
  if (chance(3)) measure.segments = diameters(of, 1, 3);
  out.measure = measure;
  for (int count = number(0, 2); count > 0; --count) out.defects.push_back(defect(of));
  if (out.received && chance(2)) out.origin = text();
  if (!out.received) out.left_on_mill = chance(4);
  return out;
}

inline std::vector<Tally::Item> items(System of) {
  std::vector<Tally::Item> out;
  for (int count = number(1, 4); count > 0; --count) out.push_back({number(1, 999), board_length(of)});
  return out;
}

inline Tally tally() {
  const System of = system();
  const Sense how = sense();
  return {how, size(of), grade(), items(of), reason(how)};
}

inline LinealTally lineal() {
  const System of = system();
  const Sense how = sense();
  return {how, size(of), grade(), length(of, 1000, 150'000), reason(how)};
}

inline RandomTally random_widths() {
  const System of = system();
  RandomTally out;
  out.sense = sense();
  out.thickness = side(of);
  if (of == System::inch && chance(2)) {
    out.thickness.count = number(4, 16) * 16;
    out.quarters = true;
  }
  out.grade = grade();
  for (int count = number(1, 4); count > 0; --count)
    out.boards.push_back({side(of), board_length(of), number(1, 12)});
  out.reason = reason(out.sense);
  return out;
}

inline Sold sold() {
  const System of = system();
  Sold out;
  out.buyer = name();
  const int form = number(0, 2);
  if (form == 0) {
    out.bundle = word();
  } else {
    out.size = size(of);
    out.grade = grade();
    if (form == 1)
      out.items = items(of);
    else
      out.lineal = length(of, 1000, 150'000);
  }
  if (!chance(2)) return out;
  out.price = decimal(5, 3);
  if (form == 1) out.by = one_of<SoldBy>({SoldBy::board_foot, SoldBy::piece, SoldBy::lineal_foot});
  if (form == 2) out.by = one_of<SoldBy>({SoldBy::board_foot, SoldBy::lineal_foot, SoldBy::lineal_metre});
  return out;
}

inline Setup setup() {
  Setup out;
  out.name = code();
  if (chance(2)) out.text = text();
  for (auto mils :
       {&Setup::kerf_mils, &Setup::over_mils, &Setup::edger_mils, &Setup::third_mils, &Setup::lead_mils}) {
    if (chance(2)) out.*mils = number(0, 3999);
  }
  if (chance(2)) out.zero_mils = number(-3999, 3999);
  if (chance(2)) out.feed = decimal(900, 2);
  if (chance(2)) out.tooth = word();
  return out;
}

inline Residue residue() {
  const auto kinds = residue_kinds();
  return {std::string(kinds[static_cast<std::size_t>(number(0, static_cast<int>(kinds.size()) - 1))]),
          decimal(900, 2),
          one_of<measure::HeapUnit>({measure::HeapUnit::cubic_foot, measure::HeapUnit::cubic_yard,
                                     measure::HeapUnit::cubic_metre, measure::HeapUnit::cord}),
          chance(2) ? text() : ""};
}

inline Teeth teeth() {
  Teeth out;
  out.saw = word();
  out.action = one_of<ToothAction>({ToothAction::touched_up, ToothAction::replaced, ToothAction::full_set,
                                    ToothAction::shanks, ToothAction::swaged, ToothAction::tensioned,
                                    ToothAction::changed});
  if (chance(2) && !is_blade_work(out.action)) out.count = number(1, 60);
  if (chance(2)) out.cause = word();
  if (chance(2)) out.log = "T" + std::to_string(number(1, 99));
  if (chance(2)) out.text = text(!out.count);
  if (chance(3)) out.job = job();
  return out;
}

inline Thick thick() {
  Thick out{size(system()), {}};
  for (int count = number(2, 6); count > 0; --count) out.readings.push_back(number(1, 47'999));
  return out;
}

inline Move move() {
  return {name(),          name(),
          decimal(400, 2), chance(2) ? DistanceUnit::mile : DistanceUnit::kilometre,
          number(0, 900),  chance(3) ? job() : ""};
}

inline Fuel fuel() {
  Fuel out{decimal(90, 2), chance(2) ? FuelUnit::gallon : FuelUnit::litre, {}};
  if (chance(2)) out.price_minor = number(0, 99'999);
  return out;
}

/// One of every alternative of Fact, by its place in the variant.
inline Fact fact(std::size_t kind) {
  switch (kind) {
    case 0:
      return Remark{};
    case 1:
      return Site{text()};
    case 2:
      return Job{job()};
    case 3:
      return Species{code()};
    case 4:
      return Grade{chance(3) ? "" : code()};
    case 5:
      return Bundle{chance(3) ? "" : code()};
    case 6:
      return crew();
    case 7:
      return Sawing{spans(), chance(3) ? job() : ""};
    case 8:
      return stop();
    case 9:
      return setup();
    case 10:
      return log();
    case 11:
      return tally();
    case 12:
      return lineal();
    case 13:
      return random_widths();
    case 14:
      return sold();
    case 15:
      return teeth();
    case 16:
      return thick();
    case 17:
      return Charge{code(), word(), decimal(500, 2), chance(2) ? text() : ""};
    case 18:
      return Meter{number(0, 999'999)};
    case 19:
      return fuel();
    case 20:
      return move();
    case 21:
      return residue();
    default:
      return Note{text()};
  }
}

inline Sheet sheet() {
  Sheet out;
  out.day = make_day(number(1990, 2100), number(1, 12), number(1, 28));
  out.shift = chance(3) ? number(2, 9) : 1;
  out.remark = remark();
  for (int count = number(0, 12); count > 0; --count) {
    const auto kind = static_cast<std::size_t>(number(0, static_cast<int>(std::variant_size_v<Fact>) - 1));
    out.lines.push_back({fact(kind), remark(), {}});
  }
  return out;
}

}  // namespace generate
