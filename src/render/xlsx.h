// xlsx.h -- the one function the workbook module offers, by the name and type the loader asks for.
#pragma once

#include <string>

#include "render/document.h"

namespace kerfbook::render {

/// Fills `bytes` with a whole .xlsx file and returns true; or `fault` with what went wrong. Never throws: the two
/// sides of a module boundary share no handler.
using WriteWorkbook = bool (*)(const Document& document, std::string& bytes, std::string& fault);
constexpr const char* kWriteWorkbookName = "kerfbook_write_workbook";

}  // namespace kerfbook::render
