// size_finding_test.cpp -- what is said of a size: too few boards, thin, well set, thick; and how often wrongly.
#include "tuning/size_finding.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

using namespace kerfbook::tuning;

namespace {

/// Boards of a mill whose truth is known: a normal spread between boards and one within.
std::vector<BoardReadings> sawn(std::size_t boards, double mean, double between, double within,
                                unsigned seed) {
  std::mt19937 chance(seed);
  std::normal_distribution<double> normal;
  std::vector<BoardReadings> out(boards);
  for (auto& board : out) {
    const double own = mean + between * normal(chance);
    for (int reading = 0; reading < 4; ++reading) board.push_back(own + within * normal(chance));
  }
  return out;
}

const SizeAsked kFullTwoInch{
    .critical = 2, .undersize_share = 0.05, .kerf = 0.25, .bf_a_year = 20000, .price_per_mbf = 900};

}  // namespace

TEST_CASE("a size is told by its boards: thick, thin, well set, or too few to tell") {
  const double total = std::hypot(0.012, 0.010);
  const double right = 2 + 1.645 * total;
  CHECK(find_size(sawn(30, right + 0.05, 0.012, 0.010, 1), kFullTwoInch).verdict == SizeVerdict::thick);
  CHECK(find_size(sawn(30, right - 0.03, 0.012, 0.010, 2), kFullTwoInch).verdict == SizeVerdict::thin);
  CHECK(find_size(sawn(30, right, 0.012, 0.010, 3), kFullTwoInch).verdict == SizeVerdict::well_set);
  const auto few = find_size(sawn(9, right + 0.05, 0.012, 0.010, 4), kFullTwoInch);
  CHECK(few.verdict == SizeVerdict::too_few_boards);
  CHECK(few.today);
}

TEST_CASE("figures of a finding hang together, by hand") {
  std::vector<BoardReadings> boards;
  for (int i = 0; i < 5; ++i) {
    boards.push_back({2.10, 2.12});
    boards.push_back({2.06, 2.08});
  }
  const auto found = find_size(boards, kFullTwoInch);
  const double spread = std::sqrt((10 * 0.03 * 0.03 + 10 * 0.01 * 0.01) / 19);
  CHECK(found.spread.mean == doctest::Approx(2.09));
  CHECK(*found.target == doctest::Approx(2 + 1.6448536 * spread));
  CHECK(*found.holds == doctest::Approx(2.09 - 1.6448536 * spread));
  CHECK(found.today->size == doctest::Approx(2.09 - *found.target));
  CHECK(found.today->money_a_year ==
        doctest::Approx(0.9 * 20000 * found.today->size / (*found.target + 0.25)));
  CHECK(found.undersize_today < 0.001);
  CHECK(found.verdict == SizeVerdict::thick);
}

TEST_CASE("of a well-set mill thick or thin is said wrongly no more often than two standard errors allow") {
  const double right = 2 + 1.6448536 * std::hypot(0.012, 0.010);
  int wrong = 0;
  const int mills = 500;
  for (unsigned seed = 0; seed < mills; ++seed) {
    if (find_size(sawn(20, right, 0.012, 0.010, 1000 + seed), kFullTwoInch).verdict != SizeVerdict::well_set)
      ++wrong;
  }
  CHECK_MESSAGE(wrong <= 45, wrong);  // 1 in 20 is 25, and 45 is four of its standard deviations above
}

TEST_CASE("a size cut 3/64 too thick is found with 20 boards nine times in ten") {
  const double right = 2 + 1.6448536 * std::hypot(0.012, 0.010);
  int found = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    if (find_size(sawn(20, right + 3.0 / 64, 0.012, 0.010, seed), kFullTwoInch).verdict == SizeVerdict::thick)
      ++found;
  }
  CHECK_MESSAGE(found >= 180, found);
}

TEST_CASE("no boards, one reading, and boards all alike") {
  const auto none = find_size({}, kFullTwoInch);
  CHECK(none.verdict == SizeVerdict::too_few_boards);
  CHECK_FALSE(none.target);
  CHECK(none.undersize_today == 0);
  CHECK_FALSE(find_size({{2.1}}, kFullTwoInch).holds);
  const std::vector<BoardReadings> alike(12, BoardReadings{2.05, 2.05});
  const auto same = find_size(alike, kFullTwoInch);
  CHECK(*same.target == 2);
  CHECK(*same.error == 0);
  CHECK(same.verdict == SizeVerdict::thick);
  CHECK(same.undersize_today == 0);
}
