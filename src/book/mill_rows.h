// mill_rows.h -- what the mill file puts into the book's tables: words with their names, sizes, cut lists.
#pragma once

#include "book/words.h"
#include "mill/mill.h"

namespace kerfbook::book {

/// A mill file with its entry of the journal, and that of the file before it; 0 = none.
struct MillEntry {
  std::int64_t before = 0;
  std::int64_t entry = 0;
  const Mill& mill;
};
void write_mill_rows(Store& store, Words& words, const MillEntry& posted);

}  // namespace kerfbook::book
