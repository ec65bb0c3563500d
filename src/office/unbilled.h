// unbilled.h -- what is not billed yet, for SQL: reports stand above the office in no list, so it is handed to them.
//
//   unbilled(JOB)    minor units, before tax: what `bill JOB` would come to now; NULL when there is nothing to bill or
//                    it cannot be priced
#pragma once

#include "base/day.h"
#include "book/book.h"

namespace kerfbook::billing {

/// Works out every draft up to `today` once and registers the function on the book's connection.
void register_unbilled(const book::Book& book, Day today);
/// The same function over no drafts at all: enough for a report to be checked.
void register_unbilled(const book::Book& book);

}  // namespace kerfbook::billing
