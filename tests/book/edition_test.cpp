// edition_test.cpp -- a book written by an older program: brought up to date when it is opened to write, a copy kept.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using kerfbook::tests::Shelf;

namespace {

namespace fs = std::filesystem;

/// schema/001_..., 002_... in order.
std::vector<fs::path> schema_files() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(fs::path(KERFBOOK_ROOT) / "schema")) {
    if (entry.path().filename().string().front() == '0') files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// 9 of 009_....sql; a number may be missing.
int edition_of(const fs::path& file) {
  return std::stoi(file.filename().string().substr(0, 3));
}

std::string columns_in_both(SQLite::Database& database, const std::string& table) {
  std::string columns;
  SQLite::Statement query(database, fmt::format("SELECT o.name FROM pragma_table_info('{0}') o JOIN "
                                                "pragma_table_info('{0}', 'newer') n ON n.name = o.name",
                                                table));
  while (query.executeStep()) columns += (columns.empty() ? "" : ", ") + query.getColumn(0).getString();
  return columns;
}

/// The book `newer` as a program of an older edition had it: the tables and columns there were, with their rows.
void write_as_of(int edition, const fs::path& newer, const fs::path& older) {
  SQLite::Database database(older.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  database.exec("PRAGMA journal_mode = DELETE");
  for (const fs::path& file : schema_files()) {
    if (edition_of(file) <= edition) database.exec(Shelf::slurp(file));
  }
  database.exec("ATTACH '" + newer.string() + "' AS newer");
  std::vector<std::string> tables;
  SQLite::Statement query(
      database, "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
  while (query.executeStep()) tables.push_back(query.getColumn(0).getString());
  for (const auto& table : tables) {
    const std::string columns = columns_in_both(database, table);
    database.exec(fmt::format("INSERT INTO main.{0} ({1}) SELECT {1} FROM newer.{0}", table, columns));
  }
  const int id = database.execAndGet("PRAGMA newer.application_id").getInt();
  database.exec(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}", id, edition));
}

}  // namespace

TEST_CASE(
    "a book of every older edition, its days corrected, is brought up to date row for row, and a copy of it "
    "is kept") {
  const Shelf shelf;
  std::string rows;
  {
    auto book = shelf.demo_week();
    book.post_sheet(
        "sheet 2026-05-09\nsite yard\njob own\nspecies DF\nbundle B1\n2x6 10/16\nbundle -\nsold cash bundle "
        "B1 "
        "at 60\n",
        "");
    rows = Shelf::dump(book);
  }
  const int newest = edition_of(schema_files().back());
  REQUIRE(newest >= 8);
  for (int edition = 1; edition < newest; ++edition) {
    CAPTURE(edition);
    const fs::path file = shelf.folder() / fmt::format("older{}.book", edition);
    write_as_of(edition, shelf.file(), file);
    const std::string bytes = Shelf::slurp(file);
    CHECK_THROWS_AS(book::Book::open(file, Shelf::options(true)), const Refused&);
    CHECK(Shelf::slurp(file) == bytes);
    const auto book = book::Book::open(file, Shelf::options());
    for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
    CHECK(Shelf::dump(book) == rows);
    CHECK(Shelf::slurp(fmt::format("{}.edition{}", file.string(), edition)) == bytes);
  }
}
