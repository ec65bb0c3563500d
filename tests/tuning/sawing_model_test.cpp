// sawing_model_test.cpp -- the best pattern is the best there is, can be cut, and answers to kerf and list as it must.
#include "tuning/sawing_model.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>

#include "tuning/saw_by_hand.h"

using namespace kerfbook;
using namespace kerfbook::tuning;
using namespace kerfbook::tuning::test;

namespace {

Fine eighths(int from, int to) {
  return *rc::gen::inRange(from, to) * kFineInch / 8;
}

/// Up to four sizes whose thickness is whole steps, so that no face is rounded.
SawMill small_mill() {
  SawMill mill;
  mill.step = kFineInch / 8;
  mill.head_kerf = fine_mils(*rc::gen::inRange(0, 350));
  mill.edger_kerf = fine_mils(*rc::gen::inRange(0, 350));
  mill.wane = *rc::gen::element(0, 0, 1) * eighths(1, 4);
  mill.layers = *rc::gen::element(LayersBy::thickness, LayersBy::width);
  mill.worth = *rc::gen::element(WorthBy::board_feet, WorthBy::money);
  const int sizes = *rc::gen::inRange(1, 5);
  for (int i = 0; i < sizes; ++i) {
    const int thickness = *rc::gen::inRange(5, 17);
    auto product = size(thickness * 8, *rc::gen::inRange(std::max(thickness, 10), 33) * 8, 0, {4, 6, 8});
    if (*rc::gen::arbitrary<bool>()) product.lengths = {measure::feet(4)};
    product.per_mbf = *rc::gen::inRange(100, 900) * 100;
    product.per_piece = *rc::gen::element(0, 0, 150);
    mill.products.push_back(product);
  }
  return mill;
}
SawLog small_log() {
  const Fine small = eighths(24, 49);
  return {small, small + eighths(0, 13), 8 * kFineFoot + eighths(0, 33), eighths(0, 20)};
}

/// Every corner is in the circle of its board's thin end; between any two boards is a kerf; the sums are of the boards.
void can_be_cut(const Pattern& pattern, const SawMill& mill) {
  const SawLog& log = pattern.log;
  const Fine kerf = std::min(mill.head_kerf, mill.edger_kerf);
  std::int64_t counts = 0;
  for (std::size_t i = 0; i < pattern.boards.size(); ++i) {
    const auto& board = pattern.boards[i];
    const Fine from = log.length - log.trim - fine(board.length);
    RC_ASSERT(from >= 0);
    const double radius =
        static_cast<double>(log.small_end + (log.large_end - log.small_end) * from / log.length) / 2;
    const double x = static_cast<double>(std::max(-board.left, board.left + board.across));
    const double y = static_cast<double>(std::max(-board.top, board.top + board.down));
    RC_ASSERT(std::hypot(x, y) <= radius + static_cast<double>(mill.wane) + 1);
    const auto& product = mill.products[board.product];
    RC_ASSERT(std::min(board.across, board.down) == std::min(product.thickness, product.width));
    RC_ASSERT(std::max(board.across, board.down) == std::max(product.thickness, product.width));
    counts += measure::volume(product.nominal, board.length, 1).count;
    for (std::size_t k = 0; k < i; ++k) {
      const auto& other = pattern.boards[k];
      const bool beside =
          board.left >= other.left + other.across + kerf || other.left >= board.left + board.across + kerf;
      const bool apart =
          board.top >= other.top + other.down + kerf || other.top >= board.top + board.down + kerf;
      RC_ASSERT((beside || apart));
    }
  }
  RC_ASSERT(counts == pattern.bf_counts);
  RC_ASSERT(pattern.rest_in3 >= 0);
  const double parts = pattern.lumber_in3 + pattern.sawdust_in3 + pattern.rest_in3;
  RC_ASSERT(std::abs(parts - pattern.log_in3) < 1e-6 * pattern.log_in3);
}

}  // namespace

