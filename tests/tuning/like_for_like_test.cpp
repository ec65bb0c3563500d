// Two set-ups compared like for like. The demo week's comparison is worked out beside it by hand (demo_data, Douglas-fir only:
// its logs, boards and sizes are invented); the curve is held to what it is fitted on.
#include "tuning/like_for_like.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "tuning/yield_curve.h"

using namespace kerfbook::tuning;

namespace {

enum class By { international, doyle };

/// Content by Smalian's formula, 1/8 in a foot of taper over the length named, and 0.4 ft of trim.
double smalian(double diameter, double length) {
  const double butt = diameter + length / 8;
  return std::numbers::pi / 4 / 144 * (diameter * diameter + butt * butt) / 2 * (length + 0.4);
}

struct Written {
  int diameter;
  int length;
  double net_international;
};

RunSawn run_of(const std::vector<Written>& logs, double lumber, double wood, By by) {
  RunSawn run;
  for (const auto& log : logs) {
    const double quarter = (log.diameter - 4) / 4.0;
    run.logs.push_back({static_cast<double>(log.diameter), static_cast<double>(log.length),
                        by == By::doyle ? quarter * quarter * log.length : log.net_international,
                        smalian(log.diameter, log.length), 0});
  }
  run.lumber = lumber;
  run.wood = wood;
  return run;
}

std::vector<RunSawn> set_up_1(By by) {
  return {run_of({{16, 10, 110},
                  {17, 10, 125},
                  {12, 14, 85},
                  {19, 12, 190},
                  {14, 10, 65},
                  {18, 16, 230},
                  {16, 14, 155},
                  {15, 16, 145},
                  {14, 12, 100},
                  {12, 12, 70},
                  {16, 16, 180},
                  {15, 14, 135}},
                 1560.67, 140.3468, by),
          run_of({{15, 12, 115},
                  {13, 12, 85},
                  {13, 10, 70},
                  {14, 16, 135},
                  {15, 12, 110},
                  {13, 16, 115},
                  {14, 16, 135},
                  {12, 16, 80},
                  {17, 16, 205},
                  {16, 10, 110}},
                 1109.33, 99.6532, by),
          run_of({{15, 14, 120}, {14, 12, 100}, {13, 12, 70}, {13, 16, 115}}, 373.33, 33.5745, by)};
}

std::vector<RunSawn> set_up_2(By by) {
  return {
      run_of({{15, 12, 115}, {12, 12, 70}, {14, 16, 135}, {14, 12, 100}}, 441.33, 38.1299, by),
      run_of({{18, 12, 170}, {15, 16, 155}, {14, 16, 135}, {16, 16, 180}}, 668.67, 57.7491, by),
      run_of({{12, 16, 95}, {12, 14, 85}, {11, 14, 70}, {13, 14, 100}, {14, 14, 115}}, 481.67, 41.6139, by)};
}

double in_tenths(std::optional<double> number) {
  return std::round(number.value_or(-999) * 10) / 10;
}
double in_hundredths(std::optional<double> number) {
  return std::round(number.value_or(-999) * 100) / 100;
}

}  // namespace

TEST_CASE(
    "the demo week's change of set-up by International: -3.5 to +4.4 %, and by Doyle +20.9 to +38.8 %") {
  const auto international = compare_runs(set_up_1(By::international), set_up_2(By::international));
  CHECK(in_tenths(international.before.crude.overrun) == -3.5);
  CHECK(in_tenths(international.after.crude.overrun) == 4.4);
  const auto doyle = compare_runs(set_up_1(By::doyle), set_up_2(By::doyle));
  CHECK(in_tenths(doyle.before.crude.overrun) == 20.9);
  CHECK(in_tenths(doyle.after.crude.overrun) == 38.8);
}

