#include "book/core.h"

#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <stdexcept>

#include "book/copy.h"
#include "book/functions.h"
#include "book/watch.h"

namespace kerfbook::book {

Core::Core(std::filesystem::path path, OpenOptions how, std::unique_ptr<Patience> waits,
           std::unique_ptr<SQLite::Database> open)
    : file(std::move(path)),
      options(std::move(how)),
      patience(std::move(waits)),
      database(std::move(open)),
      store(*database),
      journal(store),
      projector(store, journal, options.papers) {
  register_functions(*database, projector);
}

namespace {

const Editions& editions_of(const OpenOptions& options) {
  return options.editions != nullptr ? *options.editions : shipped_editions();
}

}  // namespace

const Edition& newest_of(const OpenOptions& options) {
  return editions_of(options).back();
}

const Edition& Core::edition() {
  const int number = edition_of(store);
  for (const auto& edition : editions_of(options)) {
    if (edition.number == number) return edition;
  }
  throw Failed(fmt::format("{}: the book is damaged (its header has edition {}); go back to a copy",
                           file.string(), number));
}

namespace {

/// While the book was open, or waited for, another program may have changed more than rows.
void look_at_schema_again(Core& core) {
  if (core.schema_seen < 0 || core.store.number("PRAGMA schema_version") == core.schema_seen) return;
  static_cast<void>(check_schema_of(core));
}

}  // namespace

Writing::Writing(Core& core) : core_(core) {
  if (core_.acts > 0) {
    ++core_.acts;
    return;
  }
  core_.store.run("BEGIN IMMEDIATE");
  try {
    look_at_schema_again(core_);
    core_.projector.refresh();
  } catch (...) {
    sqlite3_exec(core_.database->getHandle(), "ROLLBACK", nullptr, nullptr, nullptr);
    throw;
  }
  core_.acts = 1;
  core_.undone = false;
  begun_ = core_.journal.last();
}

Writing::~Writing() {
  if (open_) undo();
}

void Writing::undo() {
  open_ = false;
  if (--core_.acts > 0) {
    core_.undone = true;
    return;
  }
  // Nothing can be done about a failed rollback here: SQLite undoes it when the file is opened next.
  sqlite3_exec(core_.database->getHandle(), "ROLLBACK", nullptr, nullptr, nullptr);
  core_.projector.forget();
}

namespace {

/// Whether the book, asked anew, has the journal up to this digest. nullopt: it cannot be asked.
std::optional<bool> has_digest(const Core& core, const std::string& digest) {
  try {
    Patience patience;
    const auto again =
        connect(std::filesystem::canonical(core.file).string(), SQLite::OPEN_READONLY, patience);
    SQLite::Statement found(*again, "SELECT count(*) FROM journal WHERE digest = ?");
    found.bind(1, digest);
    found.executeStep();
    return found.getColumn(0).getInt64() > 0;
  } catch (const std::exception&) {
    return std::nullopt;
  }
}

/// For what no entry tells of, as a rebuild.
[[noreturn]] void tell_of_failed_work(const Core& core, const SQLite::Exception& fault) {
  throw FailedLate(fmt::format(
      "{}: the disk failed ({}) when the totals were put down; every entry is in its place; run this again, "
      "and then kerfbook verify",
      core.file.string(), fault.what()));
}

}  // namespace

void Writing::tell_posted(std::int64_t last) {
  if (!core_.draft && last > begun_ && core_.options.posted) core_.options.posted(begun_ + 1, last);
}

/// What is in the file counts, not what the call said: the last thing it does, to sync the folder, may fail when all the
/// rest is done.
void Writing::tell_of_failed_commit(const Entry& last, const SQLite::Exception& fault) {
  const auto there = has_digest(core_, last.digest);
  if (there && !*there) throw fault;
  if (there) {
    tell_posted(last.number);
    throw FailedLate(fmt::format("{}: the disk failed ({}) when all was written; look at the disk",
                                 core_.file.string(), fault.what()));
  }
  throw FailedLate(
      fmt::format("{}: the disk failed ({}); look with kerfbook journal whether it was posted before you "
                  "post it again",
                  core_.file.string(), fault.what()));
}

void Writing::commit() {
  core_.projector.settle();
  if (core_.acts > 1) {
    --core_.acts;
    open_ = false;
    return;
  }
  if (core_.undone) throw std::logic_error("a part of this act was undone");
  const auto last = core_.journal.entry(core_.journal.last());
  try {
    core_.store.run("COMMIT");
  } catch (const SQLite::Exception& fault) {
    undo();
    if (core_.draft) throw;
    if (!last || last->number == begun_) tell_of_failed_work(core_, fault);
    tell_of_failed_commit(*last, fault);
  }
  core_.acts = 0;
  open_ = false;
  if (last) tell_posted(last->number);
}

namespace {

/// Of a book that SQLite could not write to: what stands in the way.
std::string what_forbids_writing(const std::filesystem::path& file) {
  std::error_code error;
  const auto there = std::filesystem::canonical(file, error);
  if (!error && ::access(there.c_str(), W_OK) != 0) {
    return errno == EROFS ? "the disk it is on may only be read"
                          : "the file may not be written to; look at its rights";
  }
  if (!error && ::access(there.parent_path().c_str(), W_OK) != 0) {
    return "its folder may not be written to, and posting makes a file beside the book for a moment; look at "
           "the folder's rights";
  }
  return "look at the rights of the file and its folder";
}

}  // namespace

Error explained(const std::filesystem::path& file, const SQLite::Exception& fault) {
  const std::string name = file.string();
  switch (fault.getErrorCode()) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return Failed(fmt::format("{}: another program is using the book; try again when it is done", name));
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return Failed(fmt::format("{}: {} ({}); if it says so again, leave this file as it is and {}", name,
                                kUnsound, fault.what(), kGoBack));
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return Failed(fmt::format("{}: the book cannot be written to: {}", name, what_forbids_writing(file)));
    case SQLITE_FULL:
      return Failed(fmt::format("{}: no room on the disk", name));
    case SQLITE_AUTH:
      return Failed(
          fmt::format("{}: something in this file asks for more than a book may ({}); another program has "
                      "changed it; {}",
                      name, fault.what(), kGoBack));
    case SQLITE_CANTOPEN:
      return Failed(
          fmt::format("{}: the book cannot be opened; look at the rights of the file and its folder", name));
    default:
      return Failed(
          fmt::format("{}: {}; try again, and if it says so again, look at the disk", name, fault.what()));
  }
}

