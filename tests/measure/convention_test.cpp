// convention_test.cpp -- how lumber is counted: thickness, length, rounding, and the words for them.
#include "measure/convention.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

#include <string>
#include <vector>

namespace {

using namespace kerfbook;
using namespace kerfbook::measure;

Length thickness(const char* text) {
  return *read_inches(text);
}

std::vector<Pieces> three_lines_of_2_5_6() {
  return {3, Pieces{*read_size("1x4"), *read_feet("8'6\""), 1}};  // 17/6 bf each
}

std::vector<std::string> plain_all(const std::vector<Decimal>& decimals) {
  std::vector<std::string> out;
  for (const auto& decimal : decimals) out.push_back(plain(decimal));
  return out;
}

TEST_CASE(
    "three lines of 2 5/6 bf total 8.50, bill as 9 when the total is rounded and as 9 when each line is") {
  Convention by;
  const auto lines = three_lines_of_2_5_6();
  by.rounding = BillRounding::total_hundredths;
  CHECK(plain(count(lines, by).total) == "8.50");
  CHECK(plain_all(count(lines, by).lines) == std::vector<std::string>{"2.83", "2.83", "2.83"});
  by.rounding = BillRounding::total_whole;
  CHECK(plain(count(lines, by).total) == "9");
  CHECK(plain_all(count(lines, by).lines) == std::vector<std::string>{"2.83", "2.83", "2.83"});
  by.rounding = BillRounding::line_hundredths;
  CHECK(plain(count(lines, by).total) == "8.49");
  by.rounding = BillRounding::line_whole;
  CHECK(plain(count(lines, by).total) == "9");
  CHECK(plain_all(count(lines, by).lines) == std::vector<std::string>{"3", "3", "3"});
}

TEST_CASE("the choice of rounding can change the bill: four lines of 2 1/3 bf are 9.33, 9, 9.32 or 8") {
  const std::vector<Pieces> lines(4, Pieces{*read_size("1x4"), feet(7), 1});
  const auto total = [&](BillRounding rounding) {
    Convention by;
    by.rounding = rounding;
    return plain(count(lines, by).total);
  };
  CHECK(total(BillRounding::total_hundredths) == "9.33");
  CHECK(total(BillRounding::total_whole) == "9");
  CHECK(total(BillRounding::line_hundredths) == "9.32");
  CHECK(total(BillRounding::line_whole) == "8");
}

TEST_CASE("no lines are nothing, in the places of the rounding") {
  Convention by;
  CHECK(count({}, by).total == Decimal{0, 2});
  by.rounding = BillRounding::line_whole;
  CHECK(count({}, by).total == Decimal{0, 0});
}

TEST_CASE("thickness is counted as cut, to the next quarter or to the next whole inch") {
  Convention by;
  CHECK(counted_thickness(thickness("1-1/8"), by) == thickness("1-1/8"));
  by.thickness = ThicknessRule::next_quarter;
  CHECK(counted_thickness(thickness("1-1/8"), by) == thickness("1-1/4"));
  CHECK(counted_thickness(thickness("1-1/4"), by) == thickness("1-1/4"));
  CHECK(counted_thickness(thickness("5/8"), by) == thickness("3/4"));
  by.thickness = ThicknessRule::next_inch;
  CHECK(counted_thickness(thickness("1-1/8"), by) == thickness("2"));
  CHECK(counted_thickness(thickness("2"), by) == thickness("2"));
  CHECK(counted_thickness(thickness("2-1/64"), by) == thickness("3"));
}

TEST_CASE("under 1 inch counts as 1 inch only where the convention says so") {
  Convention by;
  CHECK(counted_thickness(thickness("3/4"), by) == thickness("3/4"));
  by.under_inch_as_inch = true;
  CHECK(counted_thickness(thickness("3/4"), by) == thickness("1"));
  CHECK(counted_thickness(thickness("1-1/8"), by) == thickness("1-1/8"));
  by.thickness = ThicknessRule::next_quarter;
  CHECK(counted_thickness(thickness("3/4"), by) == thickness("1"));
}

TEST_CASE("metric thickness is always as cut") {
  Convention by;
  by.thickness = ThicknessRule::next_inch;
  by.under_inch_as_inch = true;
  CHECK(counted_thickness(millimetres(22), by) == millimetres(22));
  CHECK(counted_bf({{millimetres(50), millimetres(150)}, centimetres(480), 10}, by) ==
        board_feet(volume({millimetres(50), millimetres(150)}, centimetres(480), 10)));
}

TEST_CASE("lengths are counted as written, or down to the whole or the even foot") {
  const Size foot_wide{inches(1), inches(12)};  // 1 bf a foot
  Convention by;
  CHECK(counted_bf({foot_wide, *read_feet("15'6\""), 1}, by) == Rational(31, 2));
  by.length = LengthRule::whole_foot_down;
  CHECK(counted_bf({foot_wide, *read_feet("15'6\""), 1}, by) == Rational(15));
  by.length = LengthRule::even_foot_down;
  CHECK(counted_bf({foot_wide, *read_feet("15'6\""), 1}, by) == Rational(14));
  CHECK(counted_bf({foot_wide, feet(16), 1}, by) == Rational(16));
}

TEST_CASE("surface measure is taken board by board: ten boards are ten times the rounded one") {
  Convention by;
  by.width = WidthRule::surface_measure;
  const Pieces boards{*read_size("5/4x6-1/4"), feet(8), 10};  // 4 1/6 square feet, 4 each
  CHECK(counted_bf(boards, by) == Rational(50));              // 10 x 4 x 1-1/4
  CHECK(counted_bf(boards, Convention{}) == Rational(625, 12));
}

TEST_CASE("lineal feet are length times pieces") {
  CHECK(lineal_feet({*read_size("1x3"), *read_feet("10'6\""), 4}) == Rational(42));
  CHECK(lineal_feet({*read_size("1x3"), centimetres(3048), 1}) == Rational(100));
}

TEST_CASE("a convention is told in words") {
  CHECK(in_words({}) ==
        "nominal thickness and width, lengths as written; only the total is rounded, to hundredths "
        "of a "
        "board foot");
  Convention by{ThicknessRule::next_inch, true, WidthRule::surface_measure, LengthRule::whole_foot_down,
                BillRounding::line_whole};
  CHECK(in_words(by) ==
        "thickness up to the next whole inch, under 1 inch counted as 1 inch, surface measure of each board "
        "to the "
        "nearest square foot, lengths down to the whole foot; each line rounded to the whole board foot, the "
        "total "
        "adds the lines");
  by = {ThicknessRule::next_quarter, false, WidthRule::as_cut, LengthRule::even_foot_down,
        BillRounding::total_whole};
  CHECK(in_words(by) ==
        "thickness up to the next quarter inch, nominal width, lengths down to the even foot; only the total "
        "is rounded, to the whole board foot");
}

TEST_CASE("a volume that cannot be counted exactly is refused, not counted wrong") {
  const Size thick{inches(48), inches(48), false};
  CHECK_THROWS_WITH_AS(volume(thick, feet(400), 9'000'000'000), "a volume grew past 63 bits",
                       std::overflow_error);
  constexpr std::int64_t kHuge = std::int64_t{1} << 40;
  const Size vast{{kHuge, System::inch}, {kHuge, System::inch}, false};
  CHECK_THROWS_WITH_AS(volume_over(vast, {kHuge, System::inch}, kHuge, 0), "a volume grew past 127 bits",
                       std::overflow_error);
}

TEST_CASE("two conventions that count differently never read alike on paper") {
  std::vector<std::string> told;
  for (const auto thick : {ThicknessRule::as_cut, ThicknessRule::next_quarter, ThicknessRule::next_inch}) {
    for (const bool thin : {false, true}) {
      for (const auto width : {WidthRule::as_cut, WidthRule::surface_measure}) {
        for (const auto length :
             {LengthRule::as_written, LengthRule::whole_foot_down, LengthRule::even_foot_down}) {
          for (const auto rounding : {BillRounding::total_hundredths, BillRounding::total_whole,
                                      BillRounding::line_hundredths, BillRounding::line_whole}) {
            told.push_back(in_words({thick, thin, width, length, rounding}));
          }
        }
      }
    }
  }
  std::sort(told.begin(), told.end());
  CHECK(told.size() == 144);
  CHECK(std::adjacent_find(told.begin(), told.end()) == told.end());
}

TEST_CASE("every word of a convention is read as the rule it stands for") {
  CHECK(read_thickness_rule("as-cut") == ThicknessRule::as_cut);
  CHECK(read_thickness_rule("next-quarter") == ThicknessRule::next_quarter);
  CHECK(read_thickness_rule("Next Inch") == ThicknessRule::next_inch);
  CHECK(read_bill_rounding("total-hundredths") == BillRounding::total_hundredths);
  CHECK(read_bill_rounding("total_whole") == BillRounding::total_whole);
  CHECK(read_bill_rounding("line-hundredths") == BillRounding::line_hundredths);
  CHECK(read_bill_rounding("line-whole") == BillRounding::line_whole);
  CHECK(read_length_rule("as-written") == LengthRule::as_written);
  CHECK(read_length_rule("whole-foot-down") == LengthRule::whole_foot_down);
  CHECK(read_length_rule("even-foot-down") == LengthRule::even_foot_down);
  CHECK_FALSE(read_thickness_rule("next-foot"));
  CHECK_FALSE(read_bill_rounding(""));
}

TEST_CASE("lines and total agree under each rounding, whatever the lines are") {
  CHECK(rc::check("count", [] {
    const auto number = [](int from, int to) { return *rc::gen::inRange(from, to); };
    std::vector<Pieces> lines;
    const int many = number(0, 20);
    for (int i = 0; i < many; ++i) {
      lines.push_back({{{number(1, 800), System::inch}, {number(1, 1600), System::inch}},
                       {number(1, 20'000), System::inch},
                       number(0, 100)});
    }
    Rational exact;
    for (const auto& line : lines) exact = exact + counted_bf(line, {});
    for (const auto rounding : {BillRounding::total_hundredths, BillRounding::total_whole,
                                BillRounding::line_hundredths, BillRounding::line_whole}) {
      Convention by;
      by.rounding = rounding;
      const Counted counted = count(lines, by);
      RC_ASSERT(counted.lines.size() == lines.size());
      const bool by_line = rounding == BillRounding::line_hundredths || rounding == BillRounding::line_whole;
      const bool whole = rounding == BillRounding::total_whole || rounding == BillRounding::line_whole;
      RC_ASSERT(counted.total.places == (whole ? 0 : 2));
      std::int64_t sum = 0;
      for (const auto& line : counted.lines) sum += line.units;
      if (by_line) {
        RC_ASSERT(counted.total.units == sum);
      } else {
        RC_ASSERT(counted.total.units == exact.rounded(whole ? 0 : 2));
      }
    }
  }));
}

}  // namespace
