// core.h -- an open book from the inside: the file, the connection and what works on it. For this room only.
#pragma once

#include <SQLiteCpp/Exception.h>

#include <filesystem>
#include <memory>
#include <string>
#include <utility>

#include "book/book.h"
#include "book/journal.h"
#include "book/projector.h"
#include "book/schema.h"
#include "book/schema_check.h"
#include "book/store.h"

namespace kerfbook::book {

const Edition& newest_of(const OpenOptions& options);

/// How long a connection waits for another that has the book, and what it says meanwhile.
struct Patience {
  std::function<void()> tell = {};  ///< called once in a wait that is longer than a second; may be empty
  int waited = 0;                   ///< milliseconds of the wait there is now
};

struct Core {
  Core(std::filesystem::path path, OpenOptions how, std::unique_ptr<Patience> waits,
       std::unique_ptr<SQLite::Database> open);

  /// The edition that new books are of, and that an older one is raised to.
  [[nodiscard]] const Edition& newest() const { return newest_of(options); }
  /// The edition the file is of. Failed when it is none of those this program knows.
  [[nodiscard]] const Edition& edition();

  std::filesystem::path file;
  OpenOptions options;
  std::unique_ptr<Patience> patience;  // the connection's, so it stays where it is
  std::unique_ptr<SQLite::Database> database;
  Store store;  // prepared statements: gone before the database closes
  Journal journal;
  Projector projector;
  int acts = 0;         ///< Writings that are open, one inside another
  bool undone = false;  ///< one inside the outermost was not committed
  std::int64_t schema_seen =
      -1;              ///< schema_version of the schema that was found to be a book's; -1 = none yet
  bool draft = false;  ///< a new book that has not its name yet, and is gone when anything fails
};

struct Book::Inside {
  std::unique_ptr<Core> core;
};

/// One act of the user: everything since is kept by commit(), or undone when it is not reached. Takes the one
/// writer's place at once and waits for it, so that two writers queue. One may stand inside another; the outermost
/// keeps or undoes them all.
class Writing {
 public:
  explicit Writing(Core& core);
  Writing(const Writing&) = delete;
  Writing& operator=(const Writing&) = delete;
  ~Writing();
  /// Failed when the disk fails, FailedLate when what was written may be in the book all the same.
  void commit();

 private:
  void undo();
  void tell_posted(std::int64_t last);
  [[noreturn]] void tell_of_failed_commit(const Entry& last, const SQLite::Exception& fault);
  Core& core_;
  bool open_ = true;
  std::int64_t begun_ = 0;  ///< number of the newest entry when the outermost began
};

/// What SQLite has to say of a book, as a sentence with the file and what to do.
Error explained(const std::filesystem::path& file, const SQLite::Exception& fault);

/// Runs a deed on the book; what SQLite throws comes out as an Error, and each names the file.
template <class Deed>
auto guarded(const std::filesystem::path& file, Deed&& deed) {
  try {
    return std::forward<Deed>(deed)();
  } catch (const SQLite::Exception& fault) {
    throw explained(file, fault);
  } catch (const JournalFault& fault) {
    throw Failed(file.string() + ": " + fault.what());
  }
}

constexpr int kBusyMilliseconds = 60'000;  ///< how long a writer waits for another to finish

/// Refused when the schema is not a book's: looked at when it is opened, and again by a writer when it has changed since.
/// Gives back what rebuild puts right, and whether the views are this program's.
SchemaDoubts check_schema_of(Core& core);

/// A connection set up as every connection of a book is. No table is read yet. It waits with `patience`, which must
/// outlive it.
std::unique_ptr<SQLite::Database> connect(const std::string& file, int flags, Patience& patience);
/// The same, for a short look: it waits as long, and says nothing meanwhile.
std::unique_ptr<SQLite::Database> connect(const std::string& file, int flags);

/// To read a copy of a book, of whatever edition. Refused when that would leave other files beside it.
std::unique_ptr<SQLite::Database> connect_to_look(const std::filesystem::path& file);

}  // namespace kerfbook::book
