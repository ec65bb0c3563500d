// mill_test.cpp -- the mill file: what it says is what the Mill holds. What is wrong in one: mill_slips_test.cpp.
#include "mill/mill.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "slurp.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::book;
using measure::feet;
using measure::inches;
using measure::Size;

Mill mill_of(const std::string& toml) {
  const ReadMill read = read_mill(toml);
  INFO(show_all(read.found, "mill.toml", toml));
  REQUIRE_FALSE(has_error(read.found));
  return read.mill;
}

std::string text_of(const std::string& file) {
  std::string text = tests::slurp(std::string(KERFBOOK_ROOT) + "/" + file);
  REQUIRE_MESSAGE(!text.empty(), file << " cannot be read");
  return text;
}

Size size(const char* text) {
  return *measure::read_size(text);
}

TEST_CASE(
    "an empty mill file is a mill that can start: inches, dollars, International 1/4 to the nearest 5") {
  const Mill mill = mill_of("");
  CHECK(mill.units == measure::System::inch);
  CHECK(mill.currency == measure::Currency{});
  CHECK(mill.house == *scaling::find_practice("international-quarter"));
  CHECK(mill.house == Mill{}.house);
  CHECK(mill.convention == measure::Convention{});
  CHECK(mill.taper.per_foot_mils == 125);
  CHECK(mill.week_start == 1);
  CHECK(mill.saws.empty());
  CHECK(mill.jobs.empty());
}

TEST_CASE("the mill says who it is, where it stands and how things are written") {
  const Mill mill = mill_of(R"(
[mill]
name = "Q. Hargan, custom sawing"
owner = "Quill Hargan"
address = ["The yard", "Sallow Fork"]
phone = 5550123
email = "quill@sallow.example"
tax_number = "12-345"
logo = "hargan.png"
terms = "Due in 14 days."
sites = ["Tervane farm", "yard"]
units = "Inch"
currency = { sign = "kr", after = true, places = 2, mark = ",", thousands = "." }
paper = "A4"
dates = "dmy"
week_start = "Sun"
season = "04-01"
)");
  CHECK(mill.name == "Q. Hargan, custom sawing");
  CHECK(mill.owner == "Quill Hargan");
  CHECK(mill.address == std::vector<std::string>{"The yard", "Sallow Fork"});
  CHECK(mill.phone == "5550123");
  CHECK(mill.email == "quill@sallow.example");
  CHECK(mill.tax_number == "12-345");
  CHECK(mill.logo == "hargan.png");
  CHECK(mill.terms == std::vector<std::string>{"Due in 14 days."});
  CHECK(mill.sites == std::vector<std::string>{"Tervane farm", "yard"});
  CHECK(mill.currency == measure::Currency{"kr", true, 2, ',', '.'});
  CHECK(mill.a4);
  CHECK(mill.dates == "dmy");
  CHECK(mill.week_start == 7);
  CHECK(mill.season_month == 4);
  CHECK(mill.season_day == 1);
}

TEST_CASE("a currency can be a bare sign, and a form may be left blank") {
  const Mill mill = mill_of("[mill]\ncurrency = \"€\"\nname = \"\"\nunits = \"\"\n");
  CHECK(mill.currency.sign == "€");
  CHECK(mill.currency.decimal_mark == '.');
  CHECK(mill.name == Mill{}.name);
}

