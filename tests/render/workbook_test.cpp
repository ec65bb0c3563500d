// What a workbook is made of, read from its parts; and the same workbook through LibreOffice, recalculated.
#include <doctest/doctest.h>

#include <string>

#include "base/text.h"
#include "render/cell.h"
#include "render/footing.h"
#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

/// The rows that hold the figures, found by their heading.
std::vector<std::vector<std::string>> below_heading(const std::string& csv, const std::string& first) {
  auto rows = read_csv(csv);
  while (!rows.empty() && rows.front().front() != first) rows.erase(rows.begin());
  if (!rows.empty()) rows.erase(rows.begin());
  return rows;
}

/// A figure as LibreOffice writes it is the exact one; all else as it is printed.
void check_same(const std::string& made, const Cell& meant, const Column& column) {
  if (!is_number(meant)) {
    CHECK(canonical(made, column) == canonical(plain_cell(meant), column));
  } else {
    CHECK(near(number_of(number_in_sheet(made)), as_figure(meant).exact()));
  }
}

void check_recalculated(const std::string& csv, const Document& document) {
  const Table& table = document.tables.front();
  const auto columns = shown_columns(table);
  const auto rows = below_heading(csv, heading_of(table.columns[columns.front()]));
  REQUIRE(rows.size() > table.rows.size());
  for (std::size_t r = 0; r <= table.rows.size(); ++r) {
    const bool totals = r == table.rows.size();
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const Column& column = table.columns[columns[i]];
      if (totals && column.total == TotalKind::none) continue;
      CAPTURE(column.name);
      CAPTURE(r);
      check_same(rows[r][i], (totals ? table.totals : table.rows[r].cells)[columns[i]], column);
    }
  }
}

/// A line with its figures to hundredths.
std::vector<std::string> to_hundredths(std::vector<std::string> cells) {
  for (std::string& cell : cells) {
    const bool number = !cell.empty() && cell.find_first_not_of("0123456789.-") == std::string::npos;
    if (number) cell = canonical(plain(kerfbook::shown(number_of(number_in_sheet(cell)), 2)));
  }
  return cells;
}

}  // namespace

TEST_CASE("A total is a live sum with its value beside it, and a ratio's total is a live ratio of totals") {
  const Sheet sheet = read_workbook(render_xlsx(production_week())).front();
  const int total = sheet.row_of("Total");
  REQUIRE(total > 0);
  const std::string row = std::to_string(total + 1);
  const std::string last = std::to_string(total);
  CHECK(sheet.at(total, 4).formula == "SUM(E" + std::to_string(total - 4) + ":E" + last + ")");
  CHECK(sheet.at(total, 4).value == "6486.75");
  CHECK(sheet.at(total, 6).formula == "100*(E" + row + "-D" + row + ")/D" + row);
  CHECK(number_in_sheet(sheet.at(total, 6).value) == "2.96428571428571");  // shown +3.0
  CHECK(sheet.at(total, 10).formula == "E" + row + "/L" + row);
  CHECK(sheet.xml.find("hidden=\"1\"") != std::string::npos);
}

TEST_CASE("Struck rows are struck through and left out of the sums above and below them") {
  const Sheet sheet = read_workbook(render_xlsx(every_cell())).front();
  const int struck = sheet.row_of("a struck line");
  const int total = sheet.row_of("Total");
  REQUIRE(struck > 0);
  for (int column = 0; column < 5; ++column) CHECK(sheet.at(struck, column).struck);
  CHECK(sheet.at(total, 2).formula ==
        "SUM(C" + std::to_string(total - 11) + ":C" + std::to_string(struck) + ")");
}

TEST_CASE("Text is stored as text: never a formula, never a link, every letter kept") {
  const Document document = every_cell();
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  for (const Row& row : document.tables.front().rows) {
    const auto* text = std::get_if<std::string>(&row.cells.front());
    if (text == nullptr || text->empty()) continue;
    const int at = sheet.row_of(*text);
    CAPTURE(*text);
    REQUIRE(at > 0);
    CHECK(sheet.at(at, 0).text);
    CHECK(sheet.at(at, 0).formula.empty());
  }
  CHECK(sheet.xml.find("<hyperlink") == std::string::npos);
}

TEST_CASE("Cells are typed: days are days, money has its sign, an overrun its plus") {
  const Sheet week = read_workbook(render_xlsx(production_week())).front();
  const int first = week.row_of("Day") + 1;
  CHECK(week.at(first, 0).value == "46146");  // 2026-05-04 counted from 1899-12-30
  CHECK(week.at(first, 0).format == "yyyy-mm-dd");
  CHECK(week.at(first, 4).format == "#,##0.00");
  CHECK(week.at(first, 6).format == "+#,##0.0;-#,##0.0;#,##0.0");
  const auto tally = read_workbook(render_xlsx(tally_week()));
  REQUIRE(tally.size() == 2);
  CHECK(tally[1].at(tally[1].row_of("bundling"), 3).format == "\"$\"#,##0.00;-\"$\"#,##0.00");
}

TEST_CASE(
    "A sheet prints on the paper of the house, fitted to its width, with its heading repeated and pages "
    "numbered") {
  Document document = production_week();
  const Sheet letter = read_workbook(render_xlsx(document)).front();
  document.style.paper = PaperSize::a4;
  const Sheet a4 = read_workbook(render_xlsx(document)).front();
  CHECK(letter.xml.find("paperSize=\"9\"") == std::string::npos);
  CHECK(a4.xml.find("paperSize=\"9\"") != std::string::npos);
  CHECK(a4.xml.find("fitToHeight=\"0\"") != std::string::npos);
  document.one_page = true;
  CHECK(read_workbook(render_xlsx(document)).front().xml.find("fitToHeight=\"0\"") == std::string::npos);
  CHECK(a4.xml.find("orientation=\"landscape\"") != std::string::npos);
  CHECK(a4.xml.find("page &amp;P of &amp;N") != std::string::npos);
  CHECK(a4.xml.find("state=\"frozen\"") != std::string::npos);
  const std::string book = part_of(render_xlsx(document), "xl/workbook.xml");
  CHECK(book.find("_xlnm.Print_Titles") != std::string::npos);
}

