// html.cpp -- a Document as one page that needs nothing else: the figures are poured into the template of
// html_page.h, charts are drawn by chart.cpp.
#include <algorithm>
#include <kainjow/mustache.hpp>

#include "base/text.h"
#include "render/cell.h"
#include "render/chart.h"
#include "render/grid.h"
#include "render/html_page.h"
#include "render/html_text.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

using kainjow::mustache::data;
using List = kainjow::mustache::list;

constexpr int kFewWords = 22;             ///< characters
constexpr int kLongWord = 28;             ///< a word with more is broken where the line ends
constexpr std::size_t kKeptWhole = 18;    ///< a table of so many lines is not broken over pages
constexpr std::size_t kManyColumns = 11;  ///< a table with more is set smaller, to fit a page and a screen

data flag(bool on) {
  return data{on ? data::type::bool_true : data::type::bool_false};
}

/// A list of nothing is false to a template; a text of nothing must be made so.
data maybe(const std::string& text) {
  return text.empty() ? flag(false) : data{text};
}

bool has_long_word(const std::string& text) {
  const auto words = split_words(text);
  return std::any_of(words.begin(), words.end(),
                     [](const std::string& word) { return screen_width(word) > kLongWord; });
}

/// The class of a cell: n for numbers, d for days, w for words too few to be broken over lines, x for words so long
/// that they must be broken themselves, none for others.
std::string class_of(const Column& column, const std::string& shown) {
  if (column.kind == ColumnKind::day) return "d";
  if (stands_right(column)) return "n";
  if (has_long_word(shown)) return "x";
  return screen_width(shown) <= kFewWords && shown.find('\n') == std::string::npos ? "w" : "";
}

data cell_of(const std::string& text, const std::string& kind) {
  data cell;
  cell.set("text", text);
  cell.set("kind", maybe(kind));
  cell.set("said", flag(false));
  cell.set("across", flag(false));
  return cell;
}

data row_of(const List& cells, bool struck) {
  data row;
  row.set("cells", data{cells});
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

/// The column that says what a priced line is: the one with the longest words.
std::size_t main_column(const Table& table) {
  std::size_t main = table.columns.size();
  int longest = -1;
  for (const std::size_t i : shown_columns(table)) {
    if (table.columns[i].kind != ColumnKind::text) continue;
    for (const Row& row : table.rows) {
      const int width = screen_width(plain_cell(row.cells[i]));
      if (width > longest) {
        longest = width;
        main = i;
      }
    }
  }
  return main;
}

Body plain_body(const Table& table, const Style& style) {
  Body body;
  const auto columns = shown_columns(table);
  const std::size_t main = table.sums.empty() ? table.columns.size() : main_column(table);
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
      const std::string kind = class_of(column, text);
      cells.push_back(cell_of(text, i != main ? kind : kind.empty() ? "main" : kind + " main"));
      // On a phone priced lines have no headings above them: a figure then says what it is, but for the last.
      const bool says =
          !table.sums.empty() && stands_right(column) && i != columns.back() && !is_absent(cell);
      if (says) cells.back().set("said", heading_of(column));
    }
    body.rows.push_back(row_of(cells, row.struck));
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
  body.foot.push_back(row_of(cells, false));
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
    body.foot.push_back(row_of(cells, false));
  }
}

/// Struck lines of a grid stand under it, each in one cell across: they belong under none of its lengths.
void grid_struck(Body& body, const Table& table, const GridLayout& grid, const Style& style) {
  for (const std::size_t at : grid.struck) {
    const std::string words = in_one_line(table, table.rows[at], style);
    data across = cell_of(words, has_long_word(words) ? "x" : "");
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
      const std::string key = blank_or(grid.keys[line][i], table.columns[grid.key_columns[i]], style);
      cells.push_back(cell_of(key, has_long_word(key) ? "x" : ""));
    }
    const GridFigure& counted = grid.figures.front();
    for (const Cell& cell : counted.cells[line])
      cells.push_back(cell_of(blank_or(cell, table.columns[counted.column], style), "n"));
    for (const GridFigure& figure : grid.figures) {
      cells.push_back(cell_of(blank_or(figure.line_sums[line], table.columns[figure.column], style), "n"));
    }
    body.rows.push_back(row_of(cells, false));
  }
  grid_struck(body, table, grid, style);
  grid_foot(body, table, grid, style);
  return body;
}

