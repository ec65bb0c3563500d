// leftover.h -- the rollback journal that a killed writer left beside a book: does it belong to the book as it is now?
#pragma once

#include <filesystem>

namespace kerfbook::book {

/// The rollback journal SQLite keeps beside `file` while it writes.
std::filesystem::path rollback_journal_of(const std::filesystem::path& file);

/// Before SQLite plays the journal back: Refused, naming both files, when it was begun on another state of the book
/// than the one beside it (a copy put back from a stick, say). Played in, it would make a mixture of the two.
/// Nothing is said of a journal that SQLite will not play back, and of one that a writer is using now.
void check_leftover(const std::filesystem::path& file);

}  // namespace kerfbook::book
