// project_paper.h -- a paper of the journal worked into the tables paper, paper_line, paper_tax, paper_share and
// paper_sheet.
#pragma once

#include "book/book.h"

namespace kerfbook::billing {

/// For book::OpenOptions::papers: called in the transaction that posts, rebuilds or verifies. Throws Refused when the
/// number is not the next of its kind or other papers were issued since it was made, so that no gap can come about.
void project_paper(SQLite::Database& database, const book::Entry& entry);

}  // namespace kerfbook::billing