TEST_CASE("on small logs the best pattern is worth what the best of all ways to saw is worth") {
  CHECK(rc::check([] {
    const SawMill mill = small_mill();
    const SawLog log = small_log();
    const Pattern found = SawingModel(mill).best(log);
    RC_ASSERT(found.worth == EveryWay(mill, log).most());
    can_be_cut(found, mill);
  }));
}

TEST_CASE("a pattern with the log turned can be cut too, and is never worth less than one without") {
  CHECK(rc::check([] {
    SawMill mill = small_mill();
    const SawLog log = small_log();
    const std::int64_t once = SawingModel(mill).best(log).worth;
    mill.turn = TurnLog::quarter;
    const Pattern found = SawingModel(mill).best(log);
    RC_ASSERT(found.worth >= once);
    can_be_cut(found, mill);
  }));
}

TEST_CASE("a mill's own patterns can be cut, and give no less than sawing through and through") {
  for (const double diameter : {8.0, 9.5, 11.0, 14.0, 17.5, 23.0, 31.0}) {
    const SawMill mill = usual_mill(fine_mils(280), fine_mils(50));
    const SawLog log = log_of(diameter, 16, 0.125, 4 * kFineInch);
    const Pattern found = SawingModel(mill).best(log);
    can_be_cut(found, mill);
    for (const std::int64_t thickness : {1, 2})
      for (const bool centred : {false, true}) {
        CAPTURE(diameter);
        CHECK(bf_of(found) >= live_sawn(mill, log, thickness, centred));
      }
  }
}

TEST_CASE(
    "a smaller kerf, a thinner target, one more size or length, more wane, a larger log never give less") {
  CHECK(rc::check([] {
    const SawMill mill = small_mill();
    SawLog log = small_log();
    const std::int64_t before = SawingModel(mill).best(log).worth;
    const auto no_less = [&](const SawMill& other) {
      RC_ASSERT(SawingModel(other).best(log).worth >= before);
    };
    SawMill thinner = mill;
    thinner.head_kerf = std::max<Fine>(0, mill.head_kerf - kFineInch / 32);
    no_less(thinner);
    thinner.edger_kerf = mill.edger_kerf / 2;
    no_less(thinner);
    SawMill more = mill;
    more.products.push_back(size(64, 192, 0, {4}));
    no_less(more);
    more.products[0].lengths.push_back(measure::feet(5));
    no_less(more);
    SawMill waney = mill;
    waney.wane += kFineInch / 8;
    no_less(waney);
    log.small_end += kFineInch / 8;
    log.large_end += kFineInch / 8;
    no_less(mill);
  }));
}

TEST_CASE("a thinner target never gives less: at the finest step its layers lie where the thicker ones lay") {
  for (const double diameter : {10.0, 13.0, 16.5, 22.0}) {
    const SawLog log = log_of(diameter, 12);
    std::int64_t before = 0;
    for (const std::int64_t mils : {120, 90, 60, 31, 0}) {
      const std::int64_t now = SawingModel(usual_mill(fine_mils(250), fine_mils(mils))).best(log).bf_counts;
      CHECK(now >= before);
      before = now;
    }
  }
}

TEST_CASE("what the mill cannot cut, and what is narrower than asked for, is in no pattern") {
  SawMill mill = usual_mill(fine_mils(250), 0);
  mill.most_thickness = 2 * kFineInch;
  mill.most_width = 8 * kFineInch;
  mill.least_width = 6 * kFineInch;
  const Pattern found = SawingModel(mill).best(log_of(20, 16));
  REQUIRE(found.boards.size() > 5);
  for (const auto& board : found.boards) {
    const auto& nominal = mill.products[board.product].nominal;
    CHECK(nominal.thickness <= measure::inches(2));
    CHECK(nominal.width <= measure::inches(8));
    CHECK(nominal.width >= measure::inches(6));
  }
}

