// scale_test.cpp -- what `kerfbook scale` reads and answers, without running the program.
#include <doctest/doctest.h>

#include "base/error.h"
#include "command/csv_rows.h"
#include "command/scale_document.h"
#include "command/scale_logs.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::command;

using Fields = std::vector<std::string>;

scaling::Practice practice(const char* name) {
  return *scaling::find_practice(name);
}

std::string shown(const render::Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* figure = std::get_if<render::Figure>(&cell)) return plain(figure->shown());
  return "";
}

Fields row(const render::Document& document, std::size_t i) {
  Fields texts;
  for (const auto& cell : document.tables[0].rows[i].cells) texts.push_back(shown(cell));
  return texts;
}

Fields names(const render::Document& document) {
  Fields texts;
  for (const auto& column : document.tables[0].columns) texts.push_back(column.name);
  return texts;
}

}  // namespace

TEST_CASE("a CSV text is read with its quotes, its line ends and its inch marks") {
  const auto records =
      csv_records("\xEF\xBB\xBFlog,reason\r\n\r\n\"a, \"\"b\"\"\",\"two\nlines\"\n12\"x16',\nlast");
  REQUIRE(records.size() == 4);
  CHECK(records[0].fields == Fields{"log", "reason"});
  CHECK(records[1].fields == Fields{"a, \"b\"", "two\nlines"});
  CHECK(records[1].line == 3);
  CHECK(records[2].fields == Fields{"12\"x16'", ""});
  CHECK(records[2].line == 5);
  CHECK(records[3].fields == Fields{"last"});
  CHECK(csv_records("").empty());
}

TEST_CASE("a cell or a word broken over lines is one log, found at its own line (RFC 4180, section 2)") {
  const auto list =
      logs_of_csv("tag,log,defect,reason\nA,15x12,10%,\"rot\r\nat the butt\"\nB,14x12,,\nC,16x,,\n", false);
  REQUIRE(list.found.size() == 1);
  CHECK(list.found[0].place.line == 5);  // of the list: line 3 is the rest of A
  const auto typed = logs_of_words({"15x12\n14x12", "13x12"}, false);
  REQUIRE_FALSE(typed.found.empty());
  CHECK(typed.found[0].place.line == 1);
}

TEST_CASE("words from a shell become logs, each with its own defects") {
  const auto read = logs_of_words({"T13", "15x12", "16x12", "defect", "7x7x8", "rot", "log", "12x32",
                                   "segments", "12,14", "17x10 defect 15bf defect 10% sweep"},
                                  false);
  REQUIRE(read.found.empty());
  REQUIRE(read.logs.size() == 4);
  CHECK(read.logs[0].tag == "T13");
  CHECK(read.logs[0].spec == "15x12");
  CHECK(read.logs[1].defect == "7x7x8 rot");
  CHECK(read.logs[2].spec == "12x32 segments 12,14");
  CHECK(read.logs[2].measure.segments.size() == 2);
  CHECK(read.logs[3].defect == "15bf; 10% sweep");
  CHECK(read.logs[3].defects.size() == 2);
}

TEST_CASE("what is wrong with a log is found at its place") {
  const auto words = logs_of_words({"15x12", "15x"}, false);
  REQUIRE(words.found.size() == 1);
  CHECK(words.found[0].place.line == 2);
  const auto file = logs_of_csv("log\n15x12\n\n15x\n", false);
  REQUIRE(file.found.size() == 1);
  CHECK(file.found[0].place.line == 4);
}

TEST_CASE("a list of logs may have the whole log in one column or its measures in several") {
  const auto read = logs_of_csv(
      "Tag,Diameter,Large,Length,Segments,Defect,Reason\nT1,12/13,15,16'6,,10%,butt rot\n"
      "T2,12,,32,\"12,14\",,\n",
      false);
  REQUIRE(read.found.empty());
  REQUIRE(read.logs.size() == 2);
  CHECK(read.logs[0].spec == "12/13-15x16'6");
  CHECK(read.logs[0].defects[0].reason == "butt rot");
  CHECK(read.logs[1].measure.segments.size() == 2);
  CHECK(logs_of_csv("log\n\"12/13-15x16'6\"\"\"\n", false).logs[0].measure == read.logs[0].measure);
  CHECK(logs_of_csv("diameter,length\n30,4.8\n", true).logs[0].measure.length.system ==
        measure::System::metric);
}

TEST_CASE("a list without the columns it needs says which those are") {
  CHECK_THROWS_WITH_AS(logs_of_csv("lenght,diameter\n12,15\n", false),
                       "'lenght' is no column of a list of logs; did you mean length?", WrongUsage);
  CHECK_THROWS_AS(logs_of_csv("diameter\n12\n", false), WrongUsage);
  CHECK_THROWS_AS(logs_of_csv("", false), WrongUsage);
}

