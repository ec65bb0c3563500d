// length_read.cpp -- lengths as people type them. Printing and conversion are in length.cpp.
#include "base/text.h"
#include "measure/length.h"

#include <algorithm>
#include "measure/notation.h"
#include "measure/reading.h"

namespace kerfbook::measure {
namespace {

/// Longer than any day's lineal footage; keeps a volume of any believable number of pieces within 63 bits.
constexpr std::int64_t kMostFeet = 100'000;

std::int64_t counts_per(Unit unit) {
  switch (unit) {
    case Unit::foot:
      return kPerFoot;
    case Unit::millimetre:
      return kPerMillimetre;
    case Unit::centimetre:
      return kPerCentimetre;
    case Unit::metre:
      return kPerMetre;
    case Unit::inch:
    case Unit::none:
      break;
  }
  return kPerInch;
}

/// A length in the form a person would have typed for `unit`.
std::string as_typed(Length length, Unit unit) {
  return unit == Unit::foot || unit == Unit::metre ? write_feet(length) : write_inches(length);
}

Slip trailing(Scanner& scan) {
  if (scan.next_is(',')) {
    std::string with_point = scan.part();
    std::replace(with_point.begin(), with_point.end(), ',', '.');
    return {in_quotes(scan.part()) + " has a comma", "write a decimal with a point, as " + with_point,
            scan.at()};
  }
  return {in_quotes(scan.part()) + " goes on after the length", "leave a blank before what follows",
          scan.at()};
}

/// The number a measure begins with. A Slip that has no advice of its own gets the example.
Result<Number> first_number(Scanner& scan, const std::string& missing, const std::string& example) {
  if (scan.done()) return Slip{missing, "write it as " + example, 0};
  auto number = scan.number();
  if (number || !number.slip().instead.empty()) return number;
  return Slip{number.slip().what, "write it as " + example, number.slip().at};
}

/// Tapes are read in tenths and hundredths, of a foot or of an inch, so the decimals of a length are taken to the nearest
/// 1/64 in, a half up: 16.4 ft is 16 ft 4.8 in, kept as 16'4-51/64".
Rational to_64ths(const Rational& inches) {
  return {(inches * Rational(kPerInch)).rounded(0), kPerInch};
}

/// One number with or without a unit, and nothing after it.
Result<Length> read_simple(std::string_view text, Unit plain_unit, const std::string& example) {
  Scanner scan(text);
  const int start = scan.at();
  const auto number = first_number(scan, "a size is missing", example);
  if (!number) return number.slip();
  Unit unit = scan.unit();
  if (!scan.done()) return trailing(scan);
  if (unit == Unit::none) unit = plain_unit;
  if (unit == Unit::foot) {
    const auto meant = to_length(number->value, unit, scan.part(), start);
    if (!meant) return meant.slip();
    return Slip{in_quotes(scan.part()) + " is in feet where inches are wanted",
                "write " + write_inches(*meant), start};
  }
  if (is_metric(unit) && number->fraction) {
    return Slip{in_quotes(scan.part()) + " is a fraction of a metric unit", "write it as a decimal, 47.5",
                start};
  }
  return to_length(number->value, unit, scan.part(), start);
}

/// The inches of a feet-and-inches length: a number, a mark or none, the end.
Result<Length> read_rest_in_inches(Scanner& scan, const Number& feet_typed, int start) {
  const int at = scan.at();
  const auto inches_typed = scan.number();
  if (!inches_typed) return inches_typed.slip();
  const Unit unit = scan.unit();
  if (unit != Unit::none && unit != Unit::inch) {
    return Slip{in_quotes(scan.part()) + " mixes units", "write it as 16'6\"", at};
  }
  if (!scan.done()) return trailing(scan);
  if (!feet_typed.whole)
    return Slip{in_quotes(scan.part()) + " has a part of a foot and inches too", "write it as 16'6\"", start};
  const Rational inches = inches_typed->decimal ? to_64ths(inches_typed->value) : inches_typed->value;
  const Rational total = feet_typed.value * Rational(12) + inches;
  auto length = to_length(total, Unit::inch, scan.part(), at);
  if (length && inches_typed->value >= Rational(12)) {
    return Slip{in_quotes(scan.part()) + " has 12 inches or more beside the feet",
                "write " + write_feet(*length) + " if that is meant", at};
  }
  return length;
}

/// `7-1/2` and `1/2` where feet are wanted: nobody can tell what was meant.
Slip ambiguous(const Scanner& scan, const Number& number, int start) {
  const std::string typed = in_quotes(scan.part());
  if (number.joiner == 0) return {typed + " could be feet or inches", "write it as 6\" or 0.5", start};
  const auto whole = static_cast<std::int64_t>(number.value.num() / number.value.den());
  const auto in_feet = to_length(number.value, Unit::foot, scan.part(), start);
  const auto in_both =
      to_length(Rational(12 * whole) + number.value - Rational(whole), Unit::inch, scan.part(), start);
  if (!in_feet || !in_both)
    return {typed + " could be feet or feet and inches", "write it as 7'6\" or 7.5", start};
  return {typed + " could be a part of a foot or inches",
          "write " + write_feet(*in_feet) + " or " + write_feet(*in_both), start};
}

/// Feet and inches, or metres: what piece and log lengths are written in.
Result<Length> read_long(std::string_view text, Unit plain_unit, const std::string& example) {
  Scanner scan(text);
  const int start = scan.at();
  const auto number = first_number(scan, "a length is missing", example);
  if (!number) return number.slip();
  Unit unit = scan.unit();
  if (unit == Unit::foot && !scan.done()) {
    scan.take('-');
    return read_rest_in_inches(scan, *number, start);
  }
  const bool plain_feet = unit == Unit::none && plain_unit == Unit::foot;
  if (plain_feet && scan.take('-')) return read_rest_in_inches(scan, *number, start);
  if (!scan.done()) return trailing(scan);
  const bool dashed = number->joiner == '-' || (number->joiner == ' ' && unit == Unit::none);
  const bool bare_fraction = number->joiner == 0 && unit == Unit::none;
  if (number->fraction && (unit == Unit::inch || plain_feet) && (dashed || bare_fraction)) {
    if (unit == Unit::none || number->joiner == '-') return ambiguous(scan, *number, start);
  }
  if (unit == Unit::none) unit = plain_unit;
  if (is_metric(unit) && number->fraction) {
    return Slip{in_quotes(scan.part()) + " is a fraction of a metric unit", "write it as a decimal, 4.8",
                start};
  }
  if (number->decimal && !is_metric(unit)) {
    const Rational inches = unit == Unit::foot ? number->value * Rational(12) : number->value;
    return to_length(to_64ths(inches), Unit::inch, scan.part(), start);
  }
  return to_length(number->value, unit, scan.part(), start);
}

}  // namespace

Result<Length> to_length(const Rational& value, Unit unit, const std::string& typed, int at) {
  const System system = is_metric(unit) ? System::metric : System::inch;
  const Rational counts = value * Rational(counts_per(unit));
  const Rational most = system == System::metric ? in_millimetres(feet(kMostFeet)) * Rational(kPerMillimetre)
                                                 : Rational(feet(kMostFeet).count);
  if (counts > most)
    return Slip{in_quotes(typed) + " is longer than anything a mill saws", "look at its figures again", at};
  const auto below = static_cast<std::int64_t>(counts.num() / counts.den());
  if (counts == Rational(below)) return Length{below, system};
  const std::string step = system == System::metric ? "tenth of a millimetre" : "64th of an inch";
  return Slip{in_quotes(typed) + " is no whole " + step,
              "write " + as_typed({below, system}, unit) + " or " + as_typed({below + 1, system}, unit), at};
}

Result<std::int64_t> read_mils(std::string_view text, bool metric_book) {
  Scanner scan(text);
  const std::string example = metric_book ? "7.1" : "0.26 or 1/4";
  const int start = scan.at();
  const auto number = first_number(scan, "a measure is missing", example);
  if (!number) return Slip{number.slip().what, "write it as " + example, number.slip().at};
  const Unit unit = scan.unit();
  if (!scan.done()) return trailing(scan);
  if (unit == Unit::foot)
    return Slip{in_quotes(scan.part()) + " is in feet", "write it as " + example, start};
  const bool metric = unit == Unit::none ? metric_book : is_metric(unit);
  const Rational millimetres = number->value * Rational(counts_per(unit), kPerMillimetre);
  const Rational inches = unit == Unit::none || !metric ? number->value : millimetres / Rational(254, 10);
  if (metric_book) {
    const Rational all = !metric              ? inches * Rational(254, 10)
                         : unit == Unit::none ? number->value
                                              : millimetres;
    return all.rounded(2);
  }
  return inches.rounded(3);
}

Result<Length> read_inches(std::string_view text) {
  return read_simple(text, Unit::inch, "7-1/2");
}
Result<Length> read_millimetres(std::string_view text) {
  return read_simple(text, Unit::millimetre, "50 or 47.5");
}
Result<Length> read_feet(std::string_view text) {
  return read_long(text, Unit::foot, "16, 16'6\" or 16.5");
}
Result<Length> read_metres(std::string_view text) {
  return read_long(text, Unit::metre, "4.8");
}
Result<Length> read_length(std::string_view text, bool metric_book) {
  return metric_book ? read_metres(text) : read_feet(text);
}

}  // namespace kerfbook::measure
