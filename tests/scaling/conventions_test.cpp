// conventions_test.cpp -- what a practice does before the rule is asked: readings, roundings, lengths, segments.
#include <doctest/doctest.h>

#include <array>

#include "measure/csv_rows.h"
#include "scaling/pieces.h"
#include "scaling/scaled.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::scaling;
using scaling::test::practice;
using scaling::test::scaled;
using scaling::test::whole;

Length first_diameter(const std::string& log, const Practice& by) {
  return scaled(log, by).segments.at(0).diameter;
}

Practice decimal_c(DiameterRounding diameter, ReadingsJoin readings = ReadingsJoin::average) {
  Practice by = practice("scribner-c");
  by.diameter = diameter;
  by.readings = readings;
  return by;
}

std::string butt_first(Ticks length, Ticks longest) {
  std::array<Ticks, kMostSegments> lengths{};
  const std::size_t count = pieces_needed(length, longest);
  divide(length, longest, count, Division::equal_even, lengths);
  std::string text;
  for (std::size_t i = count; i > 0; --i)
    text += (text.empty() ? "" : "+") + std::to_string(lengths[i - 1] / kFoot);
  return text;
}

}  // namespace

TEST_CASE("9-1/2 up to just under 10-1/2 in is 10, and 5.51 in passes as 6") {
  // source: Idaho Board of Scaling Practices, How to Determine the Scale of a Log
  const Practice by = practice("scribner-c");
  CHECK(first_diameter("9.5x16", by) == measure::inches(10));
  CHECK(first_diameter("10.484375x16", by) == measure::inches(10));
  CHECK(first_diameter("10.5x16", by) == measure::inches(11));
  CHECK(first_diameter("5.515625x16", by) == measure::inches(6));
  CHECK(scaled("5.484375x16", by).gross == 0);
}

TEST_CASE("a cull top is judged by the scaling diameter: 5.51 in is 6") {
  // source: Idaho Board of Scaling Practices, How to Determine the Scale of a Log: minimum top 6 in (5.51 actual)
  CHECK_FALSE(scaled("5.515625x16", "scribner-c-even").cull);
  const auto small = scaled("5.25x16", "scribner-c-even");
  CHECK(small.cull);
  CHECK(small.net == 0);
}

TEST_CASE("a scale is rounded to what the practice says, an exact half up") {
  // Doyle, 19 x 9: (15 / 4)^2 x 9 = 126.5625; source: Louisiana R.S. 3:4641
  const auto rounded = [](ResultRounding how, const std::string& log) {
    Practice by = practice("doyle");
    by.result = how;
    return scaled(log, by).gross;
  };
  CHECK(rounded(ResultRounding::none, "19x9") == 126'562'500);
  CHECK(rounded(ResultRounding::thousandth, "19x9") == 126'563'000);
  CHECK(rounded(ResultRounding::hundredth, "19x9") == 126'560'000);
  CHECK(rounded(ResultRounding::nearest_1, "19x9") == 127'000'000);
  CHECK(rounded(ResultRounding::nearest_5, "19x9") == 125'000'000);
  CHECK(rounded(ResultRounding::nearest_10, "19x9") == 130'000'000);
  CHECK(rounded(ResultRounding::nearest_10, "14x8") == 50'000'000);   // 50
  CHECK(rounded(ResultRounding::nearest_10, "14x12") == 80'000'000);  // 75 exactly
}

TEST_CASE("exact halves go up, down or to the even number as the practice says") {
  CHECK(first_diameter("12.5x16", decimal_c(DiameterRounding::down)) == measure::inches(12));
  CHECK(first_diameter("12.984375x16", decimal_c(DiameterRounding::down)) == measure::inches(12));
  CHECK(first_diameter("12.5x16", decimal_c(DiameterRounding::nearest_half_up)) == measure::inches(13));
  CHECK(first_diameter("12.5x16", decimal_c(DiameterRounding::nearest_half_down)) == measure::inches(12));
  CHECK(first_diameter("12.515625x16", decimal_c(DiameterRounding::nearest_half_down)) ==
        measure::inches(13));
  CHECK(first_diameter("12.5x16", decimal_c(DiameterRounding::nearest_half_even)) == measure::inches(12));
  CHECK(first_diameter("13.5x16", decimal_c(DiameterRounding::nearest_half_even)) == measure::inches(14));
}

TEST_CASE(
    "of two readings the mean counts, and a half inch left in it is dropped where the practice drops it") {
  // source: common practice, no source (8 and 13 give 10)
  CHECK(first_diameter("8/13x16", decimal_c(DiameterRounding::nearest_half_up,
                                            ReadingsJoin::average_drop_half)) == measure::inches(10));
  // source: USDA Forest Service, FSH 2409.11a, R-6 Supplement 98-2, section 21-4: 23 and 24 are recorded 23; of two halves one
  // goes up and one down
  const Practice by = decimal_c(DiameterRounding::nearest_half_up, ReadingsJoin::average_drop_half);
  CHECK(first_diameter("23/24x16", by) == measure::inches(23));
  CHECK(first_diameter("22.5/23.5x16", by) == measure::inches(23));
  CHECK(first_diameter("22.5/22.5x16", by) == measure::inches(22));
  CHECK(first_diameter("8/13x16", decimal_c(DiameterRounding::nearest_half_up)) == measure::inches(11));
  CHECK(first_diameter("8/13x16", decimal_c(DiameterRounding::none, ReadingsJoin::smaller)) ==
        measure::inches(8));
}

