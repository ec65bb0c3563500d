// footing.h -- what stands under a table's lines: exact totals, and where the printed lines do not add to the printed
// total, the words that say so.
#pragma once

#include "render/document.h"

namespace kerfbook::render {

/// Whether a ratio's lines are parts of one whole, the same under each of them; then they can be added.
bool is_part_of_whole(const Table& table, const Column& column);

/// Fills in `totals`: under each column that is a sum (Column::total) the exact sum of its lines that are not struck,
/// with the column's places; absent where no line has a figure. Leaves a table without lines or sums as it is.
void total_up(Table& table);

/// Every line is printed as its nearest figure, and so is the total; together they may miss by a unit of the last place
/// or more. Where they do, adds one note that says what the printed lines add to, so that who checks the column with a
/// pencil finds it in words: of a table's rows, of a grid's lines and of its figures by length.
void note_rounding(Table& table, const Style& style);

}  // namespace kerfbook::render
