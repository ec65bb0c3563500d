// restore.h -- a safety copy put in the place of the book, and what that would lose or bring, said beforehand.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace kerfbook::book {

/// A copy held against the book. Entries without their texts.
struct Compared {
  std::int64_t alike = 0;        ///< entries 1 to this one are the same in both
  std::vector<Entry> only_book;  ///< would be lost
  std::vector<Entry> only_copy;  ///< would come (back)
  Mark copy_newest;
  bool book_there = false;
  bool book_damaged = false;  ///< then only_book is what could be found in it page by page
  std::string damage;         ///< what its opening says
};
/// Refused when the copy is no book, or newer than this program; Failed when it is not sound. The copy is only read.
Compared compare_copy(const std::filesystem::path& book, const std::filesystem::path& copy,
                      const OpenOptions& options);

/// Puts a proved copy of `copy` in the place of `book`, which stays beside it under a dated name
/// ("mill.book.2026-05-08-201407.replaced"): that name is given back, empty when there was no book. The place is never
/// empty meanwhile.
std::filesystem::path restore_copy(const std::filesystem::path& book, const std::filesystem::path& copy,
                                   const OpenOptions& options);

}  // namespace kerfbook::book
