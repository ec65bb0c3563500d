// size_control_test.cpp -- spread within and between boards, target sizes and oversize against published examples.
#include "tuning/size_control.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>
#include <vector>

#include "measure/csv_rows.h"
#include "tuning/boards_of.h"
#include "tuning/numbers.h"

using kerfbook::test::boards_of;
using kerfbook::test::rows_of;
using kerfbook::test::to;
using namespace kerfbook::tuning;

namespace {

/// The eight boards of EM 8731, table 3.
std::vector<BoardReadings> eight_boards() {
  std::vector<BoardReadings> boards;
  for (const auto& row : rows_of("tuning/em8731_thickness.csv")) {
    boards.emplace_back();
    for (std::size_t i = 0; i < 4; ++i) boards.back().push_back(std::stod(row.at(i)));
  }
  return boards;
}

}  // namespace

TEST_CASE(
    "the eight boards of EM 8731 give its board averages, mean squares, SW, SB and ST to the digits "
    "printed") {
  const auto rows = rows_of("tuning/em8731_thickness.csv");
  const auto boards = eight_boards();
  REQUIRE(boards.size() == 8);
  for (std::size_t i = 0; i < boards.size(); ++i) {
    const auto board = sample_of(boards[i]);
    CHECK(to(board.mean, 4) == doctest::Approx(std::stod(rows[i].at(4))).epsilon(1e-12));
    CHECK(to(board.spread * board.spread, 7) == doctest::Approx(std::stod(rows[i].at(5))).epsilon(1e-12));
    CHECK(to(board.spread, 3) == doctest::Approx(std::stod(rows[i].at(6))).epsilon(1e-12));
  }
  const auto spread = spread_of(boards);  // source: T. D. Brown, OSU Extension EM 8731, 2000, pp. 21-22
  CHECK(spread.boards == 8);
  CHECK(spread.readings == 32);
  CHECK(spread.mean == doctest::Approx(54.620 / 32));
  CHECK(to(*spread.within, 5) == doctest::Approx(0.01594));
  CHECK(to(*spread.of_board_means, 5) == doctest::Approx(0.02235));
  CHECK(to(*spread.of_all_readings, 5) == doctest::Approx(0.02546));
}

TEST_CASE(
    "the component between boards is less than the spread of their means, which holds some of the spread "
    "within") {
  const auto spread = spread_of(eight_boards());
  CHECK(to(*spread.between_component, 5) == doctest::Approx(0.02088));  // root of SB^2 - SW^2 / 4
  CHECK(*spread.between_component ==
        doctest::Approx(std::sqrt(*spread.of_board_means * *spread.of_board_means -
                                  *spread.within * *spread.within / 4)));
  CHECK(*spread.of_components == doctest::Approx(std::hypot(*spread.within, *spread.between_component)));
  CHECK_FALSE(spread.component_was_negative);
}

TEST_CASE("a certified analysis of variance comes out to eleven digits") {
  const auto spread = spread_of(boards_of("tuning/sirstv.csv"));
  // source: NIST StRD, analysis of variance, SiRstv (certified values)
  CHECK(*spread.between_mean_square == doctest::Approx(1.27865654000000E-02).epsilon(1e-11));
  CHECK(*spread.within_mean_square == doctest::Approx(1.08318280000000E-02).epsilon(1e-11));
  CHECK(*spread.variance_ratio == doctest::Approx(1.18046237440255E+00).epsilon(1e-11));
  CHECK(*spread.within == doctest::Approx(1.04076068334656E-01).epsilon(1e-11));
  // from the certified mean squares, by hand
  CHECK(to(*spread.of_board_means, 7) == doctest::Approx(0.0505700));
  CHECK(to(*spread.between_component, 7) == doctest::Approx(0.0197724));
  CHECK(to(*spread.of_all_readings, 6) == doctest::Approx(0.105628));
}

TEST_CASE("the ten batches of gears split as by hand") {
  const auto spread = spread_of(boards_of("tuning/gear.csv"));
  CHECK(spread.readings == 100);  // source: NIST/SEMATECH e-Handbook of Statistical Methods, gear data
  CHECK(spread.mean == doctest::Approx(0.99764).epsilon(1e-12));
  CHECK(to(*spread.within, 8) == doctest::Approx(0.00593857));
  CHECK(to(*spread.of_board_means, 8) == doctest::Approx(0.00284613));
  CHECK(to(*spread.between_component, 8) == doctest::Approx(0.00213864));
}

