// defects_test.cpp -- what defects take off, alone and together.
#include <doctest/doctest.h>

#include "scaling/scaled.h"

using namespace kerfbook;
using namespace kerfbook::scaling;
using scaling::test::practice;
using scaling::test::scaled;
using scaling::test::whole;

TEST_CASE("a deduction of a half or more goes up to the next whole number, less goes down") {
  // source: USDA Forest Service, FSH 2409.11, chapter 20, Amendment 6 (5/85), section 21; under International here whole bf,
  // under Decimal C whole tens
  CHECK(whole(scaled("12x12 defect 5%", "international-quarter").deduction) == 4);    // 3.5 of 70
  CHECK(whole(scaled("12x12 defect 4.9%", "international-quarter").deduction) == 3);  // 3.43
  CHECK(whole(scaled("20x16 defect 35bf", "scribner-c").deduction) == 40);            // 3.5 tens
  CHECK(whole(scaled("20x16 defect 34bf", "scribner-c").deduction) == 30);
}

TEST_CASE("deductions that come to a half by thirds and sixths go up like any other half") {
  // 1 x 5 x 1 over 15 is 1/3 bf, 2.5 x 5 x 1 over 15 is 5/6: 1/3 + 1/3 + 5/6 = 1 1/2
  const std::string log = "20x16 defect 1x5x1 defect 1x5x1 defect 2.5x5x1";
  CHECK(whole(scaled(log, "doyle-table").deduction) == 2);
  // 14 x 5 x 1 is 4 2/3, 1 x 5 x 1 is 1/3: half a ten
  CHECK(whole(scaled("20x16 defect 14x5x1 defect 1x5x1", "scribner-c").deduction) == 10);
}

TEST_CASE("a rule that is not rounded has deductions that are not") {
  CHECK(scaled("19x9 defect 10%", "doyle").deduction == 12'656'250);
  CHECK(whole(scaled("19x9 defect 10%", "doyle-table").deduction) == 13);
}

TEST_CASE("a length defect is the scale at full length less the scale of the shorter log") {
  const auto scale = scaled("20x16 defect 2'", "scribner-c");
  CHECK(scale.net == scaled("20x14", "scribner-c").gross);
  CHECK(whole(scale.net) == 240);  // 24 tens; source: USDA Forest Service, National Volume Estimator Library
  CHECK(scaled("20x16 defect 2'6\"", "scribner-c").net == scaled("20x13", "scribner-c").gross);
  CHECK(scaled("20x16 defect 2'6\"", "doyle").net ==
        scaled("20x13", "doyle").gross);  // down to the whole foot
}

TEST_CASE("length cut from a log in segments comes off its butt") {
  const auto scale = scaled("10x32 segments 10,12 defect 4'", "scribner-c");
  CHECK(scale.net == scaled("10x16", "scribner-c").gross + scaled("12x12", "scribner-c").gross);
}

TEST_CASE("a diameter defect leaves the smaller cylinder") {
  CHECK(scaled("20x16 defect 2in", "scribner-c").net == scaled("18x16", "scribner-c").gross);
  CHECK(scaled("20x16 defect 2in", "doyle").net == scaled("18x16", "doyle").gross);
}

TEST_CASE("length and diameter defects together leave the shorter and thinner log") {
  const auto both = scaled("20x16 defect 2in defect 2'", "doyle");
  CHECK(both.net == scaled("18x14", "doyle").gross);
  CHECK(both.taken.size() == 2);
  CHECK(both.taken[0].amount + both.taken[1].amount == both.deduction);
}

TEST_CASE("a squared defect is the box over the practice's divisor") {
  // source: from memory: W x H x L / 15 for Scribner, the inch all round already added; / 16 with International
  CHECK(scaled("30x16 defect 7x7x16", "scribner-formula").deduction == 52'266'667);
  CHECK(whole(scaled("30x16 defect 7x7x16", "scribner-c").deduction) == 50);
  CHECK(whole(scaled("30x16 defect 7x7x16", "international-quarter").deduction) == 49);
  Practice solid = practice("scribner-formula");
  solid.squared_divisor = 12;
  CHECK(scaled("30x16 defect 7x7x12", solid).deduction == 49 * kPerUnit);
}

