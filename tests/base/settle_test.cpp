// Lines that add up to the total printed under them: base/settle.h.
#include "base/settle.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <numeric>
#include <stdexcept>

using kerfbook::Rational;
using namespace kerfbook;

namespace {

std::int64_t sum(const std::vector<std::int64_t>& values) {
  return std::accumulate(values.begin(), values.end(), std::int64_t{0});
}

/// Figures such as a tally has: thirds, sixths, twelfths and sevenths, of either sign.
std::vector<Rational> figures() {
  const auto pairs = *rc::gen::container<std::vector<std::pair<std::int64_t, std::int64_t>>>(rc::gen::pair(
      rc::gen::inRange<std::int64_t>(-5000, 5000), rc::gen::element<std::int64_t>(1, 2, 3, 6, 7, 12, 400)));
  std::vector<Rational> out;
  for (const auto& [num, den] : pairs) out.emplace_back(num, den);
  return out;
}

/// The exact figure rounded down or up to a whole count, and nothing else.
bool is_floor_or_ceiling(const Rational& exact, std::int64_t rounded, std::int64_t power) {
  const Rational off = exact * Rational(power) - Rational(rounded);
  return off < Rational(1) && Rational(-1) < off;
}

}  // namespace

TEST_CASE("three lines of a third add to the whole they make") {
  const std::vector<Rational> thirds(3, Rational(100, 3));  // 33.333 each, 100 together
  CHECK(rounded_total(thirds, 2) == 10000);
  CHECK(settle(thirds, 2, 10000) == std::vector<std::int64_t>{3334, 3333, 3333});
}

TEST_CASE("lines that add up already are rounded and left alone") {
  const std::vector<Rational> lines{Rational(1, 4), Rational(3, 4), Rational(5, 2)};
  CHECK(settle(lines, 2, rounded_total(lines, 2)) == std::vector<std::int64_t>{25, 75, 250});
  CHECK(settle({}, 2, 0).empty());
}

TEST_CASE("a total that is not that of the lines is not met") {
  CHECK_THROWS_AS(settle({Rational(1), Rational(2)}, 0, 4), std::logic_error);
}

TEST_CASE("settled lines always add to the total, each within one unit of its exact figure") {
  CHECK(rc::check("settle", [] {
    const auto exact = figures();
    const int places = *rc::gen::inRange(0, 4);
    const std::int64_t power = std::vector<std::int64_t>{1, 10, 100, 1000}[static_cast<std::size_t>(places)];
    const std::int64_t total = rounded_total(exact, places);
    const auto settled = settle(exact, places, total);
    RC_ASSERT(sum(settled) == total);
    for (std::size_t i = 0; i < exact.size(); ++i) {
      RC_ASSERT(is_floor_or_ceiling(exact[i], settled[i], power));
      if ((exact[i] * Rational(power)).den() == 1)
        RC_ASSERT(Rational(settled[i]) == exact[i] * Rational(power));
    }
    RC_ASSERT(settle(exact, places, total) == settled);
  }));
}

TEST_CASE("in groups, the lines add to their group's sum, the sums to the total, each within one unit") {
  CHECK(rc::check("settle_in_groups", [] {
    const auto exact = figures();
    std::vector<std::size_t> group;
    for (std::size_t i = 0; i < exact.size(); ++i) group.push_back(*rc::gen::inRange<std::size_t>(0, 5));
    const std::int64_t total = rounded_total(exact, 2);
    const auto settled = settle_in_groups(exact, group, 2, total);
    RC_ASSERT(sum(settled) == total);
    for (std::size_t g = 0; g < 5; ++g) {
      Rational whole(0);
      std::int64_t printed = 0;
      for (std::size_t i = 0; i < exact.size(); ++i) {
        if (group[i] != g) continue;
        whole = whole + exact[i];
        printed += settled[i];
      }
      RC_ASSERT(is_floor_or_ceiling(whole, printed, 100));
    }
    for (std::size_t i = 0; i < exact.size(); ++i) RC_ASSERT(is_floor_or_ceiling(exact[i], settled[i], 100));
  }));
}

TEST_CASE("figures over one denominator settle as the fractions they are") {
  CHECK(rc::check("settle over one denominator", [] {
    const Wide under = *rc::gen::element<std::int64_t>(1, 60, 768, 1'000'000, 37'748'736);
    const auto given = *rc::gen::container<std::vector<std::int64_t>>(
        rc::gen::inRange<std::int64_t>(-9'000'000'000, 9'000'000'000));
    const std::vector<Wide> tops(given.begin(), given.end());
    std::vector<Rational> exact;
    std::vector<std::size_t> group;
    for (const Wide top : tops) {
      exact.emplace_back(top, under);
      group.push_back(*rc::gen::inRange<std::size_t>(0, 3));
    }
    const std::int64_t total = rounded_total(exact, 2);
    RC_ASSERT(settle(tops, under, 2, total) == settle(exact, 2, total));
    RC_ASSERT(settle_in_groups(tops, under, group, 2, total) == settle_in_groups(exact, group, 2, total));
  }));
}
