#include "measure/length.h"

#include <array>

#include "measure/reading.h"

namespace kerfbook::measure {
namespace {

/// 1 inch = 254 counts of 1/10 mm.
constexpr std::int64_t kMetricPerInch = 254;

/// `whole-num/64` in lowest terms, of a count of 1/64 inch that is not negative.
std::string mixed(std::int64_t count) {
  const std::int64_t whole = count / kPerInch;
  const Rational rest(count % kPerInch, kPerInch);
  if (rest.is_zero()) return std::to_string(whole);
  const std::string fraction = std::to_string(static_cast<std::int64_t>(rest.num())) + "/" +
                               std::to_string(static_cast<std::int64_t>(rest.den()));
  return whole == 0 ? fraction : std::to_string(whole) + "-" + fraction;
}

struct FeetAndInches {
  std::int64_t feet;
  std::string inches;  ///< empty when there are none
};

FeetAndInches parts_of(std::int64_t count) {
  const std::int64_t rest = count % kPerFoot;
  return {count / kPerFoot, rest == 0 ? "" : mixed(rest)};
}

}  // namespace

Rational in_inches(Length length) {
  return {length.count, length.system == System::inch ? kPerInch : kMetricPerInch};
}

Rational in_feet(Length length) {
  return in_inches(length) / Rational(12);
}

Rational in_millimetres(Length length) {
  if (length.system == System::metric) return {length.count, kPerMillimetre};
  return {Wide{length.count} * kMetricPerInch, Wide{kPerInch} * kPerMillimetre};
}

Rational in_metres(Length length) {
  return in_millimetres(length) / Rational(1000);
}

Length converted(Length length, System to) {
  if (length.system == to) return length;
  if (to == System::metric) return {round_half_up(Wide{length.count} * kMetricPerInch, kPerInch), to};
  return {round_half_up(Wide{length.count} * kPerInch, kMetricPerInch), to};
}

std::string write_inches(Length length) {
  if (length.count < 0) return "-" + write_inches({-length.count, length.system});
  return length.system == System::inch ? mixed(length.count) : shortest({length.count, 1}) + "mm";
}

std::string write_feet(Length length) {
  if (length.count < 0) return "-" + write_feet({-length.count, length.system});
  if (length.system == System::metric) return shortest({length.count, 4}) + "m";
  const auto [feet, inches] = parts_of(length.count);
  return std::to_string(feet) + (inches.empty() ? "" : "'" + inches + "\"");
}

std::string write_length(Length length, bool metric_book) {
  const std::string text = write_feet(length);
  const bool bare = length.system == System::inch && length.count % kPerFoot == 0;
  return metric_book && bare ? text + "'" : text;
}

std::string spoken_length(Length length) {
  if (length.count < 0) return "-" + spoken_length({-length.count, length.system});
  if (length.system == System::metric) return shortest({length.count, 4}) + " m";
  const auto [feet, inches] = parts_of(length.count);
  if (inches.empty()) return std::to_string(feet) + " ft";
  return (feet == 0 ? "" : std::to_string(feet) + " ft ") + inches + " in";
}

}  // namespace kerfbook::measure