/// One row of figures is read at a glance when each stands by itself, large; on a paper it is a line to be checked.
bool is_one_row_of_figures(const Table& table, bool on_paper) {
  return !on_paper && table.rows.size() == 1 && !has_struck(table) && table.totals.empty() && !table.grid &&
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
  figures.set("cells", data{cells});
  return figures;
}

/// A column of sentences and nothing else is read as paragraphs under its heading.
bool is_sentences(const Table& table) {
  const auto columns = shown_columns(table);
  return columns.size() == 1 && table.columns[columns.front()].kind == ColumnKind::text && !table.ruled &&
         table.totals.empty() && !table.rows.empty() && !has_struck(table);
}

data words_of(const std::vector<std::string>& paragraphs) {
  List list;
  for (const auto& words : paragraphs) {
    data one;
    one.set("words", words);
    list.push_back(std::move(one));
  }
  return data{list};
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
  out.set("sums", data{sums});
}

/// Columns to be filled in are as wide as their hints say, whatever stands in them.
List column_widths(const Table& table) {
  constexpr int kUsual = 9;
  const auto weight = [&](std::size_t i) {
    return table.columns[i].width_hint > 0 ? table.columns[i].width_hint : kUsual;
  };
  int all = 0;
  for (const std::size_t i : shown_columns(table)) all += weight(i);
  List widths;
  for (const std::size_t i : shown_columns(table)) {
    data one;
    one.set("percent", std::to_string(weight(i) * 100 / all));
    widths.push_back(std::move(one));
  }
  return widths;
}

data lines_of(const Table& table) {
  std::vector<std::string> sentences;
  const std::size_t column = shown_columns(table).front();
  for (const Row& row : table.rows) sentences.push_back(plain_cell(row.cells[column]));
  data lines;
  lines.set("heading", heading_of(table.columns[column]));
  lines.set("rows", words_of(sentences));
  return lines;
}

/// How a table meets the ends of pages: begun on a new one, kept whole, or both.
std::string page_class(const Table& table, std::size_t lines) {
  const std::string page = table.new_page ? "page" : "";
  const std::string keep = lines <= kKeptWhole ? "keep" : "";
  return page + (page.empty() || keep.empty() ? "" : " ") + keep;
}

data table_of(const Table& table, const Style& style, bool on_paper) {
  const bool empty = table.rows.empty();
  const bool sentences = on_paper && is_sentences(table);
  const bool figures = is_one_row_of_figures(table, on_paper);
  std::size_t drawn_lines = table.rows.size();
  data out;
  out.set("title", maybe(table.title));
  out.set("lines", sentences ? lines_of(table) : flag(false));
  out.set("empty", empty ? maybe(table.when_empty) : flag(false));
  out.set("figures", figures ? figures_of(table, style) : flag(false));
  if (empty || figures || sentences) {
    out.set("body", flag(false));
  } else {
    Body made = table.grid ? grid_body(table, style) : plain_body(table, style);
    drawn_lines = made.rows.size();
    List widths = table.ruled ? column_widths(table) : List{};
    data body;
    const bool many = made.columns.size() > kManyColumns;
    body.set("kind", table.ruled ? data{"ruled"} : many ? data{"many"} : flag(false));
    body.set("has_widths", flag(!widths.empty()));
    body.set("widths", data{widths});
    body.set("columns", data{made.columns});
    body.set("rows", data{made.rows});
    body.set("has_foot", flag(!made.foot.empty()));
    body.set("foot", data{made.foot});
    out.set("body", body);
  }
  out.set("how", maybe(page_class(table, drawn_lines)));
  set_sums(out, table, style);
  const std::string chart = table.log_end ? log_end_svg(*table.log_end) : chart_svg(table, style);
  out.set("has_chart", flag(!chart.empty()));
  out.set("chart", chart);
  std::vector<std::string> notes = table.notes;
  if (has_struck(table)) notes.insert(notes.begin(), kStruckNote);
  out.set("notes", words_of(notes));
  return out;
}