namespace {

/// A book may come from a stranger: nothing that stands in it runs by itself, and what is in double quotes is a name.
void trust_nothing(sqlite3* handle) {
  for (const auto& [option, on] : {std::pair{SQLITE_DBCONFIG_DEFENSIVE, 1},
                                   {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
                                   {SQLITE_DBCONFIG_ENABLE_TRIGGER, 0},
                                   {SQLITE_DBCONFIG_DQS_DDL, 0},
                                   {SQLITE_DBCONFIG_DQS_DML, 0}}) {
    if (sqlite3_db_config(handle, option, on, nullptr) != SQLITE_OK)
      throw Failed("this SQLite is too old for a book: it does not know option " + std::to_string(option));
  }
}

}  // namespace

namespace {

/// Waits a little; 0 when that was long enough. Each try is a little later than the one before, so that a short deed
/// of another is followed at once and a long one is not asked after too often.
int wait_for_turn(void* patience_given, int tries) {
  constexpr int kLongest = 25;
  constexpr int kTold = 1000;
  auto& patience = *static_cast<Patience*>(patience_given);
  if (tries == 0) patience.waited = 0;
  if (patience.waited >= kBusyMilliseconds) return 0;
  const int before = patience.waited;
  const int some = std::min(1 + tries, kLongest);
  sqlite3_sleep(some);
  patience.waited += some;
  if (before < kTold && patience.waited >= kTold && patience.tell) patience.tell();
  return 1;
}

}  // namespace

std::unique_ptr<SQLite::Database> connect(const std::string& file, int flags, Patience& patience) {
  auto database = connect(file, flags);
  sqlite3_busy_handler(database->getHandle(), wait_for_turn, &patience);
  return database;
}

std::unique_ptr<SQLite::Database> connect(const std::string& file, int flags) {
  // One thread a book: without the lock around every call, reading many rows is a tenth quicker.
  auto database = std::make_unique<SQLite::Database>(file, flags | SQLite::OPEN_NOMUTEX);
  sqlite3_busy_timeout(database->getHandle(), kBusyMilliseconds);
  trust_nothing(database->getHandle());
  // A rollback journal with EXTRA syncs the folder too once the journal is gone: with FULL a power cut just after
  // a commit can bring the journal back and undo it. WAL with FULL keeps as much. Timed on ext4 with rows of the
  // same shape: one post by one program, opening and closing included, takes 20 to 24 ms with the rollback journal
  // and 24 to 29 ms with WAL, whose log is folded back into the file at the end. Only many posts by one open program
  // are quicker with WAL (230 of them in 1 s instead of 5), and a WAL book cannot simply be read where it must not
  // be written (SQLite, Write-Ahead Logging, "Read-Only Databases").
  database->exec(
      "PRAGMA foreign_keys = ON;"
      "PRAGMA synchronous = EXTRA;"
      "PRAGMA cell_size_check = ON;");  // a damaged page is noticed when it is read
  // A writer makes no file beside the book but the rollback journal. A reader sorts: in SQLite that is a fifth quicker
  // with room kept in one piece, which it does not do under temp_store = MEMORY; what outgrows 64 MB goes to a file.
  database->exec((flags & SQLite::OPEN_READONLY) != 0 ? "PRAGMA cache_size = -65536"
                                                      : "PRAGMA temp_store = MEMORY");
  watch(database->getHandle());
  return database;
}

}  // namespace kerfbook::book
