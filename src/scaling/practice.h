// practice.h -- a scaling practice: a log rule and every convention that changes its answer, as data.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scaling/scaling.h"

namespace kerfbook::scaling {

enum class DiameterRounding : std::uint8_t {
  none,  ///< as read
  down,  ///< fraction dropped
  nearest_half_up,
  nearest_half_down,
  nearest_half_even,  ///< the alternate-halves habit, made repeatable: an exact half goes to the even number
};
enum class ReadingsJoin : std::uint8_t {
  average,            ///< of both, exactly, then rounded
  average_drop_half,  ///< each to the nearest, a half in the average dropped (R-6 supplement)
  smaller,            ///< the smallest reading (JAS)
};
enum class ResultRounding : std::uint8_t {
  none,       ///< to a millionth
  nearest_1,  ///< whole board feet, half up
  nearest_5,  ///< half up
  nearest_10,
  thousandth,  ///< 0.001 of the unit
  hundredth,
};
enum class TaperShare : std::uint8_t {
  rule,  ///< the rule's own taper (International); for a rule that has none the same as `even`
  even,  ///< measured taper (or the practice's) shared evenly, from memory
  none,  ///< every segment at the small-end diameter
};

/// As it stands, the practice of International 1/4-inch; start any other from find_practice().
struct Practice {
  std::string name =
      "international-quarter";  ///< how reports and papers call it; a rule's own name by default
  std::string rule = "international-quarter";  ///< a name in the table of rules
  DiameterRounding diameter = DiameterRounding::none;
  ReadingsJoin readings = ReadingsJoin::average;
  Length length_step = measure::feet(1);    ///< lengths come down to a multiple of this; 0 = as measured
  Length trim{0, System::inch};             ///< taken off the measured length first
  Length longest_segment{0, System::inch};  ///< longer logs are scaled in segments; 0 = never
  TaperShare taper = TaperShare::rule;
  std::int64_t taper_mils_per_foot = 125;  ///< for `even` when no large end was measured
  Length minimum_top{0, System::inch};     ///< a log under it is a cull
  Length minimum_length{0, System::inch};
  Rational merchantable_percent = 0;  ///< net under this share of gross is a cull; 0 = never. 100/3 is exact
  ResultRounding result = ResultRounding::nearest_5;
  /// Of a squared defect under a board-foot rule: in x in x ft / divisor. From memory: 15 (20 % for kerf), with
  /// International 16; 12 is solid wood. Cubic rules take the box as it is.
  std::int64_t squared_divisor = 16;
  bool operator==(const Practice&) const = default;
};

/// The practice that a bare rule name stands for: its published conventions. nullopt when no such rule.
/// Built-in named practices (each described in rules.cpp) are found here too.
std::optional<Practice> find_practice(std::string_view name);
/// Every rule's name, in the order of the table.
const std::vector<std::string>& rule_names();
/// Every rule name, then the built-in practices.
const std::vector<std::string>& practice_names();
/// What a person reads for a practice that is kept as `name`: "Int. 1/4" for international-quarter, "Doyle, Int. 1/4"
/// for a list with commas. A practice of the mill's own is called what the mill calls it, so a name that is not built
/// in comes back as it is.
std::string rule_words(std::string_view names);
/// One paragraph for --help and papers: what the rule is, its source (or `from memory`), range, conventions.
std::string describe(const Practice& practice);
/// The conventions in force, in one line for a paper: "International 1/4-inch; diameters with their fraction, ...".
std::string in_words(const Practice& practice);
/// What a built-in practice changes in its rule's published conventions, in words; empty for a rule's own name.
std::string what_changes(std::string_view name);
/// Why find_practice finds nothing, in a sentence: "bangor" has no table; a slip gets the nearest name. Empty when
/// it does find something.
std::string why_not(std::string_view name);

}  // namespace kerfbook::scaling