/// Whoever sends the paper has no heading; the name stands out.
data party_of(const Party& party) {
  const bool sender = party.heading.empty() && !party.lines.empty();
  const auto rest = party.lines.begin() + (sender ? 1 : 0);
  data one;
  one.set("heading", maybe(party.heading));
  one.set("first", sender ? maybe(party.lines.front()) : flag(false));
  one.set("lines", join({rest, party.lines.end()}, "\n"));
  return one;
}

void set_paper(data& page, const Document& document) {
  List parties;
  for (const Party& party : document.parties) parties.push_back(party_of(party));
  page.set("has_parties", flag(!parties.empty()));
  page.set("parties", data{parties});
  List head;
  for (const HeadFact& fact : document.head) {
    Column column;
    column.kind = fact.kind;
    data one;
    one.set("label", fact.label);
    const std::string value = shown_cell(fact.value, column, document.style);
    one.set("value", value);
    one.set("fill", flag(value.empty()));
    head.push_back(std::move(one));
  }
  page.set("has_head", flag(!head.empty()));
  page.set("head", data{head});
  List signatures;
  for (const auto& who : document.signatures) {
    data one;
    one.set("who", who);
    signatures.push_back(std::move(one));
  }
  page.set("signatures", data{signatures});
  page.set("lead", words_of(document.lead));
  page.set("logo", document.logo.empty() ? flag(false) : maybe(inlined_image(document.logo)));
}

/// What stands at the foot of every printed page, so that a sheet gone astray is known again.
std::string running_foot(const Document& document) {
  constexpr int kMost = 48;
  const bool sent = !document.parties.empty() && !document.parties.front().lines.empty();
  return clip(document.title + (sent ? ", " + document.parties.front().lines.front() : std::string()), kMost);
}

/// Rows to be filled in by hand are as high as one page allows, and never too low for a pencil.
std::string row_height(const Document& document) {
  constexpr std::size_t kForRows = 430;  // points of a page that are left to them
  std::size_t rows = 0;
  for (const Table& table : document.tables)
    if (table.ruled) rows += table.rows.size() + 1;
  return std::to_string(std::clamp<std::size_t>(kForRows / std::max<std::size_t>(rows, 1), 15, 24)) + "pt";
}

}  // namespace

std::string render_html(const Document& document) {
  const bool on_paper = !document.parties.empty();
  data page;
  page.set("title", document.title);
  page.set("subtitle", maybe(document.subtitle));
  page.set("paper", document.style.paper == PaperSize::a4 ? "A4" : "letter");
  page.set("one_page", flag(document.one_page));
  page.set("running", style_words(running_foot(document)));
  page.set("row", row_height(document));
  set_paper(page, document);
  List tables;
  for (const Table& table : document.tables) tables.push_back(table_of(table, document.style, on_paper));
  page.set("tables", data{tables});
  std::vector<std::string> foot;
  if (!document.meaning.empty()) foot.push_back(document.meaning);
  foot.insert(foot.end(), document.foot.begin(), document.foot.end());
  page.set("has_foot", flag(!foot.empty()));
  page.set("foot", words_of(foot));
  kainjow::mustache::mustache form{kPage};
  form.set_custom_escape(escaped);
  return form.render(page);
}

}  // namespace kerfbook::render
