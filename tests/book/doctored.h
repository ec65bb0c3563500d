// doctored.h -- books that somebody has doctored, one kind after another: what doctored_test.cpp opens, verifies and posts
// to. Each is a whole book of a week in which one thing was changed, by SQL or byte by byte.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>
#include <string>
#include <vector>

#include "book/shelf.h"

namespace kerfbook::tests {

/// What is to come of a book doctored so.
enum class Fate {
  refused,   ///< not opened at all; the file is left as it is
  told,      ///< opened; verify tells of it
  noticed,   ///< one of the two
  harmless,  ///< opened, its rows are those of the book it was made from, and verify finds nothing
};

struct Doctored {
  std::string name;
  Fate fate = Fate::refused;
  std::function<void(const Shelf&)> deed;
  bool mended = false;  ///< rebuild puts it right
};

/// Things in the schema that are no part of a book, or not as a book has them. Some call canary(), which no book may.
std::vector<Doctored> doctored_schemas();
/// Rows changed, in the journal and in what is worked out from it.
std::vector<Doctored> doctored_rows();
/// The file itself: its head, its pages, and what lies beside it.
std::vector<Doctored> doctored_files();

// ---- how it is done

/// Runs the SQL on the book as any program can that has SQLite.
std::function<void(const Shelf&)> by_sql(const std::string& sql);
/// The same with sqlite_schema open to be written.
std::function<void(const Shelf&)> by_schema(const std::string& sql);
/// The same while the tables take values of every type, NULL too, and check nothing.
std::function<void(const Shelf&)> loosely(const std::string& sql);
/// `first` is run with every index, `then` with none in the schema, so that the indexes do not follow.
std::function<void(const Shelf&)> behind_indexes(const std::string& first, const std::string& then);
/// The bytes of the file.
std::function<void(const Shelf&)> by_bytes(const std::function<void(std::string&)>& change);
/// The two functions that give away that something in a book was run: canary(), and canary_meek(), which says of itself
/// that it is harmless. On every connection made from now on.
void set_canaries();
/// How often they have sung; counted from 0 again.
int canaries_sung();

}  // namespace kerfbook::tests
