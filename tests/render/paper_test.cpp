// Papers that leave the house, in a workbook and on a page: the mill's sign, tables kept whole, headings that belong.
#include <doctest/doctest.h>

#include <string>

#include "base/text.h"
#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

std::string part_of(const std::string& bytes, const std::string& name) {
  const Folder folder;
  write_file(folder / "book.xlsx", bytes);
  return output_of("unzip -p '" + (folder / "book.xlsx") + "' '" + name + "' 2>/dev/null");
}

/// The rows repeated on every printed page of the sheets, as the workbook names them.
std::size_t repeated_heads(const std::string& bytes) {
  const std::string book = part_of(bytes, "xl/workbook.xml");
  std::size_t count = 0;
  const std::string name = "_xlnm.Print_Titles";
  for (std::size_t at = book.find(name); at != std::string::npos; at = book.find(name, at + 1)) ++count;
  return count;
}

/// The widths of a sheet's columns.
std::string columns_of(const Sheet& sheet) {
  const std::size_t from = sheet.xml.find("<cols>");
  return sheet.xml.substr(from, sheet.xml.find("</cols>") - from);
}

Document with_log_list(std::size_t logs) {
  Document document = paper();
  Table list = document.tables.front();
  list.title = "Logs sawn";
  list.sums.clear();
  list.rows.assign(logs, list.rows.front());
  document.tables = {document.tables.front(), list};
  return document;
}

}  // namespace

TEST_CASE("The mill's sign heads a paper, made small enough, in page and workbook") {
  Document document = paper();
  document.logo = std::string(KERFBOOK_ROOT) + "/tests/render/sign.png";
  CHECK(render_html(document).find("<img class=\"logo\" alt=\"\" src=\"data:image/png;base64,iVBOR") !=
        std::string::npos);
  const std::string bytes = render_xlsx(document);
  CHECK(part_of(bytes, "xl/media/image1.png") == read_file(document.logo));
  const std::string drawing = part_of(bytes, "xl/drawings/drawing1.xml");
  CHECK(drawing.find("<xdr:pic>") != std::string::npos);
  CHECK(drawing.find("cy=\"533400\"") != std::string::npos);  // 56 pixels of 9,525 units; the picture has 240
  CHECK(bytes == render_xlsx(document));
}

TEST_CASE("A sign that is missing or no picture is left out, and the paper is made") {
  const Folder folder;
  write_file(folder / "words.txt", "no picture");
  for (const std::string& file : {folder / "nowhere.png", folder / "words.txt", folder / ""}) {
    Document document = paper();
    document.logo = file;
    CAPTURE(file);
    CHECK(render_html(document).find("<img") == std::string::npos);
    CHECK(render_html(document) == render_html(paper()));
    CHECK(part_of(render_xlsx(document), "xl/drawings/drawing1.xml").empty());
    CHECK(read_workbook(render_xlsx(document)).front().row_of("Invoice") == 0);
  }
}

TEST_CASE("A table that has no room left on its page begins a sheet of its own, under its own heading") {
  const std::string longer = render_xlsx(with_log_list(40));
  const auto sheets = read_workbook(longer);
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].row_of("Customer ______________________________   Date ______________") > 0);
  CHECK(sheets[1].name == "Logs sawn");
  CHECK(sheets[1].row_of("What") > 0);
  CHECK(repeated_heads(longer) == 1);
}

TEST_CASE("Where tables share a sheet, no heading of one is repeated over the figures of another") {
  const std::string shorter = render_xlsx(with_log_list(4));
  REQUIRE(read_workbook(shorter).size() == 1);
  CHECK(repeated_heads(shorter) == 0);
  Document report = tally_week();
  CHECK(repeated_heads(render_xlsx(report)) == 2);
  report.tables[1].follows = true;
  REQUIRE(read_workbook(render_xlsx(report)).size() == 1);
  CHECK(repeated_heads(render_xlsx(report)) == 0);
}

TEST_CASE("A sheet to fill in by hand is one page, however many tables are on it") {
  Document document = paper();
  document.tables.erase(document.tables.begin());
  document.tables.front().new_page = false;
  document.tables.front().rows.resize(30, document.tables.front().rows.front());
  document.tables.resize(3, document.tables.front());
  const auto sheets = read_workbook(render_xlsx(document));
  REQUIRE(sheets.size() == 1);
  CHECK(sheets.front().xml.find("fitToHeight=\"0\"") == std::string::npos);
  CHECK(sheets.front().xml.find("fitToPage=\"1\"") != std::string::npos);
}

TEST_CASE("Words of a table below another run on over narrow columns, and push none of them apart") {
  Document document = with_log_list(4);
  Table& upper = document.tables.front();
  upper.sums.clear();
  upper.rows.resize(2);
  Document alone = document;
  alone.tables = {upper};
  Table& lower = document.tables.back();
  lower.columns = {upper.columns[1], upper.columns[0], upper.columns[1]};
  for (Column& column : lower.columns) column.total = TotalKind::none;
  lower.columns[1].heading = "Why";
  lower.totals.clear();
  lower.rows = {{{dec(100, 2), std::string("waited, tractor was hay"), dec(200, 2)}, false}};
  // Three columns take 200 letters.
  CHECK(columns_of(read_workbook(render_xlsx(alone)).front()).substr(0, 200) ==
        columns_of(read_workbook(render_xlsx(document)).front()).substr(0, 200));
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  const int head = sheet.row_of("Logs sawn") + 1;
  CHECK(sheet.at(head, 1).value == "Why");
  CHECK(sheet.at(head + 1, 1).value == "waited, tractor was hay");
  CHECK(sheet.at(head, 2).value.empty());
  CHECK(sheet.at(head + 1, 2).value.empty());
  CHECK(sheet.at(head + 1, 4).value == "2");
}

TEST_CASE("A fact in the head of a paper makes no column of its tables wider") {
  Document document = paper();
  const Sheet before = read_workbook(render_xlsx(document)).front();
  document.head.front().value = std::string(70, 'w');
  const Sheet after = read_workbook(render_xlsx(document)).front();
  CHECK(columns_of(before) == columns_of(after));
}

}  // namespace kerfbook::render
