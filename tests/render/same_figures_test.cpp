// The same document in five formats has the same figures; totals add up from what is printed above them.
#include <doctest/doctest.h>

#include <functional>
#include <string>

#include "base/exact.h"
#include "base/text.h"
#include "render/cell.h"
#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

void check_same(const std::string& format, const Figures& made, const Figures& meant, bool with_totals) {
  CAPTURE(format);
  REQUIRE(made.rows.size() == meant.rows.size());
  for (std::size_t i = 0; i < made.rows.size(); ++i) {
    CAPTURE(i);
    CHECK(made.rows[i] == meant.rows[i]);
    CHECK(made.struck[i] == meant.struck[i]);
  }
  if (with_totals) CHECK(made.totals == meant.totals);
}

/// Adds every summed column up from the cells as printed.
void check_footed(const std::string& format, const Figures& made, const Table& table) {
  const auto columns = shown_columns(table);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = table.columns[columns[i]];
    if (column.total != TotalKind::sum || table.totals.empty()) continue;
    Rational sum;
    for (std::size_t r = 0; r < made.rows.size(); ++r) {
      if (!made.struck[r] && !made.rows[r][i].empty()) sum = sum + *read_decimal(made.rows[r][i]);
    }
    CAPTURE(format);
    CAPTURE(column.name);
    CHECK(sum == *read_decimal(made.totals[i]));
  }
}

void check_all(const Document& document) {
  const Table& table = document.tables.front();
  const Figures meant = figures_of(table);
  const Figures text = from_text(render_text(document), table);
  const Figures json = from_json(render_json(document), table);
  const Figures html = from_html(render_html(document), table);
  const auto sheets = read_workbook(render_xlsx(document));
  REQUIRE(sheets.size() == document.tables.size());
  const Figures xlsx = from_sheet(sheets.front(), table);
  check_same("text", text, meant, true);
  check_same("csv", from_csv(render_csv(document), table), meant, false);
  check_same("json", json, meant, true);
  check_same("html", html, meant, true);
  check_same("xlsx", xlsx, meant, true);
  check_footed("text", text, table);
  check_footed("json", json, table);
  check_footed("html", html, table);
  check_footed("xlsx", xlsx, table);
}

}  // namespace

TEST_CASE("A week of production has the same figures in five formats, and every sum foots") {
  check_all(production_week());
}

TEST_CASE("Every kind of cell reads the same in five formats, and every sum foots") {
  check_all(every_cell());
}

TEST_CASE("A document without rows is without rows in five formats") {
  check_all(no_rows());
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
  CHECK(text.find("Lumber, bf  68.00  270.67  554.66          893.33\n") != std::string::npos);
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
  CHECK(sheet.at(foot + 1, 5).value == "893.33");
  const int struck = sheet.row_of("2x4   16 ft   32 Pieces   341.33 bf");
  REQUIRE(struck > foot);
  CHECK(sheet.at(struck, 0).struck);
}

}  // namespace kerfbook::render
