// grid.h -- a table in long form laid out as the trade writes a tally: a row a size, a column a length,
// footed both ways. Works out only exact sums; draws nothing.
#pragma once

#include <vector>

#include "render/document.h"

namespace kerfbook::render {

/// One figure (pieces, or bf) over the whole grid. `cells[line][head]`; absent where nothing was cut.
struct GridFigure {
  std::size_t column = 0;  ///< of the Table
  std::vector<std::vector<Cell>> cells;
  std::vector<Cell> line_sums;
  std::vector<Cell> head_sums;
  Cell total;
};

struct GridLayout {
  std::vector<std::size_t> key_columns;  ///< Grid::row_keys without those that say nothing on any row
  std::vector<std::vector<Cell>> keys;   ///< what heads each line, as key_columns
  std::vector<Cell> heads;          ///< the lengths: numbers ascending, other words as first met, absent last
  std::vector<GridFigure> figures;  ///< Grid::cell first, then whatever else is summed beside the rows
  std::vector<std::size_t> struck;  ///< rows of the Table that are in no cell and no sum
};

/// `table.grid` must be set.
GridLayout lay_out(const Table& table);

}  // namespace kerfbook::render
