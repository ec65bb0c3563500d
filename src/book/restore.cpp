#include "book/restore.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstring>

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
      throw Failed(fmt::format("{}: this copy is damaged too, or the disk cannot be read ({}); take another",
                               copy.string(), findings.front().what));
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

/// The book under a dated name, with what others left beside it: given back again unless it is to stay.
class DatedName {
 public:
  /// Moves the logs too: beside the new book a killed writer's journal would make a mixture of the two.
  DatedName(const fs::path& book, fs::path old, const std::vector<fs::path>& logs)
      : book_(book), old_(std::move(old)) {
    std::error_code error;
    linked_ = ::link(book_.c_str(), old_.c_str()) == 0;
    if (!linked_)
      fs::rename(book_, old_, error);  // a file system without a second name: for a moment it has none
    if (error) fail(error);
    for (const fs::path& log : logs) {
      fs::rename(log, dated(log), error);
      if (error) give_back();
      if (error) fail(error);
      moved_.push_back(log);
    }
  }
  DatedName(const DatedName&) = delete;
  DatedName& operator=(const DatedName&) = delete;
  ~DatedName() {
    if (!stays_) give_back();
  }
  void stay() { stays_ = true; }

 private:
  [[nodiscard]] fs::path dated(const fs::path& log) const {
    return old_.string() + log.string().substr(book_.string().size());
  }
  [[noreturn]] void fail(const std::error_code& error) const {
    throw Failed(
        fmt::format("{}: cannot be kept as {} ({})", book_.string(), old_.string(), error.message()));
  }
  void give_back() const {
    std::error_code ignored;
    for (const fs::path& log : moved_) fs::rename(dated(log), log, ignored);
    if (linked_)
      fs::remove(old_, ignored);
    else
      fs::rename(old_, book_, ignored);
  }
  fs::path book_;
  fs::path old_;
  std::vector<fs::path> moved_;
  bool linked_ = false;
  bool stays_ = false;
};

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
  DatedName dated(book, old, lock == nullptr ? logs_beside(book) : std::vector<fs::path>());
  // The old name first, or a power cut could leave the new book and take the old one away.
  const int fault = sync_path(book.parent_path());
  if (fault == 0) fs::rename(fresh.path(), book, error);
  if (fault != 0 || error)
    throw Failed(fmt::format("{}: the copy cannot be put in its place ({})", book.string(),
                             fault != 0 ? std::strerror(fault) : error.message()));
  dated.stay();
  if (sync_path(book.parent_path()) != 0)
    throw FailedLate(fmt::format(
        "{}: is put back, but its name could not be put on the disk; look at the disk", book.string()));
  return old;
}

}  // namespace kerfbook::book
