// length.h -- one exact length in the system it was measured in, read and printed as the trade writes it.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::measure {

enum class System : std::uint8_t {
  inch,    ///< counts of 1/64 inch
  metric,  ///< counts of 1/10 millimetre
};

constexpr std::int64_t kPerInch = 64;             ///< counts in an inch
constexpr std::int64_t kPerFoot = 12 * kPerInch;  ///< counts in a foot
constexpr std::int64_t kPerMillimetre = 10;       ///< counts in a millimetre
constexpr std::int64_t kPerCentimetre = 100;
constexpr std::int64_t kPerMetre = 10'000;
// 1 inch = 25.4 mm exactly (international yard and pound agreement, 1959), so 64 counts = 254 counts.

/// A length. Two lengths of different systems are never equal: 16 ft is not 4.8 m.
struct Length {
  std::int64_t count = 0;
  System system = System::inch;
  auto operator<=>(const Length&) const = default;
  [[nodiscard]] bool is_zero() const noexcept { return count == 0; }
};

constexpr Length inches(std::int64_t whole) {
  return {whole * kPerInch, System::inch};
}
constexpr Length feet(std::int64_t whole) {
  return {whole * kPerFoot, System::inch};
}
constexpr Length millimetres(std::int64_t whole) {
  return {whole * kPerMillimetre, System::metric};
}
constexpr Length centimetres(std::int64_t whole) {
  return {whole * kPerCentimetre, System::metric};
}

Rational in_inches(Length length);       ///< exact, from either system
Rational in_feet(Length length);         ///< exact, from either system
Rational in_millimetres(Length length);  ///< exact, from either system
Rational in_metres(Length length);       ///< exact, from either system
/// The same length counted in the other system, rounded half up to its count. Never done to what is stored.
Length converted(Length length, System to);

// The readers fold what notation.h lists (½ ′ ″ ’ ” ×, any case, any blanks). A unit that is written always
// wins over what the reader would take a plain number for; a Slip's `at` counts characters of the text as
// typed. Zero is read.

/// Inches as typed: `7`, `7-1/2`, `7½`, `7 1/2`, `5/4`, `1-1/8`, `2.125`, each with or without `"`, `″` or
/// `in`; with `mm`, `cm` or `m` it is metric. A decimal that is no whole 1/64 is a Slip that names the two
/// nearest.
Result<Length> read_inches(std::string_view text);

/// Feet and inches as typed: `16`, `16'`, `16ft`, `16'6"`, `16'6`, `16' 6-1/2"`, `16-6` and `16-6-1/2`
/// (feet-inches), `16.5`, `16½`, `7-1/2'`, `6"`. Decimals of a foot or an inch are taken to the nearest 1/64 in, a half
/// up: `16.4` and `16'4.8"` are 16'4-51/64". `7-1/2` is a Slip (could be 7 ft 1/2 in or 7 1/2 ft; write 7'6" or 7.5);
/// `4.8m`, `480cm`, `4800mm` are metric.
Result<Length> read_feet(std::string_view text);

/// Metric sizes: millimetres unless `cm` or `m` follows. `50`, `47.5`, `5cm`.
Result<Length> read_millimetres(std::string_view text);
/// Metric lengths: metres unless `cm` or `mm` follows. `4.8`, `4.8m`, `480cm`.
Result<Length> read_metres(std::string_view text);

/// What a plain length means in the book: feet, or metres in a metric book.
Result<Length> read_length(std::string_view text, bool metric_book);

/// What is finer than a 64th (kerf, taper, caliper readings): thousandths of an inch, in a metric book hundredths of a
/// millimetre. `0.26`, `5/16` (0.3125, so 313), `7.1`, each with or without its unit. Rounded half up.
Result<std::int64_t> read_mils(std::string_view text, bool metric_book);

std::string write_inches(Length length);  ///< `7-1/2`, `7`, `0-3/4` is `3/4`; metric: `47.5mm`
/// `16`, `16'6"`, `16'6-1/2"`, under a foot `0'6"`; metric: `4.8m`. Always read back by read_feet.
std::string write_feet(Length length);
/// As written in a book of either system, so that read_length gives the same length back: `16`, in a metric
/// book `16'`.
std::string write_length(Length length, bool metric_book);
/// As shown on paper for a customer: `16 ft`, `16 ft 6 in`, `4.8 m`.
std::string spoken_length(Length length);

}  // namespace kerfbook::measure
