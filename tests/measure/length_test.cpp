// length_test.cpp -- lengths read, written, spoken and converted.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <utility>
#include <vector>

#include "measure/length.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::measure;

constexpr Length counts(std::int64_t count) {
  return {count, System::inch};
}
constexpr Length tenths_mm(std::int64_t count) {
  return {count, System::metric};
}

using Read = Result<Length> (*)(std::string_view);

void check_reads(Read read, const std::vector<std::pair<std::string, Length>>& rows) {
  for (const auto& row : rows) {
    const auto& text = row.first;  // names that a capture takes on clang 14 too
    const auto& expected = row.second;
    CAPTURE(text);
    const auto got = read(text);
    REQUIRE_MESSAGE(got, got.slip().what);
    CHECK(got->count == expected.count);
    CHECK(got->system == expected.system);
  }
}

struct Wrong {
  std::string text;
  std::string what;
  std::string instead;
  int at = 0;
};

void check_slips(Read read, const std::vector<Wrong>& rows) {
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto got = read(row.text);
    REQUIRE(!got);
    CHECK(got.slip().what == row.what);
    CHECK(got.slip().instead == row.instead);
    CHECK(got.slip().at == row.at);
  }
}

TEST_CASE("inches are read in every way the trade writes them") {
  check_reads(read_inches, {
                               {"7", inches(7)},           {"7-1/2", counts(480)},
                               {"7½", counts(480)},        {"7 1/2", counts(480)},
                               {"7-½", counts(480)},       {"½", counts(32)},
                               {"7 ½\"", counts(480)},     {"7⅞″", counts(7 * 64 + 56)},
                               {"5/4", counts(80)},        {"1-1/8", counts(72)},
                               {"2.125", counts(136)},     {".5", counts(32)},
                               {"7\"", inches(7)},         {"7”", inches(7)},
                               {"7''", inches(7)},         {"7 in", inches(7)},
                               {"7IN.", inches(7)},        {"7 inches", inches(7)},
                               {"1-5/8", counts(104)},     {"5/16", counts(20)},
                               {"1–1/8", counts(72)},      {" 7\t", inches(7)},
                               {"1⁄8", counts(8)},         {"50mm", millimetres(50)},
                               {"4.5 cm", tenths_mm(450)}, {"1.2m", tenths_mm(12000)},
                               {"0", inches(0)},
                           });
}

TEST_CASE("every printed eighth is read as the fraction it shows") {
  const std::vector<std::string> marks{"⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"};
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const auto eighths = static_cast<std::int64_t>(i + 1);
    CAPTURE(marks[i]);
    CHECK(*read_inches(marks[i]) == counts(8 * eighths));
    CHECK(*read_inches("3" + marks[i]) == counts(3 * 64 + 8 * eighths));
  }
}

TEST_CASE("inches that cannot be read say what would be right") {
  check_slips(read_inches,
              {
                  {"2.1", "'2.1' is no whole 64th of an inch", "write 2-3/32 or 2-7/64", 0},
                  {"1/3", "'1/3' is no whole 64th of an inch", "write 21/64 or 11/32", 0},
                  {"", "a size is missing", "write it as 7-1/2", 0},
                  {"wide", "'wide' is not a number", "write it as 7-1/2", 0},
                  {"7-5/4", "the fraction in '7-5/4' is a whole or more", "write it as 7-1/2", 5},
                  {"7-1/", "'7-1/' goes on after the length", "leave a blank before what follows", 1},
                  {"7/0", "'/0' is no part of an inch", "write it as 1/2", 3},
                  {"-7", "a measure is never less than nothing", "leave the minus sign out", 0},
                  {"16'", "'16'' is in feet where inches are wanted", "write 192", 0},
                  {"½mm", "'1/2mm' is a fraction of a metric unit", "write it as a decimal, 47.5", 0},
                  {"7½ foo", "'7+1/2 foo' goes on after the length", "leave a blank before what follows", 3},
                  {"999999999", "'999999999' is more than a mill ever saws", "write it as 7-1/2", 9},
                  {"1.2345678", "too many decimals", "write at most 6", 9},
              });
}

