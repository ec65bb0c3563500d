// What a report's SELECT may do: look at the views, once, and come to an end. report/guard.h.
#include "report/guard.h"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include <SQLiteCpp/SQLiteCpp.h>

#include "demo.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

/// What the guard says against the SQL; empty when it lets it pass.
std::string verdict(const book::Book& book, const std::string& sql) {
  try {
    const Query query(book.database().getHandle(), sql);
    return "";
  } catch (const SqlFault& fault) {
    return fault.what();
  }
}

std::int64_t rows_of(const book::Book& book, const std::string& table) {
  return book.database().execAndGet("SELECT count(*) FROM " + table).getInt64();
}

}  // namespace

TEST_CASE("the guard lets a SELECT on the views pass, in every form a report uses") {
  const auto book = demo_week();
  for (const char* sql : {
           "SELECT day, lumber FROM v_run",
           "SELECT count(*) FROM v_tally",
           "SELECT r.day FROM v_run r JOIN v_sheet s ON s.day = r.day  -- a remark\n;  -- and another\n",
           "WITH a AS (SELECT day, sum(lumber) AS bf FROM v_run GROUP BY day) SELECT sum(bf) OVER (ORDER BY "
           "day) FROM a",
           "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5) SELECT i FROM n",
           "SELECT scale_unit('doyle'), net_scale('doyle', '15x12', 0), rule_words('doyle')",
           "SELECT why FROM v_entry",
       }) {
    CHECK_MESSAGE(verdict(book, sql) == "", sql);
  }
}

TEST_CASE("the guard refuses everything else, and nothing is changed by the try") {
  const auto book = demo_week();
  const auto before = rows_of(book, "journal");
  const auto tally = rows_of(book, "tally");
  for (const char* sql : {
           "SELECT 1; SELECT 2",
           "SELECT day FROM v_run; DROP TABLE tally",
           "SELECT day FROM v_run; this is no SQL",
           "",
           "-- only a remark",
           "DELETE FROM tally",
           "INSERT INTO note VALUES (1, 1, 1, 'x')",
           "UPDATE tally SET pieces = 0",
           "DROP VIEW v_run",
           "CREATE TABLE mine (x)",
           "CREATE TEMP TABLE mine (x)",
           "ATTACH 'other.book' AS other",
           "PRAGMA table_info(tally)",
           "PRAGMA journal_mode = OFF",
           "BEGIN",
           "VACUUM",
           "EXPLAIN SELECT day FROM v_run",
           "SELECT pieces FROM tally",
           "SELECT body FROM journal",
           "SELECT name FROM sqlite_schema",
           "SELECT name FROM pragma_table_info('tally')",
           "SELECT v_run.day FROM v_run JOIN tally ON tally.day = v_run.day AND tally.pieces > 0",
           "SELECT load_extension('x')",
           "SELECT nothing FROM v_run",
           "SELEKT day FROM v_run",
       }) {
    CHECK_MESSAGE(verdict(book, sql) != "", sql);
  }
  CHECK(rows_of(book, "journal") == before);
  CHECK(rows_of(book, "tally") == tally);
}

TEST_CASE("a WITH table that takes a view's name does not see what the view does not show") {
  const auto book = demo_week();
  CHECK(verdict(book, "WITH v_entry AS (SELECT body AS why FROM journal) SELECT why FROM v_entry") ==
        "it reads journal.body in the name of v_entry, which does not show it");
  CHECK(verdict(book, "WITH v_mine AS (SELECT digest FROM journal) SELECT digest FROM v_mine") != "");
}

TEST_CASE("a query without an end is stopped, by time or by rows") {
  const auto book = demo_week();
  const std::string endless = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT ";
  Query counting(book.database().getHandle(), endless + "count(*) FROM n",
                 {.time = std::chrono::milliseconds(50)});
  CHECK_THROWS_AS(counting.step(), SqlFault);
  Query pouring(book.database().getHandle(), endless + "i FROM n", {.rows = 1000});
  CHECK_THROWS_WITH_AS(
      [&] {
        while (pouring.step()) {
        }
      }(),
      "it gives more than 1000 rows", SqlFault);
  CHECK(rows_of(book, "sheet") == 5);  // the connection goes on as before
}

TEST_CASE("a number with a fraction is refused: base units are whole, the header divides") {
  const auto book = demo_week();
  Query query(book.database().getHandle(), "SELECT lumber * 1.0 FROM v_run");
  REQUIRE(query.step());
  CHECK_THROWS_AS(static_cast<void>(query.value(0)), SqlFault);
}
