// open.cpp -- making and opening a book: what is no book is refused before SQLite touches it.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <fstream>

#include "base/error.h"
#include "base/sync.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/core.h"
#include "book/files.h"
#include "book/leftover.h"
#include "book/schema.h"
#include "book/schema_check.h"

namespace kerfbook::book {
namespace {

namespace fs = std::filesystem;

// Of the SQLite file format (SQLite Database File Format, section 1.3): what the first 100 bytes of a file hold.
constexpr std::size_t kHeaderBytes = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

using Header = std::array<char, kHeaderBytes>;

std::int32_t big_endian(const Header& header, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) value = value << 8 | static_cast<unsigned char>(header[at + i]);
  return static_cast<std::int32_t>(value);
}

Header read_header(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw Failed(fmt::format("{}: cannot be read ({})", file.string(), std::strerror(errno)));
  Header header{};
  stream.read(header.data(), header.size());
  if (stream.gcount() == 0) {
    throw Refused(fmt::format(
        "{}: is an empty file, not a book; make one under another name with kerfbook new", file.string()));
  }
  if (static_cast<std::size_t>(stream.gcount()) < kHeaderBytes ||
      std::string_view(header.data(), kMagic.size()) != kMagic) {
    throw Refused(fmt::format("{}: is not a book; give the file that kerfbook new made", file.string()));
  }
  return header;
}

/// Looks at the file without opening it as a database, so that what is refused is left as it was.
void check_is_book(const fs::path& file, int newest) {
  std::error_code error;
  const auto status = fs::status(file, error);
  if (!fs::exists(status)) {
    throw Refused(fmt::format("{0}: there is no such book; kerfbook new {0} makes one", file.string()));
  }
  if (fs::is_directory(status)) throw Refused(fmt::format("{}: is a folder, not a book", file.string()));
  if (!fs::is_regular_file(status))
    throw Refused(fmt::format("{}: is no plain file, so no book", file.string()));
  const Header header = read_header(file);
  if (big_endian(header, kApplicationIdAt) != kApplicationId) {
    throw Refused(fmt::format("{}: is another program's database, not a book", file.string()));
  }
  const auto edition = big_endian(header, kUserVersionAt);
  if (edition > newest) {
    throw Refused(fmt::format(
        "{}: was written by a newer kerfbook (book edition {}, this program knows {}); use that one",
        file.string(), edition, newest));
  }
  if (edition < 1) {
    throw Failed(fmt::format("{}: the book is damaged (its header has edition {}); {}", file.string(),
                             edition, kGoBack));
  }
}

/// The first read of the file. Undoes what a killed writer left half done, and notices a file cut short.
void first_read(SQLite::Database& database) {
  database.execAndGet("SELECT count(*) FROM sqlite_schema");
}

/// What a killed writer left beside the book: played back when it had begun to change the file, else of no use.
/// A reader cannot clear it, and SQLite leaves one of no use until the next write, so it is done here, that an idle
/// book is one file. Going from a journal that is kept to one that is deleted, SQLite deletes it under a writer's
/// lock; while another program is writing it does nothing, so that one's is safe.
void clear_leftover(const std::string& path, Patience& patience) {
  const auto database = connect(path, SQLite::OPEN_READWRITE, patience);
  first_read(*database);
  database->execAndGet("PRAGMA journal_mode = PERSIST");
  database->execAndGet("PRAGMA journal_mode = DELETE");
}

std::unique_ptr<SQLite::Database> open_database(const fs::path& file, bool read_only, Patience& patience) {
  // Never a name that SQLite reads as something else; and the file itself where `file` is a link to it, since that is
  // where its journal lies.
  const std::string path = fs::canonical(file).string();
  std::error_code ignored;
  if (fs::exists(rollback_journal_of(path), ignored)) {
    check_leftover(path);
    clear_leftover(path, patience);
  }
  auto database = connect(path, read_only ? SQLite::OPEN_READONLY : SQLite::OPEN_READWRITE, patience);
  first_read(*database);
  return database;
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

/// What another program has put into the book, or taken out of it, is told before anything else of it is read.
SchemaDoubts checked(Core& core) {
  SchemaDoubts doubts = check_schema(core.store, core.edition(), core.newest());
  if (doubts.strange.empty()) return doubts;
  constexpr std::size_t kShown = 3;
  const std::size_t shown = std::min(kShown, doubts.strange.size());
  std::string what =
      join({doubts.strange.begin(), doubts.strange.begin() + static_cast<std::ptrdiff_t>(shown)}, "; ");
  if (shown < doubts.strange.size()) what += fmt::format("; and {} more", doubts.strange.size() - shown);
  throw Refused(fmt::format("{}: {}; another program has changed this file, so it is not opened; {}",
                            core.file.string(), what, kGoBack));
}

void bring_up_to_date(Core& core, bool read_only) {
  const SchemaDoubts doubts = checked(core);
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
  core->store.run("BEGIN IMMEDIATE");
  make_tables(*core->database, core->newest());
  renew_views(core->store);
  core->store.run("COMMIT");
  return core;
}

}  // namespace

bool is_book(const fs::path& file) {
  std::error_code error;
  if (!fs::is_regular_file(file, error)) return false;
  std::ifstream stream(file, std::ios::binary);
  Header header{};
  stream.read(header.data(), header.size());
  return static_cast<std::size_t>(stream.gcount()) == kHeaderBytes &&
         std::string_view(header.data(), kMagic.size()) == kMagic &&
         big_endian(header, kApplicationIdAt) == kApplicationId;
}

namespace {

/// Refused when a new book cannot have this name.
void check_name(const fs::path& file) {
  std::error_code error;
  if (fs::exists(fs::symlink_status(file, error))) {
    throw Refused(fmt::format("{}: is there already; a new book needs a new name", file.string()));
  }
  // Of a book that was here and was lost: SQLite would play it back into the new one.
  if (const auto left = rollback_journal_of(file); fs::exists(fs::symlink_status(left, error))) {
    throw Refused(fmt::format("{}: is left of another book of that name; move it away, or take a new name",
                              left.string()));
  }
  const auto folder = fs::absolute(file).parent_path();
  if (!fs::is_directory(folder, error))
    throw Refused(fmt::format("{}: there is no such folder", folder.string()));
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
    return open(file, options);
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
    return open(file, options);
  });
}

Book Book::open(const fs::path& file, const OpenOptions& options) {
  check_is_book(file, newest_of(options).number);
  return guarded(file, [&] {
    auto patience = std::make_unique<Patience>(Patience{options.waiting});
    auto database = open_database(file, options.read_only, *patience);
    auto core = std::make_unique<Core>(file, options, std::move(patience), std::move(database));
    bring_up_to_date(*core, options.read_only);
    core->projector.refresh();
    return Book(std::make_unique<Inside>(Inside{std::move(core)}));
  });
}

}  // namespace kerfbook::book
