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
  none,              ///< as read
  down,              ///< fraction dropped
  nearest_half_up,
  nearest_half_down,
  nearest_half_even, ///< the alternate-halves habit, made repeatable: an exact half goes to the even number
};
enum class ReadingsJoin : std::uint8_t {
  average,            ///< of both, exactly, then rounded
  average_drop_half,  ///< each to the nearest, a half in the average dropped (R-6 supplement)
  smaller,            ///< the smallest reading (JAS)
};
enum class ResultRounding : std::uint8_t {
  none,          ///< to a millionth
  nearest_1,     ///< whole board feet, half up
  nearest_5,     ///< half up
  nearest_10,
  thousandth,    ///< 0.001 of the unit
  hundredth,
};
enum class TaperShare : std::uint8_t {
  rule,           ///< the rule has its own taper (International, Vermont)
  even,           ///< measured taper (or the practice's) shared evenly, from memory
  none,           ///< every segment at the small-end diameter
};

struct Practice {
  std::string name = "international-quarter";  ///< how reports and papers call it; a rule's own name by default
  std::string rule = "international-quarter";  ///< a name in the table of rules
  DiameterRounding diameter = DiameterRounding::none;
  ReadingsJoin readings = ReadingsJoin::average;
  Length length_step{0, System::inch};      ///< lengths come down to a multiple of this; 0 = as measured
  Length trim{0, System::inch};             ///< taken off the measured length first
  Length longest_segment{0, System::inch};  ///< longer logs are scaled in segments; 0 = never
  TaperShare taper = TaperShare::rule;
  std::int64_t taper_mils_per_foot = 125;   ///< for `even` when no large end was measured
  Length minimum_top{0, System::inch};      ///< a log under it is a cull
  Length minimum_length{0, System::inch};
  std::int64_t merchantable_percent = 0;    ///< net under this share of gross is a cull; 0 = never
  ResultRounding result = ResultRounding::none;
  std::int64_t squared_divisor = 15;        ///< of a squared defect; from memory (15 Scribner, 16 International)
  bool operator==(const Practice&) const = default;
};

/// The practice that a bare rule name stands for: its published conventions. nullopt when no such rule.
/// Built-in named practices (each described in rules.cpp) are found here too.
std::optional<Practice> find_practice(std::string_view name);
/// Every rule name, in the order of the table (DESIGN order), then the built-in practices.
const std::vector<std::string>& practice_names();
/// One paragraph for --help and papers: what the rule is, its source (or `from memory`), range, conventions.
std::string describe(const Practice& practice);
/// For the names that must be refused with a reason ("bangor": the table has not been obtained).
std::string why_not(std::string_view name);

}  // namespace kerfbook::scaling
