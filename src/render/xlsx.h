// xlsx.h -- the one function the workbook module offers, by the name and type the loader asks for.
#pragma once

#include <string>

#include "render/document.h"

namespace kerfbook::render {

/// Fills `bytes` with a whole .xlsx file and returns true; or `fault` with what went wrong. Never throws: the two
/// sides of a module boundary share no handler.
using WriteWorkbook = bool (*)(const Document& document, std::string& bytes, std::string& fault);
constexpr const char* kWriteWorkbookName = "kerfbook_write_workbook";

/// The name of the module's text that says which build it is of (cmake/build_mark.cmake): the two sides share the
/// layout of Document, so a module of another build is not used.
constexpr const char* kWorkbookBuildName = "kerfbook_workbook_build";

}  // namespace kerfbook::render
