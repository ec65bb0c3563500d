// yield_model_test.cpp -- the report that holds runs against the best pattern of their logs, on the invented demo week.
#include <doctest/doctest.h>

#include <cmath>

#include "office/office.h"
#include "render/outputs.h"
#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

TEST_CASE("it says in a sentence how much of the best the mill gets, and which change would be worth most") {
  const auto document = answer(demo_week(), "yield-model");
  REQUIRE(document.lead.size() == 2);
  CHECK(document.lead[0].starts_with("The mill gets 9"));
  CHECK(document.lead[0].find("of every 100 board feet the best pattern would give") != std::string::npos);
  CHECK(document.lead[1].starts_with("Of the changes looked at, "));
  CHECK(total_of(document, "logs") == "54");
}

TEST_CASE("the commonest log's pattern is a table in every form and a drawing on a page") {
  const auto document = answer(demo_week(), "yield-model");
  REQUIRE(document.tables.size() == 3);
  REQUIRE(document.tables[2].log_end.has_value());
  CHECK(document.tables[2].rows.size() > 1);
  const std::string page = render::render_html(document);
  CHECK(page.find("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart log-end\"") != std::string::npos);
}

TEST_CASE("without logs it says so, and shows no change") {
  const auto document = answer(empty_book(), "yield-model");
  CHECK(document.lead.front() == "There are no logs of which the list of sizes gives any board.");
  CHECK(document.tables[1].rows.empty());
}

TEST_CASE("a log larger than the model is made for leaves its run out, and the note says so") {
  const auto book =
      small_book("", {"sheet 2026-05-05\nsetup 1 kerf 0.02\njob own\nspecies DF\nlog 90x16\n2x6 40/16\n",
                      "sheet 2026-05-06\njob own\nspecies DF\nlog 15x12\n2x6 5/12\n"});
  const auto document = answer(book, "yield-model");
  REQUIRE(document.tables[0].rows.size() == 1);
  CHECK(
      document.tables[0].notes ==
      std::vector<std::string>{"Left out: 1 run without all logs measured, with one over 72 in, or without a "
                               "set-up that has its kerf."});
}

TEST_CASE("a log written with its middle or girth and its defects is reckoned with as any other") {
  const std::string head = "sheet 2026-05-05\nsetup 1 kerf 0.28\njob own\nspecies DF\n";
  const auto document = answer(
      small_book(
          "",
          {head + "log 15x16\nlog 15x16 mid 16 defect 10% rot\nlog 15x16 girth 50 defect 15bf\n2x6 18/16\n"}),
      "yield-model");
  const auto plain =
      answer(small_book("", {head + "log 15x16\nlog 15x16\nlog 15x16\n2x6 18/16\n"}), "yield-model");
  CHECK(cell_of(document, "logs", 0) == "3");
  CHECK(cell_of(document, "best_bf", 0) ==
        cell_of(plain, "best_bf", 0));  // the small end was measured in all
  CHECK(document.tables[0].notes.empty());
}

TEST_CASE("few logs, and a run over 100 % in the share, are told above the figures") {
  const auto document = answer(
      small_book("", {"sheet 2026-05-05\nsetup 1 kerf 0.28\njob own\nspecies DF\nlog 15x12\n2x6 2/12\n",
                      "sheet 2026-05-06\njob own\nspecies DF\nlog 15x12\n2x6 14/12\n"}),
      "yield-model");
  REQUIRE(document.lead.size() >= 3);
  CHECK(document.lead[0].starts_with("The mill gets "));
  CHECK(document.lead[1] ==
        "Counted in that: 1 run over 100 %, where something is measured or tallied wrongly.");
  CHECK(document.lead[2] ==
        "Too few logs to tell: under 50 the share, and what a change would be worth, can be chance (common "
        "practice, no source).");
  CHECK(document.tables[0].notes ==
        std::vector<std::string>{"More than 100 % of the best in 1 run: look for a slip in the tally, logs "
                                 "measured too small, or lumber of other logs."});
}

TEST_CASE("what a change is worth in a year is its lumber at the mean price of what was invoiced") {
  auto book = small_book(
      "[[customer]]\ncode = \"A\"\nname = \"Ama Quist\"\n[[job]]\ncode = \"A\"\ncustomer = \"A\"\n"
      "[[price]]\nbasis = \"mbf\"\nrate = 500.00\njob = \"A\"\n",
      {"sheet 2026-05-05\nsetup 1 kerf 0.28 over 0.12\njob A\nspecies DF\nlog 15x12\nlog 17x12\n1x6 "
       "12/12\n"});
  CHECK(cell_of(answer(book, "yield-model"), "money_a_year", 0, 1) == "-");
  billing::issue_invoice(book, "A", kToday, kToday);
  const auto document = answer(book, "yield-model");
  const auto number = [&](const char* column, std::size_t row) {
    const auto words = cell_of(document, column, row, 1);
    return std::stod(words.starts_with("$") ? words.substr(1) : words);
  };
  bool gained = false;
  for (std::size_t row = 0; row < document.tables.at(1).rows.size(); ++row) {
    CAPTURE(row);
    gained = gained || number("bf_a_year", row) > 0;
    CHECK(std::abs(number("money_a_year", row) - number("bf_a_year", row) / 2) < 0.01);
  }
  CHECK(gained);
  CHECK(document.tables.at(1).notes.at(0) ==
        "The model's gain in percent, laid on the lumber that was cut: of these logs, and of the 365 days to "
        "the last "
        "day sawn. Worth a year: at the mean price of the lumber invoiced in those days and since, by the "
        "board foot, "
        "the thousand or the m3.");
}
