#include "sheet/amount.h"

#include <algorithm>

namespace kerfbook::sheet {

std::optional<Rational> read_quantity(std::string_view text) {
  constexpr int kPlaces = 6;
  constexpr std::int64_t kMostOfAThing = 1'000'000;  // hours, gallons, miles, occurrences of a charge
  const auto value = read_decimal(text, kPlaces);
  if (!value || *value <= Rational(0) || *value > Rational(kMostOfAThing)) return std::nullopt;
  return *value;
}

std::string not_read_because(std::string_view text, const char* what) {
  const bool digits = has_digit(text) && text.find_first_not_of("0123456789.") == std::string_view::npos;
  const std::size_t whole = std::min(text.find('.'), text.size());
  const std::size_t first = std::min(text.find_first_not_of('0'), whole);
  return digits && whole - first > 6 ? "more than any mill's, at most 1,000,000" : what;
}

Amount take_amount(LineReader& line) {
  const Word& first = line.take();
  const std::string& text = first.text;
  const std::size_t end = std::min(text.find_first_not_of("0123456789.,"), text.size());
  Amount amount{text.substr(0, end), lower(text.substr(end)), &first};
  if (amount.unit.empty() && !line.done()) {
    amount.unit_word = &line.take();
    amount.unit = lower(amount.unit_word->text);
  }
  return amount;
}

}  // namespace kerfbook::sheet
