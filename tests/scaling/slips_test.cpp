// slips_test.cpp -- what is said of a log, a defect or a scaling that cannot be, and of one that is odd, word for word; and
// what every practice says of itself.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>

#include "scaling/scaled.h"
#include "slurp.h"

using namespace kerfbook;
using namespace kerfbook::scaling;
using scaling::test::practice;
using scaling::test::scaled;
using scaling::test::written;

namespace {

std::string words(const Slip& slip) {
  return slip.what + "; " + slip.instead;
}

std::string no_log(const std::string& spec, bool metric_book = false) {
  const auto log = read_log_spec(spec, metric_book);
  return log ? "read" : std::to_string(log.slip().at) + " " + words(log.slip());
}

std::string no_defect(const std::string& text, bool metric_book = false) {
  const auto defect = read_defect(text, metric_book);
  return defect ? "read" : words(defect.slip());
}

std::string not_scaled(const LogMeasure& log, const std::string& by) {
  const auto got = scale(log, {}, practice(by));
  return got ? "scaled" : words(got.slip());
}

LogMeasure log_of(const std::string& text) {
  return written(text).log;
}

const std::string kForms =
    "; write 15bf, 10%, 2' (length), 1\" (diameter), 7x7x16 (squared) or 90degx8 (sector)";

}  // namespace

TEST_CASE("a log that cannot be read is told with its column and with what would be right") {
  CHECK(no_log("15") == "0 '15' has no length; write small end x length, as 15x12");
  CHECK(no_log("30", true) == "0 '30' has no length; write small end x length, as 30x4.8");
  CHECK(no_log("15x12x3") ==
        "5 '15x12x3' has more than a diameter and a length; write small end x length, as 15x12");
  CHECK(no_log("30cmx16ft") == "0 '30cmx16ft' mixes inches and metric; measure a log in one system");
  CHECK(no_log("15x0") == "3 a log of no length; write small end x length, as 15x12");
  CHECK(no_log("15x500") == "3 '500' is no log's length; write feet");
  CHECK(no_log("30x500", true) == "3 '500' is no log's length; write metres");
  CHECK(no_log("x12") == "0 a diameter is missing; write the log as 15x12 or 12/13-15x16");
  CHECK(no_log("12/x12") == "3 a diameter is missing; write the log as 15x12 or 12/13-15x16");
  CHECK(no_log("0x12") == "0 a diameter of zero; write what was measured");
  CHECK(no_log("300x12") == "0 '300' is no log's diameter; write inches (metric: centimetres)");
  CHECK(no_log("12/13/14x12") ==
        "0 more than two readings of one end; give one, or two at right angles: 12/13");
  CHECK(no_log("12-13-15x16") ==
        "5 '12-13-15' has two dashes; beside a large end write fractions as 12.5 or 12½");
  CHECK(no_log("12'x16") ==
        "0 '12'' is in feet where the diameter stands; write diameter in inches x length in feet, as 15x12");
  CHECK(words(read_diameter("0", false).slip()) == "a diameter of zero; write what was measured");
}

TEST_CASE("a defect that cannot be is told with what was typed and the forms there are") {
  CHECK(no_defect(" ") == "a defect is missing" + kForms);
  CHECK(no_defect("rot") == "'rot' is no defect" + kForms);
  CHECK(no_defect("7x7") == "'7x7' is no defect" + kForms);
  CHECK(no_defect("0bf") == "'0bf' takes nothing off" + kForms);
  CHECK(no_defect("0'") == "'0'' takes nothing off" + kForms);
  CHECK(no_defect("7x0x16") == "'7x0x16' takes nothing off" + kForms);
  CHECK(no_defect("2000000bf") == "'2000000bf' is more than any log" + kForms);
  CHECK(no_defect("500'") == "'500'' is bigger than any log" + kForms);
  CHECK(no_defect("300\"") == "'300\"' is bigger than any log" + kForms);
  CHECK(no_defect("300x7x16") == "'300x7x16' is bigger than any log" + kForms);
  CHECK(no_defect("90degx500") == "'90degx500' is bigger than any log" + kForms);
  CHECK(no_defect("110%") == "'110%' is more than the log; write at most 100%");
  CHECK(no_defect("400deg") == "'400deg' is more than a full circle; write at most 360deg");
  CHECK(no_defect("90deg 8") == "'90deg 8' goes on after the degrees; write 90degx8 for 8 ft of the length");
  CHECK(no_defect("7x7cmx16ft") == "'7x7cmx16ft' mixes inches and metric; measure a defect in one system");
  CHECK(no_defect("15") == "'15' of what?; write 15bf, 15%, 15' or 15\"");
}

