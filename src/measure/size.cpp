#include "measure/size.h"
#include "base/text.h"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <vector>

#include "measure/notation.h"
#include "measure/reading.h"

namespace kerfbook::measure {
namespace {

/// In an inch book, two whole numbers of which the lesser is over this are millimetres.
constexpr std::int64_t kMostInchesPlain = 15;
/// In a metric book, a plain section that is no wider than this many millimetres was meant in inches.
constexpr std::int64_t kLeastMillimetresPlain = 12;
/// A log of 8 ft across is the largest believed (common practice, no source); 10 ft leaves room.
constexpr std::int64_t kWidestInches = 120;

std::int64_t multiplied(std::int64_t a, std::int64_t b) {
  std::int64_t product = 0;
  if (__builtin_mul_overflow(a, b, &product)) throw std::overflow_error("a volume grew past 63 bits");
  return product;
}

Wide multiplied_wide(Wide a, Wide b) {
  Wide product = 0;
  if (__builtin_mul_overflow(a, b, &product)) throw std::overflow_error("a volume grew past 127 bits");
  return product;
}

/// Where the plain text has an x: the parts of `2x6x16` as [from, to).
struct Range {
  std::size_t from;
  std::size_t to;
};
std::vector<Range> parts_of(const PlainText& plain) {
  std::vector<Range> parts;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= plain.text.size(); ++i) {
    if (i < plain.text.size() && plain.text[i] != 'x') continue;
    parts.push_back({from, i});
    from = i + 1;
  }
  return parts;
}

struct Dimension {
  Number number;
  Unit unit = Unit::none;
  std::string typed;
  int at = 0;
};

Result<Dimension> read_dimension(const PlainText& plain, Range range, const char* what) {
  Scanner scan(plain, range.from, range.to);
  Dimension out;
  if (scan.done())
    return Slip{std::string("the ") + what + " is missing", "write a size as 2x6", plain.at[range.from]};
  out.at = scan.at();
  const auto number = scan.number();
  if (!number) {
    Slip slip = number.slip();
    if (slip.instead.empty()) slip.instead = "write a size as 2x6, 1-1/8x4 or 5/4x6";
    return slip;
  }
  out.number = *number;
  out.unit = scan.unit();
  out.typed = scan.part();
  if (scan.next_is(',')) {
    std::string with_point = out.typed;
    std::replace(with_point.begin(), with_point.end(), ',', '.');
    return Slip{in_quotes(out.typed) + " has a comma", "write a decimal with a point, as " + with_point,
                scan.at()};
  }
  if (!scan.done()) return Slip{in_quotes(out.typed) + " is no " + what, "write a size as 2x6", scan.at()};
  if (out.unit == Unit::foot)
    return Slip{in_quotes(out.typed) + " is in feet", "write a size in inches, as 2x6", out.at};
  if (number->value.is_zero())
    return Slip{std::string("a ") + what + " of zero", "write a size as 2x6", out.at};
  return out;
}

/// What plain numbers are, when neither dimension has a unit; a Slip when that cannot be.
Result<Unit> plain_unit(const Dimension& thickness, const Dimension& width, bool metric_book) {
  const bool whole = thickness.number.whole && width.number.whole;
  const Rational lesser = std::min(thickness.number.value, width.number.value);
  const Rational greater = std::max(thickness.number.value, width.number.value);
  if (!metric_book) return whole && lesser > Rational(kMostInchesPlain) ? Unit::millimetre : Unit::inch;
  const bool fraction = thickness.number.fraction || width.number.fraction;
  if (fraction || greater <= Rational(kLeastMillimetresPlain)) {
    const std::string typed = thickness.typed + "x" + width.typed;
    return Slip{in_quotes(typed) + " would be millimetres in this book",
                "write 50x150, or " + typed + "\" for inches", thickness.at};
  }
  return Unit::millimetre;
}

Result<Length> length_of(const Dimension& dimension, Unit unit) {
  if (is_metric(unit) && dimension.number.fraction) {
    return Slip{in_quotes(dimension.typed) + " is a fraction of a metric unit", "write it as a decimal, 47.5",
                dimension.at};
  }
  auto length = to_length(dimension.number.value, unit, dimension.typed, dimension.at);
  if (length && in_inches(*length) > Rational(kWidestInches)) {
    return Slip{in_quotes(dimension.typed) + " is wider than any log", "write a size as 2x6", dimension.at};
  }
  return length;
}

Slip wrong_count(const PlainText& plain, const std::vector<Range>& parts, std::size_t wanted) {
  const std::string typed = in_quotes(plain.text);
  if (parts.size() == 1)
    return {typed + " has no width", "write thickness x width, as 2x6", plain.at[parts[0].to]};
  if (wanted == 2 && parts.size() == 3)
    return {typed + " has a length too", "write only the size here, as 2x6", plain.at[parts[1].to]};
  if (parts.size() < wanted)
    return {typed + " has no length", "write it as 2x6x16", plain.at[parts.back().to]};
  return {typed + " has too many measures", "write it as 2x6 or 2x6x16", plain.at[parts[wanted - 1].to]};
}

Result<Size> size_of(const PlainText& plain, Range first, Range second, bool metric_book) {
  const auto thickness = read_dimension(plain, first, "thickness");
  if (!thickness) return thickness.slip();
  const auto width = read_dimension(plain, second, "width");
  if (!width) return width.slip();
  Unit unit1 = thickness->unit;
  Unit unit2 = width->unit;
  if (unit1 == Unit::none && unit2 == Unit::none) {
    const auto unit = plain_unit(*thickness, *width, metric_book);
    if (!unit) return unit.slip();
    unit1 = unit2 = *unit;
  }
  if (unit1 == Unit::none) unit1 = unit2;
  if (unit2 == Unit::none) unit2 = unit1;
  const auto thick = length_of(*thickness, unit1);
  if (!thick) return thick.slip();
  const auto wide = length_of(*width, unit2);
  if (!wide) return wide.slip();
  if (thick->system != wide->system) {
    return Slip{"inches and millimetres in one size", "write both in one of them", width->at};
  }
  const Number& typed = thickness->number;
  const bool quarters = typed.fraction && typed.joiner == 0 && typed.over == 4 && typed.value >= Rational(1);
  return Size{*thick, *wide, quarters};
}

/// Would `2x6` (written without units) be taken for the system it is of?
bool plain_is_understood(const Size& size, bool metric_book) {
  const System system = size.thickness.system;
  const std::int64_t one = system == System::inch ? kPerInch : kPerMillimetre;
  const bool whole = size.thickness.count % one == 0 && size.width.count % one == 0 && !size.quarters;
  const std::int64_t lesser = std::min(size.thickness.count, size.width.count) / one;
  const std::int64_t greater = std::max(size.thickness.count, size.width.count);
  if (metric_book) return system == System::metric && greater > kLeastMillimetresPlain * one;
  return (whole && lesser > kMostInchesPlain) == (system == System::metric);
}

std::string without_unit(const std::string& text) {
  return text.substr(0, text.find("mm"));
}

}  // namespace

