// mill_rows.h -- what the mill file puts into the book's tables: words with their names, sizes, cut lists.
#pragma once

#include "book/mill.h"
#include "book/words.h"

namespace kerfbook::book {

void write_mill_rows(Store& store, Words& words, const Mill& mill);

/// True when both give the same volumes for every sheet: units, target sizes and log taper.
bool same_volumes(const Mill& a, const Mill& b);

}  // namespace kerfbook::book