TEST_CASE(
    "one board from one log, by hand: 7.07 in across just holds 5 x 5, and its dust is a cut of either saw") {
  SawMill mill;
  mill.head_kerf = kFineInch / 4;
  mill.edger_kerf = kFineInch / 8;
  mill.products = {inches_of(5, 5, 0, {8})};
  CHECK(SawingModel(mill).best(log_of(7.07, 8, 0)).boards.empty());
  const Pattern found = SawingModel(mill).best(log_of(7.08, 8, 0));
  REQUIRE(found.boards.size() == 1);
  CHECK(found.boards[0].whole_length);
  CHECK(bf_of(found) == doctest::Approx(5 * 5 * 8 / 12.0));
  CHECK(found.lumber_in3 == doctest::Approx(25 * 96));
  CHECK(found.sawdust_in3 == doctest::Approx(96 * (5 * 0.25 + 5 * 0.125 + 0.25 * 0.125)));
  CHECK(found.log_in3 == doctest::Approx(3.14159265 / 4 * 7.08 * 7.08 * 96));
}

TEST_CASE(
    "the last layer needs no kerf below it: two pieces 2.9 in high, a tenth of kerf between, stand in 6 in") {
  SawMill mill;
  mill.head_kerf = fine_mils(100);
  mill.edger_kerf = 6 * kFineInch;  // so that no two stand side by side
  mill.products = {inches_of(3, 1, 0, {8})};
  mill.products[0].thickness = fine_mils(2900);
  CHECK(SawingModel(mill).best(log_of(6, 8, 0)).boards.size() == 2);
  mill.head_kerf = fine_mils(200);
  CHECK(SawingModel(mill).best(log_of(6, 8, 0)).boards.size() == 1);
}

TEST_CASE("where the small end's circle does not reach, a shorter board comes out of the taper") {
  SawMill mill;
  mill.products = {inches_of(5, 5, 0, {4, 8})};
  const Pattern found = SawingModel(mill).best(log_of(6.7, 8, 0.125));  // 7.2 in across at the middle
  REQUIRE(found.boards.size() == 1);
  CHECK(found.boards[0].length == measure::feet(4));
  CHECK_FALSE(found.boards[0].whole_length);
}

TEST_CASE(
    "by money the list's prices choose: one 6x6 at $500 an MBF, or five 1x6 when each brings a dollar more") {
  SawMill mill;
  mill.head_kerf = mill.edger_kerf = kFineInch / 4;
  mill.worth = WorthBy::money;
  mill.products = {inches_of(6, 6, 0, {8}), inches_of(1, 6, 0, {8})};
  for (auto& product : mill.products) product.per_mbf = 50'000;
  const SawLog log = log_of(8.6, 8, 0);
  const Pattern timber = SawingModel(mill).best(log);
  CHECK(timber.boards.size() == 1);
  CHECK(timber.worth == 24 * 50'000);
  mill.products[1].per_piece = 100;
  const Pattern boards = SawingModel(mill).best(log);
  CHECK(boards.boards.size() == 5);
  CHECK(boards.worth == 5 * (4 * 50'000 + 100 * 1000));
}

TEST_CASE("no log, a log shorter than any board, an empty list: no boards; a log too large is refused") {
  const SawMill mill = usual_mill(fine_mils(250), 0);
  const SawingModel model(mill, 40 * kFineInch);
  CHECK(model.best({}).boards.empty());
  CHECK(model.best(log_of(12, 7)).boards.empty());
  CHECK(SawingModel(SawMill{}).best(log_of(12, 16)).boards.empty());
  CHECK_THROWS_AS(static_cast<void>(model.best(log_of(41, 16, 0))), std::invalid_argument);
  SawMill wrong;
  wrong.head_kerf = -1;
  CHECK_THROWS_AS(SawingModel{wrong}, std::invalid_argument);
}
