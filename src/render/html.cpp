// html.cpp -- a Document as one page that needs nothing else: the figures are poured into the template of
// html_page.h, charts are drawn by chart.cpp.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <kainjow/mustache.hpp>

#include "base/text.h"
#include "render/cell.h"
#include "render/chart.h"
#include "render/grid.h"
#include "render/html_page.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

using kainjow::mustache::data;
using List = kainjow::mustache::list;

constexpr int kFewWords = 22;             ///< characters
constexpr std::size_t kManyColumns = 11;  ///< a table with more is set smaller, to fit a page and a screen

data flag(bool on) {
  return data{on ? data::type::bool_true : data::type::bool_false};
}

/// A list of nothing is false to a template; a text of nothing must be made so.
data maybe(const std::string& text) {
  return text.empty() ? flag(false) : data{text};
}

/// The class of a cell: n for numbers, d for days, w for words too few to be broken over lines, none for more.
std::string class_of(const Column& column, const std::string& shown) {
  if (column.kind == ColumnKind::day) return "d";
  if (stands_right(column)) return "n";
  return screen_width(shown) <= kFewWords && shown.find('\n') == std::string::npos ? "w" : "";
}

data cell_of(const std::string& text, const std::string& kind) {
  data cell;
  cell.set("text", text);
  cell.set("kind", maybe(kind));
  cell.set("across", flag(false));
  return cell;
}

data row_of(List cells, bool struck) {
  data row;
  row.set("cells", data{std::move(cells)});
  row.set("struck", flag(struck));
  return row;
}

data heading_cell(const std::string& heading, const std::string& unit, bool right) {
  data cell;
  cell.set("heading", heading);
  cell.set("unit", maybe(unit));
  cell.set("right", flag(right));
  return cell;
}

/// What a table's body is made of, whether it is drawn in long form or as a grid.
struct Body {
  List columns;
  List rows;
  List foot;
};

Body plain_body(const Table& table, const Style& style) {
  Body body;
  const auto columns = shown_columns(table);
  for (const std::size_t i : columns) {
    const Column& column = table.columns[i];
    body.columns.push_back(heading_cell(heading_of(column), column.unit, stands_right(column)));
  }
  for (const Row& row : table.rows) {
    List cells;
    for (const std::size_t i : columns) {
      const Cell& cell = row.cells[i];
      const Column& column = table.columns[i];
      const std::string text = table.ruled && is_absent(cell) ? "" : shown_cell(cell, column, style);
      cells.push_back(cell_of(text, class_of(column, text)));
    }
    body.rows.push_back(row_of(std::move(cells), row.struck));
  }
  if (table.totals.empty()) return body;
  List cells;
  bool named = false;
  for (const std::size_t i : columns) {
    const bool totalled = table.columns[i].total != TotalKind::none;
    const std::string text = totalled ? shown_cell(table.totals[i], table.columns[i], style)
                             : named  ? ""
                                      : "Total";
    named = named || !totalled;
    cells.push_back(cell_of(text, class_of(table.columns[i], text)));
  }
  body.foot.push_back(row_of(std::move(cells), false));
  return body;
}

std::string blank_or(const Cell& cell, const Column& column, const Style& style) {
  return is_absent(cell) ? "" : shown_cell(cell, column, style);
}

void grid_headings(Body& body, const Table& table, const GridLayout& grid, const Style& style) {
  for (const std::size_t key : grid.key_columns)
    body.columns.push_back(heading_cell(heading_of(table.columns[key]), "", false));
  const Column& across = table.columns[table.grid->column_key];
  for (const Cell& head : grid.heads)
    body.columns.push_back(
        heading_cell(shown_cell(head, across, style), is_absent(head) ? "" : across.unit, true));
  for (const GridFigure& figure : grid.figures) {
    const Column& column = table.columns[figure.column];
    body.columns.push_back(heading_cell(heading_of(column), column.unit, true));
  }
}

