// leftover.h -- what others left beside a book and SQLite would take for part of it: the rollback journal of a killed
// writer (does it belong to the book as it is now?), and another program's log.
#pragma once

#include <filesystem>
#include <vector>

namespace kerfbook::book {

/// The rollback journal SQLite keeps beside `file` while it writes.
std::filesystem::path rollback_journal_of(const std::filesystem::path& file);

/// The log that a program which switched the book to one (WAL) keeps beside it.
std::filesystem::path write_ahead_log_of(const std::filesystem::path& file);
/// Those of the two that are there. SQLite would take them for part of whatever file has the name.
std::vector<std::filesystem::path> logs_beside(const std::filesystem::path& file);

/// Refused when there is a write-ahead log: kerfbook makes none, nothing in it says which book it is of, and SQLite would
/// read it as part of this one.
void check_no_write_ahead_log(const std::filesystem::path& file);

/// Before SQLite plays the journal back: Refused, naming both files, when it was begun on another state of the book
/// than the one beside it (a copy put back from a stick, say). Played in, it would make a mixture of the two.
/// Refused too when it names a file that SQLite would delete, or is no plain file.
/// Nothing is said of a journal that SQLite will not play back, and of one that a writer is using now.
void check_leftover(const std::filesystem::path& file);

}  // namespace kerfbook::book
