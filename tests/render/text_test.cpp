#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <nlohmann/json.hpp>
#include <string>

#include "base/text.h"
#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"
#include "render/samples.h"
#include "render/text_bar.h"
#include "render/text_table.h"

namespace kerfbook::render {
namespace {

Column money_column() {
  Column column;
  column.kind = ColumnKind::money;
  column.places = 2;
  return column;
}

}  // namespace

TEST_CASE("A cell is shown grouped, with its sign, its date order, and a dash when there is nothing") {
  Style style;
  const Column plain_column;
  CHECK(shown_cell(Cell(), plain_column, style) == "-");
  CHECK(shown_cell(std::int64_t{1234567}, plain_column, style) == "1,234,567");
  CHECK(shown_cell(dec(156067, 2), plain_column, style) == "1,560.67");
  CHECK(shown_cell(dec(-500, 2), money_column(), style) == "-$5.00");
  CHECK(shown_cell(make_day(2026, 5, 4), plain_column, style) == "2026-05-04");
  style.dates = DateOrder::month_day_year;
  CHECK(shown_cell(make_day(2026, 5, 4), plain_column, style) == "05/04/2026");
  style.dates = DateOrder::day_month_year;
  CHECK(shown_cell(make_day(2026, 5, 4), plain_column, style) == "04.05.2026");
  style.currency = {"kr", true, 2, ',', '.'};
  CHECK(shown_cell(dec(-123450, 2), money_column(), style) == "-1.234,50 kr");
}

TEST_CASE("An overrun carries its sign both ways, and none when it is nothing") {
  Column overrun;
  overrun.ratio = Column::Ratio{0, 1, 1, true};
  CHECK(shown_cell(dec(216, 1), overrun, {}) == "+21.6");
  CHECK(shown_cell(dec(-18, 1), overrun, {}) == "-1.8");
  CHECK(shown_cell(dec(0, 1), overrun, {}) == "0.0");
}

TEST_CASE("No line of text is wider than the terminal, from 60 columns up, and no figure is cut") {
  for (int width = 60; width <= 200; width += 7) {
    Document document = production_week();
    document.style.width = width;
    const std::string text = render_text(document);
    for (const auto line : split_lines(text)) CHECK(screen_width(line) <= width);
    for (const char* figure : {"1,560.67", "6,486.75", "+21.6", "6,300", "26.75"}) {
      CHECK(text.find(figure) != std::string::npos);
    }
  }
}

TEST_CASE(
    "A table of 24 columns fits 80 and 100 columns: every figure whole, every line known in each part") {
  for (const int width : {80, 100}) {
    Document document = production_week();
    Table& table = document.tables.front();
    const std::size_t words = 1;
    for (Row& row : table.rows)
      row.cells[words] = std::string(row.cells[2] == table.rows[0].cells[2] ? "TER" : "own");
    table.rows[1].cells[0] =
        table.rows[0].cells[0];  // two lines of one day: the day alone does not tell them apart
    table.chart.reset();
    table.totals.clear();
    while (table.columns.size() < 24) {
      table.columns.push_back(table.columns[4]);
      for (Row& row : table.rows) row.cells.push_back(row.cells[4]);
    }
    document.style.width = width;
    const std::string text = render_text(document);
    std::size_t figures = 0;
    std::size_t heads = 0;
    std::size_t parts = 0;
    for (const auto line : split_lines(text)) {
      CHECK(screen_width(line) <= width);
      if (line.starts_with("----")) ++parts;
      if (line.starts_with("2026-05-04  TER")) ++heads;
      for (std::size_t at = line.find("1,560.67"); at != line.npos; at = line.find("1,560.67", at + 1))
        ++figures;
    }
    CAPTURE(text);
    CHECK(parts >= 3);
    CHECK(heads == parts);
    CHECK(figures == 1 + 24 - production_week().tables.front().columns.size());
    CHECK(text.find("…") == std::string::npos);
  }
}

TEST_CASE("Words are shortened only where that saves a part of the table") {
  TextTable table;
  table.columns = {{"Day", "", false, false}, {"Site", "", false, true}, {"bf", "", true, false}};
  table.lines = {{{"2026-05-04", "Tervane farm by the ford", "1,560.67"}, false}};
  CHECK(draw(table, 46, false).find("Tervane farm by the ford") != std::string::npos);
  const std::string one_part = draw(table, 40, false);
  CHECK(one_part.find("Tervane farm by t…") != std::string::npos);
  CHECK(split_lines(one_part).size() == split_lines(draw(table, 46, false)).size());
  table.columns.push_back({"Rule", "", true, false});
  table.lines.front().cells.push_back("international-quarter");
  const std::string two_parts = draw(table, 46, false);  // shortening the site could not save the second part
  CHECK(two_parts.find("Tervane farm by the ford") != std::string::npos);
  CHECK(two_parts.find("international-quarter") != std::string::npos);
}

TEST_CASE("Nothing a user typed can move the terminal's cursor or colour it") {
  Document document = every_cell();
  std::get<std::string>(document.tables.front().rows.front().cells.front()) = "\033[31mred\a\r\n";
  document.title = "\033]0;title\a";
  CHECK(render_text(document).find_first_of("\033\a\r") == std::string::npos);
}

TEST_CASE("Colour adds bold and struck-through and changes no letter") {
  Document document = tally_week();
  const std::string plain_text = render_text(document);
  document.style.colour = true;
  std::string coloured = render_text(document);
  CHECK(coloured.find("\033[9m") != std::string::npos);
  for (const std::string mark : {"\033[1m", "\033[9m", "\033[0m"}) {
    for (std::size_t at = coloured.find(mark); at != std::string::npos; at = coloured.find(mark))
      coloured.erase(at, mark.size());
  }
  CHECK(coloured == plain_text);
}

TEST_CASE("A grid foots both ways, and its struck lines are in no sum") {
  const Table table = tally_week().tables.front();
  const GridLayout grid = lay_out(table);
  REQUIRE(grid.figures.size() == 2);
  for (const GridFigure& figure : grid.figures) {
    Cell across;
    Cell down;
    for (const Cell& sum : figure.line_sums) across = added(across, sum);
    for (const Cell& sum : figure.head_sums) down = added(down, sum);
    CHECK(across == figure.total);
    CHECK(down == figure.total);
    CHECK(figure.total == table.totals[figure.column]);
  }
  CHECK(grid.struck == std::vector<std::size_t>{2});
  CHECK(grid.heads == std::vector<Cell>{std::int64_t{12}, std::int64_t{14}, std::int64_t{16}});
}

TEST_CASE("The lengths of a grid stand in order, 8 before 10 before 16.5, and lines without a length last") {
  Table table = tally_week().tables.front();
  table.rows[0].cells[2] = Cell();
  table.rows[1].cells[2] = dec(165, 1);
  table.rows[3].cells[2] = std::int64_t{8};
  const GridLayout grid = lay_out(table);
  REQUIRE(grid.heads.size() == 6);
  CHECK(grid.heads.front() == Cell(std::int64_t{8}));
  CHECK(grid.heads[4] == dec(165, 1));
  CHECK(is_absent(grid.heads.back()));
}

TEST_CASE("Adding cells is exact and keeps the finer places") {
  CHECK(added(dec(25, 1), dec(125, 2)) == dec(375, 2));
  CHECK(added(std::int64_t{2}, dec(5, 1)) == dec(25, 1));
  CHECK(added(Cell(), std::int64_t{2}) == Cell(std::int64_t{2}));
  CHECK(is_absent(added(Cell(), Cell())));
  CHECK_THROWS_AS(added(std::string("a"), std::int64_t{1}), std::invalid_argument);
  CHECK_THROWS_AS(added(std::int64_t{INT64_MAX}, std::int64_t{1}), std::overflow_error);
}

TEST_CASE("Bars are to one scale, and run left from an axis below nothing") {
  CHECK(bars({8.0, 4.0, 0.5, std::nullopt}, 8) == std::vector<std::string>{"████████", "████", "▌", ""});
  CHECK(bars({-1.0, 1.0}, 5) == std::vector<std::string>{"██│", "  │██"});
  CHECK(bars({0.0, 0.0}, 5) == std::vector<std::string>{"", ""});
}

TEST_CASE(
    "Text that a spreadsheet would work out as a formula is kept text in csv by an apostrophe; figures are "
    "bare") {
  Document document = production_week();
  document.tables.front().rows.resize(1);
  document.tables.front().rows[0].cells[1] = std::string("=1+2");
  CHECK(render_csv(document).find(",'=1+2,") != std::string::npos);
  CHECK(render_csv(document).find(",-1.844864,") != std::string::npos);  // an overrun below nothing
}

TEST_CASE("A csv field read back by RFC 4180 is the text that was written, but for that apostrophe") {
  CHECK(rc::check("quotes, commas and line ends survive", [](const std::string& typed) {
    const std::string words = fit_to_print(typed);  // what is not, is never written
    Document document;
    Table table;
    table.columns.resize(1);
    table.columns.front().name = "words";
    table.rows.push_back({{words}, false});
    document.tables.push_back(table);
    std::string body = render_csv(document).substr(7);
    body.erase(body.size() - 2);
    if (body.front() == '"') {
      body = body.substr(1, body.size() - 2);
      for (std::size_t at = body.find("\"\""); at != std::string::npos; at = body.find("\"\"", at + 1))
        body.erase(at, 1);
    }
    const bool formula =
        words.size() > 1 && std::string_view("=+-@\t\r").find(words.front()) != std::string_view::npos;
    RC_ASSERT(body == (formula ? "'" + words : words));
  }));
}

TEST_CASE("json is well formed whatever was typed, and numbers keep every digit") {
  const auto read = nlohmann::json::parse(render_json(every_cell()));
  CHECK(read["rows"][0]["words"] == "plain");
  CHECK(read["rows"][2]["words"] == "two\nlines");
  CHECK(read["rows"][10]["count"].is_null());
  CHECK(read["rows"][11]["struck"] == true);
  CHECK_FALSE(read["rows"][0].contains("struck"));
  CHECK(render_json(production_week()).find("\"lumber_bf\": 6486.75") != std::string::npos);
  Document broken = no_rows();
  broken.title = "not \xFF UTF-8";
  CHECK(nlohmann::json::accept(render_json(broken)));
}

TEST_CASE("json of one table has the promised keys in order; of several, each table as well") {
  const auto one = nlohmann::ordered_json::parse(render_json(production_week()));
  std::vector<std::string> keys;
  for (const auto& item : one.items()) keys.push_back(item.key());
  CHECK(keys == std::vector<std::string>{"report", "title", "columns", "rows", "totals", "notes", "foot"});
  CHECK(one["columns"][3] == nlohmann::ordered_json({{"name", "net_scale_bf"}, {"unit", "bf"}}));
  CHECK_FALSE(one["rows"][0].contains("log_ft3"));
  const auto two = nlohmann::json::parse(render_json(tally_week()));
  REQUIRE(two["tables"].size() == 2);
  CHECK(two["tables"][0]["rows"] == two["rows"]);
  CHECK(two["tables"][1]["name"] == "charges");
}

}  // namespace kerfbook::render