TEST_CASE("the house rule is a published practice until something is done otherwise, and is then called so") {
  CHECK(mill_of("[scale]\nrule = \"doyle\"\n").house == *scaling::find_practice("doyle"));
  CHECK(mill_of("[scale]\nrule = \"Doyle\"\n").house.name == "doyle");
  const Mill mill = mill_of(R"(
[scale]
rule = "scribner-c"
diameter = "nearest-half-even"
readings = "smaller"
length_step = "2'"
trim = "4-1/2"
longest_segment = 20
taper_share = "even"
taper = "5/16"
minimum_top = 6
minimum_length = "8'"
merchantable_percent = "33-1/3"
round_to = 10
squared_divisor = 16
)");
  CHECK(mill.house.name == "scribner-c-house");
  CHECK(mill.house.rule == "scribner-c");
  CHECK(mill.house.diameter == scaling::DiameterRounding::nearest_half_even);
  CHECK(mill.house.readings == scaling::ReadingsJoin::smaller);
  CHECK(mill.house.length_step == feet(2));
  CHECK(mill.house.trim == *measure::read_inches("4-1/2"));
  CHECK(mill.house.longest_segment == feet(20));
  CHECK(mill.house.taper == scaling::TaperShare::even);
  CHECK(mill.house.taper_mils_per_foot == 313);
  CHECK(mill.house.minimum_top == inches(6));
  CHECK(mill.house.minimum_length == feet(8));
  CHECK(mill.house.merchantable_percent == Rational(100, 3));
  CHECK(mill.house.result == scaling::ResultRounding::nearest_10);
  CHECK(mill.house.squared_divisor == 16);
  CHECK(mill_of("[scale]\nrule = \"doyle\"\nround_to = 1\nname = \"ours\"\n").house.name == "ours");
}

TEST_CASE("a practice of the mill's own can be the house's or a job's, and is found by its name") {
  const Mill mill = mill_of(R"(
[scale]
rule = "creek"
[[practice]]
name = "creek"
rule = "scribner-c"
diameter = "down"
[[practice]]
name = "whole-doyle"
rule = "doyle"
round_to = "exact"
[[job]]
code = "A"
rule = "whole-doyle"
[[job]]
code = "B"
rule = "vermont"
[[job]]
code = "C"
)");
  CHECK(mill.house.name == "creek");
  CHECK(mill.house.rule == "scribner-c");
  CHECK(mill.house.diameter == scaling::DiameterRounding::down);
  CHECK(practice_for(mill, "A").name == "whole-doyle");
  CHECK(practice_for(mill, "a").result == scaling::ResultRounding::none);
  CHECK(practice_for(mill, "B").name == "vermont");
  CHECK(&practice_for(mill, "C") == &mill.house);
  CHECK(&practice_for(mill, "no such job") == &mill.house);
  CHECK(practice_named(mill, "WHOLE-DOYLE")->rule == "doyle");
  CHECK(practice_named(mill, "doyle") == scaling::find_practice("doyle"));
  CHECK_FALSE(practice_named(mill, "no-such-rule"));
}

TEST_CASE("taper and trim for log content are exact to a thousandth of an inch") {
  CHECK(mill_of("[recovery]\ntaper = \"1/8\"\ntrim = \"4-51/64\"\n").taper.trim.count == 307);
  CHECK(mill_of("[recovery]\ntaper = \"1/8\"\n").taper.per_foot_mils == 125);
  CHECK(mill_of("[recovery]\ntaper = \"1/8\"\n").taper.per_metre == 1042);  // 3.175 mm in 0.3048 m
  CHECK(mill_of("[recovery]\ntaper = 0.18\n").taper.per_foot_mils == 180);
  const Mill metric = mill_of("[mill]\nunits = \"metric\"\n[recovery]\ntaper = 10\ntrim = 100\n");
  CHECK(metric.taper.per_metre == 1000);
  CHECK(metric.taper.per_foot_mils == 120);
  CHECK(metric.taper.trim == measure::millimetres(100));
}

TEST_CASE("how lumber is counted can be said key by key") {
  const Mill mill = mill_of(R"(
[count]
thickness = "next-quarter"
under_inch_as_inch = true
length = "whole-foot-down"
rounding = "line-whole"
[[job]]
code = "A"
count = { thickness = "next-inch", surface_measure = true }
[[job]]
code = "B"
)");
  CHECK(mill.convention ==
        measure::Convention{measure::ThicknessRule::next_quarter, true, measure::WidthRule::as_cut,
                            measure::LengthRule::whole_foot_down, measure::BillRounding::line_whole});
  // a job's own count changes only what it names
  CHECK(find_job(mill, "A")->convention ==
        measure::Convention{measure::ThicknessRule::next_inch, true, measure::WidthRule::surface_measure,
                            measure::LengthRule::whole_foot_down, measure::BillRounding::line_whole});
  CHECK_FALSE(find_job(mill, "B")->convention);
}

