// two_samples_test.cpp -- tests of two means and the samples they need, against published examples.
#include "tuning/two_samples.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <vector>

#include "tuning/boards_of.h"

using kerfbook::test::boards_of;
using kerfbook::test::to;
using namespace kerfbook::tuning;

TEST_CASE("two samples of cars: means, spreads and both tests") {
  const auto cars = boards_of("tuning/miles.csv");
  REQUIRE(cars.size() == 2);
  const auto first = sample_of(cars[0]), second = sample_of(cars[1]);
  CHECK(first.count == 249);
  CHECK(second.count == 79);
  CHECK(to(first.mean, 6) == doctest::Approx(20.144578));
  CHECK(to(second.mean, 6) == doctest::Approx(30.481013));
  CHECK(to(first.spread, 6) == doctest::Approx(6.414700));
  CHECK(to(second.spread, 6) == doctest::Approx(6.107710));
  // source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3 (results from memory)
  const auto pooled = *compare(first, second, Spreads::pooled);
  CHECK(to(pooled.t, 5) == doctest::Approx(-12.62059));
  CHECK(pooled.freedom == 326);
  CHECK(to(pooled.pooled_spread, 6) == doctest::Approx(6.342600));
  const auto unequal = *compare(first, second, Spreads::unequal);
  CHECK(to(unequal.t, 5) == doctest::Approx(-12.94627));
  CHECK(to(unequal.freedom, 3) == doctest::Approx(136.875));
  CHECK(unequal.p < 1e-20);
  CHECK(unequal.p > 0);
}

TEST_CASE("ten sleepers on two drugs") {
  // source: from memory, Student, Biometrika, 1908 (data); Welch's t -1.8608, 17.776 d.f., p .07939, limits -3.36548 to .20548
  const auto first = sample_of({0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0});
  const auto second = sample_of({1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4});
  const auto unequal = *compare(first, second, Spreads::unequal);
  CHECK(to(unequal.t, 4) == doctest::Approx(-1.8608));
  CHECK(to(unequal.freedom, 3) == doctest::Approx(17.776));
  CHECK(to(unequal.p, 5) == doctest::Approx(0.07939));
  CHECK(to(unequal.lower, 5) == doctest::Approx(-3.36548));
  CHECK(to(unequal.upper, 5) == doctest::Approx(0.20548));
  CHECK(to(compare(first, second, Spreads::pooled)->p, 5) == doctest::Approx(0.07919));
}

TEST_CASE("two small samples with spreads far apart: t, freedom, chance and limits as printed") {
  // Figures as printed, worked out there from spreads of more digits than the four given here.
  const Sample first{4, 25.0, 0.8185}, second{8, 21.0, 4.208};
  const auto pooled = *compare(first, second, Spreads::pooled);
  CHECK(std::abs(pooled.t - 1.8403) < 0.0003);
  CHECK(pooled.freedom == 10);
  CHECK(to(pooled.p, 4) == doctest::Approx(0.0955));
  CHECK(std::abs(pooled.lower - -0.8429) < 0.0006);  // the spreads are printed to four digits
  CHECK(std::abs(pooled.upper - 8.8429) < 0.0006);
  const auto unequal = *compare(first, second, Spreads::unequal);
  CHECK(std::abs(unequal.t - 2.5922) < 0.0003);
  CHECK(std::abs(unequal.freedom - 7.9925) < 0.0005);
  CHECK(to(unequal.p, 4) == doctest::Approx(0.0320));
  CHECK(std::abs(unequal.lower - 0.4410) < 0.0006);
  CHECK(std::abs(unequal.upper - 7.5590) < 0.0006);
}

TEST_CASE("the limits leave out nothing between the means exactly when the chance is under what they leave") {
  CHECK(rc::check([] {
    const auto of = [] {
      return Sample{static_cast<std::size_t>(*rc::gen::inRange(2, 40)),
                    *rc::gen::inRange(1900, 2100) / 1000.0, *rc::gen::inRange(1, 80) / 1000.0};
    };
    const auto first = of(), second = of();
    for (const auto spreads : {Spreads::pooled, Spreads::unequal}) {
      const auto test = *compare(first, second, spreads), turned = *compare(second, first, spreads);
      RC_ASSERT((test.p < 0.05) == (test.lower > 0 || test.upper < 0));
      RC_ASSERT(std::abs(test.t + turned.t) < 1e-9);
      RC_ASSERT(std::abs(test.p - turned.p) < 1e-12);
      RC_ASSERT(test.freedom <= static_cast<double>(first.count + second.count - 2) + 1e-9);
    }
  }));
}

TEST_CASE("samples too small, or without any spread, are not compared") {
  CHECK_FALSE(compare({1, 2, 0}, {5, 2, 1}, Spreads::pooled));
  CHECK_FALSE(compare({5, 2, 0}, {5, 3, 0}, Spreads::unequal));
  CHECK_FALSE(compare({5, 2, 1}, {5, 3, 1}, Spreads::unequal, 1));
  const auto one_even = compare({5, 2, 0}, {5, 3, 1}, Spreads::unequal);
  REQUIRE(one_even);
  CHECK(one_even->freedom == doctest::Approx(4));
  CHECK(compare({5, 2, 1}, {5, 2, 1}, Spreads::pooled)->p == doctest::Approx(1));
}

TEST_CASE("numbers a sample for a power of 0.80, small, medium and large differences") {
  // source: J. Cohen, Psychological Bulletin, 1992, table 2 (from memory): 393, 64 and 26 at .05; 586, 95 and 38 at .01
  CHECK(*sample_for(0.2, 1, 0.8, 0.05) >= 393);
  CHECK(*sample_for(0.2, 1, 0.8, 0.05) <= 394);  // print rounds 393.4 to the nearest
  CHECK(*sample_for(0.5, 1, 0.8, 0.05) == 64);
  CHECK(*sample_for(0.8, 1, 0.8, 0.05) == 26);
  CHECK(*sample_for(0.2, 1, 0.8, 0.01) >= 586);
  CHECK(*sample_for(0.2, 1, 0.8, 0.01) <= 587);
  CHECK(*sample_for(0.5, 1, 0.8, 0.01) >= 95);
  CHECK(*sample_for(0.5, 1, 0.8, 0.01) <= 96);
  CHECK(*sample_for(0.8, 1, 0.8, 0.01) >= 38);
  CHECK(*sample_for(0.8, 1, 0.8, 0.01) <= 39);
}

TEST_CASE(
    "power grows with the sample, is the level for no difference, and one for a difference no one could "
    "miss") {
  CHECK(*power_of(0, 1, 20, 0.05) == doctest::Approx(0.05).epsilon(1e-9));
  double last = 0;
  for (const std::size_t each : {2U, 5U, 10U, 30U, 100U}) {
    const double power = *power_of(0.02, 0.03, each);
    CHECK(power > last);
    CHECK(*power_of(-0.02, 0.03, each) == doctest::Approx(power));
    last = power;
  }
  CHECK(to(*power_of(1, 1, 20), 4) == doctest::Approx(0.8690));  // source: from memory, by the non-central t
  CHECK(*sample_for(1, 1, 0.90) == 23);
  CHECK(*power_of(100, 0.001, 50) == 1);
  CHECK(*sample_for(100, 0.001) == 2);
  CHECK_FALSE(power_of(1, 0, 10));
  CHECK_FALSE(power_of(1, 1, 1));
  CHECK_FALSE(sample_for(0, 1));
  CHECK_FALSE(sample_for(1e-9, 1));
  CHECK_FALSE(sample_for(1, 1, 0.01, 0.05));
}
