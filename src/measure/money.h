// money.h -- sums in whole minor units (cents), rates as exact decimals.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::measure {

/// A sum in the book's currency, counted in minor units. Adding throws std::overflow_error past 63 bits.
struct Money {
  std::int64_t minor = 0;
  auto operator<=>(const Money&) const = default;
  friend Money operator+(Money a, Money b);
  friend Money operator-(Money a, Money b);
};

/// The most units of the currency a sum that is typed may have, and a price of one thing: what they come to in a book of
/// many years stays within 63 bits of the smallest unit.
constexpr std::int64_t kMostMoney = 10'000'000'000;
constexpr std::int64_t kDearest = 10'000'000;

/// How the book's currency is written. Set in the mill file.
struct Currency {
  std::string sign = "$";
  bool sign_after = false;  ///< "12.50 kr"
  int places = 2;           ///< minor units in a unit: 10^places
  char decimal_mark = '.';
  char thousands = ',';  ///< '\0' = digits are not grouped
  bool operator==(const Currency&) const = default;
};

/// About how many of the currency's units one dollar, pound or euro comes to: 1 for those, 20 for others, 200 where the
/// currency has no smaller unit. Round numbers of our own, for telling an implausible price from a dear one.
std::int64_t money_scale(const Currency& currency);

/// quantity x rate, rounded half up once, to the minor unit.
Money priced(const Rational& quantity, const Rational& rate, int places = 2);

/// `1882.31`, `$400`, `-5.00`; at most kMostMoney.
Result<Money> read_money(std::string_view text, int places = 2);
std::string write_money(Money sum, const Currency& currency);  ///< `$1,882.31`
std::string plain_money(Money sum, int places = 2);            ///< `1882.31`

}  // namespace kerfbook::measure
