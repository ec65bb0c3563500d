// schema_check.h -- does a book hold the tables, indexes and views of its edition, word for word, and nothing else?
// A file may come from a stranger: what another program put into it is named, and nothing of it is run.
#pragma once

#include <string>
#include <vector>

#include "book/schema.h"

namespace kerfbook::book {

struct SchemaDoubts {
  std::vector<std::string> strange;   ///< "table tally is missing": for such a book must not be opened
  std::vector<std::string> mendable;  ///< the same, of what `rebuild` puts right
  bool views_are_current = true;      ///< they are, word for word, those of this program
};

/// Reads the book's schema and no table. Views of an edition before `newest` are not looked at: they go when it is
/// raised.
SchemaDoubts check_schema(Store& store, const Edition& edition, const Edition& newest);

}  // namespace kerfbook::book
