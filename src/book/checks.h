// checks.h -- what can be told of a book without working it out again. For this room only.
#pragma once

#include <vector>

#include "book/journal.h"

namespace kerfbook::book {

/// SQLite's own checks of the file and of rows that point at others.
void check_file(Store& store, std::vector<Book::Finding>& findings);
/// Every entry there, and each following on the one before it.
void check_chain(const Journal& journal, std::vector<Book::Finding>& findings);
/// The second of an open book.
std::vector<Book::Finding> check_journal(const Book& book);

}  // namespace kerfbook::book
