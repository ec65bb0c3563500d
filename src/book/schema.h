// schema.h -- the tables and views of a book: which editions this program knows, and how an older one becomes the
// newest. Whether a book holds those and nothing else is asked in schema_check.h.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "book/store.h"

namespace kerfbook::book {

/// application_id in the file's header: the letters KFBK. What tells a book from any other SQLite file.
constexpr std::int32_t kApplicationId = 0x4B46424B;

/// A table, index or view, with the words SQLite keeps of it: CREATE ... without the semicolon.
struct Thing {
  enum class Kind { table, index, view };
  Kind kind = Kind::table;
  std::string name;
  std::string sql;
};

/// One edition of the tables and their indexes, in the order in which they are written: what a table points at comes
/// before it. The number stands in a book's user_version.
struct Edition {
  int number = 0;
  std::vector<Thing> things;
};
/// By number, the newest last. Tests hand in one that is not shipped (OpenOptions::editions).
using Editions = std::vector<Edition>;

/// Of the text of a schema/NNN_book.sql.
Edition edition_from(int number, std::string_view sql);
/// Those of schema/.
const Editions& shipped_editions();

/// The tables and indexes of the edition in a file that has none, and its number. Inside a transaction.
void make_tables(SQLite::Database& database, const Edition& edition);
/// Every table but the journal made anew, empty, with its indexes; the journal is left alone, its indexes are filled
/// anew. What is no part of a book and does it no harm is taken away. Inside a transaction.
void remake_tables(SQLite::Database& database, const Edition& edition);
/// From an older edition to a newer, every table but the journal being left empty. Inside a transaction.
void raise_edition(SQLite::Database& database, const Edition& from, const Edition& to);
int edition_of(Store& store);

/// How a column that is worked out from others of its row is, by the newest edition: "logs > unscaled_logs" of `scaled`
/// in `run`. For those who must work it out from figures of their own.
std::string_view flag_rule(std::string_view table, std::string_view column);

/// The views of schema/views/, in the order they are written there.
const std::vector<Thing>& program_views();
/// Drops the book's views. Inside a transaction, or on a copy.
void drop_views(Store& store);
/// Drops them and makes this program's. Inside a transaction.
void renew_views(Store& store);
/// Makes those that are not there yet for this connection alone, in front of the book's own: for a book that must not be
/// written to and has others.
void make_temporary_views(SQLite::Database& database);
/// A name as SQL takes it, whatever stands in it: it may come out of a file.
std::string as_name(const std::string& name);

}  // namespace kerfbook::book
