// what_if_test.cpp -- many logs at once, and what a change is worth on them.
#include "tuning/what_if.h"

#include <doctest/doctest.h>

#include <cmath>

#include "tuning/saw_by_hand.h"

using namespace kerfbook;
using namespace kerfbook::tuning;
using namespace kerfbook::tuning::test;

namespace {

std::vector<SawLog> some_logs() {
  std::vector<SawLog> logs;
  for (const double diameter : {11.0, 12.0, 13.0, 14.0, 14.0, 15.0, 16.0, 17.0, 12.0})
    for (const std::int64_t feet : {10, 12, 16}) logs.push_back(log_of(diameter, feet));
  return logs;
}

}  // namespace

TEST_CASE("the yields of many logs are those of each alone, in their order, with one thread or with three") {
  const SawingModel model(usual_mill(fine_mils(280), fine_mils(50)));
  const auto logs = some_logs();
  const auto one = yields_of(model, logs, 1);
  const auto three = yields_of(model, logs, 3);
  REQUIRE(one.size() == logs.size());
  LogYield sum;
  for (std::size_t i = 0; i < logs.size(); ++i) {
    CHECK(one[i].bf_counts == model.best(logs[i]).bf_counts);
    CHECK(three[i].bf_counts == one[i].bf_counts);
    CHECK(three[i].sawdust_in3 == one[i].sawdust_in3);
    sum += one[i];
  }
  CHECK(sum_of(one).bf_counts == sum.bf_counts);
  CHECK(sum.bf() > 1000);
  CHECK(yields_of(model, {}, 2).empty());
}

TEST_CASE("a log too large for the model is refused by whichever thread meets it") {
  const SawingModel model(usual_mill(fine_mils(280), 0), 20 * kFineInch);
  CHECK_THROWS_AS(yields_of(model, {log_of(10, 12), log_of(24, 12), log_of(11, 12)}, 2),
                  std::invalid_argument);
}

TEST_CASE("a class's log is no larger than any log of the class") {
  const SawLog log = classed(log_of(14.9, 13, 0.125, 3 * kFineInch), kFineInch / 2, 2 * kFineFoot);
  CHECK(log.small_end == kFineInch * 29 / 2);
  CHECK(log.length == 12 * kFineFoot + 3 * kFineInch);
  CHECK(log.trim == 3 * kFineInch);
  const SawLog as_is = log_of(14.9, 13, 0.125, 3 * kFineInch);
  CHECK(classed(as_is, 0, 0) == as_is);
}

