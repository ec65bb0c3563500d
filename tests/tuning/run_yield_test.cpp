// run_yield_test.cpp -- runs against the best their logs could give; the runs are those of the invented demo week.
#include "tuning/run_yield.h"

#include <doctest/doctest.h>

#include <utility>

#include "tuning/saw_by_hand.h"

using namespace kerfbook;
using namespace kerfbook::tuning;
using namespace kerfbook::tuning::test;

namespace {

using Ends = std::vector<std::pair<std::int64_t, std::int64_t>>;

SawnRun run_of(std::size_t mill, const Ends& logs, double bf, double recovery) {
  SawnRun run;
  run.mill = mill;
  run.bf = bf;
  double volume = 0;
  for (const auto& [inches, feet] : logs) {
    run.logs.push_back(log_of(static_cast<double>(inches), feet, 0.125, fine_mils(4800)));
    const auto& log = run.logs.back();
    const auto inch = static_cast<double>(kFineInch);
    const double large = static_cast<double>(log.large_end) / inch;
    const double small = static_cast<double>(log.small_end) / inch;
    volume += 3.14159265 / 8 * (small * small + large * large) * static_cast<double>(log.length) / inch;
  }
  run.lumber_in3 = recovery / 100 * volume;
  return run;
}
/// Barn timbers, an eighth over, by a kerf of 0.28; house framing cut to finish size by 0.25.
std::vector<SawMill> two_mills() {
  SawMill barn;
  barn.head_kerf = barn.edger_kerf = fine_mils(280);
  for (const auto& [thickness, width] :
       Ends{{1, 4}, {1, 6}, {1, 8}, {1, 10}, {2, 6}, {2, 8}, {2, 10}, {4, 4}, {4, 6}})
    barn.products.push_back(inches_of(thickness, width, fine_mils(120), {10, 12, 14, 16}));
  SawMill framing;
  framing.head_kerf = framing.edger_kerf = fine_mils(250);
  for (const std::int64_t width : {4, 6, 8})
    framing.products.push_back(inches_of(2, width, -kFineInch * 3 / 8, {12, 14, 16}));
  return {barn, framing};
}
const Ends kMonday{{16, 10}, {17, 10}, {12, 14}, {19, 12}, {14, 10}, {18, 16},
                   {16, 14}, {15, 16}, {14, 12}, {12, 12}, {16, 16}, {15, 14}};
const Ends kThursday{{10, 16}, {10, 16}, {11, 14}, {12, 16}, {12, 16}, {9, 14}, {11, 16}, {12, 14}, {10, 12}};

}  // namespace

TEST_CASE("Monday's barn timbers are 93 % of the best pattern, Thursday's finish-size framing 96 %") {
  const auto found =
      find_yield(two_mills(), {run_of(0, kMonday, 1560.67, 59.7), run_of(1, kThursday, 893.33, 53.5)});
  REQUIRE(found.runs.size() == 2);
  CHECK(found.runs[0].percent() == doctest::Approx(93.3).epsilon(0.002));
  CHECK(found.runs[1].percent() == doctest::Approx(96.2).epsilon(0.002));
  CHECK(found.runs[0].recovery() ==
        doctest::Approx(59.7).epsilon(0.005));  // the book's log volume is Smalian's
  // The framing's best is less wood than the timbers' best: what the overrun of Thursday hides.
  CHECK(found.runs[1].expected_recovery() < found.runs[0].expected_recovery() - 5);
  CHECK(found.all.logs == 21);
  CHECK(found.all.percent() == doctest::Approx(100 * (1560.67 + 893.33) / found.all.expected.bf()));
  CHECK(yield_in_words(found.runs[0]) ==
        "The mill gets 93 of every 100 board feet the best pattern would give: 1,561 of 1,672 bf from 12 "
        "logs.");
}

TEST_CASE("the commonest log is the one to draw") {
  const auto found =
      find_yield(two_mills(), {run_of(0, kMonday, 1560.67, 59.7), run_of(1, kThursday, 893.33, 53.5)});
  REQUIRE(found.common.has_value());
  CHECK(found.common->count == 2);
  CHECK(found.common->log.small_end == 10 * kFineInch);
  CHECK(found.common->mill == 1);
}

TEST_CASE("more than the best pattern gives is a fault to look for, not a feat") {
  const auto found = find_yield(two_mills(), {run_of(1, kThursday, 1100, 60)});
  CHECK(found.runs[0].verdict() == YieldVerdict::over_most);
  CHECK(yield_in_words(found.runs[0])
            .starts_with("More was tallied than the best pattern gives, 1,100 of 929 bf"));
  const auto both =
      find_yield(two_mills(), {run_of(0, kMonday, 1560.67, 59.7), run_of(1, kThursday, 1100, 60)});
  CHECK(both.all.bf == doctest::Approx(2660.67));
  CHECK(both.over_most == 1);  // it stands in the total, and is counted
}

TEST_CASE("a run without logs or without lumber is told of by itself and is in no total") {
  const auto found = find_yield(
      two_mills(), {run_of(0, {}, 100, 0), run_of(1, kThursday, 0, 0), run_of(1, {{3, 12}}, 0, 0)});
  CHECK(found.runs[0].verdict() == YieldVerdict::no_logs);
  CHECK(found.runs[1].verdict() == YieldVerdict::told);
  CHECK(found.runs[1].percent() == 0);
  CHECK(found.runs[2].verdict() == YieldVerdict::no_logs);
  CHECK(found.all.logs == 0);
  CHECK(found.all.percent() == 0);
  CHECK_FALSE(find_yield(two_mills(), {}).common.has_value());
  CHECK_THROWS_AS(find_yield(two_mills(), {run_of(2, kThursday, 1, 1)}), std::out_of_range);
}
