#include "render/figure.h"

#include <algorithm>
#include <limits>

namespace kerfbook::render {
namespace {

constexpr int kFinePlaces = 6;

Wide power_of_ten(int places) {
  Wide power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return power;
}

std::int64_t rounded(Wide top, Wide under, int places) {
  Wide product = 0;
  if (!__builtin_mul_overflow(top, power_of_ten(places), &product)) return round_half_up(product, under);
  return Rational(top, under).rounded(places);  // in lowest terms it may yet fit
}

}  // namespace

Figure::Figure(const Decimal& value)
    : top_(value.units), under_(power_of_ten(value.places)), places_(value.places) {}

Figure Figure::time(std::int64_t minutes) {
  Figure hours(minutes, 60, 2);
  hours.time_ = true;
  return hours;
}

Decimal Figure::shown() const {
  return {rounded(top_, under_, places_), places_};
}

Decimal Figure::fine() const {
  constexpr Wide kMost = std::numeric_limits<std::int64_t>::max() / 10'000'000;  // a count of millionths fits
  const Wide whole = top_ / under_;
  if (places_ >= kFinePlaces || power_of_ten(places_) % under_ == 0 || whole > kMost || whole < -kMost)
    return shown();
  Decimal value{rounded(top_, under_, kFinePlaces), kFinePlaces};
  while (value.places > places_ && value.units % 10 == 0) {
    value.units /= 10;
    --value.places;
  }
  return value;
}

double Figure::nearest() const {
  return static_cast<double>(static_cast<long double>(top_) / static_cast<long double>(under_));
}

Figure operator+(const Figure& a, const Figure& b) {
  const int places = std::max(a.places_, b.places_);
  Wide top = 0;
  const bool alike = a.under_ == b.under_ && !__builtin_add_overflow(a.top_, b.top_, &top);
  Figure sum = alike ? Figure(top, a.under_, places) : Figure(a.exact() + b.exact(), places);
  sum.time_ = a.time_ && b.time_;
  return sum;
}

bool operator==(const Figure& a, const Figure& b) {
  if (a.places_ != b.places_ || a.time_ != b.time_) return false;
  return a.under_ == b.under_ ? a.top_ == b.top_ : a.exact() == b.exact();
}

}  // namespace kerfbook::render
