#include "book/copy.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstring>

#include "base/error.h"
#include "base/sync.h"
#include "base/text.h"
#include "book/checks.h"
#include "book/core.h"
#include "book/files.h"

namespace kerfbook::book {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kEnding = ".copy";

/// One digest over every row of the journal, whatever columns its edition has.
std::string journal_digest(SQLite::Database& database) {
  Sha256 sum;
  SQLite::Statement rows(database, "SELECT * FROM journal ORDER BY entry");
  while (rows.executeStep()) {
    for (int i = 0; i < rows.getColumnCount(); ++i) sum.add_field(rows.getColumn(i).getString());
  }
  return sum.hex();
}

void write_pages(SQLite::Database& from, const fs::path& to) {
  // A draft that fails is thrown away whole, so its journal need not be a file.
  const auto copy = connect(to.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  copy->exec("PRAGMA journal_mode = MEMORY");
  SQLite::Backup backup(*copy, from);
  if (backup.executeStep(-1) != SQLITE_DONE) throw Failed("the book was in use all the while");
}

void read_again(SQLite::Database& from, const fs::path& copy) {
  const auto database = connect(copy.string(), SQLite::OPEN_READONLY);
  Store store(*database);
  std::vector<Book::Finding> findings;
  check_file(store, findings);
  if (!findings.empty()) throw Failed("what was written is not sound: " + findings.front().what);
  if (journal_digest(*database) != journal_digest(from))
    throw Failed("what was written is not what the book holds");
}

}  // namespace

fs::path copies_folder(const fs::path& book) {
  return book.string() + ".copies";
}

void write_copy(SQLite::Database& from, const fs::path& draft, const fs::path& called) {
  try {
    write_pages(from, draft);
    if (sync_path(draft) != 0) throw Failed("it could not be put on the disk");
    read_again(from, draft);
  } catch (const SQLite::Exception& fault) {
    const int code = fault.getErrorCode() & 0xff;  // an extended code has more above it
    const bool full = code == SQLITE_FULL || code == SQLITE_IOERR;
    throw Failed(
        fmt::format("{}: this copy was not made: {}", called.string(),
                    full ? "it could not be written; look for room on the disk" : std::string(fault.what())));
  } catch (const Failed& fault) {
    throw Failed(fmt::format("{}: this copy was not made: {}", called.string(), fault.what()));
  }
}

fs::path copy_dated(SQLite::Database& from, const fs::path& book, const fs::path& folder,
                    std::string_view now, std::string_view before) {
  if (const int fault = make_folder(folder))
    throw Failed(
        fmt::format("{}: the folder for copies cannot be made ({})", folder.string(), std::strerror(fault)));
  std::string base = (folder / book.filename()).string() + "." + in_a_name(now);
  if (!before.empty()) base += fmt::format(".before-{}", before);
  const fs::path file = free_name(base, std::string(kEnding));
  DotFile draft(file);
  write_copy(from, draft.path(), file);
  draft.keep_as(file);
  return file;
}

std::vector<fs::path> all_copies(const fs::path& book, const fs::path& folder) {
  const std::string begin = book.filename().string() + ".";
  std::vector<fs::path> found;
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(begin) && name.ends_with(kEnding) && name.size() > begin.size() + kEnding.size() &&
        fs::is_regular_file(entry.symlink_status(ignored)))
      found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::vector<DatedCopy> dated_copies(const fs::path& book, const fs::path& folder) {
  constexpr std::size_t kDay = 10;
  constexpr std::size_t kTime = 6;
  const std::size_t begin = book.filename().string().size() + 1;
  std::vector<DatedCopy> found;
  for (const fs::path& file : all_copies(book, folder)) {
    const std::string name = file.filename().string();
    const auto stamp = std::string_view(name).substr(begin, name.size() - begin - kEnding.size());
    if (stamp.size() < kDay + 1 + kTime || stamp[kDay] != '-') continue;
    const auto day = read_day(stamp.substr(0, kDay));
    const std::string_view time = stamp.substr(kDay + 1);
    const std::string_view rest = time.substr(kTime);
    const bool plain = rest.empty() || (rest.front() == '-' && all_digits(rest.substr(1)));
    if (day && all_digits(time.substr(0, kTime)) && plain) found.push_back({file, *day, std::string(time)});
  }
  std::sort(found.begin(), found.end(), [](const DatedCopy& a, const DatedCopy& b) {
    return std::tuple(a.day, a.time.size(), a.time) < std::tuple(b.day, b.time.size(), b.time);
  });
  return found;
}

std::vector<DatedCopy> outlived(const std::vector<DatedCopy>& oldest_first, Day today) {
  constexpr int kAllDays = 7;
  constexpr int kWeeks = 8;
  const auto span_of = [&](Day day) {  // of each span the last copy stays
    const int age = today - day;
    if (age < kAllDays + kWeeks * 7) {
      const IsoWeek week = iso_week(day);
      return std::tuple('w', week.year, week.week);
    }
    return std::tuple('m', parts(day).year, parts(day).month);
  };
  std::vector<DatedCopy> gone;
  for (std::size_t i = 0; i + 1 < oldest_first.size(); ++i) {
    const Day day = oldest_first[i].day;
    if (today - day < kAllDays) break;
    if (span_of(day) == span_of(oldest_first[i + 1].day)) gone.push_back(oldest_first[i]);
  }
  return gone;
}

namespace {

/// Why a copy is not to be removed; empty when this book holds all that it holds.
std::string why_kept(const DatedCopy& copy, const Book& book) {
  try {
    const auto database = connect_to_look(copy.file);
    SQLite::Statement newest(*database, "SELECT entry, digest FROM journal ORDER BY entry DESC LIMIT 1");
    if (!newest.executeStep()) return "";
    const auto here = book.entry(newest.getColumn(0).getInt64());
    if (here && here->digest == newest.getColumn(1).getString()) return "";
    return "holds entries that this book does not";
  } catch (const std::exception&) {
    return "cannot be read";
  }
}

void thin_out(const Book& book, const fs::path& folder, Day today, Copied& copied) {
  for (const DatedCopy& old : outlived(dated_copies(book.file(), folder), today)) {
    if (old.file == copied.file) continue;
    const std::string why = why_kept(old, book);
    std::error_code error;
    if (!why.empty())
      copied.kept.push_back(old.file.string() + " " + why);
    else if (fs::remove(old.file, error))
      copied.removed.push_back(old.file);
    else
      copied.kept.push_back(old.file.string() + " cannot be removed");
  }
  // Should that fail, a power cut may bring one back, and the next copy removes it again.
  if (!copied.removed.empty()) static_cast<void>(sync_path(folder));
}

}  // namespace

Copied copy_book(const Book& book, const fs::path& folder, std::string_view now, bool keep_all) {
  const fs::path into = folder.empty() ? copies_folder(book.file()) : folder;
  Copied copied;
  {
    const Still still(book);
    const auto damage = check_journal(book);
    if (!damage.empty())
      throw Failed(fmt::format("{}: {}, so no copy was made and none removed: {}", book.file().string(),
                               kUnsound, damage.front().what));
    copied.newest = book.newest();
    copied.file = guarded(book.file(), [&] { return copy_dated(book.database(), book.file(), into, now); });
  }
  if (const auto today = read_day(now.substr(0, 10)); today && !keep_all)
    thin_out(book, into, *today, copied);
  return copied;
}

}  // namespace kerfbook::book
