// deck_rows.h -- which logs lie on the deck, kept up with every sheet written. A log received or left half-sawn lies
// there until a later line saws it or leaves it on the mill; without a tag it cannot be followed and stays.
#pragma once

#include <set>
#include <string>

#include "book/journal.h"
#include "book/store.h"

namespace kerfbook::book {

/// The tags of a sheet's logs, in small letters.
std::set<std::string> deck_tags(Store& store, SheetKey key);

/// Works out anew what lies on the deck of these tags and of the sheet's logs without one. To be called with the tags
/// that the sheet had before it was written and has now.
void write_deck_rows(Store& store, SheetKey key, const std::set<std::string>& tags);

}  // namespace kerfbook::book
