// write.h -- a Sheet printed in its own language, aligned, one fact a line. Reading it back with the same
// options gives the same Sheet.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "sheet/read.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

std::string write(const Sheet& sheet, const ReadOptions& options = {});
std::string write_line(const Line& line, const ReadOptions& options = {});  ///< without a newline
std::string_view word_of(ToothAction action);                               ///< "touched-up", "full-set"
bool is_blade_work(ToothAction action);             ///< written on a `blade` line, not on a `teeth` line
std::string_view word_of(Sense sense);              ///< "", "less", "resaw"
std::span<const std::string_view> residue_kinds();  ///< "slabs", "edgings" ... "sawdust"

}  // namespace kerfbook::sheet
