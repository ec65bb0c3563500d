#include "render/grid.h"

#include <algorithm>

#include "render/cell.h"

namespace kerfbook::render {
namespace {

bool heads_before(const Cell& a, const Cell& b) {
  if (is_absent(a) || is_absent(b)) return !is_absent(a) && is_absent(b);
  if (!is_number(a) || !is_number(b)) return is_number(a) && !is_number(b);
  return as_figure(a).exact() < as_figure(b).exact();
}

bool same_head(const Cell& a, const Cell& b) {
  return !heads_before(a, b) && !heads_before(b, a) && (is_number(a) || a == b);
}

std::vector<Cell> all_heads(const Table& table) {
  std::vector<Cell> heads;
  for (const Row& row : table.rows) {
    if (row.struck) continue;
    const Cell& head = row.cells[table.grid->column_key];
    const bool known =
        std::any_of(heads.begin(), heads.end(), [&](const Cell& one) { return same_head(one, head); });
    if (!known) heads.push_back(head);
  }
  std::stable_sort(heads.begin(), heads.end(), heads_before);
  return heads;
}

bool says_nothing(const Cell& cell) {
  const auto* text = std::get_if<std::string>(&cell);
  return is_absent(cell) || (text != nullptr && text->empty());
}

/// Ungraded custom wood has a grade column with nothing in it; it is left out. One key always stays.
std::vector<std::size_t> telling_keys(const Table& table) {
  std::vector<std::size_t> keys;
  for (const std::size_t key : table.grid->row_keys) {
    const bool tells = std::any_of(table.rows.begin(), table.rows.end(),
                                   [&](const Row& row) { return !says_nothing(row.cells[key]); });
    if (tells) keys.push_back(key);
  }
  return keys.empty() ? table.grid->row_keys : keys;
}

std::vector<Cell> keys_of(const std::vector<std::size_t>& columns, const Row& row) {
  std::vector<Cell> keys;
  for (const std::size_t column : columns) keys.push_back(row.cells[column]);
  return keys;
}

std::vector<std::size_t> figure_columns(const Grid& grid) {
  std::vector<std::size_t> columns = {grid.cell};
  for (const std::size_t sum : grid.row_sums) {
    if (sum != grid.cell) columns.push_back(sum);
  }
  return columns;
}

void put(GridFigure& figure, std::size_t line, std::size_t head, std::size_t heads, const Cell& value) {
  if (line >= figure.cells.size()) {
    figure.cells.resize(line + 1, std::vector<Cell>(heads));
    figure.line_sums.resize(line + 1);
  }
  figure.head_sums.resize(heads);
  for (Cell* sum :
       {&figure.cells[line][head], &figure.line_sums[line], &figure.head_sums[head], &figure.total}) {
    *sum = added(*sum, value);
  }
}

}  // namespace

GridLayout lay_out(const Table& table) {
  GridLayout out;
  out.key_columns = telling_keys(table);
  out.heads = all_heads(table);
  for (const std::size_t column : figure_columns(*table.grid))
    out.figures.push_back({column, {}, {}, {}, {}});
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const Row& row = table.rows[i];
    if (row.struck) {
      out.struck.push_back(i);
      continue;
    }
    const std::vector<Cell> keys = keys_of(out.key_columns, row);
    const auto line =
        static_cast<std::size_t>(std::find(out.keys.begin(), out.keys.end(), keys) - out.keys.begin());
    if (line == out.keys.size()) out.keys.push_back(keys);
    const auto head = static_cast<std::size_t>(
        std::find_if(out.heads.begin(), out.heads.end(),
                     [&](const Cell& one) { return same_head(one, row.cells[table.grid->column_key]); }) -
        out.heads.begin());
    for (GridFigure& figure : out.figures)
      put(figure, line, head, out.heads.size(), row.cells[figure.column]);
  }
  return out;
}

}  // namespace kerfbook::render
