// spec_test.cpp -- logs and defects as they are typed.
#include <doctest/doctest.h>

#include <string>

#include "scaling/scaling.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::scaling;

LogMeasure read(const std::string& spec, bool metric_book = false) {
  const auto log = read_log_spec(spec, metric_book);
  REQUIRE_MESSAGE(log, spec << ": " << (log ? "" : log.slip().what));
  return *log;
}

Slip refused(const std::string& spec, bool metric_book = false) {
  const auto log = read_log_spec(spec, metric_book);
  REQUIRE_MESSAGE(!log, spec);
  return log.slip();
}

Length quarter_inches(std::int64_t count) {
  return {count * measure::kPerInch / 4, System::inch};
}

}  // namespace

TEST_CASE("a log is small end x length, with two readings of either end") {
  const auto plain = read("15x12");
  CHECK(plain.small == std::vector{measure::inches(15)});
  CHECK(plain.large.empty());
  CHECK(plain.length == measure::feet(12));
  const auto full = read("12/13-15x16'6\"");
  CHECK(full.small == std::vector{measure::inches(12), measure::inches(13)});
  CHECK(full.large == std::vector{measure::inches(15)});
  CHECK(full.length == Length{198 * measure::kPerInch, System::inch});
  const auto four = read("12/13-15/16x16");
  CHECK(four.small.size() == 2);
  CHECK(four.large == std::vector{measure::inches(15), measure::inches(16)});
}

TEST_CASE("after a dash a fraction is a fraction only where no large end could be meant") {
  CHECK(read("12-1/2x16").small == std::vector{quarter_inches(50)});
  CHECK(read("7-3/4x8").small == std::vector{quarter_inches(31)});
  CHECK(read("12-15/16x16").large == std::vector{measure::inches(15), measure::inches(16)});
  CHECK(read("12½-15x16").small == std::vector{quarter_inches(50)});
  CHECK(read("12.5/13-15.25x16").large == std::vector{quarter_inches(61)});
  CHECK(refused("12-1/2-15x16").instead == "beside a large end write fractions as 12.5 or 12½");
}

TEST_CASE(
    "a tape in tenths or hundredths of an inch is read to the nearest 64th, and written back as it was "
    "typed") {
  CHECK(read("15.3x12").small == std::vector{Length{15 * 64 + 19, System::inch}});
  CHECK(read("15.3inx12ft") == read("15.3x12"));
  CHECK(read("15.3\"x12'", true) == read("15.3x12"));
  CHECK(read("12.2/12.7-15.9x16").large == std::vector{Length{15 * 64 + 58, System::inch}});
  CHECK(*read_diameter("13.3") == Length{13 * 64 + 19, System::inch});
  for (const char* spec : {"15.3x12", "12.2/12.7-15.9x16", "9.97x8", "12.125x16", "12.0625x16"})
    CHECK(write_log_spec(read(spec)) == spec);
  for (std::int64_t count = 64; count <= 128; ++count) {
    const auto text = write_diameter({count, System::inch});
    CHECK_MESSAGE((*read_diameter(text) == Length{count, System::inch}), text);
  }
  CHECK_FALSE(read_diameter("-5.3"));
}