TEST_CASE("feet and inches are read in every way the trade writes them") {
  check_reads(read_feet, {
                             {"16", feet(16)},
                             {"16'", feet(16)},
                             {"16’", feet(16)},
                             {"16ft", feet(16)},
                             {"16 feet", feet(16)},
                             {"16'6\"", counts(16 * 768 + 384)},
                             {"16′6″", counts(16 * 768 + 384)},
                             {"16'6", counts(16 * 768 + 384)},
                             {"16' 6\"", counts(16 * 768 + 384)},
                             {"16'6''", counts(16 * 768 + 384)},
                             {"16ft6in", counts(16 * 768 + 384)},
                             {"16 ft 6 in", counts(16 * 768 + 384)},
                             {"16'-6\"", counts(16 * 768 + 384)},
                             {"16-6", counts(16 * 768 + 384)},
                             {"16-6\"", counts(16 * 768 + 384)},
                             {"16-6-1/2", counts(16 * 768 + 416)},
                             {"16'6-1/2\"", counts(16 * 768 + 416)},
                             {"16'6½\"", counts(16 * 768 + 416)},
                             {"16'½\"", counts(16 * 768 + 32)},
                             {"16.5", counts(16 * 768 + 384)},
                             {"16½", counts(16 * 768 + 384)},
                             {"16½'", counts(16 * 768 + 384)},
                             {"7-1/2'", counts(7 * 768 + 384)},
                             {"7-1/2 ft", counts(7 * 768 + 384)},
                             {"6\"", inches(6)},
                             {"18in", inches(18)},
                             {"4.8m", centimetres(480)},
                             {"480cm", centimetres(480)},
                             {"4800 mm", millimetres(4800)},
                         });
}

TEST_CASE("decimals of a length are those of a tape in tenths: to the nearest 1/64 in, a half up") {
  check_reads(read_feet, {
                             {"16.4", counts(16 * 768 + 307)},  // 16 ft 4.8 in = 16 ft 307.2/64 in
                             {"16.4'", counts(16 * 768 + 307)},
                             {"16.4 ft", counts(16 * 768 + 307)},
                             {"16'4.8\"", counts(16 * 768 + 307)},
                             {"16-4.8", counts(16 * 768 + 307)},
                             {"16.33", counts(16 * 768 + 253)},
                             {"16.333", counts(16 * 768 + 256)},  // 4 in
                             {"16.125", counts(16 * 768 + 96)},
                             {".1", counts(77)},  // 1.2 in = 76.8/64
                             {"4.3\"", counts(4 * 64 + 19)},
                             {"0.007812\"", counts(0)},
                             {"0.007813\"", counts(1)},
                         });
}

TEST_CASE(
    "no length in tenths, hundredths or thousandths of a foot becomes whole feet or half feet but those that "
    "are") {
  for (std::int64_t thousandths = 0; thousandths <= 2000; ++thousandths) {
    const auto kept = *read_feet(plain(Decimal{thousandths, 3}));
    CHECK_MESSAGE((kept.count % 384 == 0) == (thousandths % 500 == 0), thousandths);
    CHECK_MESSAGE(kept.count / 384 == thousandths / 500, thousandths);
  }
}

