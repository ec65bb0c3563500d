// watch_test.cpp -- a connection of a book does what a book needs, whatever is asked of it by what stands in the file
// (SQLite, "Compile-Time Authorization Callbacks").
#include "book/watch.h"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include "base/error.h"
#include "book/core.h"
#include "book/doctored.h"

using namespace kerfbook;
using namespace kerfbook::book;
using namespace kerfbook::tests;

namespace {

/// What SQLite says of the SQL; empty when it does it.
std::string verdict(SQLite::Database& database, const std::string& sql) {
  try {
    database.exec(sql);
    return "";
  } catch (const SQLite::Exception& fault) {
    return fault.what();
  }
}

}  // namespace

TEST_CASE(
    "an open book attaches nothing, makes no trigger and no virtual table, and sets no pragma of another's") {
  const Shelf shelf;
  const Book book = shelf.few_days();
  const std::string before = shelf.bytes();
  for (const std::string& sql :
       {"ATTACH '" + (shelf.folder() / "more.db").string() + "' AS more", std::string("DETACH main"),
        std::string("CREATE TRIGGER t AFTER INSERT ON note BEGIN DELETE FROM log; END"),
        std::string("CREATE TEMP TRIGGER t AFTER INSERT ON note BEGIN DELETE FROM log; END"),
        std::string("CREATE VIRTUAL TABLE f USING fts5(body)"),
        std::string("ALTER TABLE note RENAME TO notes"), std::string("ALTER TABLE note ADD COLUMN x TEXT"),
        std::string("ANALYZE"), std::string("PRAGMA writable_schema = ON"),
        std::string("PRAGMA trusted_schema = ON"), std::string("PRAGMA foreign_keys = OFF"),
        std::string("PRAGMA temp_store_directory = '/'"), std::string("SELECT load_extension('x')"),
        std::string("SELECT fts3_tokenizer('simple')"),
        std::string("VACUUM INTO '") + (shelf.folder() / "more.db").string() + "'"}) {
    CHECK_MESSAGE(verdict(book.database(), sql) != "", sql);
  }
  CHECK(shelf.bytes() == before);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}

TEST_CASE(
    "what stands in a file writes nothing and calls nothing, even were it trusted and its triggers switched "
    "on") {
  set_canaries();
  const Shelf shelf;
  static_cast<void>(shelf.few_days());
  by_sql(
      "CREATE TRIGGER t AFTER INSERT ON species BEGIN DELETE FROM log; END;"
      "CREATE TRIGGER u INSTEAD OF INSERT ON v_run BEGIN DELETE FROM log; END;"
      "CREATE VIEW v_sings AS SELECT canary(), canary_meek()")(shelf);
  const auto database = connect(shelf.file().string(), SQLite::OPEN_READWRITE);
  for (const int option : {SQLITE_DBCONFIG_ENABLE_TRIGGER, SQLITE_DBCONFIG_TRUSTED_SCHEMA})
    REQUIRE(sqlite3_db_config(database->getHandle(), option, 1, nullptr) == SQLITE_OK);
  static_cast<void>(canaries_sung());
  const std::string before = shelf.bytes();
  for (const char* sql : {"INSERT INTO species (code) VALUES ('XX')", "INSERT INTO v_run (day) VALUES (1)",
                          "SELECT * FROM v_sings", "SELECT canary()"})
    CHECK_MESSAGE(verdict(*database, sql) != "", sql);
  CHECK(verdict(*database, "UPDATE note SET text = text WHERE 0") == "");
  CHECK(canaries_sung() == 0);
  CHECK(shelf.bytes() == before);
}

TEST_CASE("a warden is asked in place of the watch on its own connection alone, and only while it stands") {
  struct Nobody : Warden {
    using Warden::Warden;
    bool allows(const Request&) override { return false; }
  };
  const Shelf shelf;
  const Book book = shelf.few_days();
  const Book other = shelf.open(true);
  const std::string sql = "SELECT count(*) FROM log";
  {
    const Nobody nobody(book.database().getHandle());
    CHECK_FALSE(nobody.was_asked());
    CHECK(verdict(other.database(), sql) == "");
    CHECK_FALSE(nobody.was_asked());
    CHECK(verdict(book.database(), sql) != "");
    CHECK(nobody.was_asked());
  }
  CHECK(verdict(book.database(), sql) == "");
}

TEST_CASE("functions that SQLite has built in only compute, but for those that reach out of the book") {
  for (const char* name :
       {"sum", "->>", "strftime", "group_concat", "net_scale", "times_over", "zeroblob", "abs"})
    CHECK_MESSAGE(only_computes(name), name);
  for (const char* name :
       {"load_extension", "readfile", "writefile", "edit", "fts3_tokenizer", "fts5", "sum ", ""})
    CHECK_FALSE_MESSAGE(only_computes(name), name);
}
