// pieces.h -- from readings to what a rule is asked with: readings joined and rounded, trim and length step taken
// off, a long log divided and its taper shared. No rule's arithmetic, no defects, no words for people.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "scaling/rules.h"

namespace kerfbook::scaling {

/// Why a log cannot be scaled; spelt out by scale.cpp.
enum class Trouble : std::uint8_t {
  none,
  no_small_end,
  no_large_end,
  no_middle,
  no_length,
  too_many_readings,
  too_few_segments,
  too_many_segments,
  too_big,    ///< past any tree; the arithmetic is exact up to there
  off_table,  ///< past the table's last diameter
};

constexpr std::size_t kMostSegments = 16;
/// Past any tree; up to here no product in a rule outgrows 127 bits.
constexpr Ticks kBiggestDiameter = 240 * kInch;
constexpr Ticks kLongestLog = 400 * kFoot;

/// The pieces a log is scaled in, top first, their diameters rounded as the practice says.
struct Pieces {
  std::array<Piece, kMostSegments> piece;
  std::array<bool, kMostSegments> overridden{};
  std::size_t count = 0;
  std::size_t by_rule = 0;      ///< how many the practice alone would have made
  Ticks length = 0;             ///< the whole scaling length
  bool taper_shared = false;    ///< some segment's diameter was worked out from an even taper
  bool taper_measured = false;  ///< ... between two measured ends
};

Trouble make_pieces(const LogMeasure& log, const Rule& rule, const Practice& by, Pieces& into);

/// The same pieces with `length` cut off at the butt and `diameter` off every piece, for length and diameter
/// deductions. What is left of the length comes down to the practice's step, the diameters to its rounding.
Pieces shrunk(const Pieces& whole, Ticks length, Ticks diameter, const Rule& rule, const Practice& by,
              System system);

/// One or two readings of an end, joined and rounded. 0 when there are none.
Ticks scaling_diameter(const std::vector<Length>& readings, const Rule& rule, const Practice& by,
                       System system);
/// A diameter rounded as the practice says, to the rule's classes.
Ticks rounded_diameter(Ticks exact, const Rule& rule, DiameterRounding how, System system);

/// The lengths of `count` pieces, top first. See Division.
void divide(Ticks length, Ticks longest, std::size_t count, Division how,
            std::array<Ticks, kMostSegments>& into);
/// The fewest pieces none of which is longer than `longest`; 1 when `longest` is 0.
std::size_t pieces_needed(Ticks length, Ticks longest);

}  // namespace kerfbook::scaling