TEST_CASE("the mean of two readings keeps its half sixty-fourth") {
  const Practice by = practice("doyle");
  const auto mean =
      scaled("20/20.015625x16", by).gross;  // 20 1/128 in: ((16 + 1/128) / 4)^2 x 16 = 256.2500610...
  CHECK(mean == 256'250'061);
}

TEST_CASE("trim comes off before the length steps down, and a log of nothing but trim scales nothing") {
  Practice by = practice("scribner-c");
  by.trim = {4 * measure::kPerInch, System::inch};
  by.length_step = measure::feet(2);
  CHECK(scaled("20x16'4", by).segments[0].length == measure::feet(16));
  CHECK(scaled("20x16'3", by).segments[0].length == measure::feet(14));
  by.trim = measure::feet(3);
  const auto nothing = scaled("20x2", by);
  CHECK(nothing.gross == 0);
  CHECK_FALSE(nothing.remarks.empty());
}

TEST_CASE("logs of 22 to 60 ft divide as the 20-ft table has it") {
  for (const auto& row : kerfbook::test::rows_of("scaling/segments_20ft.csv")) {
    CHECK_MESSAGE(butt_first(std::stoll(row[0]) * kFoot, 20 * kFoot) == row[1], row[0]);
  }
}

TEST_CASE(
    "an odd foot goes to the piece nearest the butt among the shortest, so pieces stay as equal as can be") {
  CHECK(butt_first(27 * kFoot, 20 * kFoot) == "14+13");
  CHECK(butt_first(51 * kFoot, 20 * kFoot) == "18+17+16");
  CHECK(butt_first(33 * kFoot, 20 * kFoot) == "17+16");
  CHECK(butt_first(39 * kFoot, 20 * kFoot) == "20+19");
  CHECK(butt_first(21 * kFoot, 20 * kFoot) == "11+10");
  CHECK(butt_first(59 * kFoot, 20 * kFoot) == "20+20+19");
}

TEST_CASE("no piece is longer than the longest segment, whatever that is, and none is empty") {
  for (const Ticks longest : {15 * kFoot, 31 * kFoot / 2, 5 * kMetre, 7 * kInch, 20 * kFoot}) {
    for (Ticks length = kFoot; length <= 16 * longest; length += 5 * kInch) {
      std::array<Ticks, kMostSegments> lengths{};
      const std::size_t count = pieces_needed(length, longest);
      divide(length, longest, count, Division::equal_even, lengths);
      Ticks sum = 0;
      for (std::size_t i = 0; i < count; ++i) {
        REQUIRE(lengths[i] > 0);
        REQUIRE(lengths[i] <= longest);
        sum += lengths[i];
      }
      REQUIRE(sum == length);
    }
  }
}

TEST_CASE("in the east 16 ft is one log and 32 ft two; at 32 ft maximum 32 ft is one and 64 ft two") {
  // source: Official Code of Georgia Annotated, 2-14-80 (d)
  // source: R. H. D. Boerker, Our National Forests, 1918
  CHECK(pieces_needed(16 * kFoot, 16 * kFoot) == 1);
  CHECK(pieces_needed(32 * kFoot, 16 * kFoot) == 2);
  CHECK(pieces_needed(32 * kFoot, 32 * kFoot) == 1);
  CHECK(pieces_needed(64 * kFoot, 32 * kFoot) == 2);
}

TEST_CASE("a 32-ft log with segment diameters 10 and 12 is the sum of the two table cells") {
  // source: E. Wengert, Log Volume charts, 2001: 60 + 80
  const auto by_person = scaled("10x32 segments 10,12", "scribner-c");
  CHECK(whole(by_person.gross) == 140);
  CHECK(by_person.segments[0].overridden);
  const auto by_taper = scaled("10-14x32", "scribner-c");
  CHECK(whole(by_taper.gross) == 140);
  CHECK(by_taper.segments[1].diameter == measure::inches(12));
  CHECK_FALSE(by_taper.segments[1].overridden);
}

TEST_CASE("without a large end the practice's taper is shared out, and the log says so from memory") {
  const auto scale = scaled("12x32", "scribner-c");
  CHECK(scale.segments.at(1).diameter == measure::inches(14));
  bool told = false;
  for (const auto& remark : scale.remarks) told = told || remark.find("from memory") != std::string::npos;
  CHECK(told);
}

