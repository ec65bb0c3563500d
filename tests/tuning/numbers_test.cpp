// numbers_test.cpp -- mean and standard deviation against certified values.
#include "tuning/numbers.h"

#include <doctest/doctest.h>

using namespace kerfbook;
using namespace kerfbook::tuning;

TEST_CASE(
    "a large mean with a small spread loses no digit (NIST StRD, univariate summary statistics, NumAcc1)") {
  const auto sample = sample_of({10000001, 10000003, 10000002});
  CHECK(sample.count == 3);
  CHECK(sample.mean == 10000002.0);
  CHECK(sample.spread == 1.0);
}

TEST_CASE("of one number there is a mean and no spread, of none neither") {
  CHECK(sample_of({4}).mean == 4.0);
  CHECK(sample_of({4}).spread == 0.0);
  CHECK(sample_of({}).count == 0);
}

TEST_CASE("an exact fraction as a double is the one nearest to it") {
  CHECK(as_double(Rational(1, 8)) == 0.125);
  CHECK(as_double(Rational(-2, 3)) == doctest::Approx(-2.0 / 3));
}
