// cell.h -- one cell in the forms the renderers share: as a machine reads it, and as a length on a drawing.
// The form people read is shown_cell() in renderer.h.
#pragma once

#include <optional>
#include <string>

#include "render/document.h"

namespace kerfbook::render {

bool is_absent(const Cell& cell);
bool is_number(const Cell& cell);         ///< a count or a number with decimals
bool stands_right(const Column& column);  ///< numbers stand right, so that their digits line up

/// Plain digits with a point and up to six decimals, `YYYY-MM-DD`, or the text as it is; absent is empty.
std::string plain_cell(const Cell& cell);

/// A count or a number with decimals; a count has no places. Throws std::invalid_argument for anything else.
Figure as_figure(const Cell& cell);

/// The sum of two numbers, exact, with the places of the finer one. Absent adds nothing.
/// Throws std::overflow_error when it grows too long, std::invalid_argument for a day or a text.
Cell added(const Cell& a, const Cell& b);

/// A unit as people read it, "m³" where programs write m3; and back.
std::string printed_unit(std::string unit);
std::string plain_unit(std::string unit);
/// Whether the texts of a column are units of measure, which print shows as printed_unit() does.
inline bool holds_units(const Column& column) {
  return column.name == "unit";
}

/// Where a number or a day lies on a drawn axis. For drawing only; never for a figure.
std::optional<double> drawn(const Cell& cell);

/// What people read over the column: its heading, or its name when it has none.
const std::string& heading_of(const Column& column);

/// Text fit for one line of a page or a screen: what is fit to print of it, line ends as blanks.
std::string one_line(const std::string& text);

bool has_struck(const Table& table);
/// Said under every table that has struck rows.
inline constexpr const char* kStruckNote = "A struck line stays in sight; its figures are in no total.";
/// A row in one line of words: "2x4   16 ft   32 Pieces   341.33 bf".
std::string in_one_line(const Table& table, const Row& row, const Style& style);
/// The indices of the columns that are shown.
std::vector<std::size_t> shown_columns(const Table& table);

}  // namespace kerfbook::render