TEST_CASE("saws, capacity, species, grades and sizes are kept in the order of the file") {
  const Mill mill = mill_of(R"(
[capacity]
largest_log = 36
longest_log = "27'6"
largest_board = "10x12"
bf_a_day = 10_000
[[saw]]
role = "head"
diameter = "56"
kerf = "5/16"
teeth = 22
rpm = 580
[[saw]]
role = "edger"
kerf = 0.25
[species]
WH = "western hemlock"
DF = { name = "Douglas-fir", group = "fir" }
[grade]
Sel = "Select"
No2 = ""
[lumber]
sizes = ["2x6", "1x4", "5/4x6"]
[lumber.target]
"2x4" = "1-5/8x3-5/8"
"2x6" = "2-1/16 x 6-1/8"
)");
  CHECK(mill.largest_log == inches(36));
  CHECK(mill.longest_log == *measure::read_feet("27.5"));
  CHECK(mill.thickest_board == inches(10));
  CHECK(mill.widest_board == inches(12));
  CHECK(mill.most_bf_a_day == 10'000);
  REQUIRE(mill.saws.size() == 2);
  CHECK(mill.saws[0].diameter == inches(56));
  CHECK(mill.saws[0].kerf_mils == 313);
  CHECK(mill.saws[0].teeth == 22);
  CHECK(mill.saws[0].rpm == 580);
  CHECK(mill.saws[1].kerf_mils == 250);
  CHECK_FALSE(mill.saws[1].teeth);
  REQUIRE(mill.species.size() == 2);
  CHECK(mill.species[0].code == "WH");
  CHECK(mill.species[1].name == "Douglas-fir");
  CHECK(mill.species[1].group == "fir");
  REQUIRE(mill.grades.size() == 2);
  CHECK(mill.grades[0].name == "Select");
  CHECK(mill.grades[1].code == "No2");
  REQUIRE(mill.sizes.size() == 4);
  CHECK(mill.sizes[0].nominal == size("2x6"));
  CHECK(mill.sizes[0].target == size("2-1/16x6-1/8"));
  CHECK_FALSE(mill.sizes[1].target);
  CHECK(mill.sizes[3].nominal == size("2x4"));
}

TEST_CASE("a target is the job's own, else the mill's, else there is none") {
  const Mill mill = mill_of(R"(
[lumber.target]
"2x6" = "2-1/8x6-1/8"
"5/4x6" = "1-3/8x6-1/8"
[[job]]
code = "HALL"
target = { "2x6" = "1-5/8x5-5/8" }
)");
  CHECK(target_for(mill, "hall", size("2x6")) == size("1-5/8x5-5/8"));
  CHECK(target_for(mill, "BARN", size("2x6")) == size("2-1/8x6-1/8"));
  CHECK(target_for(mill, "HALL", size("1-1/4x6")) == size("1-3/8x6-1/8"));  // the same board as 5/4x6
  CHECK_FALSE(target_for(mill, "HALL", size("2x8")));
}

TEST_CASE("customers and jobs are read, and a cut list is written as tally lines") {
  const Mill mill = mill_of(R"(
[[customer]]
code = "TER"
name = "Oda Tervane"
address = ["Tervane farm", "Sallow Fork"]
certificate = "X-17"
[[customer]]
code = "QHH"
[[job]]
code = "TER"
customer = "ter"
name = "Barn"
site = "Tervane farm"
cut_list = ["2x6x16 12", "2x10 sel 8/16 12/12", "1x8x16'6 10"]
[[job]]
code = "MUM"
customer = "QHH"
owner = "shares"
[[job]]
code = "YARD"
)");
  CHECK(find_customer(mill, "ter")->name == "Oda Tervane");
  CHECK(find_customer(mill, "TER")->tax_certificate == "X-17");
  CHECK(find_customer(mill, "QHH")->name == "QHH");
  CHECK(find_customer(mill, "nobody") == nullptr);
  const JobEntry* job = find_job(mill, "ter");
  REQUIRE(job != nullptr);
  CHECK(job->owner == "customer");
  CHECK(find_job(mill, "MUM")->owner == "shares");
  CHECK(find_job(mill, "YARD")->owner == "own");
  REQUIRE(job->cut_list.size() == 4);
  CHECK(job->cut_list[0].pieces == 12);
  CHECK(job->cut_list[0].length == feet(16));
  CHECK(job->cut_list[1].grade == "sel");
  CHECK(job->cut_list[2].pieces == 12);
  CHECK(job->cut_list[2].length == feet(12));
  CHECK(job->cut_list[2].size == size("2x10"));
  CHECK(job->cut_list[3].length == *measure::read_feet("16.5"));
}

TEST_CASE("a metric mill writes millimetres, metres and centimetres") {
  const Mill mill = mill_of(R"(
[mill]
units = "metric"
[scale]
rule = "smalian"
minimum_top = 15
length_step = 0.1
trim = 50
[capacity]
largest_log = 90
longest_log = 6.0
largest_board = "200x300"
[[saw]]
role = "head"
diameter = 1200
kerf = 7.1
[lumber]
sizes = ["50x150", "2x6\""]
[lumber.target]
"50x150" = "53x154"
[[job]]
code = "A"
cut_list = ["50x150 12/4.8"]
)");
  CHECK(mill.units == measure::System::metric);
  CHECK(mill.house.minimum_top == measure::centimetres(15));
  CHECK(mill.house.length_step == measure::centimetres(10));
  CHECK(mill.house.trim == measure::millimetres(50));
  CHECK(mill.largest_log == measure::centimetres(90));
  CHECK(mill.longest_log == measure::centimetres(600));
  CHECK(mill.widest_board == measure::millimetres(300));
  CHECK(mill.saws[0].diameter == measure::millimetres(1200));
  CHECK(mill.saws[0].kerf_mils == 710);
  CHECK(mill.sizes[1].nominal == size("2x6"));
  CHECK(mill.jobs[0].cut_list[0].length == measure::centimetres(480));
}

TEST_CASE("the tables of money and reports are let through unread, and the whole text is kept for them") {
  const std::string toml = "[[price]]\nanything = 1\n[invoice]\nfirst = 7\n[packet]\nx = 1\n";
  CHECK(mill_of(toml).money.toml == toml);
}

TEST_CASE("a byte-order mark and CRLF are read") {
  CHECK(mill_of("\xEF\xBB\xBF[mill]\r\nname = \"Hargan\"\r\n").name == "Hargan");
}

TEST_CASE("the demo's mill file is read without a word") {
  const std::string toml = text_of("demo_data/hargan.toml");
  const ReadMill read = read_mill(toml);
  CHECK(show_all(read.found, "hargan.toml", toml).empty());
  CHECK(read.mill.house == *scaling::find_practice("international-quarter"));
  CHECK(read.mill.convention.rounding == measure::BillRounding::total_whole);
  CHECK(read.mill.species.size() == 3);
  CHECK(read.mill.grades.size() == 3);
  CHECK(read.mill.jobs.size() == 3);
  CHECK(read.mill.saws[0].teeth == 22);
  const JobEntry* barn = find_job(read.mill, "TER");
  REQUIRE(barn != nullptr);
  std::int64_t pieces = 0;
  for (const auto& line : barn->cut_list) pieces += line.pieces;
  CHECK(pieces == 64);
  CHECK(target_for(read.mill, "QHH", size("2x8")) == size("1-5/8x7-5/8"));
  CHECK_FALSE(target_for(read.mill, "TER", size("2x8")));
}

}  // namespace
