// chart.h -- a table's chart as one SVG drawing, to stand inside a page: bars, lines, stacked bars, points with a
// trend. Colours come from the page's style; the drawing itself carries a text alternative.
#pragma once

#include <string>

#include "render/document.h"

namespace kerfbook::render {

/// `<svg>...</svg>`, or nothing when the table has no chart or nothing in it can be drawn.
std::string chart_svg(const Table& table, const Style& style);

}  // namespace kerfbook::render
