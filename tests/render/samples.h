// samples.h -- the documents every renderer is tested on. People, places and figures are invented.
#pragma once

#include "render/document.h"

namespace kerfbook::render {

Document production_week();  ///< five days, totals, ratios with and without a hidden column, a bar chart
Document tally_week();       ///< a size-by-length grid with a struck line, and a second table
Document thirds();           ///< lines, and a grid, whose printed figures do not add to their printed totals
Document every_cell();  ///< every kind of cell: absent, quotes, commas, line ends, brackets, other alphabets
Document no_rows();     ///< the columns of production_week and not one row
Document
paper();  ///< an invoice: parties, a head, a struck line, sums, lines to sign, a ruled table on a new page
Document chart_sampler();  ///< one table for each kind of chart

Cell dec(std::int64_t units, int places);  ///< a decimal cell

}  // namespace kerfbook::render
