// doctored_schemas.cpp -- see doctored.h.
#include <fmt/format.h>
#include <sqlite3.h>

#include "book/doctored.h"
#include "book/schema.h"

namespace kerfbook::tests {
namespace {

using Kinds = std::vector<Doctored>;

void add(Kinds& kinds, Fate fate, const std::string& name, const std::string& sql) {
  kinds.push_back({name, fate, by_sql(sql)});
}

/// Where a table, index or view stands in the schema with these words instead of those.
void add_edit(Kinds& kinds, const std::string& thing, const std::string& words, const std::string& instead) {
  kinds.push_back(
      {fmt::format("the words of {} say '{}'", thing, instead), Fate::refused,
       by_schema(fmt::format("UPDATE sqlite_schema SET sql = replace(sql, '{}', '{}') WHERE name = '{}'",
                             words, instead, thing))});
}

/// A row of sqlite_schema changed.
void add_row(Kinds& kinds, const std::string& name, const std::string& sql, Fate fate = Fate::refused) {
  kinds.push_back({"sqlite_schema: " + name, fate, by_schema(sql)});
}

void add_views(Kinds& kinds) {
  const char* const as = " AS SELECT canary() AS a, canary_meek() AS b";
  for (const char* name : {R"("x""; DROP TABLE journal; --")", R"("x'; DROP TABLE journal; --")", "V_RUN2",
                           "\"sheet \"", "\"\"", "\"a\nb\x1b[2Jc\"", "\"\xff\xfe\"", "\"Journal.entry\"",
                           "\"main\"", "v_new", "\"\xe2\x80\xae view\"", "pragma_table_info", "\"1\""})
    add(kinds, Fate::refused, std::string("a view more, called ") + name,
        std::string("CREATE VIEW ") + name + as);
  add(kinds, Fate::harmless, "v_run answers something else",
      "DROP VIEW v_run; CREATE VIEW v_run AS SELECT 1 AS old");
  add(kinds, Fate::harmless, "v_run calls canaries", std::string("DROP VIEW v_run; CREATE VIEW v_run") + as);
  add(kinds, Fate::harmless, "v_log reads a table that is not there",
      "DROP VIEW v_log; CREATE VIEW v_log AS SELECT * FROM nowhere");
  add(kinds, Fate::harmless, "v_log goes round in a ring",
      "DROP VIEW v_log; CREATE VIEW v_log AS SELECT * FROM v_log");
  add(kinds, Fate::harmless, "a view is missing", "DROP VIEW v_run");
  add(kinds, Fate::refused, "v_run is called V_RUN", "DROP VIEW v_run; CREATE VIEW V_RUN AS SELECT 1 AS old");
  add(kinds, Fate::refused, "a trigger instead of writing to v_run",
      "CREATE TRIGGER t INSTEAD OF INSERT ON v_run BEGIN SELECT canary(), canary_meek(); END");
}

void add_triggers(Kinds& kinds) {
  for (const auto& thing : book::shipped_editions().back().things) {
    if (thing.kind != book::Thing::Kind::table) continue;
    for (const char* when : {"BEFORE INSERT", "AFTER DELETE"}) {
      if (thing.name != "journal" && std::string_view(when) == "AFTER DELETE") continue;
      add(kinds, Fate::refused, fmt::format("a trigger {} on {}", when, thing.name),
          fmt::format("CREATE TRIGGER \"t\"\";--\" {} ON {} BEGIN SELECT canary(), canary_meek(); "
                      "DELETE FROM note; END",
                      when, thing.name));
    }
  }
  add(kinds, Fate::refused, "a trigger called as a table is",
      "CREATE TRIGGER tally AFTER INSERT ON log BEGIN SELECT canary_meek(); END");
}

void add_tables(Kinds& kinds) {
  for (const char* sql :
       {"CREATE TABLE extra (x)", "CREATE TABLE \"a'b\"\"c;d\" (x)", "CREATE TABLE \"\xc3\x84rger\" (x)",
        "CREATE TABLE counted (id INTEGER PRIMARY KEY AUTOINCREMENT); INSERT INTO counted VALUES (9)",
        "CREATE TABLE c (x DEFAULT (canary()), y CHECK (canary()), z AS (canary()) STORED)",
        "CREATE TABLE \"\" (x)", "CREATE TABLE v_shadow AS SELECT * FROM log",
        "DROP TABLE note; CREATE TABLE NOTE (x)", "DROP TABLE note",
        "DROP TABLE note; CREATE VIEW note AS SELECT canary_meek() AS day, 1 AS shift, 2 AS number, 't' AS "
        "text",
        "DROP TABLE note; CREATE TABLE note (day, shift, number, text)",
        "ALTER TABLE note ADD COLUMN more TEXT",
        "ALTER TABLE note ADD COLUMN more TEXT AS (canary_meek(text)) VIRTUAL"})
    add(kinds, Fate::refused, sql, sql);
  for (const auto& [option, sql] :
       {std::pair{"ENABLE_FTS5", "CREATE VIRTUAL TABLE found USING fts5(body)"},
        {"ENABLE_FTS4", "CREATE VIRTUAL TABLE found USING fts4(body)"},
        {"ENABLE_RTREE", "CREATE VIRTUAL TABLE boxes USING rtree(id, a, b)"},
        {"ENABLE_DBSTAT_VTAB", "CREATE VIRTUAL TABLE pages USING dbstat(main)"}}) {
    if (sqlite3_compileoption_used(option) != 0) add(kinds, Fate::refused, sql, sql);
  }
}

void add_indexes(Kinds& kinds) {
  for (
      const char* sql :
      {"CREATE INDEX more ON journal (body)", "CREATE UNIQUE INDEX more ON journal (at, body)",
       "CREATE INDEX more ON log (canary_meek(tag))", "CREATE INDEX more ON log (canary(tag))",
       "CREATE INDEX more ON log (tag) WHERE canary_meek(tag)", "CREATE INDEX more ON journal (length(body))",
       "CREATE INDEX \"m\"\"; DROP TABLE journal; --\" ON tally (pieces)",
       "DROP INDEX run_by_job; CREATE INDEX run_by_job ON run (job DESC)",
       "DROP INDEX run_by_job; CREATE INDEX run_by_job ON log (run)",
       "DROP INDEX run_by_job; CREATE INDEX RUN_BY_JOB ON run (job)",
       "DROP INDEX log_by_tag; CREATE INDEX log_by_tag ON log (tag, day, shift, number) WHERE canary_meek()"})
    add(kinds, Fate::refused, sql, sql);
  kinds.push_back({"an index is missing", Fate::told, by_sql("DROP INDEX run_by_job"), true});
  kinds.push_back({"another program's notes on the indexes", Fate::told, by_sql("ANALYZE"), true});
  kinds.push_back({"notes on the indexes that lie", Fate::told,
                   [](const Shelf& shelf) {
                     by_sql("ANALYZE")(shelf);
                     by_sql("UPDATE sqlite_stat1 SET stat = '9999999999999999999 -1 x' || char(0)")(shelf);
                   },
                   true});
}

void add_words(Kinds& kinds) {
  add_edit(kinds, "journal", "why         TEXT NOT NULL", "why TEXT NOT NULL DEFAULT (canary())");
  add_edit(kinds, "journal", "CHECK (revision >= 1)", "CHECK (canary_meek(revision))");
  add_edit(kinds, "journal", "CREATE TABLE journal", "CREATE TABLE JOURNAL");
  add_edit(kinds, "journal", "STRICT", "");
  add_edit(kinds, "journal", "UNIQUE (kind, subject, revision)", "UNIQUE (subject, kind, revision)");
  add_edit(kinds, "tally", "CHECK", "check");
  add_edit(kinds, "log", "COLLATE NOCASE", "COLLATE RTRIM");
  add_edit(kinds, "log", "ON DELETE CASCADE", "ON DELETE SET NULL");
  add_edit(kinds, "note", "-- words", "-- w");
  add_edit(kinds, "note", "text   TEXT", "texts  TEXT");
  add_edit(kinds, "note", "TEXT NOT NULL", "TEXT AS (canary_meek()) STORED");
  add_edit(kinds, "run_by_job", "(job)", "(canary_meek(job))");
}

void add_rows(Kinds& kinds) {
  const std::string root = "UPDATE sqlite_schema SET rootpage = ";
  add_row(kinds, "two tables on one page",
          root + "(SELECT rootpage FROM sqlite_schema WHERE name = 'tally') WHERE name = 'log'");
  add_row(kinds, "an index on its table's page",
          root + "(SELECT rootpage FROM sqlite_schema WHERE name = 'run') WHERE name = 'run_by_job'");
  add_row(kinds, "a table on the schema's own page", root + "1 WHERE name = 'log'");
  for (const char* page :
       {"0", "-1", "999999", "4294967298", "9223372036854775807", "NULL", "'x'", "2.5", "x'01'"})
    add_row(kinds, std::string("a table on page ") + page, root + page + " WHERE name = 'log'");
  add_row(kinds, "an index of SQLite's own on another's page",
          root +
              "(SELECT rootpage FROM sqlite_schema WHERE name = 'run_by_job') WHERE name = "
              "'sqlite_autoindex_journal_1'");
  add_row(
      kinds, "pages of two tables swapped",
      "UPDATE sqlite_schema SET rootpage = (SELECT sum(rootpage) FROM sqlite_schema WHERE name IN ('log', "
      "'tally')) - rootpage WHERE name IN ('log', 'tally')",
      Fate::noticed);
  add_row(kinds, "a table is called a view", "UPDATE sqlite_schema SET type = 'view' WHERE name = 'note'");
  add_row(kinds, "a view is called a table", "UPDATE sqlite_schema SET type = 'table' WHERE name = 'v_run'");
  add_row(kinds, "a kind of thing that is none", "UPDATE sqlite_schema SET type = 'x' WHERE name = 'v_run'");
  add_row(kinds, "a table without words", "UPDATE sqlite_schema SET sql = NULL WHERE name = 'note'");
  add_row(kinds, "a view without words", "UPDATE sqlite_schema SET sql = NULL WHERE name = 'v_run'");
  add_row(kinds, "words that are bytes",
          "UPDATE sqlite_schema SET sql = CAST(sql AS BLOB) WHERE name = 'note'", Fate::harmless);
  add_row(kinds, "words that go on behind a zero byte",
          "UPDATE sqlite_schema SET sql = sql || char(0) || '; DROP TABLE journal' WHERE name = 'note'");
  add_row(kinds, "words that are two statements",
          "UPDATE sqlite_schema SET sql = sql || '; DROP TABLE journal' WHERE name = 'note'");
  add_row(kinds, "words of another statement",
          "UPDATE sqlite_schema SET sql = 'DROP TABLE journal' WHERE name = 'note'");
  add_row(kinds, "words that attach a file",
          "UPDATE sqlite_schema SET sql = 'ATTACH ''canary.db'' AS c' WHERE name = 'note'");
  add_row(kinds, "a name in other letters",
          "UPDATE sqlite_schema SET name = 'NOTE', tbl_name = 'NOTE' WHERE name = 'note'");
  add_row(kinds, "an index said to be another table's",
          "UPDATE sqlite_schema SET tbl_name = 'log' WHERE name = 'run_by_job'");
  add_row(kinds, "a table twice",
          "INSERT INTO sqlite_schema SELECT * FROM sqlite_schema WHERE name = 'note'");
  add_row(kinds, "a view called journal",
          "INSERT INTO sqlite_schema VALUES ('view', 'journal', 'journal', 0, 'CREATE VIEW journal AS SELECT "
          "canary_meek()')");
  add_row(
      kinds, "a table of a module that is not there",
      "INSERT INTO sqlite_schema VALUES ('table', 'm', 'm', 0, 'CREATE VIRTUAL TABLE m USING nowhere(x)')");
  add_row(kinds, "an index of SQLite's own is gone",
          "DELETE FROM sqlite_schema WHERE name = 'sqlite_autoindex_journal_1'");
  add_row(kinds, "an index of SQLite's own more",
          "INSERT INTO sqlite_schema SELECT type, 'sqlite_autoindex_journal_2', tbl_name, rootpage, sql FROM "
          "sqlite_schema WHERE name = 'sqlite_autoindex_journal_1'");
  add_row(kinds, "nothing at all", "DELETE FROM sqlite_schema");
  add_row(kinds, "the journal is gone", "DELETE FROM sqlite_schema WHERE name = 'journal'");
}

}  // namespace

Kinds doctored_schemas() {
  Kinds kinds;
  add_views(kinds);
  add_triggers(kinds);
  add_tables(kinds);
  add_indexes(kinds);
  add_words(kinds);
  add_rows(kinds);
  return kinds;
}

}  // namespace kerfbook::tests
