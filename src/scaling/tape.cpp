#include "scaling/tape.h"

#include <optional>
#include <string_view>

#include "base/exact.h"

namespace kerfbook::scaling {
namespace {

constexpr std::int64_t kPerSixteenth = measure::kPerInch / 16;
constexpr std::int64_t kMostInches = 1000;  // more than any log; who asks has bounds of his own

std::optional<Length> tenths(std::string_view text) {
  for (const std::string_view mark : {"\"", "inches", "inch", "in"}) {
    if (text.ends_with(mark)) {
      text.remove_suffix(mark.size());
      break;
    }
  }
  const auto value = read_decimal(text, 2);
  if (!value || text.front() == '-' || *value > Rational(kMostInches)) return std::nullopt;
  return Length{(*value * measure::kPerInch).rounded(0), measure::System::inch};
}

/// A 64th has six decimals.
std::string exact_text(const Rational& value) {
  return shortest(shown(value, 6));
}

}  // namespace

Result<Length> read_tape(const std::string& text) {
  auto read = measure::read_inches(text);
  if (read) return read;
  if (const auto decimal = tenths(text)) return *decimal;
  return read;
}

std::string write_tape(std::int64_t count) {
  const Rational exact(count, measure::kPerInch);
  if (count % kPerSixteenth == 0) return exact_text(exact);
  for (const int places : {1, 2}) {
    std::string text = plain(shown(exact, places));
    if (const auto read = tenths(text); read && read->count == count) return text;
  }
  return exact_text(exact);
}

std::string write_long_tape(Length length, bool with_mark) {
  const bool inch = length.system == measure::System::inch;
  if (inch && length.count % kPerSixteenth != 0) {
    const Rational exact(length.count, measure::kPerFoot);
    for (const int places : {1, 2, 3}) {  // a thousandth of a foot is finer than a 64th
      std::string text = plain(shown(exact, places));
      if (const auto read = measure::read_feet(text); read && *read == length)
        return with_mark ? text + "'" : text;
    }
  }
  const std::string text = measure::write_feet(length);
  return with_mark && inch && length.count % measure::kPerFoot == 0 ? text + "'" : text;
}

}  // namespace kerfbook::scaling
