#include "measure/money.h"

#include <array>

#include "base/checked_sum.h"
#include "base/text.h"

namespace kerfbook::measure {
namespace {

constexpr std::array<std::string_view, 5> kSigns{"$", "£", "€", "¥", "kr"};

/// Takes a currency sign off the front or the end.
std::string_view without_sign(std::string_view text) {
  for (const std::string_view sign : kSigns) {
    if (text.starts_with(sign)) return trim(text.substr(sign.size()));
    if (text.ends_with(sign)) return trim(text.substr(0, text.size() - sign.size()));
  }
  return text;
}

}  // namespace

Money operator+(Money a, Money b) {
  return {checked_sum(a.minor, b.minor)};
}

Money operator-(Money a, Money b) {
  return {checked_sum(a.minor, -b.minor)};
}

std::int64_t money_scale(const Currency& currency) {
  constexpr std::int64_t kOther = 20;
  constexpr std::int64_t kNoCents = 200;
  if (currency.places == 0) return kNoCents;
  const bool large =
      currency.sign.find('$') != std::string::npos || currency.sign == "£" || currency.sign == "€";
  return large ? 1 : kOther;
}

Money priced(const Rational& quantity, const Rational& rate, int places) {
  return {(quantity * rate).rounded(places)};
}

Result<Money> read_money(std::string_view text, int places) {
  std::string_view rest = trim(text);
  bool negative = rest.starts_with('-');
  if (negative) rest = trim(rest.substr(1));
  rest = without_sign(rest);
  if (!negative && rest.starts_with('-')) {
    negative = true;
    rest = trim(rest.substr(1));
  }
  const std::string typed = in_quotes(trim(text));
  if (rest.empty() || rest.starts_with('-'))
    return Slip{typed + " is not a sum of money", "write it as 1882.31", 0};
  const auto value = read_decimal(rest, places);
  if (!value) {
    const auto finer = read_decimal(rest);
    if (finer)
      return Slip{typed + " has more than " + std::to_string(places) + " decimals",
                  "write " + plain(shown(*finer, places)), 0};
    return Slip{typed + " is not a sum of money", value.slip().instead, 0};
  }
  if (*value > Rational(kMostMoney) || *value < Rational(-kMostMoney))
    return Slip{typed + " is more money than a mill's book holds",
                "write at most " + grouped({kMostMoney, 0}), 0};
  const std::int64_t minor = value->rounded(places);
  return Money{negative ? -minor : minor};
}

std::string write_money(Money sum, const Currency& currency) {
  const bool negative = sum.minor < 0;
  const Decimal size{negative ? -sum.minor : sum.minor, currency.places};
  std::string digits = grouped(size, currency.thousands, currency.decimal_mark);
  std::erase(digits, '\0');  // '\0' as the thousands mark: no grouping
  const std::string text = currency.sign_after ? digits + " " + currency.sign : currency.sign + digits;
  return negative ? "-" + text : text;
}

std::string plain_money(Money sum, int places) {
  return plain(Decimal{sum.minor, places});
}

}  // namespace kerfbook::measure