TEST_CASE(
    "boards with unequal numbers of readings: each reading counts once within, each board once between") {
  // By hand: means 2, 5, 9; squares within 2 + 0 + 2 over 2 + 0 + 1; 1 2 3 | 5 | 8 10, mean of all 29/6.
  const auto spread = spread_of({{1, 2, 3}, {5}, {8, 10}, {}});
  CHECK(spread.boards == 3);
  CHECK(spread.readings == 6);
  CHECK(spread.mean == doctest::Approx(29.0 / 6));
  CHECK(*spread.within == doctest::Approx(std::sqrt(4.0 / 3)));
  CHECK(*spread.of_board_means == doctest::Approx(std::sqrt(37.0 / 3)));  // 2, 5, 9 about 16/3
  const double between = (3 * 4 + 25 + 2 * 81 - 841.0 / 6) / 2;           // mean square of 2 freedoms
  CHECK(*spread.between_mean_square == doctest::Approx(between));
  const double n0 = (6 - 14.0 / 6) / 2;
  CHECK(*spread.between_component == doctest::Approx(std::sqrt((between - 4.0 / 3) / n0)));
}

TEST_CASE("board means that differ by less than their readings have a component of 0, and it is said") {
  const auto spread = spread_of({{1, 5}, {2, 4}, {0, 6}});
  CHECK(spread.component_was_negative);
  CHECK(*spread.between_component == 0);
  CHECK(*spread.of_board_means == 0);
  CHECK(*spread.of_components == doctest::Approx(*spread.within));
}

TEST_CASE("what a handful of readings cannot tell is not given as 0") {
  const auto none = spread_of({});
  CHECK(none.boards == 0);
  CHECK_FALSE(none.of_all_readings);
  const auto one_board = spread_of({{2.1, 2.2}});
  CHECK(one_board.within);
  CHECK(one_board.of_all_readings);
  CHECK_FALSE(one_board.of_board_means);
  CHECK_FALSE(one_board.between_component);
  CHECK_FALSE(one_board.of_components);
  const auto one_reading_each = spread_of({{2.1}, {2.2}, {2.15}});
  CHECK_FALSE(one_reading_each.within);
  CHECK_FALSE(one_reading_each.between_component);
  CHECK(*one_reading_each.of_board_means == doctest::Approx(0.05));
  CHECK(*one_reading_each.of_all_readings == doctest::Approx(0.05));
}

TEST_CASE("boards all alike have no spread in any sense") {
  const auto spread = spread_of({{2.1, 2.1, 2.1}, {2.1, 2.1, 2.1}});
  CHECK(*spread.within == 0);
  CHECK(*spread.of_board_means == 0);
  CHECK(*spread.between_component == 0);
  CHECK(*spread.of_all_readings == 0);
  CHECK_FALSE(spread.component_was_negative);
  CHECK_FALSE(spread.variance_ratio);
}

TEST_CASE(
    "spreads move with the unit and not with the size, and the squares within and between make up the "
    "whole") {
  CHECK(rc::check([] {
    const auto counts = *rc::gen::container<std::vector<int>>(4, rc::gen::inRange(1, 6));
    std::vector<BoardReadings> boards, moved;
    for (const int count : counts) {
      boards.emplace_back();
      moved.emplace_back();
      for (int i = 0; i < count; ++i) {
        const double reading = *rc::gen::inRange(1900, 2300) / 1000.0;
        boards.back().push_back(reading);
        moved.back().push_back(25.4 * (reading + 4));
      }
    }
    const auto inches = spread_of(boards), mm = spread_of(moved);
    RC_ASSERT(std::abs(*mm.of_all_readings - 25.4 * *inches.of_all_readings) < 1e-9);
    RC_ASSERT(std::abs(*mm.of_board_means - 25.4 * *inches.of_board_means) < 1e-9);
    const auto n = static_cast<double>(inches.readings);
    const double within = inches.within ? *inches.within_mean_square * (n - 4) : 0;
    const double all = *inches.of_all_readings * *inches.of_all_readings * (n - 1);
    RC_ASSERT(std::abs(within + *inches.between_mean_square * 3 - all) < 1e-10);
  }));
}