TEST_CASE("feet that could mean two things are asked about") {
  check_slips(
      read_feet,
      {
          {"7-1/2", "'7-1/2' could be a part of a foot or inches", "write 7'6\" or 7'1/2\"", 0},
          {"7 1/2", "'7 1/2' could be a part of a foot or inches", "write 7'6\" or 7'1/2\"", 0},
          {"7-1/2\"", "'7-1/2\"' could be a part of a foot or inches", "write 7'6\" or 7'1/2\"", 0},
          {"1/2", "'1/2' could be feet or inches", "write it as 6\" or 0.5", 0},
          {"16-14", "'16-14' has 12 inches or more beside the feet", "write 17'2\" if that is meant", 3},
          {"16'12\"", "'16'12\"' has 12 inches or more beside the feet", "write 17 if that is meant", 3},
          {"16.5'6\"", "'16.5'6\"' has a part of a foot and inches too", "write it as 16'6\"", 0},
          {"7-1/7'", "'7-1/7'' is no whole 64th of an inch", "write 7'1-45/64\" or 7'1-23/32\"", 0},
          {"16.1234567", "too many decimals", "write at most 6", 10},
          {"16'6mm", "'16'6mm' mixes units", "write it as 16'6\"", 3},
          {"16x", "'16x' goes on after the length", "leave a blank before what follows", 2},
          {"", "a length is missing", "write it as 16, 16'6\" or 16.5", 0},
          {"long", "'long' is not a number", "write it as 16, 16'6\" or 16.5", 0},
          {"100001", "'100001' is longer than anything a mill saws", "look at its figures again", 0},
          {"100000-1/2", "'100000-1/2' could be feet or feet and inches", "write it as 7'6\" or 7.5", 0},
          {".", "'.' is not a number", "write digits, as 7.5", 1},
          {"7/", "a fraction without its lower number", "write it as 1/2", 2},
          {"7-1234/64", "'1234' is too much above a fraction's stroke", "write it as 16, 16'6\" or 16.5", 2},
          {"16'x", "'16'x' is not a number", "", 3},
      });
}

TEST_CASE("metric sizes and lengths are read in their own units") {
  check_reads(read_millimetres, {{"50", millimetres(50)},
                                 {"47.5", tenths_mm(475)},
                                 {"5cm", millimetres(50)},
                                 {"0.05 m", millimetres(50)},
                                 {"2\"", inches(2)}});
  check_reads(read_metres, {{"4.8", centimetres(480)},
                            {"4.8m", centimetres(480)},
                            {"480cm", centimetres(480)},
                            {"4800mm", millimetres(4800)},
                            {"16'", feet(16)},
                            {"16'6\"", counts(16 * 768 + 384)}});
  check_slips(read_millimetres,
              {{"47.55", "'47.55' is no whole tenth of a millimetre", "write 47.5mm or 47.6mm", 0},
               {"1/2", "'1/2' is a fraction of a metric unit", "write it as a decimal, 47.5", 0},
               {"", "a size is missing", "write it as 50 or 47.5", 0}});
  const auto none = read_mils("", false);
  REQUIRE_FALSE(none);
  CHECK(none.slip().what == "a measure is missing");
  CHECK(none.slip().instead == "write it as 0.26 or 1/4");
  check_slips(read_metres,
              {{"4.80005", "'4.80005' is no whole tenth of a millimetre", "write 4.8m or 4.8001m", 0},
               {"4-1/2", "'4-1/2' is a fraction of a metric unit", "write it as a decimal, 4.8", 0}});
}

TEST_CASE("what is finer than a 64th is read in thousandths of an inch, or hundredths of a millimetre") {
  const auto mils = [](const char* text, bool metric = false) {
    CAPTURE(text);
    const auto got = read_mils(text, metric);
    REQUIRE_MESSAGE(got, got.slip().what);
    return *got;
  };
  CHECK(mils("0.26") == 260);
  CHECK(mils(".25\"") == 250);
  CHECK(mils("5/16") == 313);  // 0.3125
  CHECK(mils("7/32 in") == 219);
  CHECK(mils("2-1/64") == 2016);
  CHECK(mils("7.1", true) == 710);
  CHECK(mils("7.1mm", true) == 710);
  CHECK(mils("0.7cm", true) == 700);
  CHECK(mils("1/4\"", true) == 635);
  CHECK(mils("25.4mm") == 1000);
  CHECK(mils("0.7cm") == 276);  // 0.27559
  for (const char* text : {"", "thick", "1'", "0.28x", "-1"}) {
    CAPTURE(text);
    const auto got = read_mils(text, false);
    REQUIRE(!got);
    CHECK_FALSE(got.slip().instead.empty());
  }
}

