// text_table.h -- ruled columns on a screen: widths, headings over several lines, fitting to the terminal.
// Knows strings and widths only; what the strings say is text.cpp's.
#pragma once

#include <string>
#include <vector>

namespace kerfbook::render {

struct TextColumn {
  std::string heading;
  std::string unit;
  bool right = false;
  bool may_shrink = false;  ///< words: may be cut short with an ellipsis; figures never are
};

struct TextLine {
  std::vector<std::string> cells;
  bool struck = false;
};

struct TextTable {
  std::vector<TextColumn>
      columns;  ///< the first ones, as far as they tell the lines apart, are repeated when the table goes on below
  std::vector<TextLine> lines;
  std::vector<TextLine> feet;  ///< totals, ruled off above
};

/// Columns of the screen the table takes when nothing is shrunk.
int natural_width(const TextTable& table);

/// The table in lines that end without blanks. Fits `width` columns (0 = any) by shrinking words, and when
/// that is not enough by continuing the columns in a further block below. `colour` adds bold and
/// struck-through.
std::string draw(const TextTable& table, int width, bool colour);

/// Every cell in a box of its own, wide enough to be filled in by hand.
std::string draw_boxes(const TextTable& table);

/// A paragraph in lines of at most `width` columns, `indent` blanks before each line after the first.
std::string wrapped(const std::string& text, int width, int indent = 0);

std::string bold(const std::string& text, bool colour);

}  // namespace kerfbook::render
