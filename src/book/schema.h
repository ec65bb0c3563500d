// schema.h -- the tables and views of a book: which edition this program keeps, and how an older one becomes it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "book/store.h"

namespace kerfbook::book {

/// application_id in the file's header: the letters KFBK. What tells a book from any other SQLite file.
constexpr std::int32_t kApplicationId = 0x4B46424B;

/// The newest edition of the schema: the number of the last schema/NNN_*.sql. A book's own stands in its
/// user_version.
int newest_edition();
/// Runs every numbered file after edition `from` (0 = a new book) and sets the new edition. Inside a transaction.
void raise_edition(SQLite::Database& database, int from);
int edition_of(Store& store);

struct View {
  std::string name;
  std::string sql;  ///< as SQLite keeps it: CREATE VIEW ... without the semicolon
};
/// The views of schema/views.sql, in the order they are written there.
const std::vector<View>& program_views();
/// True when the book's own views are, word for word, those of this program.
bool views_are_current(Store& store);
/// Drops the book's views and makes this program's. Inside a transaction.
void renew_views(Store& store);
/// Makes them for this connection alone, in front of the book's own: for a book that must not be written to.
void make_temporary_views(SQLite::Database& database);

}  // namespace kerfbook::book
