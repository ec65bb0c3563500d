// The same document in five forms has the same figures; totals add up from what is printed with them.
#include <doctest/doctest.h>

#include <string>

#include "render/outputs.h"
#include "render/outputs_check.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
TEST_CASE("A week of production has the same figures in five forms, and every sum foots") {
  check_forms(production_week(), "production");
}

TEST_CASE("Every kind of cell reads the same in five forms, and every sum foots") {
  check_forms(every_cell(), "cells");
}

TEST_CASE("A tally's grid has the same figures in five forms, and foots both ways") {
  check_forms(tally_week(), "tally");
}

TEST_CASE("Lines that do not add to their total as printed say so, in five forms") {
  check_forms(thirds(), "thirds");
}

TEST_CASE("A document without rows is without rows in five forms") {
  check_forms(no_rows(), "no rows");
}

TEST_CASE("An empty answer says so in words where people read it") {
  for (const char* format : {"text", "html"}) {
    CHECK(find_format(format)->render(no_rows()).find("nothing in this period") != std::string::npos);
  }
  CHECK(read_workbook(render_xlsx(no_rows())).front().row_of("nothing in this period") > 0);
}

TEST_CASE("A tally's grid foots both ways in text, page and workbook, and the struck line is in none of it") {
  const Document document = tally_week();
  const std::string text = render_text(document);
  CHECK(text.find("Pieces          6      22      40      68\n") != std::string::npos);
  CHECK(text.find("Lumber, bf  68.00  270.67  554.67          893.33\n") != std::string::npos);
  const std::string html = render_html(document);
  CHECK(html.find("<td>Pieces</td><td class=\"n\">6</td><td class=\"n\">22</td><td class=\"n\">40</td>"
                  "<td class=\"n\">68</td>") != std::string::npos);
  CHECK(html.find("<s>2x4   16 ft   32 Pieces   341.33 bf</s>") != std::string::npos);
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  const int head = sheet.row_of("Size");
  const int foot = sheet.row_of("Pieces");
  REQUIRE(head > 0);
  REQUIRE(foot == head + 4);
  for (int line = head + 1; line < foot; ++line) {
    double across = 0;
    for (int column = 1; column <= 3; ++column) across += std::stod(sheet.at(line, column).value);
    CHECK(std::stod(sheet.at(line, 4).value) == across);
    CHECK(sheet.at(line, 4).formula.starts_with("SUM("));
  }
  for (int column = 1; column <= 4; ++column) {
    double down = 0;
    for (int line = head + 1; line < foot; ++line) down += std::stod(sheet.at(line, column).value);
    CHECK(std::stod(sheet.at(foot, column).value) == down);
    CHECK(sheet.at(foot, column).formula.starts_with("SUM("));
  }
  CHECK(shown_in_sheet(sheet.at(foot + 1, 5)) == "893.33");
  const int struck = sheet.row_of("2x4   16 ft   32 Pieces   341.33 bf");
  REQUIRE(struck > foot);
  CHECK(sheet.at(struck, 0).struck);
}

}  // namespace kerfbook::render
