// copy.h -- dated safety copies of a book: made by SQLite's online backup, proved before they get their name, and thinned
// out by a rule. Putting one back is in restore.h.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "book/book.h"

namespace kerfbook::book {

/// What is to be said of a book that is not found sound: a page that the disk would not give looks the same.
constexpr std::string_view kUnsound = "the book is damaged, or the disk cannot be read";

/// What to do about a damaged book: the end of each sentence that tells of one.
constexpr std::string_view kGoBack =
    "go back to a copy (kerfbook restore), or save what can be read (kerfbook salvage)";

/// Where copies go unless a folder is named: "mill.book.copies" beside the book.
std::filesystem::path copies_folder(const std::filesystem::path& book);

/// A copy of the open database written to `draft`, read again (its own soundness, and every row of the journal against
/// the one copied) and put on the disk. Failed, naming it as `called`, when any of that cannot be done.
void write_copy(SQLite::Database& from, const std::filesystem::path& draft,
                const std::filesystem::path& called);
/// A copy as "mill.book.2026-05-08-201407.copy" in `folder`, which is made when it is not there; `before`, as "edition12", stands
/// in the name of a copy made before an upgrade, and no rule ever removes that one. `now`: "2026-05-08 20:14:07". It is made under a name that begins with a dot, and named when it is proved: on
/// failure nothing is left that looks like a copy.
std::filesystem::path copy_dated(SQLite::Database& from, const std::filesystem::path& book,
                                 const std::filesystem::path& folder, std::string_view now,
                                 std::string_view before = {});

struct Copied {
  std::filesystem::path file;
  Mark newest;
  std::vector<std::filesystem::path> removed;  ///< older copies that the rule lets go
  std::vector<std::string> kept;  ///< older copies the rule would let go, and why they stay, a sentence each
};
/// A dated copy of the book (`folder` empty: copies_folder). Then, unless `keep_all`, older copies of this very book in
/// that folder are thinned out: all of the last 7 days stay, the last of each week for 8 weeks before, the last of each
/// month for ever. Failed when the book's journal is damaged: then no copy is made and none removed.
Copied copy_book(const Book& book, const std::filesystem::path& folder, std::string_view now,
                 bool keep_all = false);

/// A copy by its name.
struct DatedCopy {
  std::filesystem::path file;
  Day day;
  std::string time;  ///< "201407", with "-2" behind it where two were made in one second
};
/// Every copy of a book in a folder by its name, those made before an upgrade too, oldest first.
std::vector<std::filesystem::path> all_copies(const std::filesystem::path& book,
                                              const std::filesystem::path& folder);
/// Of them, those that copy_book() made. Nothing else is ever removed.
std::vector<DatedCopy> dated_copies(const std::filesystem::path& book, const std::filesystem::path& folder);
/// Those the rule lets go, by their dates alone. A copy dated later than `today` stays.
std::vector<DatedCopy> outlived(const std::vector<DatedCopy>& oldest_first, Day today);

}  // namespace kerfbook::book
