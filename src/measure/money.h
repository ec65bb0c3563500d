// money.h -- sums in whole minor units (cents), rates as exact decimals.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::measure {

/// A sum in the book's currency, counted in minor units.
struct Money {
  std::int64_t minor = 0;
  auto operator<=>(const Money&) const = default;
  friend Money operator+(Money a, Money b) { return {a.minor + b.minor}; }
  friend Money operator-(Money a, Money b) { return {a.minor - b.minor}; }
};

/// How the book's currency is written. Set in the mill file.
struct Currency {
  std::string sign = "$";
  bool sign_after = false;  ///< "12.50 kr"
  int places = 2;           ///< minor units in a unit: 10^places
  char decimal_mark = '.';
  char thousands = ',';  ///< '\0' = digits are not grouped
  bool operator==(const Currency&) const = default;
};

/// quantity x rate, rounded half up once, to the minor unit.
Money priced(const Rational& quantity, const Rational& rate, int places = 2);

Result<Money> read_money(std::string_view text, int places = 2);  ///< `1882.31`, `$400`, `-5.00`
std::string write_money(Money sum, const Currency& currency);     ///< `$1,882.31`
std::string plain_money(Money sum, int places = 2);               ///< `1882.31`

}  // namespace kerfbook::measure
