#include "book/schema.h"

#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>

#include <set>
#include <stdexcept>

#include "base/text.h"
#include "book/embedded.h"

namespace kerfbook::book {
namespace {

constexpr std::string_view kFolder = "schema/";
constexpr std::string_view kViewFolder = "schema/views/";

/// The number in front of "schema/001_book.sql"; 0 for a file without one.
int number_in(std::string_view path) {
  if (!path.starts_with(kFolder)) return 0;
  int number = 0;
  for (const char c : path.substr(kFolder.size(), 3)) {
    if (c < '0' || c > '9') return 0;
    number = number * 10 + (c - '0');
  }
  return number;
}

/// What follows the blanks and remarks in front.
std::string_view from_first_word(std::string_view sql) {
  for (;;) {
    const auto word = sql.find_first_not_of(" \n");
    if (word == std::string_view::npos) return {};
    sql.remove_prefix(word);
    if (!sql.starts_with("--")) return sql;
    const auto end = sql.find('\n');
    if (end == std::string_view::npos) return {};
    sql.remove_prefix(end);
  }
}

/// A text of SQL cut after each statement, without its semicolon and what stands before it. In schema/ a semicolon at
/// the end of a line ends one, and nothing else does: asking SQLite would take as long as opening a book.
std::vector<std::string> statements_in(std::string_view sql) {
  constexpr std::string_view kEnd = ";\n";
  std::vector<std::string> statements;
  for (sql = from_first_word(sql); !sql.empty();) {
    const auto end = sql.find(kEnd);
    if (end == std::string_view::npos) throw std::logic_error("schema/: no end to: " + std::string(sql));
    statements.emplace_back(sql.substr(0, end));
    sql = from_first_word(sql.substr(end + kEnd.size()));
  }
  return statements;
}

Thing thing_from(std::string sql) {
  using Kind = Thing::Kind;
  for (const auto& [begin, kind] : {std::pair<std::string_view, Kind>{"CREATE TABLE ", Kind::table},
                                    {"CREATE INDEX ", Kind::index},
                                    {"CREATE VIEW ", Kind::view}}) {
    if (!sql.starts_with(begin)) continue;
    const auto end = sql.find_first_of(" \n(", begin.size());
    std::string name = sql.substr(begin.size(), end - begin.size());
    return {kind, std::move(name), std::move(sql)};
  }
  throw std::logic_error("schema/ makes tables, indexes and views only: " + sql);
}

bool is_journal(const Thing& thing) {
  return thing.name == "journal";
}

void set_number(SQLite::Database& database, const Edition& edition) {
  database.exec(
      fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}", kApplicationId, edition.number));
}

/// From the last to the first, so that nothing points at the one that goes and its rows need not be looked at.
void drop_tables(SQLite::Database& database, const Edition& edition) {
  for (auto thing = edition.things.rbegin(); thing != edition.things.rend(); ++thing) {
    if (thing->kind == Thing::Kind::table && !is_journal(*thing))
      database.exec("DROP TABLE IF EXISTS " + as_name(thing->name));
  }
}

std::set<std::string> columns_of(SQLite::Database& database, const std::string& table) {
  std::set<std::string> names;
  SQLite::Statement info(database, fmt::format("SELECT name FROM pragma_table_info('{}')", table));
  while (info.executeStep()) names.insert(info.getColumn(0).getString());
  return names;
}

}  // namespace

std::string as_name(const std::string& name) {
  std::string out = "\"";
  for (const char c : name) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + "\"";
}

Edition edition_from(int number, std::string_view sql) {
  Edition edition{number, {}};
  for (auto& statement : statements_in(sql)) edition.things.push_back(thing_from(std::move(statement)));
  return edition;
}

const Editions& shipped_editions() {
  static const Editions editions = [] {
    Editions all;
    for (const auto& file : embedded_files()) {  // in order of path, so of number
      if (const int number = number_in(file.path)) all.push_back(edition_from(number, file.text));
    }
    return all;
  }();
  return editions;
}

void make_tables(SQLite::Database& database, const Edition& edition) {
  for (const auto& thing : edition.things) database.exec(thing.sql);
  set_number(database, edition);
}

void remake_tables(SQLite::Database& database, const Edition& edition) {
  drop_tables(database, edition);
  for (const char* notes : {"sqlite_stat1", "sqlite_stat4"})
    database.exec(fmt::format("DROP TABLE IF EXISTS {}", notes));
  for (const auto& thing : edition.things) {
    if (!is_journal(thing)) database.exec(thing.sql);
  }
  database.exec("REINDEX journal");
}

void raise_edition(SQLite::Database& database, const Edition& from, const Edition& to) {
  database.exec("CREATE TEMP TABLE kept_journal AS SELECT * FROM main.journal");
  drop_tables(database, from);
  database.exec("DROP TABLE journal");
  make_tables(database, to);
  const auto there = columns_of(database, "journal");
  std::string columns;
  for (const auto& name : columns_of(database, "kept_journal")) {
    if (there.contains(name)) columns += (columns.empty() ? "" : ", ") + as_name(name);
  }
  database.exec(
      fmt::format("INSERT INTO main.journal ({0}) SELECT {0} FROM kept_journal ORDER BY entry;"
                  "DROP TABLE kept_journal",
                  columns));
}

int edition_of(Store& store) {
  return static_cast<int>(store.number("PRAGMA user_version").value_or(0));
}

std::string_view flag_rule(std::string_view table, std::string_view column) {
  for (const auto& thing : shipped_editions().back().things) {
    if (thing.name != table) continue;
    const std::string_view sql = thing.sql;
    const std::string named = fmt::format("\n  {} ", column);
    auto from = sql.find('(', sql.find("GENERATED ALWAYS AS", sql.find(named))) + 1;
    return sql.substr(from, sql.find(')', from) - from);
  }
  throw std::logic_error("schema/: no such table");
}

const std::vector<Thing>& program_views() {
  static const std::vector<Thing> views = [] {
    std::vector<Thing> made;
    for (const auto& file : embedded_files()) {
      if (!file.path.starts_with(kViewFolder)) continue;
      for (auto& statement : statements_in(file.text)) made.push_back(thing_from(std::move(statement)));
    }
    return made;
  }();
  return views;
}

void drop_views(Store& store) {
  std::vector<std::string> old;
  store.each("SELECT name FROM sqlite_schema WHERE type = 'view'",
             [&](const Row& row) { old.push_back(row.text(0)); });
  for (const auto& name : old) store.database().exec("DROP VIEW " + as_name(name));
}

void renew_views(Store& store) {
  drop_views(store);
  for (const auto& view : program_views()) store.database().exec(view.sql);
}

void make_temporary_views(SQLite::Database& database) {
  constexpr std::string_view kCreate = "CREATE VIEW ";
  for (const auto& view : program_views()) {
    database.exec(
        fmt::format("CREATE TEMP VIEW IF NOT EXISTS {}", std::string_view(view.sql).substr(kCreate.size())));
  }
}

}  // namespace kerfbook::book