TEST_CASE("a log that was not measured as its rule needs says what is wanting") {
  CHECK(not_scaled(log_of("12x16"), "smalian") ==
        "Smalian needs both ends; write the large end too, as 12-15x16");
  CHECK(not_scaled(log_of("12x16"), "huber") ==
        "Huber needs a measure at mid length; add 'mid 13.5' or 'girth 48'");
  LogMeasure bare;
  bare.length = measure::feet(16);
  CHECK(not_scaled(bare, "doyle") == "Doyle needs the small end; write it as 15x12");
  LogMeasure short_of = log_of("12x16");
  short_of.length = {};
  CHECK(not_scaled(short_of, "doyle") == "the log has no length; write it as 15x12");
  LogMeasure many = log_of("12/13x16");
  many.small.push_back(measure::inches(14));
  CHECK(not_scaled(many, "doyle") == "more than two readings of one place; give one, or two at right angles");
  CHECK(not_scaled(log_of("12x50 segments 12,14"), "scribner-c") ==
        "2 diameters for segments, but at 20 ft the log divides into 3; give the small-end diameter of each "
        "segment, top first");
  Practice fine = practice("doyle");
  fine.longest_segment = measure::feet(1);
  const auto in_feet = scale(log_of("12x60"), {}, fine);
  REQUIRE_FALSE(in_feet);
  CHECK(words(in_feet.slip()) == "the log would be scaled in more than 16 segments; give fewer segments");
  LogMeasure no_tree = log_of("12x16");
  no_tree.small = {measure::inches(241)};
  CHECK(not_scaled(no_tree, "doyle") ==
        "a reading is no tree's: it must be over 0, to 240 in through and 400 ft long; look at the figures "
        "again");
  CHECK(not_scaled(log_of("121x16"), "scribner-c") ==
        "a diameter is past the end of the Scribner Decimal C, 20-ft segments table; the table ends at 120 "
        "in");
}

TEST_CASE("what is odd about a scale stands beside it") {
  using Remarks = std::vector<std::string>;
  CHECK(scaled("12x18 segments 12,13", "scribner-c").remarks ==
        Remarks{"divided in 2 by the person; the practice would divide it in 1"});
  CHECK(scaled("10-14x32", "scribner-c").remarks ==
        Remarks{"taper shared evenly between the measured ends (from memory)"});
  CHECK(scaled("12x32", "scribner-c").remarks ==
        Remarks{"no large end measured: a taper of 0.125 in per ft shared evenly (from memory)"});
  CHECK(scaled("3x16", "doyle").remarks == Remarks{"zero: under the rule's least diameter of 4 in"});
  CHECK(scaled("12x3", "scribner-c").remarks == Remarks{"zero: under the rule's least length"});
  CHECK(scaled("14-10x16", "doyle").remarks == Remarks{"the large end is smaller than the small end"});
  Practice by = practice("doyle");
  by.minimum_top = measure::inches(8);
  by.minimum_length = measure::feet(8);
  CHECK(scaled("7x6", by).remarks ==
        Remarks{"cull: under the minimum top of 8 in", "cull: under the minimum length of 8 ft"});
  by.minimum_top = measure::centimetres(20);
  CHECK(scaled("7x16", by).remarks == Remarks{"cull: under the minimum top of 200mm"});
}

TEST_CASE("a practice with limits of its own says them, an inch with its unit and millimetres with theirs") {
  Practice by = practice("doyle");
  by.diameter = DiameterRounding::nearest_half_down;
  by.result = ResultRounding::nearest_10;
  by.minimum_top = measure::inches(8);
  by.minimum_length = measure::feet(8);
  by.merchantable_percent = Rational(100, 3);
  CHECK(in_words(by) ==
        "Doyle; diameters to the nearest inch, an exact half down, lengths down to a multiple of 1 ft, scale "
        "to the nearest 10 board feet, tops under 8 in are cull, logs under 8 ft are cull, "
        "cull under 33.3 % net of gross");
  by.minimum_top = measure::centimetres(20);
  CHECK(in_words(by).find(", tops under 200mm are cull, ") != std::string::npos);
  Practice cubic = practice("huber");
  cubic.diameter = DiameterRounding::nearest_half_even;
  cubic.result = ResultRounding::nearest_1;
  CHECK(in_words(cubic).find("inch or centimetre, an exact half to the even number, ") != std::string::npos);
  CHECK(in_words(cubic).find("scale to the nearest whole unit") != std::string::npos);
  cubic.diameter = DiameterRounding::down;
  cubic.result = ResultRounding::nearest_10;
  CHECK(in_words(cubic).find("diameters down to the inch or centimetre, ") != std::string::npos);
  CHECK(in_words(cubic).find("scale to the nearest 10") != std::string::npos);
}

TEST_CASE(
    "every practice says the formula, source, range and conventions that scaling/practices.golden has") {
  std::string all;
  for (const std::string& name : practice_names())
    all += name + " (" + rule_words(name) + ")\n  " + describe(practice(name)) + "\n";
  const std::string file = std::string(KERFBOOK_ROOT) + "/tests/scaling/practices.golden";
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "update") std::ofstream(file, std::ios::binary) << all;
  CHECK(all == kerfbook::tests::slurp(file));
}
