#include "base/exact.h"
#include "base/text.h"

#include <cstdlib>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace kerfbook {
namespace {

Wide magnitude(Wide value) {
  return value < 0 ? -value : value;
}

bool is_short(Wide value) {
  return value >= 0 && value <= std::numeric_limits<std::int64_t>::max();
}

Wide greatest_common(Wide a, Wide b) {
  while (b != 0) {
    if (is_short(a) && is_short(b)) {
      return std::gcd(static_cast<std::int64_t>(a), static_cast<std::int64_t>(b));
    }
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

Wide multiply(Wide a, Wide b) {
  Wide product = 0;
  if (__builtin_mul_overflow(a, b, &product)) throw std::overflow_error("a number grew past 127 bits");
  return product;
}

Wide add(Wide a, Wide b) {
  Wide sum = 0;
  if (__builtin_add_overflow(a, b, &sum)) throw std::overflow_error("a number grew past 127 bits");
  return sum;
}

std::int64_t narrowed(Wide value) {
  if (value > std::numeric_limits<std::int64_t>::max() || value < std::numeric_limits<std::int64_t>::min()) {
    throw std::overflow_error("a number grew past 63 bits");
  }
  return static_cast<std::int64_t>(value);
}

Wide power_of_ten(int places) {
  Wide power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return power;
}

}  // namespace

std::int64_t round_half_up(Wide num, Wide den) {
  const Wide size = magnitude(num);
  if (is_short(size) && is_short(den)) {  // as nearly always; a wide division takes many times as long
    const auto short_size = static_cast<std::int64_t>(size);
    const auto short_den = static_cast<std::int64_t>(den);
    std::int64_t whole = short_size / short_den;
    const std::int64_t rest = short_size % short_den;
    if (rest >= short_den - rest) ++whole;
    return num < 0 ? -whole : whole;
  }
  Wide whole = size / den;
  const Wide rest = size % den;
  if (rest >= den - rest) ++whole;
  return narrowed(num < 0 ? -whole : whole);
}

Rational::Rational(Wide num, Wide den) : num_(num), den_(den) {
  if (den_ == 0) throw std::domain_error("division by nothing");
  if (den_ < 0) {
    num_ = -num_;
    den_ = -den_;
  }
  const Wide common = greatest_common(magnitude(num_), den_);
  if (common > 1) {
    num_ /= common;
    den_ /= common;
  }
}

Rational Rational::operator-() const {
  return {-num_, den_};
}

Rational operator+(const Rational& a, const Rational& b) {
  const Wide common = greatest_common(a.den_, b.den_);
  const Wide a_scale = b.den_ / common;
  const Wide b_scale = a.den_ / common;
  return {add(multiply(a.num_, a_scale), multiply(b.num_, b_scale)), multiply(a.den_, a_scale)};
}

Rational operator-(const Rational& a, const Rational& b) {
  return a + (-b);
}

Rational operator*(const Rational& a, const Rational& b) {
  const Rational left(a.num_, b.den_);
  const Rational right(b.num_, a.den_);
  return {multiply(left.num_, right.num_), multiply(left.den_, right.den_)};
}

Rational operator/(const Rational& a, const Rational& b) {
  if (b.num_ == 0) throw std::domain_error("division by nothing");
  return a * Rational(b.den_, b.num_);
}

std::strong_ordering operator<=>(const Rational& a, const Rational& b) {
  const Wide left = multiply(a.num_, b.den_);
  const Wide right = multiply(b.num_, a.den_);
  if (left < right) return std::strong_ordering::less;
  return left > right ? std::strong_ordering::greater : std::strong_ordering::equal;
}

std::int64_t Rational::rounded(int places) const {
  return round_half_up(multiply(num_, power_of_ten(places)), den_);
}

Decimal shown(const Rational& r, int places) {
  return {r.rounded(places), places};
}

Result<Rational> read_decimal(std::string_view text, int max_places) {
  std::string_view rest = text;
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative) rest.remove_prefix(1);
  const auto slip = [&](std::string instead) {
    return Slip{in_quotes(text) + " is not a number", std::move(instead), 0};
  };
  if (rest.find(',') != std::string_view::npos) return slip("write it without commas, as 1234.5");
  Wide units = 0;
  int places = -1;
  int digits = 0;
  for (const char c : rest) {
    if (c == '.' && places < 0) {
      places = 0;
    } else if (is_digit(c)) {
      units = units * 10 + (c - '0');
      ++digits;
      if (places >= 0) ++places;
    } else {
      return slip("write digits, as 12 or 12.5");
    }
    if (digits > 18) return slip("that is more digits than a mill needs; at most 18");
  }
  if (digits == 0) return slip("write digits, as 12 or 12.5");
  if (places > max_places) return slip("at most " + std::to_string(max_places) + " decimals");
  return Rational(negative ? -units : units, power_of_ten(places < 0 ? 0 : places));
}

std::string plain(const Decimal& value) {
  const bool negative = value.units < 0;
  std::string digits = std::to_string(value.units);
  if (negative) digits.erase(0, 1);
  const auto places = static_cast<std::size_t>(value.places);
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  if (places > 0) digits.insert(digits.size() - places, ".");
  return negative ? "-" + digits : digits;
}

std::string shortest(const Decimal& value) {
  std::string text = plain(value);
  if (value.places == 0) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string grouped(const Decimal& value, char thousands, char decimal_mark) {
  std::string text = plain(value);
  const std::size_t first = text.front() == '-' ? 1 : 0;
  const std::size_t point = text.find('.');
  std::size_t end = point == std::string::npos ? text.size() : point;
  if (point != std::string::npos) text[point] = decimal_mark;
  while (end > first + 3) {
    end -= 3;
    text.insert(end, 1, thousands);
  }
  return text;
}

}  // namespace kerfbook
