// exact.h -- exact numbers and THE rounding rule. No floating point is stored, billed or totalled anywhere.
//
// The one rounding rule of the program: a number is kept exact until it is shown or billed, and is then
// rounded once, to the nearest step, an exact half going away from zero ("half up" on a bill).
// Log rules that round otherwise (down, alternate halves) do so in scaling/, as the rule's own definition.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace kerfbook {

__extension__ using Wide = __int128;  ///< for products of exact integers before the one rounding

/// num / den rounded half away from zero. `den` > 0. Throws std::overflow_error when the answer needs > 63 bits.
std::int64_t round_half_up(Wide num, Wide den);

/// An exact fraction. `den` > 0 always; kept in lowest terms.
class Rational {
 public:
  constexpr Rational() = default;
  constexpr Rational(std::int64_t whole)
      : num_(whole) {}           // NOLINT(google-explicit-constructor): a count is exact
  Rational(Wide num, Wide den);  ///< `den` != 0; the sign goes to the numerator

  [[nodiscard]] Wide num() const noexcept { return num_; }
  [[nodiscard]] Wide den() const noexcept { return den_; }
  [[nodiscard]] bool is_zero() const noexcept { return num_ == 0; }
  [[nodiscard]] bool is_negative() const noexcept { return num_ < 0; }

  Rational operator-() const;
  friend Rational operator+(const Rational& a, const Rational& b);
  friend Rational operator-(const Rational& a, const Rational& b);
  friend Rational operator*(const Rational& a, const Rational& b);
  friend Rational operator/(const Rational& a,
                            const Rational& b);  ///< throws std::domain_error when b is zero
  friend bool operator==(const Rational& a, const Rational& b) = default;
  friend std::strong_ordering operator<=>(const Rational& a, const Rational& b);

  /// Rounded half away from zero to `places` decimals, as a count of 10^-places.
  [[nodiscard]] std::int64_t rounded(int places) const;

 private:
  Wide num_ = 0;
  Wide den_ = 1;
};

/// A decimal number as it is shown: `units` counts of 10^-places.
struct Decimal {
  std::int64_t units = 0;
  int places = 0;
  bool operator==(const Decimal&) const = default;
};

/// `r` as shown with so many places, by the one rounding rule.
Decimal shown(const Rational& r, int places);

/// Reads "-12.5", "1,234.50" is refused (say so), ".5" and "5." are read. Up to `max_places` decimals.
Result<Rational> read_decimal(std::string_view text, int max_places = 9);

/// Plain digits, point as decimal mark, no grouping: "1560.67", "-0.50".
std::string plain(const Decimal& value);

/// The same without idle zeros: "4.8" and "2", not "4.80" and "2.00".
std::string shortest(const Decimal& value);

/// As a person reads it: thousands grouped, marks chosen by setting: "1,560.67".
std::string grouped(const Decimal& value, char thousands = ',', char decimal_mark = '.');

}  // namespace kerfbook
