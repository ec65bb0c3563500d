// size.h -- the nominal or target section of a piece (thickness x width), and its exact volume.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "measure/length.h"

namespace kerfbook::measure {

/// A section. Both lengths are of one system. `quarters` keeps 5/4 written as 5/4 and not as 1-1/4.
struct Size {
  Length thickness;
  Length width;
  bool quarters = false;
  auto operator<=>(const Size&) const = default;  // thickness first: the order of a tally sheet's rows
};

/// `2x6`, `1-1/8x4`, `5/4x6`, `50x150` (millimetres in a metric book, or when `mm` is written), `2×6`,
/// `2 x 6`. `metric_book` decides what plain numbers are: millimetres when true; in an inch book a section of two
/// whole numbers of which the lesser is over 15 is read as millimetres too (no board is 16 in thick).
Result<Size> read_size(std::string_view text, bool metric_book = false);
/// `2x6`, `5/4x6`, `1-1/8x4`; metric `50x150`. A size that the book would take for one of the other system
/// gets its unit: `12x100mm` or `18x18"` in an inch book, `2x6"` in a metric one. read_size gives the same
/// size back.
std::string write_size(const Size& size, bool metric_book = false);

/// A size and the length it is cut to.
struct Piece {
  Size size;
  Length length;
  auto operator<=>(const Piece&) const = default;
};
/// `2x6x16`, `2x6x16'6"`, `50x150x4.8`: the length is in feet for an inch size and in metres for a metric
/// one, unless its unit is written.
Result<Piece> read_piece(std::string_view text, bool metric_book = false);
std::string write_piece(const Piece& piece, bool metric_book = false);

/// An exact count of cubic 1/64 inch (System::inch) or cubic 1/10 mm (System::metric).
struct Volume {
  std::int64_t count = 0;
  System system = System::inch;
  auto operator<=>(const Volume&) const = default;
};

/// 1 bf = 1 in x 12 in x 12 in = 144 in3 = 144 x 64^3 counts.
constexpr std::int64_t kCountsPerBoardFoot = 37'748'736;
/// 1 bf = 144 x 25.4^3 mm3 = 144 x 254^3 counts, from 1 in = 25.4 mm exactly.
constexpr std::int64_t kMetricCountsPerBoardFoot = 2'359'737'216;
constexpr std::int64_t kMetricCountsPerCubicMetre = 1'000'000'000'000;
/// 0.3048^3, from 1 ft = 0.3048 m exactly (international yard and pound agreement, 1959).
inline const Rational kCubicMetresPerCubicFoot{28'316'846'592, 1'000'000'000'000};

/// pieces x thickness x width x length, exact. All of one system. Throws std::overflow_error past 63 bits.
Volume volume(const Size& size, Length length, std::int64_t pieces);

Rational board_feet(Volume volume);    ///< exact, from either system
Rational cubic_feet(Volume volume);    ///< exact, from either system
Rational cubic_metres(Volume volume);  ///< exact, from either system
/// Counted in the other system; the one place where a volume is rounded (half up, to a count: under
/// 0.00000002 bf), needed only for a metric piece in an inch book or the other way round.
Volume converted(Volume volume, System to);

/// A size wider and thicker than nominal by `mils` thousandths of an inch (inch) or hundredths of a
/// millimetre (metric): the wood in pieces cut oversize. Rounded half up to a count of volume.
Volume volume_over(const Size& size, Length length, std::int64_t pieces, std::int64_t mils);

}  // namespace kerfbook::measure
