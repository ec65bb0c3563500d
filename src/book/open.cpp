// open.cpp -- making and opening a book: what is no book is refused before SQLite touches it.
#include <fmt/format.h>

#include <sqlite3.h>

#include <algorithm>

#include "base/error.h"
#include "base/sync.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/core.h"
#include "book/file_head.h"
#include "book/files.h"
#include "book/leftover.h"
#include "book/schema.h"
#include "book/schema_check.h"

namespace kerfbook::book {
namespace {

namespace fs = std::filesystem;

/// SQLite says of a file that is shorter than its head has it no more than that it is damaged.
void tell_if_cut_short(const fs::path& path) {
  const FileHead head = read_head(path);
  const std::uintmax_t size = head.page_size();
  const auto there = size == 0 ? 0 : (fs::file_size(path) + size - 1) / size;
  if (there >= head.pages()) return;
  throw Failed(fmt::format(
      "{}: the book is damaged (it is cut short: {} of {} pages are there); leave this file as it is and {}",
      path.string(), there, head.pages(), kGoBack));
}

/// The first read of the file. Undoes what a killed writer left half done, and notices a file cut short.
void first_read(SQLite::Database& database, const std::string& path) {
  try {
    database.execAndGet("SELECT count(*) FROM sqlite_schema");
  } catch (const SQLite::Exception& fault) {
    if (fault.getErrorCode() == SQLITE_CORRUPT) tell_if_cut_short(path);
    throw;
  }
}

/// What a killed writer left beside the book: played back when it had begun to change the file, else of no use.
/// A reader cannot clear it, and SQLite leaves one of no use until the next write, so it is done here, that an idle
/// book is one file. Going from a journal that is kept to one that is deleted, SQLite deletes it under a writer's
/// lock; while another program is writing it does nothing, so that one's is safe.
void clear_leftover(const std::string& path, Patience& patience) {
  const auto database = connect(path, SQLite::OPEN_READWRITE, patience);
  first_read(*database, path);
  database->execAndGet("PRAGMA journal_mode = PERSIST");
  database->execAndGet("PRAGMA journal_mode = DELETE");
}

std::unique_ptr<SQLite::Database> open_database(const fs::path& file, bool read_only, Patience& patience) {
  // Never a name that SQLite reads as something else; and the file itself where `file` is a link to it, since that is
  // where its journal lies.
  const std::string path = fs::canonical(file).string();
  check_no_write_ahead_log(path);
  std::error_code ignored;
  if (fs::exists(fs::symlink_status(rollback_journal_of(path), ignored))) {
    check_leftover(path);
    clear_leftover(path, patience);
  }
  auto database = connect(path, read_only ? SQLite::OPEN_READONLY : SQLite::OPEN_READWRITE, patience);
  first_read(*database, path);
  return database;
}

/// A reader of a book with a log beside it leaves that log behind, and a book is one file.
void check_way_to_read(const FileHead& head, const fs::path& file) {
  if (!head.has_write_ahead_log()) return;
  throw Refused(
      fmt::format("{0}: another program has switched this book to a write-ahead log (WAL), which puts more "
                  "files beside it; kerfbook -b {0} rebuild switches it back",
                  file.string()));
}

/// Back to a rollback journal, when another program has switched the book to a log.
void keep_one_file(Core& core) {
  if (core.database->execAndGet("PRAGMA journal_mode = DELETE").getString() != "delete") {
    throw Failed(fmt::format("{}: another program has the book open; close it there, and try again",
                             core.file.string()));
  }
}

/// Brings an older book up to this program's edition, after a copy of it was made. The writer's place is taken first,
/// so the book is still while it is copied.
void migrate(Core& core) {
  Writing writing(core);
  const Edition& edition = core.edition();
  if (edition.number < core.newest().number) {
    // Through a connection of its own: SQLite copies nothing out of one that is about to write.
    const auto reader = connect(fs::canonical(core.file).string(), SQLite::OPEN_READONLY);
    copy_dated(*reader, core.file, copies_folder(core.file), core.options.now(),
               fmt::format("edition{}", edition.number));
    raise_edition(*core.database, edition, core.newest());
    renew_views(core.store);
    core.projector.rebuild();
  }
  writing.commit();
}

void bring_up_to_date(Core& core, bool read_only) {
  const SchemaDoubts doubts = check_schema_of(core);
  const bool older = core.edition().number < core.newest().number;
  if (read_only) {
    if (older) {
      throw Refused(fmt::format(
          "{}: was written by an older kerfbook; run kerfbook rebuild on it once, which keeps a copy",
          core.file.string()));
    }
    if (!doubts.views_are_current) make_temporary_views(*core.database);
    return;
  }
  if (older) return migrate(core);
  if (doubts.views_are_current) return;
  Writing writing(core);
  renew_views(core.store);
  writing.commit();
}

/// How an error names the new book, and not the draft it is made in.
std::unique_ptr<Core> make_draft(const fs::path& file, const fs::path& draft, const OpenOptions& options) {
  auto patience = std::make_unique<Patience>();
  auto database =
      connect(fs::absolute(draft).string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, *patience);
  auto core = std::make_unique<Core>(file, options, std::move(patience), std::move(database));
  core->draft = true;
  core->database->exec("PRAGMA journal_mode = MEMORY");  // a draft that fails is thrown away whole
  core->store.run("BEGIN IMMEDIATE");
  make_tables(*core->database, core->newest());
  renew_views(core->store);
  core->store.run("COMMIT");
  return core;
}

}  // namespace

/// What another program has put into the book, or taken out of it, is told before anything else of it is read.
SchemaDoubts check_schema_of(Core& core) {
  const std::int64_t version = core.store.number("PRAGMA schema_version").value_or(0);
  SchemaDoubts doubts = check_schema(core.store, core.edition(), core.newest());
  if (doubts.strange.empty()) {
    core.schema_seen = version;
    return doubts;
  }
  constexpr std::size_t kShown = 3;
  const std::size_t shown = std::min(kShown, doubts.strange.size());
  std::string what =
      join({doubts.strange.begin(), doubts.strange.begin() + static_cast<std::ptrdiff_t>(shown)}, "; ");
  if (shown < doubts.strange.size()) what += fmt::format("; and {} more", doubts.strange.size() - shown);
  throw Refused(fmt::format("{}: {}; another program has changed this file, so it is not opened; {}",
                            core.file.string(), what, kGoBack));
}

std::unique_ptr<SQLite::Database> connect_to_look(const fs::path& file) {
  check_way_to_read(read_head(file), file);
  const std::string path = fs::canonical(file).string();
  check_no_write_ahead_log(path);
  return connect(path, SQLite::OPEN_READONLY);
}

bool is_book(const fs::path& file) {
  try {
    const FileHead head = read_head(file);
    return head.is_sqlite() && head.application_id() == kApplicationId;
  } catch (const Refused&) {
    return false;
  }
}

namespace {

/// Refused when a new book cannot have this name.
void check_name(const fs::path& file) {
  std::error_code error;
  if (fs::exists(fs::symlink_status(file, error))) {
    throw Refused(fmt::format("{}: is there already; a new book needs a new name", file.string()));
  }
  // Of a book that was here and was lost: SQLite would play it back into the new one.
  for (const fs::path& left : logs_beside(file)) {
    throw Refused(fmt::format("{}: is left of another book of that name; move it away, or take a new name",
                              left.string()));
  }
  const auto folder = fs::absolute(file).parent_path();
  if (!fs::is_directory(folder, error))
    throw Refused(fmt::format("{}: there is no such folder", folder.string()));
}

/// A book that has its name now, opened as any other.
Book open_made(const fs::path& file, const OpenOptions& options) {
  try {
    return Book::open(file, options);
  } catch (const Error& fault) {
    throw FailedLate(fmt::format("{}: is made, but cannot be opened now: {}", file.string(), fault.what()));
  }
}

}  // namespace

Book Book::create_of(const fs::path& file, const OpenOptions& options, const std::vector<Entry>& entries) {
  check_name(file);
  return guarded(file, [&] {
    DotFile draft(file);
    {
      const auto core = make_draft(file, draft.path(), options);
      Writing writing(*core);
      for (const Entry& entry : entries) core->journal.copy(entry);
      core->projector.rebuild();
      writing.commit();
    }
    draft.keep_as(file);
    return open_made(file, options);
  });
}

Book Book::create(const fs::path& file, const OpenOptions& options, const std::optional<Document>& mill) {
  check_name(file);
  return guarded(file, [&] {
    DotFile draft(file);
    {
      Book book(std::make_unique<Inside>(Inside{make_draft(file, draft.path(), options)}));
      if (mill) book.post_all({{mill->name, mill->text, EntryKind::mill}}, "");
    }
    draft.keep_as(file);
    return open_made(file, options);
  });
}

Book Book::open(const fs::path& file, const OpenOptions& options) {
  const FileHead head = read_head(file);
  check_head(head, file, newest_of(options).number);
  if (options.read_only) check_way_to_read(head, file);
  return guarded(file, [&] {
    auto patience = std::make_unique<Patience>(Patience{options.waiting});
    auto database = open_database(file, options.read_only, *patience);
    auto core = std::make_unique<Core>(file, options, std::move(patience), std::move(database));
    bring_up_to_date(*core, options.read_only);
    if (head.has_write_ahead_log()) keep_one_file(*core);
    core->projector.refresh();
    return Book(std::make_unique<Inside>(Inside{std::move(core)}));
  });
}

}  // namespace kerfbook::book
