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

namespace {

/// What running the SQL to its end says; empty when it is answered.
std::string outcome(const book::Book& book, const std::string& sql, Limits limits = {}) {
  try {
    Query query(book.database().getHandle(), sql, limits);
    while (query.step()) {
    }
    return "";
  } catch (const SqlFault& fault) {
    return fault.what();
  }
}

/// SQL for a text of so many letters.
std::string letters(int count, const std::string& letter = "a") {
  return "substr(replace(hex(zeroblob(8000)),'0','" + letter + letter + "'),1," + std::to_string(count) + ")";
}

const std::string kNumbersTo = "(WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ";

}  // namespace

TEST_CASE("a text a report makes is at most as long as a cell holds, whatever function makes it") {
  const auto book = demo_week();
  const std::string words =
      "it makes a text of more than 32,767 bytes, the most a cell holds; make a shorter one";
  for (const std::string& sql :
       std::vector<std::string>{"length(zeroblob(900000000))", "length(randomblob(900000000))",
                                "hex(zeroblob(20000))", "replace(hex(zeroblob(16000)),'0','aaaaaaaaaa')",
                                "quote(zeroblob(20000))", "hex(zeroblob(16000)) || hex(zeroblob(16000))"}) {
    CHECK_MESSAGE(outcome(book, "SELECT " + sql) == words, sql);
  }
  CHECK(outcome(book, "SELECT group_concat(i) FROM " + kNumbersTo + "1000000) SELECT i FROM n)") == words);
  CHECK(outcome(book, "SELECT json_group_array(i) FROM " + kNumbersTo + "1000000) SELECT i FROM n)") ==
        words);
  Query wide(book.database().getHandle(), "SELECT printf('%*d', 900000000, 1)");
  REQUIRE(wide.step());
  CHECK(std::holds_alternative<std::monostate>(wide.value(0)));
}

TEST_CASE("no single call of a function outlasts the clock by more than a moment, for its texts are short") {
  const auto book = demo_week();
  for (const std::string& sql : std::vector<std::string>{
           "instr(" + letters(32000) + "," + letters(16000) + "||'b')",
           "replace(" + letters(32000) + "," + letters(16000) + "||'b','')",
           "trim(" + letters(30000) + "," + letters(2000, "z") + "||'a')",
           letters(32000) + " LIKE '%" + std::string(900, '_') + "%b'",
           letters(32000) + " GLOB '*" + std::string(900, '?') + "*b'",
           "json_patch('[" + std::string(8000, '1') + "]','{}')", "soundex(" + letters(32000) + ")",
           "rule_words(" + letters(32000) + ")", "lower(" + letters(32000) + ")"}) {
    const auto start = std::chrono::steady_clock::now();
    outcome(book, "SELECT " + sql);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    CHECK_MESSAGE(took.count() < 10, sql.substr(0, 20));
  }
  const auto start = std::chrono::steady_clock::now();
  const std::string slow = "trim(" + letters(30000) + "," + letters(2000, "z") + "||'a')";
  CHECK(outcome(book,
                "SELECT max(length(" + slow + " || i)) FROM " + kNumbersTo + "1000000) SELECT i FROM n)",
                {.time = std::chrono::milliseconds(1)}) ==
        "it takes longer than 30 seconds; a WITH RECURSIVE without an end?");
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  CHECK(took.count() < 30);
}

TEST_CASE("patterns, arguments, columns and the SELECT itself have an end") {
  const auto book = demo_week();
  CHECK(outcome(book, "SELECT 'a' LIKE " + letters(2000)) == "LIKE or GLOB pattern too complex");
  std::string columns = "1";
  for (int i = 0; i < 200; ++i) columns += ",1";
  CHECK(outcome(book, "SELECT " + columns) == "too many columns in result set");
  CHECK(outcome(book, "SELECT char(" + columns + ")") == "too many arguments on function char");
  std::string sum = "1";
  for (int i = 0; i < 300; ++i) sum += "+1";
  CHECK(outcome(book, "SELECT " + sum) == "Expression tree is too large (maximum depth 200)");
  CHECK(outcome(book, "SELECT 1 --" + std::string(300'000, 'x')) != "");
  // each WITH table twice in the next: 2^40 of them
  std::string doubling = "WITH a0 AS (SELECT day FROM v_run)";
  for (int i = 1; i <= 40; ++i) {
    const std::string one = "a" + std::to_string(i - 1);
    doubling += ", a" + std::to_string(i) + " AS (SELECT x.day FROM " + one + " x, " + one + " y)";
  }
  CHECK(outcome(book, doubling + " SELECT count(*) FROM a40") != "");
}

TEST_CASE("memory that grows with the rows has an end, and the connection goes on as before") {
  const auto book = demo_week();
  const auto before = sqlite3_hard_heap_limit64(-1);
  const std::string many = kNumbersTo + "100000000) SELECT i FROM n)";
  CHECK(outcome(book, "SELECT count(*) FROM (SELECT json_group_object(i, " + letters(30000) + ") FROM " +
                          many + ")") == "it takes more than 256 MiB of memory; ask for less at once");
  CHECK(sqlite3_hard_heap_limit64(-1) == before);
  CHECK(sqlite3_limit(book.database().getHandle(), SQLITE_LIMIT_LENGTH, -1) > kLongestText);
  CHECK(rows_of(book, "sheet") == 5);
}
