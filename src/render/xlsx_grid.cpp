// xlsx_grid.cpp -- a tally on a worksheet as the trade writes it: sizes down, lengths across, pieces in the cells,
// footed both ways with live sums.
#include <algorithm>

#include "base/text.h"
#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"
#include "render/xlsx_book.h"

namespace kerfbook::render {
namespace {

/// "12 ft": a length as the head of its column; lumber without lengths stands under a dash.
std::string head_words(const Cell& head, const Column& column, const Style& style) {
  if (is_absent(head)) return "-";
  return shown_cell(head, column, style) + (column.unit.empty() ? "" : "\n" + column.unit);
}

struct Ruler {
  std::vector<SheetRow> lines;  ///< rows of the grid's lines
  SheetColumn first_head = 0;
  SheetColumn first_sum = 0;  ///< after the lengths: one column a figure
};

void write_headings(Cursor& cursor, const Table& table, const GridLayout& grid) {
  cursor.set_height(2);
  const Style& style = cursor.book().document().style;
  SheetColumn at = 0;
  for (const std::size_t key : grid.key_columns) {
    cursor.put_text(at, heading_of(table.columns[key]), {.wrap = true, .head = true});
    cursor.widen(at++, screen_width(heading_of(table.columns[key])) + 2);
  }
  for (const Cell& head : grid.heads) {
    cursor.put_text(at, head_words(head, table.columns[table.grid->column_key], style),
                    {.right = true, .wrap = true, .head = true});
    cursor.widen(at++, 7);
  }
  for (const GridFigure& figure : grid.figures) {
    const Column& column = table.columns[figure.column];
    cursor.put_text(at, heading_of(column) + (column.unit.empty() ? "" : "\n" + column.unit),
                    {.right = true, .wrap = true, .head = true});
    cursor.widen(at++, 10);
  }
  ++cursor.row;
}

Look figure_look(const Table& table, const GridFigure& figure, const Style& style) {
  return {.number = number_format(table.columns[figure.column], style), .right = true};
}

/// A line: what heads it, the pieces of each length, their live sum, and the other figures of the line.
void write_line(Cursor& cursor, const Table& table, const GridLayout& grid, std::size_t line,
                const Ruler& ruler) {
  const Style& style = cursor.book().document().style;
  for (std::size_t i = 0; i < grid.key_columns.size(); ++i) {
    cursor.put(static_cast<SheetColumn>(i), grid.keys[line][i], {});
  }
  const GridFigure& pieces = grid.figures.front();
  const Look look = figure_look(table, pieces, style);
  for (std::size_t i = 0; i < grid.heads.size(); ++i) {
    cursor.put(static_cast<SheetColumn>(ruler.first_head + i), pieces.cells[line][i], look);
  }
  if (is_number(pieces.line_sums[line])) {
    const auto last = static_cast<SheetColumn>(ruler.first_sum - 1);
    cursor.put_formula(ruler.first_sum,
                       "SUM(" + cell_name(cursor.row, cursor.at(ruler.first_head)) + ":" +
                           cell_name(cursor.row, cursor.at(last)) + ")",
                       pieces.line_sums[line], look);
  }
  for (std::size_t i = 1; i < grid.figures.size(); ++i) {
    cursor.put(static_cast<SheetColumn>(ruler.first_sum + i), grid.figures[i].line_sums[line],
               figure_look(table, grid.figures[i], style));
  }
}

/// The foot: a row a figure. Pieces are summed down their columns; a figure known only by line and by length (bf) has
/// its lengths' figures written and their sum live, and the column of the lines' figures summed too.
void write_foot(Cursor& cursor, const Table& table, const GridLayout& grid, const Ruler& ruler) {
  const Style& style = cursor.book().document().style;
  for (std::size_t f = 0; f < grid.figures.size(); ++f) {
    const GridFigure& figure = grid.figures[f];
    const Column& column = table.columns[figure.column];
    Look look = figure_look(table, figure, style);
    look.bold = true;
    look.ruled_above = f == 0;
    cursor.put_text(0, heading_of(column) + (column.unit.empty() ? "" : ", " + column.unit),
                    {.bold = true, .ruled_above = f == 0});
    const auto sum_at = static_cast<SheetColumn>(ruler.first_sum + f);
    const auto end = static_cast<SheetColumn>(ruler.first_sum + grid.figures.size());
    for (SheetColumn i = 1; i < end; ++i) {
      const bool blank = i < ruler.first_head || (i >= ruler.first_sum && i != sum_at);
      if (blank || (i == sum_at && !is_number(figure.total))) cursor.put(i, Cell{}, look);
    }
    for (std::size_t i = 0; i < grid.heads.size(); ++i) {
      const auto at = static_cast<SheetColumn>(ruler.first_head + i);
      if (f == 0 && is_number(figure.head_sums[i])) {
        cursor.put_formula(at, sum_of_rows(ruler.lines, cursor.at(at)), figure.head_sums[i], look);
      } else {
        cursor.put(at, figure.head_sums[i], look);
      }
    }
    if (is_number(figure.total))
      cursor.put_formula(sum_at, sum_of_rows(ruler.lines, cursor.at(sum_at)), figure.total, look);
    ++cursor.row;
  }
}

/// Struck rows stand below, struck through, out of every sum.
void write_struck(Cursor& cursor, const Table& table, const GridLayout& grid) {
  if (grid.struck.empty()) return;
  const Style& style = cursor.book().document().style;
  ++cursor.row;
  for (const std::size_t at : grid.struck) {
    cursor.put_free(0, in_one_line(table, table.rows[at], style), {.struck = true});
    ++cursor.row;
  }
}

}  // namespace

SheetRow write_grid(Cursor& cursor, const Table& table) {
  const GridLayout grid = lay_out(table);
  const SheetRow head = cursor.row;
  if (grid.keys.empty()) {
    cursor.put_text(0, table.when_empty, {.quiet = true});
    ++cursor.row;
  } else {
    Ruler ruler;
    ruler.first_head = static_cast<SheetColumn>(grid.key_columns.size());
    ruler.first_sum = static_cast<SheetColumn>(ruler.first_head + grid.heads.size());
    write_headings(cursor, table, grid);
    for (std::size_t line = 0; line < grid.keys.size(); ++line) {
      write_line(cursor, table, grid, line, ruler);
      ruler.lines.push_back(cursor.row++);
    }
    write_foot(cursor, table, grid, ruler);
  }
  write_struck(cursor, table, grid);
  return head;
}

}  // namespace kerfbook::render