/// The foot of a grid: a row a figure, under each length and under its own sums.
void grid_foot(Body& body, const Table& table, const GridLayout& grid, const Style& style) {
  for (std::size_t f = 0; f < grid.figures.size(); ++f) {
    const GridFigure& figure = grid.figures[f];
    const Column& column = table.columns[figure.column];
    List cells;
    cells.push_back(cell_of(heading_of(column) + (column.unit.empty() ? "" : ", " + column.unit), ""));
    for (std::size_t i = 1; i < grid.key_columns.size(); ++i) cells.push_back(cell_of("", ""));
    for (const Cell& sum : figure.head_sums) cells.push_back(cell_of(blank_or(sum, column, style), "n"));
    for (std::size_t i = 0; i < grid.figures.size(); ++i) {
      cells.push_back(cell_of(i == f ? blank_or(figure.total, column, style) : "", "n"));
    }
    body.foot.push_back(row_of(std::move(cells), false));
  }
}

/// Struck lines of a grid stand under it, each in one cell across: they belong under none of its lengths.
void grid_struck(Body& body, const Table& table, const GridLayout& grid, const Style& style) {
  for (const std::size_t at : grid.struck) {
    data across = cell_of(in_one_line(table, table.rows[at], style), "");
    across.set("across", std::to_string(body.columns.size()));
    body.rows.push_back(row_of(List{std::move(across)}, true));
  }
}

Body grid_body(const Table& table, const Style& style) {
  const GridLayout grid = lay_out(table);
  Body body;
  grid_headings(body, table, grid, style);
  for (std::size_t line = 0; line < grid.keys.size(); ++line) {
    List cells;
    for (std::size_t i = 0; i < grid.key_columns.size(); ++i) {
      cells.push_back(cell_of(blank_or(grid.keys[line][i], table.columns[grid.key_columns[i]], style), ""));
    }
    const GridFigure& counted = grid.figures.front();
    for (const Cell& cell : counted.cells[line])
      cells.push_back(cell_of(blank_or(cell, table.columns[counted.column], style), "n"));
    for (const GridFigure& figure : grid.figures) {
      cells.push_back(cell_of(blank_or(figure.line_sums[line], table.columns[figure.column], style), "n"));
    }
    body.rows.push_back(row_of(std::move(cells), false));
  }
  grid_struck(body, table, grid, style);
  grid_foot(body, table, grid, style);
  return body;
}

/// One row of figures is read at a glance when each stands by itself, large.
bool is_one_row_of_figures(const Table& table) {
  return table.rows.size() == 1 && !has_struck(table) && table.totals.empty() && !table.grid &&
         table.sums.empty() && !table.ruled && shown_columns(table).size() >= 3;
}

data figures_of(const Table& table, const Style& style) {
  List cells;
  for (const std::size_t i : shown_columns(table)) {
    const Column& column = table.columns[i];
    const Cell& value = table.rows.front().cells[i];
    data cell;
    cell.set("heading", heading_of(column));
    cell.set("text", shown_cell(value, column, style));
    cell.set("unit", is_absent(value) ? flag(false) : maybe(column.unit));
    cell.set("words", flag(column.kind == ColumnKind::text));
    cells.push_back(std::move(cell));
  }
  data figures;
  figures.set("cells", data{std::move(cells)});
  return figures;
}

data words_of(const std::vector<std::string>& paragraphs) {
  List list;
  for (const auto& words : paragraphs) {
    data one;
    one.set("words", words);
    list.push_back(std::move(one));
  }
  return data{std::move(list)};
}

void set_sums(data& out, const Table& table, const Style& style) {
  List sums;
  for (const SumLine& line : table.sums) {
    Column money;
    money.kind = ColumnKind::money;
    money.places = style.currency.places;
    data one;
    one.set("label", line.label);
    one.set("value", shown_cell(line.value, money, style));
    one.set("strong", flag(line.strong));
    sums.push_back(std::move(one));
  }
  out.set("has_sums", flag(!sums.empty()));
  out.set("sums", data{std::move(sums)});
}

