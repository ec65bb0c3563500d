// stock_rows.h -- what lumber lies on the yard, kept up with every sheet and paper: own lumber by stack, customers' by
// job and bundle. What a sheet moves is taken out before its rows are written anew, and put in after.
#pragma once

#include <set>
#include <string>

#include "book/journal.h"
#include "book/store.h"

namespace kerfbook::book {

/// Takes the sheet's lumber out of the stock, its rows still standing as they were put in. Gives the tags of the bundles
/// it tallied or sold, in small letters, for put_in().
std::set<std::string> take_out(Store& store, SheetKey key);

/// Puts the lumber of the sheet's rows in, and works out anew what bundles of its tags, before and now, were sold whole.
void put_in(Store& store, SheetKey key, std::set<std::string> tags);

/// Works the rows of one paper in: the mill's part of a division, what a load slip took, or what one that is taken back brings again.
void put_in_paper(Store& store, std::int64_t entry);

/// The jobs whose lumber is the mill's own, in one text. When it changes, all lumber must be counted anew.
std::string own_jobs(Store& store);
void count_all_anew(Store& store);

}  // namespace kerfbook::book
