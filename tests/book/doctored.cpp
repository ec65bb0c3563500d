#include "book/doctored.h"

#include <sqlite3.h>

namespace kerfbook::tests {
namespace {

int sung = 0;

void sing(sqlite3_context* context, int, sqlite3_value**) {
  ++sung;
  sqlite3_result_int(context, 1);
}

int add_canaries(sqlite3* db, const char**, const sqlite3_api_routines*) {
  constexpr int kPlain = SQLITE_UTF8 | SQLITE_DETERMINISTIC;
  sqlite3_create_function(db, "canary", -1, kPlain, nullptr, sing, nullptr, nullptr);
  sqlite3_create_function(db, "canary_meek", -1, kPlain | SQLITE_INNOCUOUS, nullptr, sing, nullptr, nullptr);
  return SQLITE_OK;
}

void run(const fs::path& file, const std::string& sql) {
  SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
  database.exec("PRAGMA foreign_keys = OFF; PRAGMA writable_schema = ON; PRAGMA cell_size_check = OFF");
  database.exec(sql);
}

}  // namespace

void set_canaries() {
  sqlite3_auto_extension(reinterpret_cast<void (*)()>(add_canaries));
}

int canaries_sung() {
  return std::exchange(sung, 0);
}

std::function<void(const Shelf&)> by_sql(const std::string& sql) {
  return [sql](const Shelf& shelf) {
    SQLite::Database(shelf.file().string(), SQLite::OPEN_READWRITE)
        .exec("PRAGMA foreign_keys = OFF; PRAGMA legacy_alter_table = ON; " + sql);
  };
}

std::function<void(const Shelf&)> by_schema(const std::string& sql) {
  return [sql](const Shelf& shelf) { run(shelf.file(), sql); };
}

std::function<void(const Shelf&)> loosely(const std::string& sql) {
  return [sql](const Shelf& shelf) {
    run(shelf.file(),
        "CREATE TABLE kept AS SELECT name, sql FROM sqlite_schema;"
        "UPDATE sqlite_schema SET sql = replace(replace(replace(sql, ' NOT NULL', ''), ') STRICT, WITHOUT', "
        "') WITHOUT'), ') STRICT', ')') WHERE type = 'table' AND name <> 'kept'");
    run(shelf.file(), "PRAGMA ignore_check_constraints = ON; " + sql);
    run(shelf.file(),
        "UPDATE sqlite_schema AS s SET sql = (SELECT k.sql FROM kept k WHERE k.name = s.name) "
        "WHERE name <> 'kept'; DROP TABLE kept");
  };
}

std::function<void(const Shelf&)> behind_indexes(const std::string& first, const std::string& then) {
  return [first, then](const Shelf& shelf) {
    run(shelf.file(), "CREATE TABLE aside (a, b, c, d, e, f, g, h, i); " + first);
    run(shelf.file(),
        "CREATE TABLE kept AS SELECT type, name, tbl_name, rootpage, sql FROM sqlite_schema;"
        "UPDATE sqlite_schema SET sql = replace(replace(replace(sql, 'NOCASE UNIQUE', 'NOCASE'),"
        "'UNIQUE (kind, subject, revision)', 'CHECK (1)'), 'UNIQUE (metric, thickness, width, quarters)', "
        "'CHECK (1)')"
        "WHERE type = 'table' AND name <> 'kept'; DELETE FROM sqlite_schema WHERE type = 'index'");
    run(shelf.file(), then);
    run(shelf.file(),
        "UPDATE sqlite_schema AS s SET sql = (SELECT k.sql FROM kept k WHERE k.name = s.name) WHERE name <> "
        "'kept';"
        "INSERT INTO sqlite_schema SELECT * FROM kept WHERE type = 'index'");
    run(shelf.file(), "DROP TABLE kept; DROP TABLE aside");
  };
}

std::function<void(const Shelf&)> by_bytes(const std::function<void(std::string&)>& change) {
  return [change](const Shelf& shelf) {
    std::string bytes = shelf.bytes();
    change(bytes);
    std::ofstream(shelf.file(), std::ios::binary) << bytes;
  };
}

}  // namespace kerfbook::tests
