// write.h -- a Sheet printed in its own language, aligned, one fact a line. Reading it back gives the same Sheet.
#pragma once

#include <string>

#include "sheet/sheet.h"

namespace kerfbook::sheet {

std::string write(const Sheet& sheet);
std::string write_line(const Line& line);        ///< without a newline
std::string_view word_of(ToothAction action);    ///< "touched-up", "full-set"
std::string_view word_of(Sense sense);           ///< "", "less", "resaw"

}  // namespace kerfbook::sheet