TEST_CASE("under a cubic rule a squared defect is the box itself") {
  CHECK(scaled("30-32x16 defect 12x12x8", "smalian").deduction == 8 * kPerUnit);
  CHECK(scaled("60cm-64cmx5m defect 20cmx20cmx5m", "smalian").deduction == 200'000);
}

TEST_CASE("a sector takes its share of the circle over its share of the length") {
  CHECK(scaled("20x16 defect 90degx8", "doyle").deduction == 32 * kPerUnit);  // 256 / 4 / 2
  CHECK(scaled("20x16 defect 90deg", "doyle").deduction == 64 * kPerUnit);
  CHECK(scaled("20x16 defect 90degx20", "doyle").deduction == 64 * kPerUnit);  // no longer than the log
}

TEST_CASE("several defects are each worked out on the sound log, so their order never matters") {
  const std::string one = "20x16 defect 10% defect 2' defect 6x6x8 defect 30deg";
  const std::string other = "20x16 defect 30deg defect 6x6x8 defect 2' defect 10%";
  for (const auto& name : {"doyle", "scribner-c", "international-quarter"}) {
    CHECK(scaled(one, name).deduction == scaled(other, name).deduction);
  }
}

TEST_CASE("deductions never take more than the log") {
  const auto scale = scaled("12x12 defect 60% defect 60%", "international-quarter");
  CHECK(scale.deduction == scale.gross);
  CHECK(scale.net == 0);
  CHECK(scaled("12x12 defect 900bf", "doyle").net == 0);
  CHECK(scaled("12x12 defect 20'", "doyle").net == 0);
  CHECK(scaled("12x12 defect 20in", "doyle").net == 0);
  CHECK(scaled("6x8 defect 60%", "scribner-c").net == 5 * kPerUnit);  // 3 bf is no half ten
}

TEST_CASE("under the merchantable share a log is cull and says so; at the share it is not") {
  Practice by = practice("doyle");
  by.merchantable_percent = Rational(100, 3);         // source: from memory: 33 1/3 %
  const auto cull = scaled("16x10 defect 61bf", by);  // 29 of 90
  CHECK(cull.cull);
  CHECK(cull.net == 0);
  CHECK(cull.deduction == cull.gross);
  REQUIRE_FALSE(cull.remarks.empty());
  CHECK(cull.remarks.back() == "cull: 29.00 sound of 90.00 is under 33.3 %");
  const auto kept = scaled("16x10 defect 60bf", by);  // 30 of 90 is a third exactly
  CHECK_FALSE(kept.cull);
  CHECK(kept.net == 30 * kPerUnit);
}

TEST_CASE("a volume in another unit is taken as solid wood, 12 bf to the cubic foot, and says so") {
  const auto scale = scaled("10-12x16 defect 12bf", "smalian");
  CHECK(scale.deduction == kPerUnit);
  REQUIRE(scale.remarks.size() == 1);
  CHECK(scale.remarks[0] == "12bf taken as 1.000 ft3 of solid wood");
  CHECK(scaled("30-32x16 defect 0.028317m3", "smalian").deduction ==
        1'000'005);  // 1 ft3 is 0.028316846592 m3
}

TEST_CASE("a hoppus foot of a defect is 4/pi cubic feet, and a volume under it the other way round") {
  // 1 hoppus ft = 4/pi ft3 = 1.273240 ft3 = 15.278875 bf (arithmetic)
  CHECK(scaled("30-32x16 defect 1hft", "smalian").deduction == 1'273'240);
  CHECK(whole(scaled("20x16 defect 2hft", "doyle-table").deduction) == 31);  // 30.56 bf
  CHECK(scaled("15x12 girth 48 defect 12bf", "hoppus").deduction == 785'398);
}

TEST_CASE("a diameter defect thins every measure the rule goes by, a girth by pi times as much") {
  const auto net = [](const std::string& log, const std::string& by) { return scaled(log, by).net; };
  const auto gross = [](const std::string& log, const std::string& by) { return scaled(log, by).gross; };
  CHECK(net("14x16 mid 16 defect 2in", "huber") == gross("12x16 mid 14", "huber"));
  CHECK(net("14-18x16 defect 2in", "smalian") == gross("12-16x16", "smalian"));
  CHECK(net("14-18x16 mid 16 defect 2in", "newton") == gross("12-16x16 mid 14", "newton"));
  // 113 in of girth less 2 x 355/113 in are 106.717 in
  const auto girth = scaled("30x16 girth 113in defect 2in", "huber");
  CHECK(girth.net < gross("30x16 girth 106.75in", "huber"));
  CHECK(girth.net > gross("30x16 girth 106.6875in", "huber"));
}

TEST_CASE("the reason of a defect is kept beside what it took") {
  auto what = scaling::test::written("20x16 defect 10%");
  what.defects[0].reason = "rot";
  const auto got = scale(what.log, what.defects, practice("doyle"));
  REQUIRE(got);
  REQUIRE(got->taken.size() == 1);
  CHECK(got->taken[0].defect == "10%");
  CHECK(got->taken[0].reason == "rot");
  CHECK(got->taken[0].amount == 25'600'000);
}
