#include "tuning/balance.h"

#include <algorithm>
#include <cmath>

#include "tuning/numbers.h"

namespace kerfbook::tuning {

namespace {

/// The x of (thickness + x) (width + x) = area, in whole steps.
Rational oversize(const Section& nominal, const Rational& area, const Rational& step) {
  const double half = as_double(nominal.thickness + nominal.width) / 2;
  const double over = -half + std::sqrt(std::max(half * half + as_double(area - nominal.area()), 0.0));
  return Rational(std::llround(over / as_double(step))) * step;
}

}  // namespace

Section section_cut(const Section& nominal, const Rational& area, const std::vector<Section>& targets,
                    const Rational& step) {
  const Section* nearest = nullptr;
  Rational least(1, 10'000);
  for (const auto& target : targets) {
    const Rational off = target.area() / area - Rational(1);
    const Rational size = off.is_negative() ? -off : off;
    if (size >= least) continue;
    nearest = &target;
    least = size;
  }
  if (nearest != nullptr) return *nearest;
  const Rational over = oversize(nominal, area, step);
  return {nominal.thickness + over, nominal.width + over};
}

Rational sawdust(const Section& section, const Rational& total_length, const Kerfs& kerfs) {
  const Rational taken = (section.thickness + kerfs.head) * (section.width + kerfs.edger + kerfs.third);
  return (taken - section.area()) * total_length;
}

Balance& Balance::operator+=(const Balance& more) {
  logs = logs + more.logs;
  lumber = lumber + more.lumber;
  sawdust = sawdust + more.sawdust;
  return *this;
}

std::optional<Rational> overrun_percent(const Rational& lumber, const Rational& scale) {
  if (scale.is_zero()) return std::nullopt;
  return (lumber / scale - Rational(1)) * Rational(100);
}

std::optional<Rational> percent_of_logs(const Rational& part, const Balance& balance) {
  if (balance.logs.is_zero()) return std::nullopt;
  return part * 100 / balance.logs;
}

}  // namespace kerfbook::tuning
