// kept_test.cpp -- books of editions that were shipped, kept as text in editions/: each must be read for ever. A kept book
// is written once, when its edition is made (KERFBOOK_GOLDEN=update), and not again. Its views are left out: every program has its own.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>

#include "book/schema.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
namespace fs = std::filesystem;
using kerfbook::tests::Shelf;

namespace {

fs::path kept_book(int edition) {
  return fs::path(KERFBOOK_ROOT) / "tests" / "book" / "editions" / fmt::format("edition_{}.sql", edition);
}

/// The SQL that makes the book again, as it stands in the file.
std::string as_sql(const fs::path& file) {
  SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
  std::string sql;
  for (const char* number : {"application_id", "user_version"})
    sql += fmt::format("PRAGMA {0} = {1};\n", number,
                       database.execAndGet(fmt::format("PRAGMA {}", number)).getString());
  SQLite::Statement things(
      database, "SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL AND type <> 'view'");
  while (things.executeStep()) sql += things.getColumn(2).getString() + ";\n";
  things.reset();
  while (things.executeStep()) {
    const std::string name = things.getColumn(1).getString();
    if (things.getColumn(0).getString() != "table") continue;
    std::string values;
    SQLite::Statement columns(database, fmt::format("SELECT name FROM pragma_table_info('{}')", name));
    while (columns.executeStep())
      values += fmt::format("{}quote(\"{}\")", values.empty() ? "" : " || ', ' || ",
                            columns.getColumn(0).getString());
    SQLite::Statement rows(database, fmt::format("SELECT {} FROM {}", values, name));
    while (rows.executeStep())
      sql += fmt::format("INSERT INTO {} VALUES ({});\n", name, rows.getColumn(0).getString());
  }
  return sql;
}

/// A book with a mill file, sheets, a correction and a paper; on its last sheet what edition 2 is the first to keep.
std::string book_of_today() {
  const Shelf shelf;
  Book book = shelf.few_days();
  book.post_paper("Invoice 1", "its text", "");
  book.post_sheet(
      "sheet 2026-05-11\nsite yard\nteeth edger full-set 18\n"
      "setup 3 kerf 0.26 edger 0.24 third 0.2 lead 1/16 feed 55 zero -1/32 tooth chrome pointer set\n"
      "log 14x12\n2x6 3/12\nresidue slabs 1.5 cord for the stove\nblade head changed dull\nmove yard to Fenn "
      "4 mi\n",
      "");
  return as_sql(shelf.file());
}

std::string journal_of(const fs::path& file) {
  SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
  SQLite::Statement rows(
      database,
      "SELECT entry, kind, subject, revision, at, why, body, digest, keeps_rules FROM journal "
      "ORDER BY entry");
  std::string text;
  while (rows.executeStep()) {
    for (int i = 0; i < rows.getColumnCount(); ++i) text += rows.getColumn(i).getString() + "\n";
  }
  return text;
}

}  // namespace

TEST_CASE("a book of every edition that was shipped opens in today's program, with its journal as it was") {
  const int newest = shipped_editions().back().number;
  const char* mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string_view(mode) == "update" && !fs::exists(kept_book(newest)))
    std::ofstream(kept_book(newest)) << book_of_today();
  for (int edition = 1; edition <= newest; ++edition) {
    CAPTURE(edition);
    const Shelf shelf;
    const std::string sql = Shelf::slurp(kept_book(edition));
    REQUIRE_MESSAGE(!sql.empty(), kept_book(edition).string());
    SQLite::Database(shelf.file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
        .exec("BEGIN;" + sql + "COMMIT");
    REQUIRE(as_sql(shelf.file()) == sql);
    const std::string journal = journal_of(shelf.file());
    {
      Book book = shelf.open();
      for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
      CHECK(book.newest().entry == (edition == 1 ? 6 : 7));
      book.rebuild();
    }
    CHECK(journal_of(shelf.file()) == journal);
    CHECK(shelf.open(true).verify().empty());
    if (edition == newest) CHECK(as_sql(shelf.file()) == sql);
  }
}