TEST_CASE("lengths are written and spoken as the trade does") {
  CHECK(write_inches(counts(480)) == "7-1/2");
  CHECK(write_inches(inches(7)) == "7");
  CHECK(write_inches(counts(48)) == "3/4");
  CHECK(write_inches(counts(-48)) == "-3/4");
  CHECK(write_inches(inches(0)) == "0");
  CHECK(write_inches(tenths_mm(475)) == "47.5mm");
  CHECK(write_feet(feet(16)) == "16");
  CHECK(write_feet(counts(16 * 768 + 384)) == "16'6\"");
  CHECK(write_feet(counts(16 * 768 + 416)) == "16'6-1/2\"");
  CHECK(write_feet(inches(6)) == "0'6\"");
  CHECK(write_feet(centimetres(480)) == "4.8m");
  CHECK(write_feet(centimetres(500)) == "5m");
  CHECK(write_length(feet(16), true) == "16'");
  CHECK(write_length(feet(16), false) == "16");
  CHECK(spoken_length(feet(16)) == "16 ft");
  CHECK(spoken_length(counts(16 * 768 + 384)) == "16 ft 6 in");
  CHECK(spoken_length(inches(6)) == "6 in");
  CHECK(spoken_length(centimetres(480)) == "4.8 m");
}

TEST_CASE("16 ft is not 4.8 m, it is 77 mm longer") {
  CHECK(feet(16) != centimetres(480));
  const Rational difference = in_millimetres(feet(16)) - in_millimetres(centimetres(480));
  CHECK(difference == Rational(768, 10));  // 16 x 304.8 - 4800 = 76.8, from 1 in = 25.4 mm
  CHECK(in_metres(centimetres(480)) == Rational(48, 10));
  CHECK(in_feet(feet(16)) == Rational(16));
  CHECK(in_inches(millimetres(254)) == Rational(10));
}

TEST_CASE("what is written is read back the same, for every length of either system") {
  CHECK(rc::check("inches", [](const std::uint32_t any) {
    const Length length = counts(any % 100'000);
    RC_ASSERT(*read_inches(write_inches(length)) == length);
  }));
  CHECK(rc::check("feet", [](const std::uint32_t any) {
    const Length length = counts(any % 70'000'000);
    RC_ASSERT(*read_feet(write_feet(length)) == length);
  }));
  CHECK(rc::check("either system in either book", [](const std::uint32_t any, bool metric, bool metric_book) {
    const Length length{any % 70'000'000, metric ? System::metric : System::inch};
    RC_ASSERT(*read_length(write_length(length, metric_book), metric_book) == length);
  }));
  CHECK(rc::check("millimetres", [](const std::uint32_t any) {
    const Length length = tenths_mm(any % 70'000'000);
    RC_ASSERT(*read_millimetres(write_inches(length)) == length);
  }));
}

TEST_CASE("a length converted and back is itself within a count") {
  CHECK(rc::check("inches are coarser than tenths of a millimetre, so they come back exactly",
                  [](const std::uint32_t any) {
                    const Length length = counts(any);
                    RC_ASSERT(converted(converted(length, System::metric), System::inch) == length);
                  }));
  CHECK(rc::check("metric comes back within half a count of inches", [](const std::uint32_t any) {
    const Length length = tenths_mm(any);
    const std::int64_t off = converted(converted(length, System::inch), System::metric).count - length.count;
    RC_ASSERT(off >= -2);  // 1/128 in = 1.98 tenths of a millimetre
    RC_ASSERT(off <= 2);
  }));
}

TEST_CASE("no bytes make a reader throw") {
  CHECK(rc::check("any text", [](const std::string& text) {
    for (const Read read : {&read_inches, &read_feet, &read_millimetres, &read_metres}) {
      const auto got = read(text);
      if (!got) {
        RC_ASSERT(!got.slip().what.empty());
        RC_ASSERT(got.slip().at >= 0);
        RC_ASSERT(got.slip().at <= static_cast<int>(text.size()));
      }
    }
  }));
  CHECK(rc::check("any arrangement of the marks that matter", [] {
    const auto text =
        *rc::gen::container<std::string>(rc::gen::elementOf(std::string("0123456789-/. '\"xminft½×")));
    for (const Read read : {&read_inches, &read_feet, &read_millimetres, &read_metres}) {
      const auto got = read(text);
      if (got) RC_ASSERT(got->count >= 0);
    }
  }));
}

}  // namespace