Result<Size> read_size(std::string_view text, bool metric_book) {
  const PlainText plain = plain_notation(text);
  const auto parts = parts_of(plain);
  if (parts.size() != 2) return wrong_count(plain, parts, 2);
  return size_of(plain, parts[0], parts[1], metric_book);
}

std::string write_size(const Size& size, bool metric_book) {
  const std::string thickness = size.quarters ? std::to_string(size.thickness.count / (kPerInch / 4)) + "/4"
                                              : without_unit(write_inches(size.thickness));
  std::string text = thickness + "x" + without_unit(write_inches(size.width));
  if (plain_is_understood(size, metric_book)) return text;
  return text + (size.thickness.system == System::metric ? "mm" : "\"");
}

Result<Piece> read_piece(std::string_view text, bool metric_book) {
  const PlainText plain = plain_notation(text);
  const auto parts = parts_of(plain);
  if (parts.size() != 3) return wrong_count(plain, parts, 3);
  const auto size = size_of(plain, parts[0], parts[1], metric_book);
  if (!size) return size.slip();
  const std::string length_text = plain.text.substr(parts[2].from);
  const auto length = read_length(length_text, size->thickness.system == System::metric);
  if (!length) {
    Slip slip = length.slip();
    slip.at += plain.at[parts[2].from];
    return slip;
  }
  return Piece{*size, *length};
}

std::string write_piece(const Piece& piece, bool metric_book) {
  return write_size(piece.size, metric_book) + "x" +
         write_length(piece.length, piece.size.thickness.system == System::metric);
}

Volume volume(const Size& size, Length length, std::int64_t pieces) {
  const std::int64_t section = multiplied(size.thickness.count, size.width.count);
  return {multiplied(multiplied(section, length.count), pieces), size.thickness.system};
}

Rational board_feet(Volume volume) {
  return {volume.count, volume.system == System::inch ? kCountsPerBoardFoot : kMetricCountsPerBoardFoot};
}

Rational cubic_feet(Volume volume) {
  return board_feet(volume) / Rational(12);
}

Rational cubic_metres(Volume volume) {
  if (volume.system == System::metric) return {volume.count, kMetricCountsPerCubicMetre};
  return board_feet(volume) * Rational(kMetricCountsPerBoardFoot, kMetricCountsPerCubicMetre);
}

Volume converted(Volume volume, System to) {
  if (volume.system == to) return volume;
  // 254^3 metric counts are 64^3 inch counts; halved thrice: 127^3 and 32^3
  constexpr Wide kMetric = Wide{127} * 127 * 127;
  constexpr Wide kInch = Wide{32} * 32 * 32;
  const Wide count = volume.count;
  return {
      to == System::metric ? round_half_up(count * kMetric, kInch) : round_half_up(count * kInch, kMetric),
      to};
}

Volume volume_over(const Size& size, Length length, std::int64_t pieces, std::int64_t mils) {
  // inch: a mil is 64/1000 = 8/125 of a count; metric: a hundredth of a mm is 1/10 of a count
  const bool inch = size.thickness.system == System::inch;
  const Wide parts = inch ? 125 : 10;
  const Wide more = Wide{mils} * (inch ? 8 : 1);
  const Wide section = multiplied_wide(size.thickness.count * parts + more, size.width.count * parts + more);
  const Wide all = multiplied_wide(multiplied_wide(section, length.count), pieces);
  return {round_half_up(all, parts * parts), size.thickness.system};
}

}  // namespace kerfbook::measure
