#include "book/restore.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>

#include "base/error.h"
#include "base/sync.h"
#include "book/checks.h"
#include "book/copy.h"
#include "book/core.h"
#include "book/files.h"
#include "book/leftover.h"
#include "book/salvage.h"
#include "book/schema.h"

namespace kerfbook::book {

namespace fs = std::filesystem;

namespace {

/// A copy opened to be read, and proved sound: as far as it goes with one of an older edition, in full with one of today.
std::unique_ptr<SQLite::Database> sound_copy(const fs::path& copy, const OpenOptions& options) {
  if (!is_book(copy))
    throw Refused(fmt::format("{}: is no copy of a book; give one that kerfbook copy made", copy.string()));
  return guarded(copy, [&] {
    auto database = connect_to_look(copy);
    Store store(*database);
    std::vector<Book::Finding> findings;
    check_file(store, findings);
    if (findings.empty()) check_chain(Journal(store), findings);
    if (findings.empty() && edition_of(store) >= shipped_editions().back().number) {
      OpenOptions look = options;
      look.read_only = true;
      findings = Book::open(copy, look).verify();
    }
    if (!findings.empty())
      throw Failed(fmt::format("{}: this copy is damaged too ({}); take another", copy.string(),
                               findings.front().what));
    return database;
  });
}

std::vector<Entry> without_texts(std::vector<Entry> entries) {
  for (Entry& entry : entries) entry.body.clear();
  return entries;
}

std::vector<Entry> entries_in(SQLite::Database& database) {
  Store store(database);
  std::vector<Entry> all;
  Journal(store).each([&](const Entry& entry) { all.push_back(entry); });
  return without_texts(std::move(all));
}

/// Those of the book, or what can be found of them in one that cannot be opened.
std::vector<Entry> entries_of(const fs::path& book, const OpenOptions& options, Compared& out) {
  try {
    OpenOptions look = options;
    look.read_only = true;
    return without_texts(Book::open(book, look).journal());
  } catch (const Error& fault) {
    out.book_damaged = true;
    out.damage = fault.what();
  }
  std::vector<Entry> found;
  try {
    for (const auto& [number, one] : salvage(book).entries) found.push_back(one.entry);
  } catch (const Error&) {
    return {};  // nothing of it is left to lose
  }
  return without_texts(std::move(found));
}

/// Nobody may be writing while the book loses its name. One that cannot be opened is not locked: SQLite is to change
/// nothing of it, nor of what a killed writer left beside it.
std::unique_ptr<SQLite::Database> locked(const fs::path& book, const OpenOptions& options) {
  try {
    OpenOptions look = options;
    look.read_only = true;
    static_cast<void>(Book::open(book, look));
  } catch (const Error&) {
    return nullptr;
  }
  return guarded(book, [&] {
    auto database = connect(book.string(), SQLite::OPEN_READWRITE);
    database->exec("BEGIN EXCLUSIVE");
    return database;
  });
}

void give_dated_name(const fs::path& book, const fs::path& old) {
  if (::link(book.c_str(), old.c_str()) == 0) return;
  std::error_code error;  // a file system without a second name: for a moment the book has none
  fs::rename(book, old, error);
  if (error)
    throw Failed(fmt::format("{}: cannot be kept as {} ({}); nothing was changed", book.string(),
                             old.string(), error.message()));
}

}  // namespace

Compared compare_copy(const fs::path& book, const fs::path& copy, const OpenOptions& options) {
  Compared out;
  const auto database = sound_copy(copy, options);
  const std::vector<Entry> theirs = guarded(copy, [&] { return entries_in(*database); });
  if (!theirs.empty()) out.copy_newest = mark_of(theirs.back());
  std::error_code error;
  out.book_there = fs::exists(book, error);
  const std::vector<Entry> ours = out.book_there ? entries_of(book, options, out) : std::vector<Entry>();
  const auto find = [](const std::vector<Entry>& all, const Entry& one) {
    return std::any_of(all.begin(), all.end(), [&](const Entry& other) {
      return other.number == one.number && other.digest == one.digest;
    });
  };
  // Numbers rise in both: as long as they run along together, they are alike.
  for (const Entry& one : theirs) {
    const auto index = static_cast<std::size_t>(one.number - 1);
    const bool same = index < ours.size() && ours[index].number == one.number
                          ? ours[index].digest == one.digest
                          : find(ours, one);
    if (!same) out.only_copy.push_back(one);
    if (same && out.only_copy.empty()) out.alike = one.number;
  }
  for (const Entry& one : ours) {
    const auto index = static_cast<std::size_t>(one.number - 1);
    if (index >= theirs.size() || theirs[index].digest != one.digest) out.only_book.push_back(one);
  }
  return out;
}

fs::path restore_copy(const fs::path& named, const fs::path& copy, const OpenOptions& options) {
  std::error_code error;
  const bool there = fs::exists(named, error);
  const fs::path book = there ? fs::canonical(named) : fs::absolute(named);
  const auto from = sound_copy(copy, options);
  DotFile fresh(book);
  write_copy(*from, fresh.path(), book);
  if (!there) {
    fresh.keep_as(book);
    return {};
  }
  const auto lock = locked(book, options);
  const fs::path old = free_name(book.string() + "." + in_a_name(options.now()), ".replaced");
  give_dated_name(book, old);
  // A killed writer's journal, or another program's log, belongs to the old file: beside the new one it would make a mixture of the two.
  if (lock == nullptr) {
    for (const fs::path& left : logs_beside(book))
      fs::rename(left, old.string() + left.string().substr(book.string().size()));
  }
  fs::rename(fresh.path(), book);
  if (sync_path(book.parent_path()) != 0)
    throw Failed(fmt::format("{}: is put back, but its name could not be put on the disk; look at the disk",
                             book.string()));
  return old;
}

}  // namespace kerfbook::book
