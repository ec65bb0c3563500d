// Papers that leave the house, in a workbook and on a page: the mill's sign, tables kept whole, headings that belong.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/text.h"
#include "render/footing.h"
#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

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
  total_up(list);
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
  write_file(folder / "words.png", "no picture either, whatever its name says");
  write_file(folder / "cut.png", "\x89PNG\r\n\x1a\n");  // a picture cut off after its first bytes
  for (const std::string& file : {folder / "nowhere.png", folder / "words.txt", folder / "words.png",
                                  folder / "cut.png", folder / ""}) {
    Document document = paper();
    document.logo = file;
    CAPTURE(file);
    CHECK(render_html(document).find("<img") == std::string::npos);
    CHECK(render_html(document) == render_html(paper()));
    CHECK(part_of(render_xlsx(document), "xl/drawings/drawing1.xml").empty());
    CHECK(read_workbook(render_xlsx(document)).front().row_of("Q. Hargan, custom sawing") == 0);
  }
}

TEST_CASE("A picture is told by what the file holds, and a wide one is no wider than the head has room for") {
  const Folder folder;
  const std::string sign = read_file(std::string(KERFBOOK_ROOT) + "/tests/render/sign.png");
  Document document = paper();
  document.logo = folder / "sign";  // no ending at all
  write_file(document.logo, sign);
  CHECK(render_html(document).find("src=\"data:image/png;base64,iVBOR") != std::string::npos);
  CHECK(!part_of(render_xlsx(document), "xl/drawings/drawing1.xml").empty());
}

TEST_CASE("A paper in a workbook is headed as on the page: the mill at the left, its number at the right") {
  const Sheet sheet = read_workbook(render_xlsx(paper())).front();
  CHECK(sheet.row_of("Q. Hargan, custom sawing") == 0);
  CHECK(sheet.row_of("Bill to") == 3);
  const auto place = [&](const std::string& words) {
    for (const auto& [at, cell] : sheet.cells)
      if (cell.value == words) return at;
    return std::pair{-1, -1};
  };
  CHECK(place("Invoice").first == 0);
  CHECK(place("Invoice").second > 0);
  CHECK(place("H-12").first == 1);
  CHECK(place("H-12").second > place("Invoice").second);
}

TEST_CASE("A table that has no room left on its page begins a sheet of its own, under its own heading") {
  const std::string longer = render_xlsx(with_log_list(80));
  const auto sheets = read_workbook(longer);
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].row_of("Customer, date") > 0);
  CHECK(sheets[1].name == "Logs sawn");
  CHECK(sheets[1].row_of("What") > 0);
  CHECK(repeated_heads(longer) == 2);
}

TEST_CASE(
    "A table longer than a page has its heading on each, and one that misses a page by little is set "
    "smaller") {
  Document document = with_log_list(4);
  document.tables.pop_back();
  document.tables.front().rows.resize(120, document.tables.front().rows.front());
  total_up(document.tables.front());
  const std::string pages = render_xlsx(document);
  REQUIRE(read_workbook(pages).size() == 1);
  CHECK(repeated_heads(pages) == 1);
  CHECK(read_workbook(pages).front().xml.find("fitToHeight=\"0\"") != std::string::npos);
  document.tables.front().rows.resize(28);
  total_up(document.tables.front());
  const std::string page = render_xlsx(document);
  CHECK(repeated_heads(page) == 0);
  CHECK(read_workbook(page).front().xml.find("fitToHeight=\"0\"") == std::string::npos);
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

TEST_CASE(
    "Tables of different shapes share a sheet, each with columns as wide as its own words and figures need") {
  Document document = with_log_list(4);
  Table& upper = document.tables.front();
  upper.rows.resize(2);
  upper.rows[0].cells[0] = std::string("sawing of all the long timbers");
  Table& lower = document.tables.back();
  lower.columns = {upper.columns[1], upper.columns[0], upper.columns[1]};
  for (Column& column : lower.columns) column.total = TotalKind::none;
  lower.columns[1].heading = "Why";
  lower.totals.clear();
  lower.rows = {{{dec(100, 2), std::string("waited, tractor was hay"), dec(200, 2)}, false}};
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  const int head = sheet.row_of("Logs sawn") + 1;
  const auto in_row = [&](int row) {
    std::vector<std::string> values;
    for (const auto& [place, cell] : sheet.cells)
      if (place.first == row && !cell.value.empty()) values.push_back(cell.value);
    return values;
  };
  CHECK(in_row(head) == std::vector<std::string>{"Hours\nh", "Why", "Hours\nh"});
  CHECK(in_row(head + 1) == std::vector<std::string>{"1", "waited, tractor was hay", "2"});
  // The upper table's words lie over the columns that the lower one divides them into, as one cell.
  const int first = sheet.row_of("sawing of all the long timbers");
  REQUIRE(first > 0);
  CHECK(sheet.xml.find("<mergeCell ref=\"A" + std::to_string(first + 1) + ":") != std::string::npos);
}

TEST_CASE("The live sum of a column that lies over several of the sheet adds its own cells") {
  Document document = with_log_list(4);
  document.tables.back().columns[0].heading = "A";  // narrower, so that it divides the columns above
  for (Row& row : document.tables.back().rows) row.cells[0] = std::string("x");
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  std::size_t sums = 0;
  for (const auto& [place, cell] : sheet.cells) {
    if (!cell.formula.starts_with("SUM(")) continue;
    ++sums;
    const std::string column(1, static_cast<char>('A' + place.second));
    CHECK(cell.formula.starts_with("SUM(" + column));
  }
  CHECK(sums >= 2);
}

TEST_CASE("A figure keeps its own decimals in a workbook, as on the page: 1,911 bf beside 0.75 h") {
  Document document = paper();
  document.tables.front().rows[0].cells[1] = dec(1911, 0);
  document.tables.front().rows[1].cells[1] = dec(75, 2);
  total_up(document.tables.front());
  const Sheet sheet = read_workbook(render_xlsx(document)).front();
  std::vector<std::string> formats;
  for (const auto& [place, cell] : sheet.cells)
    if (cell.value == "1911" || cell.value == "0.75") formats.push_back(cell.format);
  CHECK(formats == std::vector<std::string>{"#,##0", "#,##0.00"});
}

TEST_CASE("A fact in the head of a paper makes no column of its tables wider") {
  Document document = paper();
  const Sheet before = read_workbook(render_xlsx(document)).front();
  document.head.front().value = std::string(70, 'w');
  const Sheet after = read_workbook(render_xlsx(document)).front();
  CHECK(columns_of(before) == columns_of(after));
}

}  // namespace kerfbook::render
