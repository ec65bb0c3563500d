#include "tuning/numbers.h"

#include <cmath>

namespace kerfbook::tuning {

Sample sample_of(const std::vector<double>& numbers) {
  Sample out;
  out.count = numbers.size();
  if (numbers.empty()) return out;
  const auto count = static_cast<double>(numbers.size());
  // From the first number on, so that what all have in common does not eat the digits of what they differ in.
  double sum = 0;
  for (const double number : numbers) sum += number - numbers.front();
  out.mean = numbers.front() + sum / count;
  if (numbers.size() < 2) return out;
  double squares = 0;
  for (const double number : numbers) squares += (number - out.mean) * (number - out.mean);
  out.spread = std::sqrt(squares / (count - 1));
  return out;
}

double as_double(const Rational& number) {
  return static_cast<double>(number.num()) / static_cast<double>(number.den());
}

}  // namespace kerfbook::tuning
