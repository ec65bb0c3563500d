// saw_speed_test.cpp -- the report of rim speed, bite and time in wood, on books made up and worked out by hand.
#include <doctest/doctest.h>

#include "tables.h"
#include "tuning/saw_arithmetic.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::size_t kSaws = 0, kDays = 1;
constexpr const char* kHead = "[[saw]]\nrole = \"head\"\ndiameter = 42\nkerf = 0.29\nteeth = 22\nrpm = 900\n";

std::string row_of(const render::Document& document, std::size_t row,
                   std::initializer_list<const char*> columns, std::size_t table) {
  std::string words;
  for (const char* column : columns)
    words += (words.empty() ? "" : " | ") + cell_of(document, column, row, table);
  return words;
}

std::string notes_of(const render::Document& document, std::size_t table) {
  std::string words;
  for (const auto& note : document.tables.at(table).notes) words += note + "\n";
  return words;
}

}  // namespace

TEST_CASE("a 42 in saw of 22 teeth at 900 turns and a feed of 55: rim speed, bite and kerf by hand") {
  const auto document =
      answer(small_book(kHead, {"sheet 2026-05-04\nsetup 1 kerf 0.26 feed 55 tooth chrome\nsawing 8:00-9:00\n"
                                "2x6 10/16\n"}),
             "saw-speed");
  // 3.14159 x 42 x 900 / 12 = 9,896.0; 55 x 12 / (22 x 900) = 0.0333
  CHECK(row_of(document, 0, {"saw", "diameter", "teeth", "tooth", "kerf", "rpm", "rim_speed", "feed", "bite"},
               kSaws) == "head | 42 | 22 | chrome | 0.26 | 900 | 9,896 | 55 | 0.033");
  CHECK(document.lead.at(1) ==
        "The rim of the head saw goes 9,896 ft a minute; at a feed of 55 ft a minute each tooth bites 0.033 "
        "in.");
  CHECK(document.foot.front() == tuning::kSpeedCaution);
}

TEST_CASE("time in wood is the length of all boards sawn over the feed they were sawn at") {
  const auto document = answer(
      small_book(kHead,
                 {"sheet 2026-05-04\nsetup 1 feed 22\nsawing 8:00-13:30\n2x6 165/16\nless 2x6 5/16 split\n",
                  "sheet 2026-05-05\nsawing 8:00-10:00\n2x6 55/16\nsetup 2 feed 44\n2x6 55/16\n",
                  "sheet 2026-05-06\nsawing 8:00-8:30\n"}),
      "saw-speed");
  // 2,640 ft at 22 are 2 h; 880 ft at 22 are 40 min and at 44 twenty, 1,760 ft in 60 min are 29.33 on average
  const auto columns = {"boards", "feed", "wood_hours", "sawing_hours", "wood_percent"};
  CHECK(row_of(document, 0, columns, kDays) == "2,640 | 22.0 | 2.00 | 5.50 | 36");
  CHECK(row_of(document, 1, columns, kDays) == "1,760 | 29.3 | 1.00 | 2.00 | 50");
  CHECK(row_of(document, 2, columns, kDays) == "0 | - | 0.00 | 0.50 | 0");
  CHECK(total_of(document, "wood_hours", kDays) == "3.00");
  CHECK(total_of(document, "wood_percent", kDays) == "38");  // 3 of 8 h
  CHECK(document.lead.at(0) == "The head saw was in wood 3.0 of 8.0 sawing hours.");
  CHECK(cell_of(document, "feed", 0, kSaws) == "44");
  CHECK(document.tables.at(kDays).chart);
  const auto first =
      answer(small_book(kHead, {"sheet 2026-05-04\nsetup 1 feed 22\nsawing 8:00-13:30\n2x6 165/16\n",
                                "sheet 2026-05-05\nsetup 2 feed 44\n2x6 55/16\n"}),
             "saw-speed", days(make_day(2026, 5, 4), make_day(2026, 5, 4)));
  CHECK(first.lead.at(0) == "The head saw was in wood 2.0 of 5.5 sawing hours.");
  CHECK(cell_of(first, "feed", 0, kSaws) == "22");  // the set-up in force at the end of the period
}

