// practice.cpp -- the practices that are built in, found by name and told in words.
#include "scaling/practice.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {
namespace {

/// A named practice: a rule's published conventions with something changed.
struct Named {
  std::string_view name;
  std::string_view shown;
  std::string_view rule;
  std::string_view what;  ///< what is changed, and by whom
  void (*change)(Practice&);
};

constexpr std::array kNamed{
    Named{"scribner-c-even", "Scribner C, even feet", "scribner-c",
          "lengths in even feet, as FSH 2409.11 (2006 digest, 17.12) records them; a top under 6 in (5.51 in "
          "actual) is a "
          "cull, as the Idaho Board of Scaling Practices has it; of two readings a remaining half inch is "
          "dropped, as USDA Forest Service R-6 Supplement 98-2 has it",
          [](Practice& by) {
            by.length_step = measure::feet(2);
            by.minimum_top = measure::inches(6);
            by.diameter = DiameterRounding::nearest_half_up;
            by.readings = ReadingsJoin::average_drop_half;
          }},
    Named{"scribner-c-16", "Scribner C 16", "scribner-c",
          "segments of at most 16 ft, the older federal practice (Bailey; Boerker 1918)",
          [](Practice& by) { by.longest_segment = measure::feet(16); }},
    Named{"scribner-c-40-down", "Scribner C 40, inch down", "scribner-c-40",
          "every fraction of an inch dropped, from memory",
          [](Practice& by) { by.diameter = DiameterRounding::down; }},
    Named{"doyle-table", "Doyle table", "doyle",
          "to the nearest board foot as tables print it, an exact half up",
          [](Practice& by) { by.result = ResultRounding::nearest_1; }},
    Named{"international-quarter-exact", "Int. 1/4, not rounded", "international-quarter", "not rounded",
          [](Practice& by) { by.result = ResultRounding::none; }},
    Named{"international-quarter-even", "Int. 1/4, even feet", "international-quarter",
          "as its table is used: lengths down to the even foot (common practice, no source), diameter to the "
          "nearest inch (from memory)",
          [](Practice& by) {
            by.length_step = measure::feet(2);
            by.diameter = DiameterRounding::nearest_half_up;
          }},
};

Practice of_rule(const Rule& rule) {
  Practice practice;
  practice.name = std::string(rule.name);
  practice.rule = std::string(rule.name);
  practice.length_step = {};
  practice.taper = TaperShare::even;
  practice.result = ResultRounding::none;
  practice.squared_divisor = 15;
  if (rule.conventions != nullptr) rule.conventions(practice);
  return practice;
}

const Named* find_named(std::string_view name) {
  const auto* found =
      std::find_if(kNamed.begin(), kNamed.end(), [name](const Named& n) { return n.name == name; });
  return found == kNamed.end() ? nullptr : found;
}

/// What a diameter is rounded to.
std::string_view class_words(DiameterClass of) {
  switch (of) {
    case DiameterClass::inch:
      return "inch";
    case DiameterClass::centimetre:
      return "centimetre";
    case DiameterClass::two_centimetres:
      return "even centimetre";
    case DiameterClass::jas:
      return "centimetre, from 14 cm the even centimetre";
    case DiameterClass::by_log:
      return "inch or centimetre";
  }
  return "";
}

std::string diameter_words(DiameterRounding how, const Rule& rule) {
  const std::string to(class_words(rule.diameter_class));
  switch (how) {
    case DiameterRounding::none:
      return "diameters with their fraction";
    case DiameterRounding::down:
      return "diameters down to the " + to;
    case DiameterRounding::nearest_half_up:
      return "diameters to the nearest " + to + ", an exact half up";
    case DiameterRounding::nearest_half_down:
      return "diameters to the nearest " + to + ", an exact half down";
    case DiameterRounding::nearest_half_even:
      return "diameters to the nearest " + to + ", an exact half to the even number";
  }
  return "";
}

std::string_view result_words(ResultRounding how, const Rule& rule) {
  const bool feet = rule.answers == Answers::board_feet;
  switch (how) {
    case ResultRounding::none:
      return rule.unrounded;
    case ResultRounding::nearest_1:
      return feet ? "to the nearest board foot" : "to the nearest whole unit";
    case ResultRounding::nearest_5:
      return feet ? "to the nearest 5 board feet" : "to the nearest 5";
    case ResultRounding::nearest_10:
      return feet ? "to the nearest 10 board feet" : "to the nearest 10";
    case ResultRounding::hundredth:
      return "to 0.01";
    case ResultRounding::thousandth:
      return "to 0.001";
  }
  return "";
}

std::string lengths_words(const Practice& by) {
  std::string words = by.length_step.is_zero()
                          ? "lengths as measured"
                          : "lengths down to a multiple of " + measure::spoken_length(by.length_step);
  if (!by.trim.is_zero()) words += " after " + measure::spoken_length(by.trim) + " trim";
  if (!by.longest_segment.is_zero()) words += ", segments to " + measure::spoken_length(by.longest_segment);
  return words;
}

std::string limits_words(const Practice& by) {
  std::string words;
  if (!by.minimum_top.is_zero()) {
    const bool inch = by.minimum_top.system == System::inch;
    words += ", tops under " + measure::write_inches(by.minimum_top) + (inch ? " in" : "") + " are cull";
  }
  if (!by.minimum_length.is_zero())
    words += ", logs under " + measure::spoken_length(by.minimum_length) + " are cull";
  if (!by.merchantable_percent.is_zero()) {
    words += ", cull under " + plain(shown(by.merchantable_percent, 1)) + " % net of gross";
  }
  return words;
}

std::string conventions(const Practice& by, const Rule& rule) {
  return fmt::format("{}, {}, scale {}{}", diameter_words(by.diameter, rule), lengths_words(by),
                     result_words(by.result, rule), limits_words(by));
}

std::string all_names() {
  return join(practice_names(), ", ");
}

}  // namespace

