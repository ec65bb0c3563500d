// The report of set-ups by date: what begins a record, what it says, and which runs belong to it.
#include <doctest/doctest.h>

#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

/// A row of a table as shown, some of its columns with a stroke between.
std::string row_of(const render::Document& document, std::size_t row,
                   std::initializer_list<const char*> columns, std::size_t table = 0) {
  std::string words;
  for (const char* column : columns)
    words += (words.empty() ? "" : " | ") + cell_of(document, column, row, table);
  return words;
}

}  // namespace

TEST_CASE(
    "the demo week has two set-up records: Monday's line, and Wednesday's move, line and full set in one") {
  const auto document = answer(demo_week(), "setup-records", {});
  REQUIRE(document.tables.at(0).rows.size() == 2);
  CHECK(row_of(document, 0, {"day", "begun", "setup", "site", "kerf", "over"}) ==
        "2026-05-04 | set-up line | 1 | Tervane farm | 0.290 | 0.120");
  CHECK(row_of(document, 1, {"day", "begun", "setup", "site", "kerf", "over"}) ==
        "2026-05-06 | move to yard, set-up line, head full set | 2 | yard | 0.260 | 0.050");
  CHECK(row_of(document, 0, {"logs", "overrun_percent"}, 1) == "26 | -3.5");
  CHECK(row_of(document, 1, {"logs", "overrun_percent"}, 1) == "28 | +9.5");
}

TEST_CASE("what a set-up line leaves out is what was last said of that set-up, and a record says it again") {
  const auto document = answer(
      small_book(
          "", {"sheet 2026-03-02\nsetup A kerf 0.3 edger 0.24 third 0.2 lead 1/16 feed 55.5 zero -1/32 tooth "
               "chrome\nlog 12x12\n2x6 3/12\n",
               "sheet 2026-03-03\nsetup B kerf 0.25\nlog 12x12\n2x6 3/12\n",
               "sheet 2026-03-04\nsetup A kerf 0.29\nlog 12x12\n2x6 3/12\nblade edger changed dull\n",
               "sheet 2026-03-05\nlog 12x12\n2x6 3/12\n"}),
      "setup-records", {});
  REQUIRE(document.tables.at(0).rows.size() == 4);
  const auto said = [&](std::size_t row) {
    return row_of(document, row,
                  {"begun", "setup", "kerf", "edger", "third", "lead", "zero", "feed", "tooth"});
  };
  CHECK(said(0) == "set-up line | A | 0.300 | 0.240 | 0.200 | 0.063 | -0.031 | 55.5 | chrome");
  CHECK(said(1) == "set-up line | B | 0.250 | - | - | - | - | - | -");
  CHECK(said(2) == "set-up line | A | 0.290 | 0.240 | 0.200 | 0.063 | -0.031 | 55.5 | chrome");
  CHECK(said(3) == "edger blade | A | 0.290 | 0.240 | 0.200 | 0.063 | -0.031 | 55.5 | chrome");
  CHECK(document.tables.at(0).columns.at(10).unit == "ft per min");
}

TEST_CASE(
    "a run belongs to the record above its first log or board; a full set in its midst begins the next "
    "run's") {
  const auto document = answer(
      small_book(
          "",
          {"sheet 2026-03-02\nlog 12x12\n2x6 3/12\n",
           "sheet 2026-03-03\nsetup A kerf 0.3\nlog 12x12\n2x6 3/12\nteeth head full-set 22 wear\nlog 12x12\n"
           "2x6 3/12\nspecies PP\nlog 12x12\n2x6 3/12\n"}),
      "setup-records", {});
  CHECK(row_of(document, 0, {"day", "begun", "setup"}) == "2026-03-02 | - | -");
  CHECK(row_of(document, 1, {"day", "begun", "setup"}) == "2026-03-03 | set-up line | A");
  CHECK(row_of(document, 2, {"day", "begun", "setup"}) == "2026-03-03 | head full set | A");
  CHECK(row_of(document, 1, {"runs", "logs"}, 1) == "1 | 2");
  CHECK(row_of(document, 2, {"runs", "logs"}, 1) == "1 | 1");
}

TEST_CASE("in a metric book a feed is metres a minute") {
  const auto document =
      answer(small_book("[mill]\nunits = \"metric\"\n",
                        {"sheet 2026-03-02\nsetup A kerf 7 feed 17\nlog 30x4.8\n50x150 3/4.8\n"}),
             "setup-records", {});
  CHECK(row_of(document, 0, {"kerf", "feed"}) == "7.00 | 17.0");
  CHECK(document.tables.at(0).columns.at(10).unit == "m per min");
}
