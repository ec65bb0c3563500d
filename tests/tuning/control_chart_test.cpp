// control_chart_test.cpp -- chart factors against print, and charts of published readings.
#include "tuning/control_chart.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "measure/csv_rows.h"
#include "tuning/boards_of.h"

using kerfbook::test::boards_of;
using kerfbook::test::rows_of;
using kerfbook::test::to;
using namespace kerfbook::tuning;

namespace {

std::size_t outside(const std::vector<ChartPoint>& points) {
  return static_cast<std::size_t>(
      std::count_if(points.begin(), points.end(), [](const ChartPoint& point) { return point.outside; }));
}

std::size_t in_runs(const std::vector<ChartPoint>& points) {
  return static_cast<std::size_t>(
      std::count_if(points.begin(), points.end(), [](const ChartPoint& point) { return point.in_run; }));
}

/// Two readings a board, 0.01 about the means given.
std::vector<BoardReadings> boards_at(const std::vector<double>& means) {
  std::vector<BoardReadings> boards;
  for (const double mean : means) boards.push_back({mean - 0.01, mean + 0.01});
  return boards;
}

}  // namespace

TEST_CASE("where the range has a formula the integration gives it to ten digits") {
  const double pi = std::numbers::pi;  // source: from memory, the range of two and three normal readings
  const auto two = *chart_constants(2);
  CHECK(two.d2 == doctest::Approx(2 / std::sqrt(pi)).epsilon(1e-10));
  CHECK(two.d3 == doctest::Approx(std::sqrt(2 - 4 / pi)).epsilon(1e-10));
  CHECK(two.c4 == doctest::Approx(std::sqrt(2 / pi)).epsilon(1e-14));
  const auto three = *chart_constants(3);
  CHECK(three.d2 == doctest::Approx(3 / std::sqrt(pi)).epsilon(1e-10));
  CHECK(three.d3 * three.d3 == doctest::Approx(2 + 3 * std::sqrt(3.0) / pi - 9 / pi).epsilon(1e-9));
}

TEST_CASE(
    "chart factors for 2 to 10 readings are those printed, to every digit, but one that was printed from "
    "rounded factors") {
  for (const auto& row : rows_of("tuning/chart_factors.csv")) {
    const auto c = *chart_constants(std::stoi(row.at(0)));
    CHECK(to(c.A2, 3) == doctest::Approx(std::stod(row.at(1))));
    CHECK(to(c.d2, 3) == doctest::Approx(std::stod(row.at(2))));
    CHECK(to(c.d3, 3) == doctest::Approx(std::stod(row.at(3))));
    CHECK(to(c.D3, 3) == doctest::Approx(std::stod(row.at(4))));
    // 2.575 at n = 3; print has 2.574, which is 1 + 3 x 0.888 / 1.693
    const double d4 = c.n == 3 ? 1 + 3 * to(c.d3, 3) / to(c.d2, 3) : c.D4;
    CHECK(to(d4, 3) == doctest::Approx(std::stod(row.at(5))));
  }
}

TEST_CASE("chart factors for 2 to 25 readings are within one of the last digit handbooks print") {
  int rows = 0;
  for (const auto& row : rows_of("tuning/chart_factors_to_25.csv")) {
    const auto c = *chart_constants(std::stoi(row.at(0)));
    const std::vector<double> ours{c.A2, c.A3, c.c4, c.B3, c.B4, c.d2, c.d3, c.D3, c.D4};
    for (std::size_t i = 0; i < ours.size(); ++i) {
      const double last_digit = i == 2 ? 0.0001 : 0.001;
      CHECK_MESSAGE(std::abs(ours[i] - std::stod(row.at(i + 1))) < 1.5 * last_digit, row.at(0) << ": " << i);
    }
    ++rows;
  }
  CHECK(rows == 24);
  CHECK_FALSE(chart_constants(1));
  CHECK_FALSE(chart_constants(1001));
  // source: from memory, L. H. C. Tippett, 1925: the mean range of a hundred and of a thousand
  CHECK(to(chart_constants(100)->d2, 5) == doctest::Approx(5.01519));
  CHECK(to(chart_constants(1000)->d2, 5) == doctest::Approx(6.48287));
}

TEST_CASE("ten batches of gears by their ranges and by their standard deviations") {
  // source: NIST/SEMATECH e-Handbook of Statistical Methods, gear data; factors as printed: A2 .308, D3 .223, D4 1.777
  const auto gears = boards_of("tuning/gear.csv");
  const auto ranges = *control_chart(gears, ChartBy::ranges);
  CHECK(ranges.equal_readings);
  CHECK(ranges.grand_mean == doctest::Approx(0.99764).epsilon(1e-12));
  CHECK(ranges.mean_spread == doctest::Approx(0.0181).epsilon(1e-12));
  const double last_digit = 0.0005 * 0.0181;
  CHECK(std::abs(ranges.means.front().lower - 0.992065) < last_digit);
  CHECK(std::abs(ranges.means.front().upper - 1.003215) < last_digit);
  CHECK(std::abs(ranges.spreads.front().lower - 0.0040363) < last_digit);
  CHECK(std::abs(ranges.spreads.front().upper - 0.0321637) < last_digit);
  CHECK(ranges.spreads.front().centre == doctest::Approx(0.0181));
  const auto deviations = *control_chart(gears, ChartBy::deviations);
  CHECK(to(deviations.mean_spread, 8) == doctest::Approx(0.00558293));
  CHECK(std::abs(deviations.means.front().lower - 0.992195) < 2e-6);  // c4 .9727
  CHECK(std::abs(deviations.means.front().upper - 1.003085) < 2e-6);
  // by hand: the fifth batch's mean is 0.9919, the sixth's standard deviation 0.00989 over a limit of 0.00958
  CHECK(outside(ranges.means) == 1);
  CHECK(ranges.means[4].outside);
  CHECK(outside(ranges.spreads) == 0);
  CHECK(outside(deviations.means) == 1);
  CHECK(outside(deviations.spreads) == 1);
  CHECK(deviations.spreads[5].outside);
}

