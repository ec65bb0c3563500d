// change_interval_test.cpp -- the interval between changes that costs least, by hand and by search.
#include "tuning/change_interval.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <vector>

using namespace kerfbook::tuning;

TEST_CASE("lives of 2, 4, 6 and 8: what each interval costs, by hand") {
  const auto curve = survival_of({{2, true}, {4, true}, {6, true}, {8, true}});
  const auto interval = *change_interval(curve, 1, 10);
  REQUIRE(interval.candidates.size() == 4);
  CHECK(interval.candidates[0].cost_rate == doctest::Approx(1 / 2.0));             // all by plan
  CHECK(interval.candidates[1].cost_rate == doctest::Approx((0.75 + 2.5) / 3.5));  // 2 + 3/4 x 2
  CHECK(interval.candidates[2].cost_rate == doctest::Approx((0.5 + 5) / 4.5));
  CHECK(interval.candidates[3].cost_rate == doctest::Approx((0.25 + 7.5) / 5));
  CHECK(*interval.never == doctest::Approx(10 / 5.0));
  CHECK(interval.best == 0);
  CHECK(interval.plan_pays);
  CHECK(interval.candidates[0].reached == 1);
}

TEST_CASE("when a planned change costs as much as another, changing by plan never pays") {
  const auto curve = survival_of({{2, true}, {4, true}, {6, true}, {8, true}});
  const auto interval = *change_interval(curve, 5, 5);
  CHECK_FALSE(interval.plan_pays);
  CHECK(*interval.never == doctest::Approx(1));
}

TEST_CASE(
    "while some lives outlast the record there is no cost of never, and the longest life is a candidate") {
  const auto curve = survival_of({{2, true}, {4, true}, {9, false}});
  const auto interval = *change_interval(curve, 1, 1.1);
  CHECK_FALSE(interval.never);
  REQUIRE(interval.candidates.size() == 3);
  CHECK(interval.candidates.back().every == 9);
  CHECK(interval.candidates.back().reached == doctest::Approx(1.0 / 3));
  CHECK(interval.best == 2);
  CHECK_FALSE(interval.plan_pays);
}

TEST_CASE("no end, lengths of 0 alone, or costs of 0 give no interval") {
  CHECK_FALSE(change_interval(survival_of({}), 1, 2));
  CHECK_FALSE(change_interval(survival_of({{4, false}}), 1, 2));
  CHECK_FALSE(change_interval(survival_of({{0, true}}), 1, 2));
  CHECK_FALSE(change_interval(survival_of({{4, true}}), 0, 2));
  CHECK(change_interval(survival_of({{4, true}}), 1, 2)->plan_pays);
}

TEST_CASE("no length costs less than the best candidate") {
  CHECK(rc::check([] {
    const auto lengths = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 20)));
    std::vector<Life> lives;
    for (const int length : lengths)
      lives.push_back({static_cast<double>(length), *rc::gen::inRange(0, 3) > 0});
    const auto curve = survival_of(lives);
    const double unplanned = *rc::gen::inRange(1, 12);
    const auto interval = change_interval(curve, 1, unplanned);
    if (!interval) return;
    const double least = interval->candidates[interval->best].cost_rate;
    for (double every = 0.25; every <= curve.longest; every += 0.25) {
      const double reached = *survival_at(curve, every - 1e-9);
      const double cost = reached + unplanned * (1 - reached);
      RC_ASSERT(cost / mean_life(curve, every)->mean >= least - 1e-12);
    }
  }));
}

TEST_CASE("a mill that slows is sharpened where the time lost has paid for it") {
  // 300 bf an hour when sharp, 0.05 less for each bf; sharpening 20, an hour 60: near the root of 2 x 20 x 300^2 / (60 x 0.05)
  const auto interval = *sharpen_interval({300, -0.05}, 20, 60, 3000);
  CHECK_FALSE(interval.past_record);
  double best = 0, least = 1e9;
  for (double bf = 1; bf < 3000; ++bf) {
    const double hours = std::log(300 / (300 - 0.05 * bf)) / 0.05;
    const double cost = 1000 * (20 + 60 * hours) / bf;
    if (cost < least) {
      least = cost;
      best = bf;
    }
  }
  CHECK(std::abs(interval.every_bf - best) < 1);
  CHECK(interval.cost_per_mbf == doctest::Approx(least).epsilon(1e-6));
}

TEST_CASE(
    "a mill that does not slow, or too little to pay within the record, is not told to sharpen sooner") {
  const auto steady = *sharpen_interval({300, 0}, 20, 60, 3000);
  CHECK(steady.past_record);
  CHECK(steady.every_bf == 3000);
  CHECK(steady.cost_per_mbf == doctest::Approx(20.0 / 3 + 200));
  CHECK(sharpen_interval({300, 0.01}, 20, 60, 3000)->past_record);
  CHECK(sharpen_interval({300, -1e-6}, 20, 60, 3000)->past_record);
  CHECK_FALSE(sharpen_interval({300, -0.1}, 20, 60, 3000));  // the line is down to 0 at the end of the record
  CHECK_FALSE(sharpen_interval({300, -0.01}, 0, 60, 3000));
  CHECK_FALSE(sharpen_interval({0, -0.01}, 1, 60, 3000));
}

TEST_CASE(
    "a change by plan costs its teeth and one hand's time; a forced one its teeth and the whole mill's") {
  const auto costs = change_costs(22, 9, 30, 24, 90);
  CHECK(costs.planned == doctest::Approx(22 * 9 + 12));
  CHECK(costs.forced == doctest::Approx(22 * 9 + 45));
}