TEST_CASE(
    "over one mix of diameters the demo week's Doyle is +21.7 to +35.9 %: 14.2 points, the 11-in log left "
    "out") {
  const auto doyle = compare_runs(set_up_1(By::doyle), set_up_2(By::doyle));
  CHECK(in_tenths(doyle.before.one_mix.overrun) == 21.7);
  CHECK(in_tenths(doyle.after.one_mix.overrun) == 35.9);
  CHECK(in_tenths(*doyle.after.one_mix.overrun - *doyle.before.one_mix.overrun) == 14.2);
  CHECK(doyle.before.left_out == 0);
  CHECK(doyle.after.left_out == 1);
}

TEST_CASE("beside it stand LRF 6.41 to 6.99 and recovery 57.7 to 60.4 %, and the verdict is too few logs") {
  const auto found = compare_runs(set_up_1(By::international), set_up_2(By::international));
  CHECK(in_hundredths(found.before.crude.lrf) == 6.41);
  CHECK(in_hundredths(found.after.crude.lrf) == 6.99);
  CHECK(in_tenths(found.before.crude.recovery) == 57.7);
  CHECK(in_tenths(found.after.crude.recovery) == 60.4);
  CHECK(found.before.logs == 26);
  CHECK(found.after.logs == 13);
  CHECK(in_tenths(found.before.mean_diameter) == 14.7);
  CHECK(in_tenths(found.after.mean_diameter) == 13.8);
  CHECK(found.verdict == Verdict::too_few_logs);
  CHECK(found.more_logs == 37);
  REQUIRE(found.lumber.has_value());
  CHECK(found.lumber->lower < 0);  // three runs a side bear no more
  CHECK(found.lumber->percent > 0);
}

TEST_CASE("a curve fitted on runs gives back the yields they were made of, whatever is sawn together") {
  const YieldTerms truth{210, -60, -2};
  std::vector<RunYield> runs;
  for (int r = 0; r < 20; ++r) {
    RunYield run;
    for (int log = 0; log <= r % 5; ++log) {
      const auto terms = terms_of(9 + (r * 7 + log * 5) % 12, 8 + 2 * ((r * 3 + log) % 5));
      for (std::size_t i = 0; i < 3; ++i) run.terms[i] += terms[i];
      for (std::size_t i = 0; i < 3; ++i) run.got += truth[i] * terms[i];
      ++run.logs;
    }
    runs.push_back(run);
  }
  const auto curve = fit_yield(runs, 3);
  REQUIRE(curve.has_value());
  for (std::size_t i = 0; i < 3; ++i) CHECK(curve->factor[i] == doctest::Approx(truth[i]).epsilon(1e-6));
}

TEST_CASE("runs that are all alike bear one term and not two") {
  const std::vector<RunYield> alike(9, RunYield{terms_of(14, 16), 1, 130});
  CHECK(fit_yield(alike, 1).has_value());
  CHECK_FALSE(fit_yield(alike, 2).has_value());
  CHECK_FALSE(fit_yield({}, 1).has_value());
  CHECK(terms_for(5) == 1);
  CHECK(terms_for(6) == 2);
  CHECK(terms_for(15) == 3);
}

TEST_CASE("runs without logs or without lumber are left out, and nothing compared with nothing says so") {
  auto before = set_up_1(By::international);
  before.push_back({{}, 500, 40, {}});
  before.push_back({{{14, 16, 135, 20, 135}}, 0, 0, {}});
  CHECK(compare_runs(before, set_up_2(By::international)).before.runs == 3);
  const auto none = compare_runs({}, {});
  CHECK(none.verdict == Verdict::too_few_logs);
  CHECK(none.more_logs == kFewLogs);
  CHECK_FALSE(none.before.crude.overrun.has_value());
  CHECK_FALSE(none.lumber.has_value());
}

TEST_CASE("the same record gives the same limits each time it is asked") {
  const auto once = compare_runs(set_up_1(By::international), set_up_2(By::international));
  const auto again = compare_runs(set_up_1(By::international), set_up_2(By::international));
  CHECK(once.lumber->lower == again.lumber->lower);
  CHECK(once.wood->upper == again.wood->upper);
}