TEST_CASE("Z for a share of undersize as printed, but for three rows where print is off in its last digit") {
  struct Row {
    double percent, printed;
    bool exact;
  };
  // source: T. D. Brown, OSU Extension EM 8731, 2000, table 2 (its 0 percent row is one in a thousand)
  for (const auto& row : {Row{0.1, 3.09, true}, Row{1, 2.34, false}, Row{2, 2.05, true},
                          Row{2.5, 1.97, false}, Row{3, 1.88, true}, Row{4, 1.75, true}, Row{5, 1.65, false},
                          Row{10, 1.28, true}, Row{15, 1.04, true}}) {
    const double z = *deviations_for(row.percent / 100);
    CHECK_MESSAGE((to(z, 2) == doctest::Approx(row.printed)) == row.exact, row.percent);
    CHECK_MESSAGE(std::abs(z - row.printed) < 0.014, row.percent);
  }
  CHECK(*deviations_for(0.5) == doctest::Approx(0));
  CHECK(*deviations_for(0.9) == doctest::Approx(-*deviations_for(0.1)));
  CHECK_FALSE(deviations_for(0));
  CHECK_FALSE(deviations_for(1));
  CHECK_FALSE(deviations_for(std::nan("")));
}

TEST_CASE("critical and target size: allowances added, or shrinkage taken as a share of the green size") {
  // source: T. D. Brown, OSU Extension EM 8731, 2000, p. 12: 1.560 with two faces of 0.030 planed is 1.620
  CHECK(*critical_size({.final_size = 1.560, .planing = 0.060}) == doctest::Approx(1.620));
  CHECK(*critical_size({.final_size = 1.5, .planing = 0.06, .shrinkage = 0.045}) == doctest::Approx(1.605));
  // source: from memory: (1.500 + 0.060) / 0.97 + 2 x 0.030
  const FinishedSize dry{.final_size = 1.5, .planing = 0.06, .shrinkage = 0.03, .form = Shrinkage::divided};
  CHECK(to(*target_size(dry, 0.030, 0.0227501319), 3) == doctest::Approx(1.668));
  CHECK_FALSE(critical_size({.final_size = 2, .shrinkage = 1, .form = Shrinkage::divided}));
  CHECK_FALSE(target_size({.final_size = 2}, 0.02, 0));
  CHECK_FALSE(target_size({.final_size = 2}, -0.02, 0.05));
}

TEST_CASE("boards set to their target are undersize by the chosen share") {
  for (const double share : {0.01, 0.05, 0.15}) {
    const FinishedSize full{.final_size = 2};
    CHECK(undersize_share(*target_size(full, 0.0255, share), 2, 0.0255) == doctest::Approx(share));
  }
  CHECK(undersize_share(2.1, 2, 0) == 0);
  CHECK(undersize_share(2, 2, 0) == 0);
  CHECK(undersize_share(1.9, 2, 0) == 1);
}

TEST_CASE("what oversize costs: wood, lumber and money a year") {
  // source: E. Wengert, 2004 (1-1/8 cut where 1-1/16 would do, printed nearly 5 percent; the 1/4 kerf is assumed here)
  const auto thick = oversize_of(1.125, 1.0625, 0.25, 100000, 800);
  REQUIRE(thick);
  CHECK(thick->size == doctest::Approx(0.0625));
  CHECK(to(100 * thick->lumber_gain, 2) == doctest::Approx(4.76));
  CHECK(to(100 * thick->wood_share, 2) == doctest::Approx(4.55));
  CHECK(to(thick->bf_a_year, 0) == doctest::Approx(4762));
  CHECK(to(thick->money_a_year, 0) == doctest::Approx(3810));
}

TEST_CASE("boards cut too thin are oversize by a minus and save nothing") {
  const auto thin = oversize_of(2.0, 2.05, 0.25, 100000, 800);
  REQUIRE(thin);
  CHECK(thin->size == doctest::Approx(-0.05));
  CHECK(thin->lumber_gain == 0);
  CHECK(thin->money_a_year == 0);
  CHECK_FALSE(oversize_of(2.0, 0, 0, 1, 1));
}