TEST_CASE(
    "less kerf, less target and one more size gain, no change gains nothing, and money is the year's in "
    "percent") {
  SawMill mill = usual_mill(fine_mils(280), fine_mils(120));
  const auto table =
      what_if({{mill, some_logs()}},
              {{"as it is", {mill}},
               {"kerf", {with_less_kerf(mill, kFineInch / 32)}},
               {"target", {with_less_target(mill, kFineInch / 32, 0)}},
               {"one size more", {with_size(mill, inches_of(1, 3, fine_mils(120), {8, 10, 12, 14, 16}))}},
               {"kerf wider", {with_less_kerf(mill, -kFineInch / 32)}}},
              {100'000, 40'000, 2'000});
  REQUIRE(table.changes.size() == 5);
  CHECK(table.changes[0].gain_percent == 0);
  CHECK(table.changes[0].recovery_points == 0);
  for (const unsigned gains : {1U, 2U, 3U}) {
    const auto& change = table.changes[gains];
    CAPTURE(change.name);
    CHECK(change.gain_percent > 0);
    CHECK(change.gain_percent < 8);
    CHECK(change.bf_a_year == doctest::Approx(change.gain_percent * 1000));
    CHECK(change.bf_of_these == doctest::Approx(change.gain_percent * 20));
    CHECK(change.money_a_year == doctest::Approx(change.gain_percent * 400));
  }
  CHECK(table.changes[4].gain_percent < 0);
  CHECK(table.changes[4].money_a_year < 0);
}

TEST_CASE("by classes of small ends: all logs are in one, and the classes' gains make up the whole") {
  const SawMill mill = usual_mill(fine_mils(280), fine_mils(120));
  const auto table = what_if({{mill, some_logs()}}, {{"kerf", {with_less_kerf(mill, kFineInch / 32)}}}, {});
  REQUIRE(table.classes.size() == 3);  // 9 to under 12, 12 to under 15, 15 to under 18
  CHECK(table.classes[0].least == 9 * kFineInch);
  CHECK(table.classes[0].logs == 3);
  CHECK(table.classes[1].logs == 15);
  CHECK(table.classes[2].logs == 9);
  double gained = 0;
  for (const auto& one : table.classes) gained += one.now.bf() * one.gain_percent.at(0) / 100;
  CHECK(gained == doctest::Approx(table.changes[0].yield.bf() - table.now.bf()));
}

TEST_CASE("a target is less in thickness and in width by what is asked, and counts for what it did") {
  const SawMill mill = usual_mill(fine_mils(250), fine_mils(120));
  const SawMill thin = with_less_target(mill, fine_mils(31), fine_mils(62));
  CHECK(thin.products[0].thickness == mill.products[0].thickness - fine_mils(31));
  CHECK(thin.products[0].width == mill.products[0].width - fine_mils(62));
  CHECK(thin.products[0].nominal == mill.products[0].nominal);
}

TEST_CASE("a thinner target counts the same and is less wood: board feet gain more than recovery") {
  const SawMill mill = usual_mill(fine_mils(250), fine_mils(120));
  const auto table = what_if({{mill, some_logs()}},
                             {{"thin", {with_less_target(mill, fine_mils(100), fine_mils(100))}}}, {});
  const double recovery = 100 * table.now.lumber_in3 / table.now.log_in3;
  CHECK(table.changes[0].gain_percent > 100 * table.changes[0].recovery_points / recovery);
  CHECK(table.changes[0].money_a_year == 0);
}

TEST_CASE("a mill that gets nothing out of its logs gains nothing that could be told in percent") {
  const SawMill mill = usual_mill(fine_mils(250), 0);
  const auto table =
      what_if({{mill, {log_of(3, 12)}}}, {{"kerf", {with_less_kerf(mill, 100)}}}, {1000, 1000, 1000});
  CHECK(table.now.bf_counts == 0);
  CHECK(table.changes[0].gain_percent == 0);
  CHECK(table.changes[0].bf_of_these == 0);
  CHECK(with_less_kerf(mill, kFineInch).head_kerf == 0);
  CHECK(with_less_target(mill, 40 * kFineInch, 0).products[0].thickness == mill.step);
}

TEST_CASE("of two mills each log is asked of its own, and a change gains what it gains of both together") {
  const SawMill thick = usual_mill(fine_mils(300), fine_mils(120));
  const SawMill thin = usual_mill(fine_mils(200), fine_mils(50));
  const std::vector<SawLog> few{log_of(12, 12), log_of(15, 16)};
  const auto kerf = [](const SawMill& mill) { return with_less_kerf(mill, kFineInch / 16); };
  const auto first = what_if({{thick, some_logs()}}, {{"kerf", {kerf(thick)}}}, {});
  const auto second = what_if({{thin, few}}, {{"kerf", {kerf(thin)}}}, {});
  const auto both = what_if({{thick, some_logs()}, {thin, few}, {thick, {}}},
                            {{"kerf", {kerf(thick), kerf(thin), thick}}}, {100, 0, 10});
  CHECK(both.now.bf_counts == first.now.bf_counts + second.now.bf_counts);
  const auto& change = both.changes.at(0);
  CHECK(change.yield.bf_counts == first.changes[0].yield.bf_counts + second.changes[0].yield.bf_counts);
  CHECK(change.bf_a_year ==
        doctest::Approx(100 * (change.yield.bf() / (first.now.bf() + second.now.bf()) - 1)));
  CHECK(change.bf_of_these == doctest::Approx(change.bf_a_year / 10));
  std::size_t logs = 0;
  for (const auto& one : both.classes) logs += one.logs;
  CHECK(logs == some_logs().size() + 2);
  CHECK_THROWS_WITH_AS(what_if({{thick, few}, {thin, few}}, {{"kerf", {kerf(thick)}}}, {}),
                       "a change of more or fewer mills than there are", std::invalid_argument);
}

TEST_CASE("a mean price is total over total, not a mean of prices, and of nothing billed there is none") {
  CHECK(*mean_price({{400, 1000}, {2100, 3000}}) == doctest::Approx(0.625));  // 0.40 and 0.70: 2,500 / 4,000
  CHECK_FALSE(mean_price({}).has_value());
  CHECK_FALSE(mean_price({{100, 0}}).has_value());
}
