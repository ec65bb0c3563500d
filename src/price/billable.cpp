// billable.cpp -- the identity of a fact, and its words.
#include "price/billable.h"

#include "base/text.h"

namespace kerfbook::billing {

namespace {

std::string defect_words(const std::vector<scaling::Defect>& defects) {
  std::vector<std::string> all;
  for (const scaling::Defect& one : defects) all.push_back(scaling::write_defect(one));
  return join(all, " ");
}

std::string number(const Rational& value) {
  return plain(shown(value, 6));
}

/// Fields joined by a mark that no typed text can hold (a line feed ends a line of a sheet).
std::string joined(const std::vector<std::string>& fields) {
  return join(fields, "\n");
}

std::string section(const Size& size) {
  return (size.thickness.system == measure::System::metric ? "metric " : "") +
         std::to_string(size.thickness.count) + "x" + std::to_string(size.width.count);
}

std::string along(Length length, const Size& size) {
  // a length of the other system than the section's: 2x6 of 4.8 m
  const bool other = length.system != size.thickness.system;
  return std::to_string(length.count) +
         (other ? (length.system == measure::System::metric ? " m" : " ft") : "");
}

std::string after(const std::string& word) {
  return word.empty() ? "" : " " + word;
}

std::string counts(std::string_view name, const std::vector<Length>& lengths) {
  std::string all(lengths.empty() ? "" : name);
  for (const Length& one : lengths)
    all += (one.system == measure::System::metric ? " metric " : " ") + std::to_string(one.count);
  return all;
}

/// What its spec has, then the added words; a log without them has the spec alone.
std::string measures(const scaling::LogMeasure& log) {
  const auto& [small, large, mid, girth, length, segments] = log;
  (void)small, (void)large, (void)length;  // in the spec
  std::string all = scaling::write_log_spec(log);
  const std::vector<Length> round = girth ? std::vector{*girth} : std::vector<Length>{};
  for (const std::string& added : {counts("mid", mid), counts("girth", round), counts("segments", segments)})
    all += after(added);
  return all;
}

std::string price_on_the_spot(const std::optional<Rational>& agreed, const std::string& per) {
  if (!agreed) return "";
  return number(*agreed) + (per == "bf" ? "" : " " + per);
}

}  // namespace

/// Every member of a fact is named here, so that one that is added does not compile until it is said whether it can
/// change the price. What the key has, it has in the form of the papers issued so far: they keep it.
std::string key_of(const Fact& fact) {
  const auto& [sheet, kind, site, species, grade, species_name, grade_name, bundle, size, length, count, name,
               text, log_tag, cause, agreed, agreed_per, minutes, chargeable, quantity, kilometres, measured,
               source_corrected, log, defects] = fact;
  // no price goes by the place, the bundle's tag or a name on paper
  (void)sheet, (void)site, (void)bundle, (void)species_name, (void)grade_name;
  (void)count, (void)source_corrected;  // how often it is there, and where its measure comes from
  switch (kind) {
    case FactKind::pieces:
      return joined({"pieces", species, grade, section(size), along(length, size)});
    case FactKind::lineal:
      // its length is the count, in counts of the length's own system
      return joined({"lineal", species, grade, section(size)}) +
             (length.system == size.thickness.system ? "" : "\n" + along(length, size));
    case FactKind::log:
      return joined({"log", species, name, measured ? measures(log) : "", defect_words(defects)});
    case FactKind::sawing:
      return "sawing";
    case FactKind::stop:
      return joined({"stop", name, std::to_string(minutes), text, chargeable ? "charge" : ""});
    case FactKind::teeth:
      return joined({"teeth", name, cause, log_tag, number(quantity), text});
    case FactKind::charge:
      return joined({"charge", lower(name), number(quantity), text});
    case FactKind::move:
      return joined({"move", name, text, number(quantity), kilometres ? "km" : "mi"}) +
             (minutes == 0 ? "" : "\n" + std::to_string(minutes));
    case FactKind::once:
      return "once";
    case FactKind::sold:
      return joined({"sold", species, grade, section(size), along(length, size),
                     price_on_the_spot(agreed, agreed_per)});
    case FactKind::bundle:
      return joined({"bundle", lower(name), price_on_the_spot(agreed, "bf")});
  }
  return "";
}

std::string words_of(const Fact& fact) {
  switch (fact.kind) {
    case FactKind::pieces:
      return write_size(fact.size) + "x" + write_feet(fact.length);
    case FactKind::lineal:
      return write_size(fact.size) + " lineal";
    case FactKind::log:
      return fact.name.empty() ? "a log" : "log " + fact.name;
    case FactKind::sawing:
      return "sawing time";
    case FactKind::stop:
      return "stop (" + fact.name + ")";
    case FactKind::teeth:
      return "teeth" + (fact.log_tag.empty() ? "" : " (log " + fact.log_tag + ")");
    case FactKind::charge:
      return fact.name;
    case FactKind::move:
      return "move " + fact.name + " to " + fact.text;
    case FactKind::once:
      return "the job";
    case FactKind::sold:
      return write_size(fact.size) + (fact.length.count == 0 ? " lineal" : "x" + write_feet(fact.length)) +
             after(fact.species_name) + after(fact.grade_name);
    case FactKind::bundle:
      return "bundle " + fact.name + (fact.text.empty() ? "" : ": " + fact.text);
  }
  return "";
}

}  // namespace kerfbook::billing
