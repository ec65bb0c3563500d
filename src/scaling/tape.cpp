#include "scaling/tape.h"

#include <optional>
#include <string_view>

#include "base/exact.h"

namespace kerfbook::scaling {
namespace {

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

}  // namespace

Result<Length> read_tape(const std::string& text) {
  auto read = measure::read_inches(text);
  if (read) return read;
  if (const auto decimal = tenths(text)) return *decimal;
  return read;
}

std::string short_decimal(const Rational& value) {
  std::string text = plain(shown(value, 6));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string write_tape(std::int64_t count) {
  const Rational exact(count, measure::kPerInch);
  if (count % (measure::kPerInch / 16) == 0) return short_decimal(exact);
  for (const int places : {1, 2}) {
    std::string text = plain(shown(exact, places));
    if (const auto read = tenths(text); read && read->count == count) return text;
  }
  return short_decimal(exact);
}

}  // namespace kerfbook::scaling