TEST_CASE(
    "with as many readings a board the pooled chart has the centre of the pooled spread and the same "
    "factors") {
  const auto gears = boards_of("tuning/gear.csv");
  const auto pooled = *control_chart(gears, ChartBy::pooled);
  CHECK(to(pooled.mean_spread, 8) == doctest::Approx(0.00593857));
  CHECK(pooled.means.front().upper ==
        doctest::Approx(0.99764 + chart_constants(10)->A3 * pooled.mean_spread));
}

TEST_CASE("boards with unequal readings have limits of their own, wider where readings are few") {
  const auto chart = *control_chart({{2.00, 2.02, 2.04, 2.06}, {2.01, 2.03}, {2.05}, {}}, ChartBy::ranges);
  CHECK_FALSE(chart.equal_readings);
  REQUIRE(chart.means.size() == 3);
  REQUIRE(chart.spreads.size() == 2);
  const double within = (0.06 / chart_constants(4)->d2 + 0.02 / chart_constants(2)->d2) / 2;
  CHECK(chart.spread_within == doctest::Approx(within));
  CHECK(chart.grand_mean == doctest::Approx(14.21 / 7));
  CHECK(chart.means[0].upper - chart.means[0].centre == doctest::Approx(3 * within / 2));
  CHECK(chart.means[1].upper - chart.means[1].centre == doctest::Approx(3 * within / std::sqrt(2.0)));
  CHECK(chart.means[2].upper - chart.means[2].centre == doctest::Approx(3 * within));
  CHECK(chart.spreads[1].centre == doctest::Approx(chart_constants(2)->d2 * within));
}

TEST_CASE("a board set differently is outside, the others are not") {
  std::vector<double> means(12, 2.10);
  means[7] = 2.18;
  const auto chart = *control_chart(boards_at(means), ChartBy::ranges);
  CHECK(outside(chart.means) == 1);
  CHECK(chart.means[7].outside);
  CHECK(chart.means[7].board == 7);
}

TEST_CASE("eight running on one side are marked, seven are not, and a board on the centre ends a run") {
  std::vector<double> means(8, 2.101);
  means.insert(means.end(), 4, 2.098);  // centre 2.1
  CHECK(in_runs(control_chart(boards_at(means), ChartBy::ranges)->means) == 8);
  std::vector<double> seven(7, 2.101);
  seven.insert(seven.end(), 7, 2.099);
  CHECK(in_runs(control_chart(boards_at(seven), ChartBy::ranges)->means) == 0);
  std::vector<double> broken(4, 2.101);
  broken.push_back(2.1);
  broken.insert(broken.end(), 4, 2.101);
  broken.insert(broken.end(), 4, 2.098);
  CHECK(in_runs(control_chart(boards_at(broken), ChartBy::ranges)->means) == 0);
}

TEST_CASE("ten single values and their moving ranges") {
  // source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (from memory): 50.81, 45.8159 to 55.8041, 1.8778
  const auto chart = *single_values_chart({49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1});
  CHECK(chart.grand_mean == doctest::Approx(50.81));
  CHECK(to(chart.mean_spread, 4) == doctest::Approx(1.8778));
  const double reach = 3 * chart.mean_spread / 1.128;  // d2 as print takes it, of which ours has more digits
  CHECK(to(chart.grand_mean - reach, 4) == doctest::Approx(45.8159));
  CHECK(to(chart.grand_mean + reach, 4) == doctest::Approx(55.8041));
  CHECK(chart.means[0].lower == doctest::Approx(50.81 - 3 * chart.mean_spread / chart_constants(2)->d2));
  CHECK(chart.means.size() == 10);
  CHECK(chart.spreads.size() == 9);
  CHECK(outside(chart.means) == 0);
  CHECK_FALSE(single_values_chart({1}));
  CHECK(outside(single_values_chart({1, 1, 1})->means) == 0);
}

TEST_CASE("without two readings on any board there is no chart") {
  CHECK_FALSE(control_chart({}, ChartBy::ranges));
  CHECK_FALSE(control_chart({{2.1}, {2.2}}, ChartBy::ranges));
  CHECK_FALSE(control_chart({{}, {}}, ChartBy::deviations));
}

TEST_CASE("readings all alike draw one line with nothing outside it") {
  const auto chart = *control_chart({{2.1, 2.1, 2.1}, {2.1, 2.1, 2.1}}, ChartBy::deviations);
  CHECK(chart.spread_within == 0);
  CHECK(chart.means.front().upper == chart.means.front().lower);
  CHECK(outside(chart.means) == 0);
  CHECK(outside(chart.spreads) == 0);
  const auto one = *control_chart({{2.1, 2.2}}, ChartBy::ranges);
  CHECK(one.means.size() == 1);
  CHECK(outside(one.means) == 0);
}
