#include "book/schema.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "base/text.h"
#include "book/embedded.h"

namespace kerfbook::book {
namespace {

constexpr std::string_view kFolder = "schema/";
constexpr std::string_view kViewFile = "schema/views.sql";
constexpr std::string_view kCreateView = "CREATE VIEW ";

/// The number in front of "schema/001_book.sql"; 0 for a file without one.
int edition_in(std::string_view path) {
  if (!path.starts_with(kFolder)) return 0;
  int number = 0;
  for (const char c : path.substr(kFolder.size(), 3)) {
    if (c < '0' || c > '9') return 0;
    number = number * 10 + (c - '0');
  }
  return number;
}

std::string_view view_file() {
  for (const auto& file : embedded_files()) {
    if (file.path == kViewFile) return file.text;
  }
  throw std::logic_error("schema/views.sql is not built in");
}

/// A text of SQL cut after each statement. SQLite itself says where one ends: a semicolon in a remark does not count.
std::vector<std::string> statements_in(std::string_view sql) {
  std::vector<std::string> statements;
  std::string one;
  for (const char c : sql) {
    one += c;
    if (c == ';' && sqlite3_complete(one.c_str()) != 0) statements.push_back(std::exchange(one, {}));
  }
  return statements;
}

/// A name as SQL takes it, whatever stands in it: it comes out of a file.
std::string as_name(const std::string& name) {
  std::string out = "\"";
  for (const char c : name) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + "\"";
}

View view_from(const std::string& statement) {
  const auto begin = statement.find(kCreateView);
  if (begin == std::string::npos) throw std::logic_error("schema/views.sql holds views only: " + statement);
  const auto name = begin + kCreateView.size();
  return {statement.substr(name, statement.find_first_of(" \n(", name) - name),
          statement.substr(begin, statement.size() - begin - 1)};
}

}  // namespace

int newest_edition() {
  int newest = 0;
  for (const auto& file : embedded_files()) newest = std::max(newest, edition_in(file.path));
  return newest;
}

void raise_edition(SQLite::Database& database, int from) {
  for (const auto& file : embedded_files()) {  // in order of path, so of number
    if (edition_in(file.path) > from) database.exec(std::string(file.text));
  }
  database.exec(
      fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}", kApplicationId, newest_edition()));
}

int edition_of(Store& store) {
  return static_cast<int>(store.number("PRAGMA user_version").value_or(0));
}

const std::vector<View>& program_views() {
  static const std::vector<View> views = [] {
    std::vector<View> made;
    for (const auto& statement : statements_in(view_file())) made.push_back(view_from(statement));
    return made;
  }();
  return views;
}

bool views_are_current(Store& store) {
  const auto& views = program_views();
  std::size_t same = 0;
  std::size_t all = 0;
  store.each("SELECT name, sql FROM sqlite_schema WHERE type = 'view'", [&](const Row& row) {
    ++all;
    const std::string name = row.text(0);
    const auto view =
        std::find_if(views.begin(), views.end(), [&](const View& one) { return one.name == name; });
    if (view != views.end() && view->sql == row.text(1)) ++same;
  });
  return all == views.size() && same == all;
}

void renew_views(Store& store) {
  std::vector<std::string> old;
  store.each("SELECT name FROM sqlite_schema WHERE type = 'view'",
             [&](const Row& row) { old.push_back(row.text(0)); });
  for (const auto& name : old) store.database().exec("DROP VIEW " + as_name(name));
  for (const auto& view : program_views()) store.database().exec(view.sql);
}

void make_temporary_views(SQLite::Database& database) {
  for (const auto& view : program_views()) {
    database.exec("CREATE TEMP VIEW " + view.sql.substr(kCreateView.size()));
  }
}

}  // namespace kerfbook::book
