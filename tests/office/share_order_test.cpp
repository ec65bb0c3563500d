// share_order_test.cpp -- in which order lumber is dealt out between the customer and the mill: from the largest board
// down, however the lines came. Common practice, no source; worked by hand.
#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>

#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

ShareLine boards(const std::string& species, const std::string& grade, const std::string& size, int feet,
                 std::int64_t pieces, const Rational& bf_each) {
  return {"", species, grade, *measure::read_size(size), measure::feet(feet), pieces, bf_each, 0, 0};
}

/// One board of each, in the order in which they are dealt. The last has a length only as a count.
std::vector<ShareLine> one_of_each() {
  return {boards("DF", "No2", "2x8", 12, 1, 16),   // most board feet
          boards("DF", "No1", "2x6", 12, 1, 12),   // 12 bf like the four after it: the thicker size first
          boards("DF", "No2", "2x6", 12, 1, 12),   // then by grade
          boards("RC", "No1", "2x6", 12, 1, 12),   // species before grade
          boards("DF", "No1", "1x12", 12, 1, 12),  // and the thinner
          boards("DF", "No1", "1x6", 13, 1, 6),    // 13 ft counted as 12: the longer first
          boards("DF", "No1", "1x6", 12, 1, 6),
          {"",
           "DF",
           "",
           *measure::read_size("2x10"),
           {},
           24 * measure::kPerFoot,
           Rational(10, 12 * 64 * 6),
           0,
           0}};
}

/// "c" where the line's board goes to the customer, "m" where to the mill, in the order in which they are dealt.
std::string dealt(const Split& split) {
  std::string sides;
  for (const ShareLine& line : split.lines)
    if (!line.lineal()) sides += line.to_customer == 1 ? 'c' : 'm';
  return sides;
}

/// Species, grade, size and length of every line, as they stand in a division.
std::vector<std::string> order_of(const std::vector<ShareLine>& lines) {
  std::vector<std::string> all;
  for (const ShareLine& line : lines)
    all.push_back(line.species + " " + line.grade + " " + write_size(line.size) + " " +
                  std::to_string(line.length.count));
  return all;
}

}  // namespace

TEST_CASE("boards are dealt from the largest down, in whatever order their lines come") {
  const std::vector<ShareLine> right = one_of_each();
  std::vector<std::size_t> turn(right.size());
  std::iota(turn.begin(), turn.end(), std::size_t{0});
  for (std::size_t start = 0; start < right.size(); ++start) {
    for (const bool back : {false, true}) {
      std::vector<std::size_t> at = turn;
      std::rotate(at.begin(), at.begin() + static_cast<std::ptrdiff_t>(start), at.end());
      if (back) std::reverse(at.begin(), at.end());
      std::vector<ShareLine> lines;
      for (const std::size_t i : at) lines.push_back(right[i]);
      CAPTURE(start);
      CAPTURE(back);
      const Split alternate = divide(lines, ShareRule::alternate, 50, 0);
      CHECK(order_of(alternate.lines) == order_of(right));
      CHECK(dealt(alternate) == "cmcmcmc");
      // 16 to the customer; 12 and 12 to the mill, which is behind till it has 24; then 12 to the customer (28 : 24),
      // 12 to the mill (28 : 36), 6 to the customer (34 : 36) and the last 6 to him too
      CHECK(dealt(divide(lines, ShareRule::percent, 50, 0)) == "cmmcmcc");
    }
  }
}

TEST_CASE(
    "the odd board of the largest line goes round first, and the odd ones of smaller lines even it out") {
  const ShareLine small = boards("DF", "", "1x6", 10, 3, 5);
  const ShareLine large = boards("DF", "", "2x12", 16, 3, 32);
  for (const auto& lines : {std::vector{small, large}, std::vector{large, small}}) {
    // a board of each to each side; the odd 2x12 to the customer, as neither is behind, the odd 1x6 to the mill
    const Split split = divide(lines, ShareRule::by_size_line, 50, 0);
    CHECK(split.lines.at(0).size == large.size);
    CHECK(split.lines.at(0).to_customer == 2);
    CHECK(split.lines.at(1).to_mill == 2);
    CHECK(split.carried == Rational(-27, 2));  // 69 to the customer, 42 to the mill; half of all is 55 1/2
    // 20 bf are owed to the mill from before: the odd 2x12 goes to it, and then the customer is behind by 6
    const Split owed = divide(lines, ShareRule::by_size_line, 50, -10);
    CHECK(owed.lines.at(0).to_mill == 2);
    CHECK(owed.lines.at(1).to_customer == 2);
    CHECK(owed.carried == Rational(7, 2));
  }
}