TEST_CASE(
    "a log's length in tenths of a foot is kept to the nearest 1/64 in, and written back as it was typed") {
  CHECK(read("15x16.4").length == Length{16 * 768 + 307, System::inch});  // 16 ft 4.8 in = 16 ft 307.2/64 in
  CHECK(read("15x16'4.8\"") == read("15x16.4"));
  CHECK(read("38.1cmx4.8").length == Length{48'000, System::metric});  // metres, as ever
  CHECK(read("30x4.8", true).length == Length{48'000, System::metric});
  CHECK(read("15\"x16.4'", true) == read("15x16.4"));
  for (const char* spec : {"15x16.4", "15x8.33", "15x10.34", "15x16'6\"", "15x16'4-3/4\"", "15x0'6\""})
    CHECK(write_log_spec(read(spec)) == spec);
  for (const bool metric_book : {false, true}) {
    for (std::int64_t count = 768; count <= 1536; ++count) {
      const LogMeasure log{{Length{960, System::inch}}, {}, {}, {}, {count, System::inch}, {}};
      const auto text = write_log_spec(log, metric_book);
      CHECK_MESSAGE(read(text, metric_book) == log, text);
    }
  }
}

TEST_CASE(
    "the 64th kept of a figure in tenths or hundredths lies on the same side of the half and the whole "
    "inch") {
  for (std::int64_t hundredths = 100; hundredths <= 300; ++hundredths) {
    const auto text = plain(Decimal{hundredths, 2});
    const auto kept = *read_diameter(text);
    CHECK_MESSAGE(kept.count / 32 == hundredths / 50, text);
    CHECK_MESSAGE((kept.count % 32 == 0) == (hundredths % 50 == 0), text);
  }
}

TEST_CASE("two readings of a large end that look like a fraction are written as readings") {
  const LogMeasure log = read("7-1.0/2x12");
  CHECK(log.large == std::vector{Length{64, System::inch}, Length{128, System::inch}});
  CHECK(write_log_spec(log) == "7-1.0/2x12");
  CHECK(read("7-1/2x12").large.empty());
  CHECK(write_log_spec(read("7-1/2x12")) == "7.5x12");
}

TEST_CASE("typographic marks and blanks are read") {
  CHECK(read("15×12") == read("15x12"));
  CHECK(read(" 15 X 16′6″ ") == read("15x16'6\""));
  CHECK(read("15inx12ft") == read("15x12"));
}

TEST_CASE("metric logs are centimetres x metres, in a metric book or with their units") {
  const auto log = read("30/32-36x4.8", true);
  CHECK(log.small == std::vector{measure::centimetres(30), measure::centimetres(32)});
  CHECK(log.large == std::vector{measure::centimetres(36)});
  CHECK(log.length == Length{48'000, System::metric});
  CHECK(read("30/32cm-36x4.8m") == log);
  CHECK(read("300mm/320mm-360mmx480cm") == log);
  CHECK(read("15\"x12'", true) == read("15x12"));
}

TEST_CASE("what is no log is refused at its place, with what would be right") {
  CHECK(refused("15").instead == "write small end x length, as 15x12");
  CHECK(refused("15", true).instead == "write small end x length, as 30x4.8");
  CHECK(refused("15x12x8").at == 5);
  CHECK(refused("15/x12").what == "a diameter is missing");
  CHECK(refused("15/x12").at == 3);
  CHECK(refused("15x").at == 3);
  CHECK(refused("15/16/17x12").what == "more than two readings of one end");
  CHECK(refused("0x12").what == "a diameter of zero");
  CHECK(refused("15x0").what == "a log of no length");
  CHECK(refused("1500x12").what == "'1500' is no log's diameter");
  CHECK(refused("265-1/2x4").what == "'265-1/2' is no log's diameter");  // read as one reading, not an end
  CHECK(refused("15x1200").what == "'1200' is no log's length");
  CHECK(refused("15.333x12").what == "'15.333' is no whole 64th of an inch");
  CHECK(refused("30cmx12ft").what == "'30cmx12ft' mixes inches and metric");
  CHECK(refused("x12").what == "a diameter is missing");
  CHECK(refused("15-x12").what == "a diameter is missing");
  CHECK_FALSE(read_log_spec(""));
  CHECK_FALSE(read_log_spec("axb"));
}

TEST_CASE("defects are read in every form") {
  const auto kind = [](const std::string& text, bool metric = false) {
    const auto defect = read_defect(text, metric);
    REQUIRE_MESSAGE(defect, text << ": " << (defect ? "" : defect.slip().what));
    return *defect;
  };
  CHECK(kind("15bf").kind == DefectKind::volume);
  CHECK(kind("15 bf").amount == Rational(15));
  CHECK(kind("10%").kind == DefectKind::percent);
  CHECK(kind("2'").length == measure::feet(2));
  CHECK(kind("2ft") == kind("2'"));
  CHECK(kind("2′6″").length == Length{30 * measure::kPerInch, System::inch});
  CHECK(kind("1in").kind == DefectKind::diameter);
  CHECK(kind("1\"") == kind("1in"));
  CHECK(kind("7x7x16").kind == DefectKind::squared);
  CHECK(kind("7-1/2x7x16").width == Length{480, System::inch});
  CHECK(kind("90degx8").length == measure::feet(8));
  CHECK(kind("90°") == kind("90deg"));
  CHECK(kind("3ft3").unit == VolumeUnit::cubic_foot);
  CHECK(kind("0.05m³").unit == VolumeUnit::cubic_metre);
  CHECK(kind("0.6m").length == Length{6'000, System::metric});
  CHECK(kind("3cm").diameter == measure::centimetres(3));
  CHECK(kind("18x18x4.8", true).width == measure::centimetres(18));
  CHECK(kind("90degx2.4", true).length == Length{24'000, System::metric});
}

TEST_CASE("what is no defect is refused with the forms that are") {
  CHECK(read_defect("15").slip().instead == "write 15bf, 15%, 15' or 15\"");
  CHECK(read_defect("2cmx10cmx2'").slip().what == "'2cmx10cmx2'' mixes inches and metric");
  CHECK(read_defect("7\"x18cmx16").slip().instead == "measure a defect in one system");
  for (const char* text : {"", "rot", "0bf", "0%", "101%", "-5bf", "0'", "7x7", "0x7x16", "400deg", "90degq",
                           "7x7x7x7", "9999999bf", "300x7x16", "7x7x500", "1.0000001bf"}) {
    const auto defect = read_defect(text);
    CHECK_MESSAGE(!defect, text);
  }
}

TEST_CASE("what is written reads back as the same, in an inch book and in a metric one") {
  for (const char* spec :
       {"15x12", "12/13-15x16'6\"", "12.5-15x16", "12-15/16x16", "30cmx4.8m", "30.25/32cm-36x4.8m"}) {
    const auto log = read(spec);
    CHECK(read(write_log_spec(log)) == log);
    CHECK(read(write_log_spec(log, true), true) == log);
  }
  for (const char* text :
       {"15bf", "0.5%", "33.25%", "2'", "2'6\"", "1-1/2in", "7-1/2x7x16", "7.3x6.27x16", "1.3in", "90degx8",
        "12.5deg", "3ft3", "0.05m3", "2hft", "0.6m", "3.5cm", "18cmx18cmx4.8m", "90degx2.4m"}) {
    const auto defect = read_defect(text);
    REQUIRE_MESSAGE(defect, text);
    const auto again = read_defect(write_defect(*defect));
    REQUIRE_MESSAGE(again, write_defect(*defect));
    CHECK_MESSAGE(*again == *defect, write_defect(*defect));
  }
  CHECK(write_log_spec(read("15x12")) == "15x12");
  CHECK(write_log_spec(read("12/13-15x16'6\"")) == "12/13-15x16'6\"");
}
