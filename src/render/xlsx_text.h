// xlsx_text.h -- text in a workbook: as a cell holds it, as a sheet is called, and how wide it prints. Part of the workbook
// module only.
#pragma once

#include <string>

namespace kerfbook::render {

/// Text as a cell holds it: what cannot be shown left out, and cut off where a cell is full. `_x0041_` stands for a
/// letter in the file format; typed by someone it is those signs.
std::string cell_text(const std::string& text);

/// A sheet's name of at most so many units of the format. Brackets, slashes and the like are not allowed in one, nor a
/// quote at its ends; one name the format keeps to itself.
std::string fit_for_name(const std::string& title, int units);
/// By this two names of sheets are the same: without regard to capitals, of other alphabets too as far as they pair off
/// regularly (Latin of the west, Greek, Cyrillic).
std::string folded_name(const std::string& name);

/// How wide the text prints, in digits of the usual size: letters are not as wide as one another.
int printed_width(const std::string& text);
/// Lines the text takes when it is broken to the width of so many digits, its words kept whole where they fit.
int lines_in(const std::string& text, int width);

}  // namespace kerfbook::render