TEST_CASE("a log whose large end was read smaller than its small end has no taper, not a negative one") {
  const auto scale = scaled("14-10x32", "scribner-c");
  CHECK(scale.segments.at(1).diameter == measure::inches(14));
  CHECK(scale.gross == 2 * scaled("14x16", "scribner-c").gross);
}

TEST_CASE("a log of the minimum length, its trim taken off, is no cull; one of a foot less is") {
  Practice by = practice("doyle");
  by.minimum_length = measure::feet(8);
  by.trim = {4 * measure::kPerInch, System::inch};
  CHECK_FALSE(scaled("12x8'4", by).cull);
  CHECK(scaled("12x8'4", by).net == 32 * kPerUnit);
  CHECK(scaled("12x8'3", by).cull);  // 7 ft 11 in steps down to 7
  CHECK(scaled("12x8'3", by).net == 0);
}

TEST_CASE("a person may divide a log further than the practice would, not less") {
  CHECK(scaled("12x18 segments 12,13", "scribner-c").segments.size() == 2);
  const auto log = scaling::test::written("12x50 segments 12,14").log;
  const auto refused = scale(log, {}, practice("scribner-c"));
  REQUIRE_FALSE(refused);
  CHECK(refused.slip().what == "2 diameters for segments, but at 20 ft the log divides into 3");
}

TEST_CASE("trim is off before the segments are counted, in the refusal too") {
  Practice by = practice("scribner-c");
  by.trim = {measure::kPerFoot / 2, System::inch};
  CHECK(scaled("12x40'6\" segments 12,14", by).segments.size() == 2);
  const auto refused = scale(scaling::test::written("12x40'6\" segments 12").log, {}, by);
  REQUIRE_FALSE(refused);
  CHECK(refused.slip().what == "1 diameter for segments, but at 20 ft the log divides into 2");
}

TEST_CASE("Vermont takes 12-ft sections from the upper end, each with its own diameter") {
  // source: 9 V.S.A. s. 2693: D x D/2 for 12 ft, in proportion for other lengths
  const auto scale = scaled("10x16 segments 10,12", "vermont");
  CHECK(scale.segments[0].length == measure::feet(12));
  CHECK(scale.segments[1].length == measure::feet(4));
  CHECK(scale.gross == (50 + 24) * kPerUnit);
  CHECK(scaled("10x8", "vermont").gross == 33'333'333);
}

TEST_CASE("International 1/4-inch in 4-ft multiples sums as the log in one piece does") {
  Practice one = practice("international-quarter-exact");
  Practice many = one;
  many.longest_segment = measure::feet(16);
  const auto whole_log = scaled("14x32", one);
  const auto segments = scaled("14x32", many);
  CHECK(segments.segments.at(1).diameter ==
        measure::inches(16));  // 1/2 in per 4 ft; source: Massachusetts G.L. c. 96 s. 11A
  CHECK(segments.gross == whole_log.gross);
}

TEST_CASE(
    "JAS cuts diameters to 1 cm under 14 cm and to even centimetres from there; radii of firmwood are "
    "whole") {
  const auto jas = practice("jas");  // source: from memory
  CHECK(first_diameter("13.9cmx4m", jas) == measure::centimetres(13));
  CHECK(first_diameter("15.9cmx4m", jas) == measure::centimetres(14));
  CHECK(first_diameter("30.6/28.2cmx4m", jas) == measure::centimetres(28));
  CHECK(scaled("30cmx7m", jas).gross == 695'000);  // (30 + (7 - 4)/2)^2 x 7 / 10 000 = 0.694575
  CHECK(first_diameter("21cm-28cmx10m", practice("firmwood")) == measure::centimetres(22));
}

TEST_CASE("a metric log scales under an inch rule by its exact inches, and an inch log under a metric one") {
  CHECK(first_diameter("30.48cmx4.8768m", practice("scribner-c")) == measure::inches(12));
  CHECK(scaled("30.48cmx4.8768m", "doyle").gross == scaled("12x16", "doyle").gross);
  CHECK(scaled("12x16", "korean").gross == 432'000);  // 30 cm, 4.8 m
}

TEST_CASE(
    "a log's volume takes the mean of two readings, and in a metric log the taper in millimetres a metre") {
  // Smalian, ends of 13 (12 and 14) and 16 in, 16 ft: pi / 4 x (169 + 256) / 2 / 144 x 16 = 18.544123 ft3
  CHECK(content(scaling::test::written("12/14-16x16").log, {}).cubic_feet == 18'544'123);
  // 30 cm, 4 m, 10 mm a metre: ends of 30 and 34 cm, pi / 4 x (0.09 + 0.1156) / 2 x 4 = 0.322950 m3 = 11.405074 ft3
  Taper taper;
  taper.per_metre = 1000;
  const Content metric = content(scaling::test::written("30cmx4m").log, taper);
  CHECK(metric.cubic_feet == 11'405'074);
  CHECK(metric.method == "Smalian, small end and taper 10.00 mm per m");
}
