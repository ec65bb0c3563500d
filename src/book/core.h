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
#include "book/store.h"

namespace kerfbook::book {

const Edition& newest_of(const OpenOptions& options);

struct Core {
  Core(std::filesystem::path path, OpenOptions how, std::unique_ptr<SQLite::Database> open);

  /// The edition that new books are of, and that an older one is raised to.
  [[nodiscard]] const Edition& newest() const { return newest_of(options); }
  /// The edition the file is of. Failed when it is none of those this program knows.
  [[nodiscard]] const Edition& edition();

  std::filesystem::path file;
  OpenOptions options;
  std::unique_ptr<SQLite::Database> database;
  Store store;  // prepared statements: gone before the database closes
  Journal journal;
  Projector projector;
};

struct Book::Inside {
  std::unique_ptr<Core> core;
};

/// One act of the user: everything since is kept by commit(), or undone when it is not reached. Takes the one
/// writer's place at once and waits for it, so that two writers queue.
class Writing {
 public:
  explicit Writing(Core& core);
  Writing(const Writing&) = delete;
  Writing& operator=(const Writing&) = delete;
  ~Writing();
  void commit();

 private:
  Core& core_;
  bool open_ = true;
};

/// What SQLite has to say of a book, as a sentence with the file and what to do.
Error explained(const std::filesystem::path& file, const SQLite::Exception& fault);

/// Runs a deed on the book; what SQLite throws comes out as an Error.
template <class Deed>
auto guarded(const std::filesystem::path& file, Deed&& deed) {
  try {
    return std::forward<Deed>(deed)();
  } catch (const SQLite::Exception& fault) {
    throw explained(file, fault);
  }
}

constexpr int kBusyMilliseconds = 30'000;  ///< how long a writer waits for another to finish

/// A connection set up as every connection of a book is. No table is read yet.
std::unique_ptr<SQLite::Database> connect(const std::string& file, int flags);

}  // namespace kerfbook::book