TEST_CASE("A worksheet is named by what stands before its title's colon, and no two are named alike") {
  Document document = production_week();
  document.tables.resize(1, document.tables.front());
  for (const char* title :
       {"The mill at a glance: Saws", "The mill at a glance: Services", "Glance: a", "GLANCE"}) {
    document.tables.push_back(document.tables.front());
    document.tables.back().title = title;
  }
  document.tables.erase(document.tables.begin());
  const std::string book = part_of(render_xlsx(document), "xl/workbook.xml");
  std::string names;
  for (std::size_t at = 0; (at = book.find("sheet name=\"", at)) != std::string::npos; ++at) {
    const auto begin = at + 12;
    names += book.substr(begin, book.find('"', begin) - begin) + "|";
  }
  CHECK(names == "The mill at a glance|The mill at a glance- Services|Glance|GLANCE 2|");
}

TEST_CASE("A long table has a filter over its heading, a short one none") {
  Document document = production_week();
  CHECK(read_workbook(render_xlsx(document)).front().xml.find("<autoFilter") == std::string::npos);
  auto& rows = document.tables.front().rows;
  while (rows.size() < 40) rows.push_back(rows.front());
  total_up(document.tables.front());
  CHECK(read_workbook(render_xlsx(document)).front().xml.find("<autoFilter") != std::string::npos);
}

TEST_CASE("Every kind of chart is a native chart of the workbook, a scatter with its trend") {
  const std::string bytes = render_xlsx(chart_sampler());
  CHECK(part_of(bytes, "xl/charts/chart1.xml").find("<c:barChart>") != std::string::npos);
  CHECK(part_of(bytes, "xl/charts/chart2.xml").find("<c:lineChart>") != std::string::npos);
  CHECK(part_of(bytes, "xl/charts/chart3.xml").find("val=\"stacked\"") != std::string::npos);
  CHECK(part_of(bytes, "xl/charts/chart1.xml").find("<c:min val=\"0\"/>") != std::string::npos);
  CHECK(part_of(bytes, "xl/charts/chart2.xml").find("<c:symbol val=\"circle\"/>") != std::string::npos);
  const std::string scatter = part_of(bytes, "xl/charts/chart4.xml");
  CHECK(scatter.find("<c:scatterChart>") != std::string::npos);
  CHECK(scatter.find("<c:trendline>") != std::string::npos);
}

TEST_CASE("Worksheet names are fit for a workbook and differ, whatever the tables are called") {
  Document document = no_rows();
  document.tables.resize(4, document.tables.front());
  document.tables[0].title = "Tally: 2x4/2x6 [week] of the whole long summer";
  document.tables[1].title = document.tables[0].title;
  document.tables[2].title = "'quoted'";
  document.tables[3].title = "檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜檜";
  const auto sheets = read_workbook(render_xlsx(document));
  REQUIRE(sheets.size() == 4);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    CHECK(characters_before(sheets[i].name, sheets[i].name.size()) <= 31);
    CHECK(sheets[i].name.find_first_of("[]:*?/\\") == std::string::npos);
    for (std::size_t k = 0; k < i; ++k) CHECK(sheets[i].name != sheets[k].name);
  }
  CHECK(sheets[2].name == "quoted");
}

TEST_CASE(
    "The same document gives the same workbook, byte for byte, and tells its day as the day it was made") {
  const std::string bytes = render_xlsx(tally_week());
  CHECK(bytes == render_xlsx(tally_week()));
  CHECK(part_of(bytes, "docProps/core.xml").find(">2026-05-08T") != std::string::npos);
}

TEST_CASE("A table of 25,000 rows written row by row holds every row and its live total") {
  Document document = production_week();
  Table& table = document.tables.front();
  const Row row = table.rows.front();
  table.rows.assign(25'000, row);
  total_up(table);
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  const int total = sheet.row_of("Total");
  CHECK(total - sheet.row_of("Day") == 25'001);
  CHECK(sheet.at(total, 2).value == "300000");
  CHECK(sheet.at(total, 2).formula ==
        "SUM(C" + std::to_string(total - 24'999) + ":C" + std::to_string(total) + ")");
}

TEST_CASE("LibreOffice, working every formula out again, gives the figures of csv and the totals of json") {
  const Folder folder;
  write_file(folder / "production.xlsx", render_xlsx(production_week()));
  write_file(folder / "cells.xlsx", render_xlsx(every_cell()));
  write_file(folder / "tally.xlsx", render_xlsx(tally_week()));
  convert_recalculated(folder, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false",
                       {"production.xlsx", "cells.xlsx", "tally.xlsx"});
  check_recalculated(read_file(folder / "calculated/production.csv"), production_week());
  check_recalculated(read_file(folder / "calculated/cells.csv"), every_cell());
  const auto grid = below_heading(read_file(folder / "calculated/tally.csv"), "Size");
  REQUIRE(grid.size() >= 5);
  CHECK(to_hundredths(grid[0]) == std::vector<std::string>{"2x4", "3", "12", "23", "38", "381.33"});
  CHECK(grid[3] == std::vector<std::string>{"Pieces", "6", "22", "40", "68", ""});
  CHECK(to_hundredths(grid[4]) ==
        std::vector<std::string>{"Lumber, bf", "68", "270.67", "554.67", "", "893.33"});
}

}  // namespace kerfbook::render
