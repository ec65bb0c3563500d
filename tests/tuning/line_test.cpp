// line_test.cpp -- a straight line by least squares against certified values.
#include "tuning/line.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "measure/csv_rows.h"

using kerfbook::test::rows_of;
using namespace kerfbook::tuning;

TEST_CASE("a certified line comes out to ten digits") {
  std::vector<Point> points;
  for (const auto& row : rows_of("tuning/norris.csv"))
    points.push_back({std::stod(row.at(1)), std::stod(row.at(0))});
  REQUIRE(points.size() == 36);
  const auto line = *line_through(points);
  // source: NIST StRD, linear regression, Norris (certified values; data and values from memory)
  CHECK(line.intercept == doctest::Approx(-0.262323073774029).epsilon(1e-10));
  CHECK(line.slope == doctest::Approx(1.00211681802045).epsilon(1e-12));
  CHECK(line.intercept_error == doctest::Approx(0.232818234301152).epsilon(1e-10));
  CHECK(line.slope_error == doctest::Approx(0.429796848199937E-03).epsilon(1e-10));
  CHECK(line.spread == doctest::Approx(0.884796396144373).epsilon(1e-10));
  CHECK(line.explained == doctest::Approx(0.999993745883712).epsilon(1e-12));
}

TEST_CASE("three points by hand") {
  const auto line =
      *line_through({{0, 1}, {1, 3}, {2, 2}});  // slope 1/2 through (1, 2); left over 1/4 + 1 + 1/4
  CHECK(line.slope == doctest::Approx(0.5));
  CHECK(line.intercept == doctest::Approx(1.5));
  CHECK(line.spread == doctest::Approx(std::sqrt(1.5)));
  CHECK(line.slope_error == doctest::Approx(std::sqrt(0.75)));
  CHECK(line.explained == doctest::Approx(0.25));
  CHECK(line.slope_upper - 0.5 == doctest::Approx(12.7062 * std::sqrt(0.75)).epsilon(1e-5));
  CHECK(line.p == doctest::Approx(2.0 / 3));
}

TEST_CASE("a line through too few points, or straight up, is none; a flat one has no slope") {
  CHECK_FALSE(line_through({}));
  CHECK_FALSE(line_through({{0, 1}, {1, 3}}));
  CHECK_FALSE(line_through({{1, 1}, {1, 3}, {1, 4}}));
  CHECK_FALSE(line_through({{1, 1}, {2, std::nan("")}, {3, 4}}));
  CHECK_FALSE(line_through({{1, 1}, {2, 2}, {3, 4}}, 0));
  const auto flat = *line_through({{1, 5}, {2, 5}, {3, 5}});
  CHECK(flat.slope == doctest::Approx(0));
  CHECK(flat.intercept == doctest::Approx(5));
  CHECK(flat.explained == 1);
}
