#include "render/footing.h"

#include <algorithm>
#include <string>

#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

Cell as_printed(const Cell& cell) {
  const auto* figure = std::get_if<Figure>(&cell);
  return figure == nullptr || figure->is_time() ? cell : Cell(Figure(figure->shown()));
}

/// What the lines of a column add to as they are printed.
Cell printed_sum(const std::vector<Cell>& lines) {
  Cell sum;
  for (const Cell& line : lines) sum = added(sum, as_printed(line));
  return sum;
}

/// A footed column whose printed lines add to something else than its printed total.
struct Missed {
  const Column* column;
  Cell total;
  Cell lines;    ///< absent: they add to the total
  Cell lengths;  ///< of a grid: its figures by length; absent as above
};

/// What the printed figures add to, when that is not the printed total.
Cell other_sum(const std::vector<Cell>& figures, const Cell& total) {
  const Cell sum = printed_sum(figures);
  const bool same = !is_number(sum) || as_figure(sum).exact() == as_figure(as_printed(total)).exact();
  return same ? Cell() : sum;
}

/// The lines of a column that is footed with their sum; none for another column. The parts of one whole are footed too:
/// their total is worked out otherwise and is yet their sum.
std::vector<Cell> footed_lines(const Table& table, std::size_t column) {
  const Column& one = table.columns[column];
  if (one.hidden || !is_number(table.totals[column])) return {};
  if (one.total == TotalKind::none || (one.ratio && one.ratio->percent_over)) return {};
  if (one.ratio && !is_part_of_whole(table, one))
    return {};  // such ratios are not added: no total is their sum
  std::vector<Cell> lines;
  Cell sum;
  for (const Row& row : table.rows) {
    if (row.struck) continue;
    lines.push_back(row.cells[column]);
    if (one.ratio) sum = added(sum, row.cells[column]);
  }
  if (!one.ratio) return lines;
  const bool adds = is_number(sum) && as_figure(sum).exact() == as_figure(table.totals[column]).exact();
  return adds ? lines : std::vector<Cell>{};
}

std::vector<Missed> missed_in_rows(const Table& table) {
  std::vector<Missed> missed;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (std::holds_alternative<std::int64_t>(table.totals[i]) && !table.columns[i].ratio &&
        table.columns[i].kind == ColumnKind::count)
      continue;  // whole numbers add
    const Cell other = other_sum(footed_lines(table, i), table.totals[i]);
    if (!is_absent(other)) missed.push_back({&table.columns[i], as_printed(table.totals[i]), other, {}});
  }
  return missed;
}

std::vector<Missed> missed_in_grid(const Table& table) {
  std::vector<Missed> missed;
  const GridLayout grid = lay_out(table);
  for (const GridFigure& figure : grid.figures) {
    const Column& column = table.columns[figure.column];
    if (!is_number(figure.total)) continue;
    Missed one{&column, as_printed(figure.total), other_sum(figure.line_sums, figure.total),
               other_sum(figure.head_sums, figure.total)};
    if (!is_absent(one.lines) || !is_absent(one.lengths)) missed.push_back(std::move(one));
  }
  return missed;
}

std::string alone(const Missed& one, const Style& style) {
  const auto words = [&](const Cell& cell) { return shown_cell(cell, *one.column, style); };
  std::string sums;
  if (!is_absent(one.lines)) sums = "the lines as printed add to " + words(one.lines);
  if (!is_absent(one.lengths))
    sums += sums.empty() ? "the figures by length as printed add to " + words(one.lengths)
                         : ", the figures by length to " + words(one.lengths);
  return heading_of(*one.column) + ": " + sums +
         "; the total is the exact sum, rounded: " + words(one.total) + ".";
}

/// "461.99 (0.01 less)".
std::string with_difference(const Missed& one, const Cell& sum, const Style& style) {
  Column column = *one.column;
  column.ratio.reset();  // a difference has no sign before it: it is less, or more
  Figure off(as_figure(sum).exact() - as_figure(one.total).exact(), as_figure(sum).places());
  const bool less = off.exact().is_negative();
  if (less) off = Figure(-off.exact(), off.places());
  return shown_cell(sum, column, style) + " (" + shown_cell(off, column, style) +
         (less ? " less)" : " more)");
}

/// "Lumber 461.99 (0.01 less)"; of a grid also "by length 462.01 (0.01 more)".
std::string among_others(const Missed& one, const Style& style) {
  std::string words = heading_of(*one.column);
  if (!is_absent(one.lines)) words += " " + with_difference(one, one.lines, style);
  if (!is_absent(one.lengths)) words += " by length " + with_difference(one, one.lengths, style);
  return words;
}

}  // namespace

bool is_part_of_whole(const Table& table, const Column& column) {
  const Cell* whole = nullptr;
  for (const Row& row : table.rows) {
    if (row.struck) continue;
    const Cell& under = row.cells[column.ratio->under];
    if (whole != nullptr && !(under == *whole)) return false;
    whole = &under;
  }
  return whole != nullptr;
}

void total_up(Table& table) {
  const auto is_sum = [](const Column& column) { return column.total == TotalKind::sum; };
  if (table.rows.empty() || std::none_of(table.columns.begin(), table.columns.end(), is_sum)) return;
  table.totals.assign(table.columns.size(), Cell());
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (!is_sum(table.columns[i])) continue;
    for (const Row& row : table.rows)
      if (!row.struck) table.totals[i] = added(table.totals[i], row.cells[i]);
  }
}

void note_rounding(Table& table, const Style& style) {
  if (table.totals.empty() || table.rows.empty()) return;
  const std::vector<Missed> missed = table.grid ? missed_in_grid(table) : missed_in_rows(table);
  if (missed.empty()) return;
  if (missed.size() == 1) {
    table.notes.push_back(alone(missed.front(), style));
    return;
  }
  std::string all;
  for (const Missed& one : missed) all += (all.empty() ? "" : ", ") + among_others(one, style);
  table.notes.push_back(
      "The lines as printed do not add to the totals, which are the exact sums, rounded: " + all + ".");
}

}  // namespace kerfbook::render
