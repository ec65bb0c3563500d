// rules.h -- THE table of log rules: one entry per rule, with its name in the trade, its source, its range, its
// conventions and one pure function. What a practice does to the readings before the rule is asked: pieces.h.
//
// A rule is added by writing its function, one entry in the part of the table it belongs to (rules_board_foot.cpp,
// rules_scribner.cpp, rules_cubic.cpp) and a table of published numbers in tests/scaling.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "base/exact.h"
#include "scaling/practice.h"
#include "scaling/ticks.h"

namespace kerfbook::scaling {

/// What a rule is asked with: one piece, inside bark, after the practice's rounding. 0 = not measured.
struct Piece {
  Ticks small = 0;
  Ticks large = 0;
  Ticks mid = 0;
  Ticks girth = 0;
  Ticks length = 0;
};

/// A volume in MILLIONTHS of the rule's unit, exact: num / den, den > 0. A fraction and not a rounded count, so
/// that a table's rounding (to 5 bf, say) is the only one.
struct Exact {
  Wide num = 0;
  Wide den = 1;
};

/// The readings a rule cannot do without.
enum class Needs : std::uint8_t {
  small_end,
  both_ends,
  middle,  ///< the diameter or the girth at half length
  ends_and_mid,
};

/// The unit of the answer.
enum class Answers : std::uint8_t {
  board_feet,
  cubic,  ///< ft3 for a log measured in inches, m3 for one measured in centimetres
  cubic_metres,
  hoppus_feet,
};

/// What a diameter is rounded to, when the practice rounds.
enum class DiameterClass : std::uint8_t {
  inch,
  centimetre,
  two_centimetres,  ///< a radius in whole centimetres
  jas,              ///< whole centimetres under 14 cm, even centimetres from 14 cm up
  by_log,           ///< an inch or a centimetre, as the log was measured
};

/// How a log past the longest segment is divided.
enum class Division : std::uint8_t {
  equal_even,     ///< as equal as possible in even feet, the longer ones at the butt
  full_from_top,  ///< full segments from the upper end, the rest at the butt
};

struct Rule {
  std::string_view name;   ///< as typed and kept: `international-quarter`
  std::string_view shown;  ///< as a scaler writes it in a column: "Int. 1/4"
  std::string_view title;  ///< in full: "International 1/4-inch"
  /// The publications it was taken from, parted by `; `, each of a kind that tests/rules/sources_test.cpp lists; what
  /// has none says `from memory` or `common practice, no source`.
  std::string_view source;
  std::string_view formula;  ///< what it computes, in one line
  std::string_view range;    ///< diameters and lengths it was published for, in words
  std::string_view customs;  ///< diameter and length conventions, rounding, taper; choices made; in words
  Needs needs = Needs::small_end;
  Answers answers = Answers::board_feet;
  DiameterClass diameter_class = DiameterClass::inch;
  Division division = Division::equal_even;
  Ticks least_diameter = 0;     ///< under it the scale is zero
  Ticks greatest_diameter = 0;  ///< over it there is no scale (a table's end); 0 = no end
  Ticks least_length = 0;       ///< under it the scale is zero
  Ticks taper_per_foot = 0;     ///< the rule's own, built in; 0 = it has none
  std::int64_t deduction_step =
      0;  ///< millionths; what a deduction is rounded to; 0 = as the practice's result
  std::string_view unrounded = "not rounded";     ///< what the scale is where no practice rounds it, in words
  Exact (*scale)(const Piece&) = nullptr;         ///< never negative within the range
  Exact (*scale_metric)(const Piece&) = nullptr;  ///< Answers::cubic only: in m3
  void (*conventions)(Practice&) = nullptr;       ///< the published ones, set on a Practice without any
};

/// Every rule, in the order they are listed to people.
std::span<const Rule> rules();
/// nullptr when there is none.
const Rule* find_rule(std::string_view name);

/// The unit a rule answers in for a log measured in that system.
VolumeUnit unit_for(const Rule& rule, System system);

/// The parts of the table.
std::span<const Rule> scribner_rules();
std::span<const Rule> board_foot_rules();
std::span<const Rule> cubic_rules();

}  // namespace kerfbook::scaling