data table_of(const Table& table, const Style& style) {
  const bool empty = table.rows.empty();
  const bool figures = is_one_row_of_figures(table);
  data out;
  out.set("title", maybe(table.title));
  out.set("page", flag(table.new_page));
  out.set("empty", empty ? maybe(table.when_empty) : flag(false));
  out.set("figures", figures ? figures_of(table, style) : flag(false));
  if (empty || figures) {
    out.set("body", flag(false));
  } else {
    Body made = table.grid ? grid_body(table, style) : plain_body(table, style);
    data body;
    const bool many = made.columns.size() > kManyColumns;
    body.set("kind", table.ruled ? data{"ruled"} : many ? data{"many"} : flag(false));
    body.set("columns", data{std::move(made.columns)});
    body.set("rows", data{std::move(made.rows)});
    body.set("has_foot", flag(!made.foot.empty()));
    body.set("foot", data{std::move(made.foot)});
    out.set("body", std::move(body));
  }
  set_sums(out, table, style);
  const std::string chart = chart_svg(table, style);
  out.set("has_chart", flag(!chart.empty()));
  out.set("chart", chart);
  std::vector<std::string> notes = table.notes;
  if (has_struck(table)) notes.insert(notes.begin(), kStruckNote);
  out.set("notes", words_of(notes));
  return out;
}

std::string base64(std::string_view bytes) {
  constexpr std::string_view kSigns = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    std::uint32_t three = 0;
    for (std::size_t k = 0; k < 3; ++k)
      three = three << 8U | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k)
      out += i + k <= bytes.size() ? kSigns[three >> (18 - 6 * k) & 63U] : '=';
  }
  return out;
}

/// The logo inside the page itself, so that the page stays one file. A missing or strange file is left out.
std::string inlined_image(const std::string& file) {
  const std::string suffix = lower(std::filesystem::path(file).extension().string());
  const std::string kind = suffix == ".png" ? "png" : suffix == ".jpg" || suffix == ".jpeg" ? "jpeg" : "";
  std::ifstream stream(file, std::ios::binary);
  if (kind.empty() || !stream) return "";
  const std::string bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  return "data:image/" + kind + ";base64," + base64(bytes);
}

void set_paper(data& page, const Document& document) {
  List parties;
  for (const Party& party : document.parties) {
    data one;
    one.set("heading", maybe(party.heading));
    one.set("lines", join(party.lines, "\n"));
    parties.push_back(std::move(one));
  }
  page.set("has_parties", flag(!parties.empty()));
  page.set("parties", data{std::move(parties)});
  List head;
  for (const HeadFact& fact : document.head) {
    Column column;
    column.kind = fact.kind;
    data one;
    one.set("label", fact.label);
    one.set("value", shown_cell(fact.value, column, document.style));
    head.push_back(std::move(one));
  }
  page.set("has_head", flag(!head.empty()));
  page.set("head", data{std::move(head)});
  List signatures;
  for (const auto& who : document.signatures) {
    data one;
    one.set("who", who);
    signatures.push_back(std::move(one));
  }
  page.set("signatures", data{std::move(signatures)});
  page.set("lead", words_of(document.lead));
  page.set("logo", document.logo.empty() ? flag(false) : maybe(inlined_image(document.logo)));
}

}  // namespace

std::string render_html(const Document& document) {
  data page;
  page.set("title", document.title);
  page.set("subtitle", maybe(document.subtitle));
  page.set("paper", document.style.paper == PaperSize::a4 ? "A4" : "letter");
  page.set("one_page", flag(document.one_page));
  set_paper(page, document);
  List tables;
  for (const Table& table : document.tables) tables.push_back(table_of(table, document.style));
  page.set("tables", data{std::move(tables)});
  std::vector<std::string> foot;
  if (!document.meaning.empty()) foot.push_back(document.meaning);
  foot.insert(foot.end(), document.foot.begin(), document.foot.end());
  page.set("has_foot", flag(!foot.empty()));
  page.set("foot", words_of(foot));
  kainjow::mustache::mustache form{kPage};
  return form.render(page);
}

}  // namespace kerfbook::render
