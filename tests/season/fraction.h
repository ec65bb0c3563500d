// fraction.h -- exact fractions for the reckoning, which shares no arithmetic with the program it checks.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <string_view>

namespace reckoning {

__extension__ using Big = __int128;

/// A fraction in lowest terms, the denominator over 0. Throws std::overflow_error past 127 bits: never a wrong figure.
class Fraction {
 public:
  Fraction() = default;
  Fraction(std::int64_t whole) : num_(whole) {}  // NOLINT(google-explicit-constructor): a count is exact
  Fraction(Big num, Big den) : num_(num), den_(den) { lowest(); }

  [[nodiscard]] bool is_zero() const { return num_ == 0; }
  [[nodiscard]] bool is_negative() const { return num_ < 0; }

  friend Fraction operator+(const Fraction& a, const Fraction& b) {
    const Big common = divisor(a.den_, b.den_);
    return {plus(times(a.num_, b.den_ / common), times(b.num_, a.den_ / common)),
            times(a.den_ / common, b.den_)};
  }
  friend Fraction operator-(const Fraction& a) { return {-a.num_, a.den_}; }
  friend Fraction operator-(const Fraction& a, const Fraction& b) { return a + -b; }
  friend Fraction operator*(const Fraction& a, const Fraction& b) {
    const Big across = divisor(a.num_, b.den_);
    const Big back = divisor(b.num_, a.den_);
    return {times(a.num_ / across, b.num_ / back), times(a.den_ / back, b.den_ / across)};
  }
  friend Fraction operator/(const Fraction& a, const Fraction& b) {
    if (b.is_zero()) throw std::domain_error("a fraction over 0");
    return a * Fraction(b.den_, b.num_);
  }
  Fraction& operator+=(const Fraction& more) { return *this = *this + more; }
  friend bool operator==(const Fraction& a, const Fraction& b) = default;
  friend bool operator<(const Fraction& a, const Fraction& b) { return (a - b).num_ < 0; }

  /// The largest whole number not over it, for figures of 0 and more.
  [[nodiscard]] std::int64_t whole() const { return static_cast<std::int64_t>(num_ / den_); }

  /// The nearest count of 1/parts, an exact half going away from 0.
  [[nodiscard]] Fraction nearest(std::int64_t parts) const {
    const Big scaled = times(num_ < 0 ? -num_ : num_, parts);
    const Big count = (2 * scaled + den_) / (2 * den_);
    return {num_ < 0 ? -count : count, parts};
  }

  /// "12.5": the figure with as many decimals as it takes, six at most.
  [[nodiscard]] std::string text() const {
    constexpr std::int64_t kMillion = 1'000'000;
    const Fraction shown = nearest(kMillion);
    const Big millionths = shown.num_ * (kMillion / shown.den_);
    const auto size = static_cast<std::uint64_t>(millionths < 0 ? -millionths : millionths);
    std::string decimals = std::to_string(size % kMillion + kMillion).substr(1);
    decimals.erase(decimals.find_last_not_of('0') + 1);
    return (millionths < 0 ? "-" : "") + std::to_string(size / kMillion) +
           (decimals.empty() ? "" : "." + decimals);
  }

 private:
  static Big divisor(Big a, Big b) {
    if (a < 0) a = -a;
    while (b != 0) {
      const Big rest = a % b;
      a = b;
      b = rest;
    }
    return a == 0 ? 1 : a;
  }
  static Big times(Big a, Big b) {
    Big product = 0;
    if (__builtin_mul_overflow(a, b, &product)) throw std::overflow_error("a fraction past 127 bits");
    return product;
  }
  static Big plus(Big a, Big b) {
    Big sum = 0;
    if (__builtin_add_overflow(a, b, &sum)) throw std::overflow_error("a fraction past 127 bits");
    return sum;
  }
  void lowest() {
    const Big common = divisor(num_, den_);
    num_ /= common;
    den_ /= common;
    if (den_ < 0) {
      num_ = -num_;
      den_ = -den_;
    }
  }

  Big num_ = 0;
  Big den_ = 1;
};

/// "12", "-0.75", "5/4", "1-5/8".
inline Fraction fraction_of(std::string_view text) {
  if (const auto dash = text.find('-', 1); dash != std::string_view::npos)
    return fraction_of(text.substr(0, dash)) + fraction_of(text.substr(dash + 1));
  if (const auto stroke = text.find('/'); stroke != std::string_view::npos)
    return fraction_of(text.substr(0, stroke)) / fraction_of(text.substr(stroke + 1));
  std::int64_t digits = 0;
  std::int64_t parts = 1;
  bool behind_point = false;
  for (const char c : text) {
    if (c == '-') continue;
    if (c == '.') {
      behind_point = true;
      continue;
    }
    if (c < '0' || c > '9') throw std::invalid_argument("no number: " + std::string(text));
    digits = digits * 10 + (c - '0');
    if (behind_point) parts *= 10;
  }
  return {text.starts_with('-') ? -digits : digits, parts};
}

}  // namespace reckoning
