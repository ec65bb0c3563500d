// facts.cpp -- the identity of a fact, and its words.
#include "billing/facts.h"

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

std::string after(const std::string& word) {
  return word.empty() ? "" : " " + word;
}

}  // namespace

std::string key_of(const Fact& fact) {
  switch (fact.kind) {
    case FactKind::pieces:
      return joined(
          {"pieces", fact.species, fact.grade, section(fact.size), std::to_string(fact.length.count)});
    case FactKind::lineal:
      return joined({"lineal", fact.species, fact.grade, section(fact.size)});
    case FactKind::log:
      return joined({"log", fact.species, fact.name, fact.measured ? scaling::write_log_spec(fact.log) : "",
                     defect_words(fact.defects)});
    case FactKind::sawing:
      return "sawing";
    case FactKind::stop:
      return joined(
          {"stop", fact.name, std::to_string(fact.minutes), fact.text, fact.chargeable ? "charge" : ""});
    case FactKind::teeth:
      return joined({"teeth", fact.name, fact.cause, fact.log_tag, number(fact.quantity), fact.text});
    case FactKind::charge:
      return joined({"charge", lower(fact.name), number(fact.quantity), fact.text});
    case FactKind::move:
      return joined({"move", fact.name, fact.text, number(fact.quantity), fact.kilometres ? "km" : "mi"});
    case FactKind::once:
      return "once";
    case FactKind::sold:
      return joined(
          {"sold", fact.species, fact.grade, section(fact.size), std::to_string(fact.length.count),
           fact.agreed ? number(*fact.agreed) + (fact.agreed_per == "bf" ? "" : " " + fact.agreed_per) : ""});
    case FactKind::bundle:
      return joined({"bundle", lower(fact.name), fact.agreed ? number(*fact.agreed) : ""});
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
