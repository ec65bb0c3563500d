// xlsx_paper.h -- a paper as a workbook. Part of the workbook module only.
#pragma once

#include "render/document.h"
#include "render/xlsx_book.h"

namespace kerfbook::render {

/// Whether the document is one that leaves the house, to be printed and filed: it has parties, a head or signatures.
bool is_paper(const Document& document);

/// Its tables one under the other, as they are printed, on further sheets where a page is full or a table begins one of
/// its own.
void write_paper(Workbook& book, const Document& document);

}  // namespace kerfbook::render
