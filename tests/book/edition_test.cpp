// edition_test.cpp -- the editions of the book's tables: the shipped ones, and how a book of an older one becomes the
// newest. The next one is made up here.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "base/error.h"
#include "base/text.h"
#include "book/schema.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
namespace fs = std::filesystem;
using kerfbook::tests::Shelf;

namespace {

int newest() {
  return shipped_editions().back().number;
}

std::string schema_text() {
  return Shelf::slurp(fs::path(KERFBOOK_ROOT) / "schema" / fmt::format("{:03}_book.sql", newest()));
}

std::string with(std::string text, const std::string& old, const std::string& fresh) {
  const auto at = text.find(old);
  REQUIRE(at != std::string::npos);
  return text.replace(at, old.size(), fresh);
}

/// A next edition with a table more, a column more in a worked-out table and in the journal, and an index less.
Editions with_a_next() {
  std::string text = schema_text();
  text = with(text, "  why         TEXT NOT NULL, ",
              "  seen        INTEGER NOT NULL DEFAULT 7,\n  why         TEXT NOT NULL, ");
  text = with(text, "CREATE TABLE note (",
              "CREATE TABLE shed (id INTEGER PRIMARY KEY) STRICT;\nCREATE TABLE note (");
  text = with(text, "  text   TEXT NOT NULL,                       -- words\n",
              "  text   TEXT NOT NULL,\n  read   INTEGER NOT NULL DEFAULT 0,\n");
  text = with(text, "CREATE INDEX job_by_owner ON job (owner);\n", "");
  Editions editions = shipped_editions();
  editions.push_back(edition_from(newest() + 1, text));
  return editions;
}

OpenOptions options(const Editions& editions, bool read_only = false) {
  OpenOptions options = Shelf::options(read_only);
  options.editions = &editions;
  return options;
}

std::string sql_of(const fs::path& file) {
  SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
  SQLite::Statement all(database, "SELECT name, sql FROM sqlite_schema ORDER BY name");
  std::string text;
  while (all.executeStep()) text += all.getColumn(0).getString() + ": " + all.getColumn(1).getString() + "\n";
  return text;
}

std::int64_t number_in(const fs::path& file, const std::string& sql) {
  return SQLite::Database(file.string(), SQLite::OPEN_READONLY).execAndGet(sql).getInt64();
}

}  // namespace

TEST_CASE(
    "an older book is brought up to a next edition as if it had been posted in it, and a copy of it is "
    "kept") {
  const Editions editions = with_a_next();
  const Shelf shelf;
  static_cast<void>(shelf.demo_week());
  const std::string bytes = shelf.bytes();
  const std::string text = Shelf::text(shelf.open(true), "SELECT group_concat(digest || body) FROM journal");

  CHECK_THROWS_AS(Book::open(shelf.file(), options(editions, true)), const Refused&);
  CHECK(shelf.bytes() == bytes);
  {
    const Book book = Book::open(shelf.file(), options(editions));
    for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
    CHECK(Shelf::text(book, "SELECT group_concat(digest || body) FROM journal") == text);
  }
  CHECK(shelf.names() == std::vector<std::string>{"mill.book", "mill.book.copies"});
  const fs::path copy = shelf.folder() / "mill.book.copies" /
                        fmt::format("mill.book.2026-06-01-200000.before-edition{}.copy", newest());
  CHECK(Book::open(copy, Shelf::options(true)).verify().empty());
  CHECK(Shelf::text(Book::open(copy, Shelf::options(true)),
                    "SELECT group_concat(digest || body) FROM journal") == text);
  CHECK(number_in(shelf.file(), "PRAGMA user_version") == newest() + 1);
  CHECK(number_in(shelf.file(), "SELECT min(seen) FROM journal") == 7);

  const fs::path fresh = shelf.folder() / "fresh.book";
  static_cast<void>(Book::create(fresh, options(editions)));
  CHECK(sql_of(shelf.file()) == sql_of(fresh));
}

TEST_CASE("a book of the next edition is refused by a program that knows those before it alone") {
  const Editions editions = with_a_next();
  const Shelf shelf;
  static_cast<void>(Book::create(shelf.file(), options(editions)));
  const std::string bytes = shelf.bytes();
  for (const bool read_only : {true, false}) {
    try {
      static_cast<void>(shelf.open(read_only));
      FAIL("opened");
    } catch (const Refused& refused) {
      CHECK(std::string(refused.what())
                .find(fmt::format("written by a newer kerfbook (book edition {}, this program knows {})",
                                  newest() + 1, newest())) != std::string::npos);
    }
  }
  CHECK(shelf.bytes() == bytes);
}

TEST_CASE("a book that fails to be brought up to a next edition is as it was, beside its copy") {
  Editions editions = with_a_next();
  editions.back().things.push_back({Thing::Kind::table, "wrong", "CREATE TABLE wrong (nothing"});
  const Shelf shelf;
  static_cast<void>(shelf.demo_week());
  const std::string rows = Shelf::dump(shelf.open(true));
  CHECK_THROWS_AS(Book::open(shelf.file(), options(editions)), const Error&);
  CHECK(Shelf::dump(shelf.open(true)) == rows);
  CHECK(shelf.open(true).verify().empty());
}

TEST_CASE("editions count from 1 without a gap, and each is whole: a remark says what every column holds") {
  const Editions& editions = shipped_editions();
  for (std::size_t i = 0; i < editions.size(); ++i) {
    CHECK(editions[i].number == static_cast<int>(i) + 1);
    CHECK(editions[i].things.front().name == "journal");
  }
  for (const auto& thing : editions.back().things) {
    if (thing.kind != Thing::Kind::table) continue;
    for (const auto line : split_lines(thing.sql)) {
      const bool column = line.starts_with("  ") && line[2] != ' ' && line.find("PRIMARY KEY (") != 2 &&
                          line.find("FOREIGN KEY") != 2 && line.find("UNIQUE (") != 2;
      if (column)
        CHECK_MESSAGE(line.find("--") != std::string_view::npos, thing.name, ": ", std::string(line));
    }
  }
}