std::optional<Practice> find_practice(std::string_view name) {
  if (const Rule* rule = find_rule(name)) return of_rule(*rule);
  const Named* named = find_named(name);
  if (named == nullptr) return std::nullopt;
  Practice practice = of_rule(*find_rule(named->rule));
  practice.name = std::string(named->name);
  named->change(practice);
  return practice;
}

const std::vector<std::string>& rule_names() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all;
    for (const Rule& rule : rules()) all.emplace_back(rule.name);
    return all;
  }();
  return names;
}

const std::vector<std::string>& practice_names() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all = rule_names();
    for (const Named& named : kNamed) all.emplace_back(named.name);
    return all;
  }();
  return names;
}

std::string describe(const Practice& practice) {
  const Rule* rule = find_rule(practice.rule);
  if (rule == nullptr) return why_not(practice.rule);
  std::string text = fmt::format("{}: {}. Source: {}. Range: {}. Conventions: {}.", rule->title,
                                 rule->formula, rule->source, rule->range, rule->customs);
  if (const Named* named = find_named(practice.name))
    text += fmt::format(" {}: {}.", named->name, named->what);
  return text + " In force: " + conventions(practice, *rule) + ".";
}

std::string in_words(const Practice& practice) {
  const Rule* rule = find_rule(practice.rule);
  if (rule == nullptr) return why_not(practice.rule);
  const bool recalled = rule->source.find("from memory") != std::string_view::npos;
  return fmt::format("{}{}; {}", rule->title, recalled ? " (from memory)" : "", conventions(practice, *rule));
}

std::string rule_words(std::string_view names) {
  std::string words;
  while (!names.empty()) {
    const std::size_t end = std::min(names.find(','), names.size());
    const std::string_view name = trim(names.substr(0, end));
    const Rule* rule = find_rule(name);
    const Named* named = find_named(name);
    words += (words.empty() ? "" : ", ") + std::string(rule ? rule->shown : named ? named->shown : name);
    names.remove_prefix(std::min(end + 1, names.size()));
  }
  return words;
}

std::string what_changes(std::string_view name) {
  const Named* named = find_named(name);
  return named == nullptr ? "" : std::string(named->rule) + ": " + std::string(named->what);
}

std::string why_not(std::string_view name) {
  if (find_practice(name)) return {};
  const std::string word = lower(name);
  if (word == "bangor" || word == "holland" || word == "maine") {
    return fmt::format(
        "'{}' is a table rule whose table has not been obtained, so it is not built; Maine's own standard is "
        "international-quarter (01-001 C.M.R. ch. 382 s. 5)",
        name);
  }
  const std::string near = nearest(word, practice_names());
  if (!near.empty()) return fmt::format("there is no log rule '{}'; the nearest is {}", name, near);
  return fmt::format("there is no log rule '{}'; it is one of {}", name, all_names());
}

}  // namespace kerfbook::scaling