TEST_CASE("logs under one rule have spec, rule, gross, deduction, net, unit, and totals") {
  const auto logs = logs_of_words({"15x12", "17x10 defect 15bf rot"}, false).logs;
  const auto document = scaled_logs(logs, {practice("international-quarter")}, false);
  CHECK(names(document) == Fields{"spec", "rule", "gross", "deduction", "net", "unit", "defect"});
  CHECK(row(document, 0) == Fields{"15x12", "international-quarter", "115", "0", "115", "bf", ""});
  CHECK(row(document, 1) == Fields{"17x10", "international-quarter", "125", "15", "110", "bf", "15bf rot"});
  CHECK(shown(document.tables[0].totals[4]) == "225");
  REQUIRE(
      (document.tables[0].columns[1].words != nullptr));  // scripts read the rule's name, people the trade's
  CHECK(document.tables[0].columns[1].words("international-quarter") == "Int. 1/4");
}

TEST_CASE("every scale and the total is the nearest figure, and a sound log has no deduction") {
  const auto logs = logs_of_words({"12.5x12 defect 10% rot", "10.5x11", "12.5x12"}, false).logs;
  const auto document = scaled_logs(logs, {practice("doyle")}, false);
  // (12.5 - 4)^2 x 12 / 16 = 54.1875, less a tenth 48.76875; (10.5 - 4)^2 x 11 / 16 = 29.046875
  CHECK(row(document, 0) == Fields{"12.5x12", "doyle", "54.19", "5.42", "48.77", "bf", "10% rot"});
  CHECK(row(document, 1) == Fields{"10.5x11", "doyle", "29.05", "0.00", "29.05", "bf", ""});
  CHECK(row(document, 2) == Fields{"12.5x12", "doyle", "54.19", "0.00", "54.19", "bf", ""});
  CHECK(shown(document.tables[0].totals[2]) ==
        "137.42");  // 137.421875, where the lines as printed add to 137.43
  CHECK(shown(document.tables[0].totals[3]) == "5.42");
  CHECK(shown(document.tables[0].totals[4]) == "132.00");
}

TEST_CASE("side by side, a rule that lacks a reading gives a row that says so; alone it refuses") {
  const auto logs = logs_of_words({"15x12"}, false).logs;
  const auto document = scaled_logs(logs, {practice("doyle"), practice("smalian")}, true);
  CHECK(row(document, 0) == Fields{"15x12", "doyle", "90.75", "0.00", "90.75", "bf"});
  CHECK(row(document, 1) == Fields{"15x12", "smalian", "", "", "", ""});
  CHECK(document.tables[0].notes == Fields{"Smalian needs both ends; write the large end too, as 12-15x16"});
  CHECK_THROWS_WITH_AS(scaled_logs(logs, {practice("smalian")}, false),
                       "15x12: Smalian needs both ends; write the large end too, as 12-15x16", Refused);
}

TEST_CASE("each segment of a long log is shown with its diameter, and a cull is named") {
  const auto long_log = logs_of_words({"12x32"}, false).logs;
  const auto document = scaled_logs(long_log, {practice("scribner-c")}, false);
  CHECK(row(document, 0).back() == "12 in x 16 ft = 80 + 14 in x 16 ft = 110");
  const auto cull = scaled_logs(logs_of_words({"5x16"}, false).logs, {practice("scribner-c-even")}, false);
  CHECK(names(cull).back() == "cull");
}

TEST_CASE("a rule's table has diameters down and lengths across") {
  const auto document =
      size_table(practice("international-quarter"), {measure::inches(12), measure::inches(13)},
                 {measure::feet(8), measure::feet(12)});
  CHECK(names(document) == Fields{"diameter_in", "length_8", "length_12"});
  CHECK(row(document, 0) == Fields{"12", "45", "70"});
  CHECK(row(document, 1) == Fields{"13", "55", "85"});  // source: E. Wengert, Log Volume charts, 2001
  CHECK_THROWS_AS(size_table(practice("conic"), {measure::inches(12)}, {measure::feet(8)}), Refused);
}

TEST_CASE("the list names every rule and practice with its source") {
  const auto document = list_of_rules();
  CHECK(document.tables[0].rows.size() == scaling::practice_names().size());
  for (std::size_t i = 0; i < document.tables[0].rows.size(); ++i) CHECK_FALSE(row(document, i)[3].empty());
}

TEST_CASE(
    "a rule asked for by name is told wholly, from memory or not, with the choices made where print "
    "differs") {
  const auto document = description_of({practice("international-quarter"), practice("ontario")});
  REQUIRE(document.tables[0].notes.size() == 2);
  CHECK(document.tables[0].notes[0].find("15 in x 16 ft prints 160") != std::string::npos);
  CHECK(document.tables[0].notes[1].find("Source: from memory") != std::string::npos);
}

TEST_CASE(
    "a rule's table is one to pin up: it prints on one sheet, and says formula, conventions and source") {
  const auto document = size_table(practice("ontario"), {measure::inches(12)}, {measure::feet(8)});
  CHECK(document.one_page);
  CHECK(document.foot[0] == "(0.55 D^2 - 1.2 D) L / 12 (from memory).");
  CHECK(document.foot[2] == "Source: from memory.");
}
