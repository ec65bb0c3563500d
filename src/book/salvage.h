// salvage.h -- reading the journal out of a file that SQLite can no longer read, page by page. The file is only read.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace kerfbook::book {

/// An entry as far as it could be read.
struct Salvaged {
  Entry entry;            ///< `digest` and the end of `body` are missing when it is not complete
  bool complete = false;  ///< all of it was there, though perhaps not as posted
  bool proved = false;    ///< complete, and its digest follows from it and the entry before it
  bool denied = false;    ///< complete, and so is the entry before it, but its digest does not follow
};

/// What an index still says of an entry whose text is lost.
struct EntryName {
  EntryKind kind = EntryKind::sheet;
  std::string subject;
  int revision = 1;
};

struct Salvage {
  std::map<std::int64_t, Salvaged> entries;  ///< by number
  std::map<std::int64_t, EntryName> lost;  ///< numbers below the last one known that could not be read at all
  std::vector<std::int64_t> lost_nameless;  ///< of those without a name left, rising
  std::int64_t pages = 0;
  std::int64_t unreadable = 0;  ///< pages the disk gives no bytes of, or only some
  bool cut_short = false;       ///< the file is shorter than its own head says

  /// The last entry from the first on without a gap, each proved: what a book can be made of again. 0 = none.
  [[nodiscard]] std::int64_t proved_to() const;
};

/// Looks at every page of the file. Refused when there is no such file; Failed when no entry is found in it.
Salvage salvage(const std::filesystem::path& file);
/// Entries 1 to proved_to().
std::vector<Entry> proved_entries(const Salvage& from);

}  // namespace kerfbook::book
