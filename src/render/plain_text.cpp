// plain_text.cpp -- a document on a screen or in a mail: aligned figures, units under the headings, totals ruled
// off.
#include <algorithm>
#include <string>

#include "base/text.h"
#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"
#include "render/text_bar.h"
#include "render/text_table.h"

namespace kerfbook::render {
namespace {

constexpr int kWidthOfWords = 96;  ///< paragraphs, when the terminal's width is not known
constexpr int kLeastBar = 8;
constexpr int kMostBar = 24;

std::string print(const Cell& cell, const Column& column, const Style& style) {
  return one_line(shown_cell(cell, column, style));
}

TextColumn text_column(const Column& column) {
  return {one_line(heading_of(column)), one_line(column.unit), stands_right(column),
          column.kind == ColumnKind::text};
}

/// The totals as a line: the word Total in the first column that has none.
TextLine total_line(const Table& table, const std::vector<std::size_t>& columns, const Style& style) {
  TextLine line;
  bool labelled = false;
  for (const std::size_t i : columns) {
    if (table.columns[i].total != TotalKind::none) {
      line.cells.push_back(print(table.totals[i], table.columns[i], style));
    } else {
      line.cells.emplace_back(labelled ? "" : "Total");
      labelled = true;
    }
  }
  return line;
}

void add_bars(const Table& table, const Style& style, TextTable& out) {
  if (!table.chart || table.chart->kind == ChartKind::scatter || table.chart->y.empty()) return;
  const int room = style.width == 0 ? kMostBar : style.width - natural_width(out) - 2;
  if (room < kLeastBar) return;
  std::vector<std::optional<double>> values;
  for (const Row& row : table.rows) {
    std::optional<double> value;
    for (const std::size_t y : table.chart->y) {
      const auto part = row.struck ? std::nullopt : drawn(row.cells[y]);
      if (part) value = value.value_or(0) + *part;
      if (table.chart->kind != ChartKind::stacked_bar) break;
    }
    values.push_back(value);
  }
  if (std::none_of(values.begin(), values.end(), [](const auto& value) { return value.has_value(); })) return;
  const auto drawn_bars = bars(values, std::min(room, kMostBar));
  out.columns.push_back({one_line(heading_of(table.columns[table.chart->y.front()])), "", false, false});
  for (std::size_t i = 0; i < out.lines.size(); ++i) out.lines[i].cells.push_back(drawn_bars[i]);
  for (TextLine& foot : out.feet) foot.cells.emplace_back();
}

/// Rows `which` of the table in long form, with a column that says which are struck when any is.
TextTable long_form(const Table& table, const std::vector<std::size_t>& which, const Style& style) {
  TextTable out;
  const auto columns = shown_columns(table);
  for (const std::size_t i : columns) out.columns.push_back(text_column(table.columns[i]));
  bool struck = false;
  for (const std::size_t r : which) {
    TextLine line;
    for (const std::size_t i : columns) {
      const Cell& cell = table.rows[r].cells[i];
      line.cells.push_back(table.ruled && is_absent(cell) ? "" : print(cell, table.columns[i], style));
    }
    line.struck = table.rows[r].struck;
    struck = struck || line.struck;
    out.lines.push_back(std::move(line));
  }
  if (!struck) return out;
  out.columns.push_back({"", "", false, false});
  for (TextLine& line : out.lines) line.cells.emplace_back(line.struck ? "struck" : "");
  return out;
}

std::string plain_table(const Table& table, const Style& style) {
  std::vector<std::size_t> all(table.rows.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
  TextTable out = long_form(table, all, style);
  if (!table.totals.empty()) {
    out.feet.push_back(total_line(table, shown_columns(table), style));
    out.feet.front().cells.resize(out.columns.size());
  }
  if (table.ruled) return draw_boxes(out);
  add_bars(table, style, out);
  return draw(out, style.width, style.colour);
}

/// The foot of a grid for one figure: its sum under every length, and in its own column at the right the
/// total.
TextLine grid_foot(const Table& table, const GridLayout& grid, std::size_t which, const Style& style) {
  const GridFigure& figure = grid.figures[which];
  const Column& column = table.columns[figure.column];
  TextLine line;
  line.cells.resize(grid.key_columns.size());
  line.cells.front() = one_line(heading_of(column) + (column.unit.empty() ? "" : ", " + column.unit));
  for (const Cell& sum : figure.head_sums) line.cells.push_back(print(sum, column, style));
  for (std::size_t i = 0; i < grid.figures.size(); ++i) {
    line.cells.push_back(i == which ? print(figure.total, column, style) : "");
  }
  return line;
}

std::vector<TextColumn> grid_columns(const Table& table, const GridLayout& grid, const Style& style) {
  const Column& head_column = table.columns[table.grid->column_key];
  std::vector<TextColumn> columns;
  for (const std::size_t key : grid.key_columns) {
    columns.push_back(text_column(table.columns[key]));
    columns.back().right = false;
  }
  for (const Cell& head : grid.heads) {
    columns.push_back(
        {print(head, head_column, style), is_absent(head) ? "" : one_line(head_column.unit), true, false});
  }
  for (const GridFigure& figure : grid.figures) columns.push_back(text_column(table.columns[figure.column]));
  return columns;
}

TextLine grid_line(const Table& table, const GridLayout& grid, std::size_t which, const Style& style) {
  TextLine line;
  for (std::size_t k = 0; k < grid.key_columns.size(); ++k) {
    line.cells.push_back(print(grid.keys[which][k], table.columns[grid.key_columns[k]], style));
  }
  const GridFigure& counted = grid.figures.front();
  for (const Cell& cell : counted.cells[which]) {
    line.cells.push_back(is_absent(cell) ? "" : print(cell, table.columns[counted.column], style));
  }
  for (const GridFigure& figure : grid.figures) {
    line.cells.push_back(print(figure.line_sums[which], table.columns[figure.column], style));
  }
  return line;
}

std::string grid_table(const Table& table, const Style& style) {
  const GridLayout grid = lay_out(table);
  TextTable out;
  out.columns = grid_columns(table, grid, style);
  for (std::size_t i = 0; i < grid.keys.size(); ++i) out.lines.push_back(grid_line(table, grid, i, style));
  for (std::size_t i = 0; i < grid.figures.size(); ++i) out.feet.push_back(grid_foot(table, grid, i, style));
  std::string text = grid.keys.empty() ? "" : draw(out, style.width, style.colour);
  if (!grid.struck.empty())
    text += "\n" + draw(long_form(table, grid.struck, style), style.width, style.colour);
  return text;
}

/// Labels and values, the labels padded alike and the values ending under one another.
struct Fact {
  std::string label;
  std::string value;
  bool strong = false;
};
std::string facts(const std::vector<Fact>& list, const Style& style, bool values_right) {
  int labels = 0;
  int values = 0;
  for (const Fact& fact : list) {
    labels = std::max(labels, screen_width(fact.label));
    values = std::max(values, screen_width(fact.value));
  }
  std::string out;
  for (const Fact& fact : list) {
    const std::string value = values_right ? pad_left(fact.value, values) : fact.value;
    out += bold(pad_right(fact.label, labels) + "  " + value, style.colour && fact.strong) + "\n";
  }
  return out;
}

/// The sums end where the table above them does, under its amounts.
std::string show_sums(const Table& table, const Style& style, const std::string& above) {
  Column money;
  money.kind = ColumnKind::money;
  std::vector<Fact> list;
  for (const SumLine& sum : table.sums) {
    list.push_back({one_line(sum.label), print(sum.value, money, style), sum.strong});
  }
  if (list.empty()) return "";
  int end = 0;
  for (const std::string_view line : split_lines(above)) end = std::max(end, screen_width(line));
  int wide = 0;
  int values = 0;
  for (const Fact& fact : list) {
    values = std::max(values, screen_width(fact.value));
    wide = std::max(wide, screen_width(fact.label));
  }
  for (Fact& fact : list) fact.label = pad_left(fact.label, std::max(wide, end - values - 2));
  return "\n" + facts(list, style, true);
}

/// What stands above the tables of a paper that leaves the house: who it is from and to, its number and days.
std::string show_paper_head(const Document& document, int words) {
  std::string out;
  for (const Party& party : document.parties) {
    out += "\n";
    if (!party.heading.empty()) out += bold(one_line(party.heading), document.style.colour) + "\n";
    for (const std::string& line : party.lines) out += one_line(line) + "\n";
  }
  std::vector<Fact> list;
  for (const HeadFact& fact : document.head) {
    Column column;
    column.kind = fact.kind;
    const std::string value = print(fact.value, column, document.style);
    list.push_back({one_line(fact.label), value.empty() ? "____________________" : value});
  }
  if (!list.empty()) out += "\n" + facts(list, document.style, false);
  for (const std::string& paragraph : document.lead) out += "\n" + wrapped(one_line(paragraph), words);
  return out;
}

std::string show_table(const Table& table, const Style& style, int words) {
  std::string out;
  if (!table.title.empty()) out += bold(one_line(table.title), style.colour) + "\n";
  if (table.rows.empty()) {
    if (!table.when_empty.empty()) out += one_line(table.when_empty) + "\n";
  } else {
    out += table.grid ? grid_table(table, style) : plain_table(table, style);
    if (has_struck(table)) out += wrapped(kStruckNote, words);
  }
  out += show_sums(table, style, out);
  for (const std::string& note : table.notes) out += wrapped(one_line(note), words, 2);
  return out;
}

}  // namespace

std::string render_text(const Document& document) {
  const Style& style = document.style;
  const int words = style.width > 0 ? std::min(style.width, kWidthOfWords) : kWidthOfWords;
  std::string out;
  if (!document.title.empty()) out += bold(one_line(document.title), style.colour) + "\n";
  if (!document.subtitle.empty()) out += wrapped(one_line(document.subtitle), words);
  out += show_paper_head(document, words);
  for (const Table& table : document.tables)
    out += (out.empty() ? "" : "\n") + show_table(table, style, words);
  if (!document.meaning.empty() || !document.foot.empty()) out += "\n";
  if (!document.meaning.empty()) out += wrapped(one_line(document.meaning), words);
  for (const std::string& foot : document.foot) out += wrapped(one_line(foot), words);
  for (const std::string& who : document.signatures) {
    out += "\n\n" + one_line(who) + " ______________________________   Date ____________\n";
  }
  return out;
}

}  // namespace kerfbook::render
