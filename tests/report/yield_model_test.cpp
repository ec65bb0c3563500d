// yield_model_test.cpp -- the report that holds runs against the best pattern of their logs, on the invented demo week.
#include <doctest/doctest.h>

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