TEST_CASE("a day whose feed is not known has no time in wood, and is in no share of it") {
  const auto document =
      answer(small_book(kHead, {"sheet 2026-05-04\nsawing 8:00-12:00\n2x6 10/16\n",
                                "sheet 2026-05-05\nsetup 1 feed 22\nsawing 8:00-13:30\n2x6 165/16\n"}),
             "saw-speed");
  CHECK(row_of(document, 0, {"boards", "feed", "wood_hours", "sawing_hours", "wood_percent"}, kDays) ==
        "160 | - | - | 4.00 | -");
  CHECK(total_of(document, "sawing_hours", kDays) == "-");   // it would not be what the share is of
  CHECK(total_of(document, "wood_percent", kDays) == "36");  // 2 of 5.5 h
  CHECK(document.lead.at(0) ==
        "The head saw was in wood 2.0 of 5.5 sawing hours, on the days whose feed is known.");
  CHECK(notes_of(document, kDays)
            .find("The feed is not known on 1 day: a set-up line on a sheet says it, as "
                  "in setup 2 feed 55.") != std::string::npos);
}

TEST_CASE("what is not known is a dash, and a note names the word that would tell it") {
  const auto document =
      answer(small_book("[[saw]]\nrole = \"head\"\nkerf = 0.29\n"
                        "[[saw]]\nrole = \"edger\"\ndiameter = 20\nteeth = 10\n",
                        {"sheet 2026-05-04\nsetup 1 edger 0.24\nsawing 8:00-9:00\n2x6 1/16\n"}),
             "saw-speed");
  CHECK(column_of(document, "rim_speed", kSaws) == "- -");
  CHECK(column_of(document, "bite", kSaws) == "- -");
  CHECK(column_of(document, "kerf", kSaws) == "0.29 0.24");  // the mill file's; the set-up's
  const auto notes = notes_of(document, kSaws);
  CHECK(notes.find("Of the head saw the mill file's [[saw]] does not say diameter, teeth, rpm.") !=
        std::string::npos);
  CHECK(notes.find("Of the edger saw the mill file's [[saw]] does not say rpm.") != std::string::npos);
  CHECK(notes.find("No feed is known, and so no bite: a set-up line on a sheet says it, as in setup 2 feed "
                   "55.") != std::string::npos);
  CHECK(document.lead.front() == "How long the saws were in wood cannot be told: no sheet says the feed.");
}

TEST_CASE("more time in wood than was sawn is told as a fault of the record") {
  const auto document = answer(
      small_book(kHead, {"sheet 2026-05-04\nsetup 1 feed 10\nsawing 8:00-9:00\n2x6 165/16\n"}), "saw-speed");
  CHECK(notes_of(document, kDays)
            .find("More time in wood than was sawn: a feed is too low, or sawing time is "
                  "missing from a sheet.") != std::string::npos);
}

TEST_CASE("in a metric book: metres a second at the rim, metres a minute of feed, millimetres of bite") {
  const auto document =
      answer(small_book("[mill]\nunits = \"metric\"\n[[saw]]\nrole = \"head\"\ndiameter = 1000\nkerf = 7\n"
                        "teeth = 40\nrpm = 800\n",
                        {"sheet 2026-05-04\nsetup 1 feed 20\nsawing 8:00-8:30\n50x150 10/4.8\n"}),
             "saw-speed");
  // 3.14159 x 1 x 800 / 60 = 41.89; 20,000 / (40 x 800) = 0.625; 48 m at 20 are 2.4 min of 30
  CHECK(row_of(document, 0, {"diameter", "kerf", "rim_speed", "feed", "bite"}, kSaws) ==
        "1,000 | 7 | 42 | 20 | 0.625");
  CHECK(row_of(document, 0, {"boards", "wood_hours", "wood_percent"}, kDays) == "48 | 0.04 | 8");
  CHECK(document.lead.at(1) ==
        "The rim of the head saw goes 42 m a second; at a feed of 20 m a minute each tooth bites 0.63 mm.");
}

TEST_CASE("a book without saws and without sawing still says the caution") {
  const auto document = answer(small_book("", {}), "saw-speed");
  CHECK(document.lead.empty());
  CHECK(document.tables.at(kSaws).rows.empty());
  CHECK(document.foot.front() == tuning::kSpeedCaution);
}
