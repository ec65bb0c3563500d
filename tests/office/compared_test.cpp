// compared_test.cpp -- proving a book compares every row of every table that is worked out, and all of each row: with
// papers, loads and corrections in it, no table is empty, and no value can be another one unnoticed.
#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <set>

#include "book_helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const char* const kSaturday =
    "sheet 2026-05-09\nsite Tervane farm\ncrew Quill 4\nsawing 7:00-9:00\nsetup winter kerf 9/32 over 1/16\n"
    "job own\nspecies DF\nin D1 14x12 from ridge\nlog D2 15x14 defect 10% rot\nbundle W7\n2x4 20/8\n"
    "bundle -\n2x6 No2 9/16\nless 2x6 No2 1/16 split\n1x3 40lf\nthick 2x6 2.02 2.00 1.98\n"
    "teeth head replaced 1 metal D2 a nail\nstop 7:30-7:40 metal a nail\nsold cash 2x4 2/8 at 1.05\n"
    "sold Ferrin bundle W7 at 60\ncharge TER planing 10 by hand\nmeter 1876.0\nfuel 4 gal 15.20\n"
    "move Tervane farm to yard 23 mi 1:10\nresidue slabs 1.5 cord to the stove\nnote rain\n";

/// The demo week with a Saturday of everything, papers of every kind and corrections after them.
struct Full : DemoBook {
  Full() {
    book->post_sheet(kSaturday, "");
    issue_invoice(*book, "TER", kFriday, kFriday);
    issue_invoice(*book, "QHH", kFriday, kFriday);
    divide_lumber(*book, "MUM", kFriday, kFriday);
    issue_sale(*book, "cash", kFriday, kFriday, "cash");
    take_payment(*book, {"", "", 1, money("500.00"), "cash", ""}, kFriday);
    billing::load(*book, {"QHH", {}, "Ulrik", "", ""}, kFriday);
    credit_invoice(*book, 2, money("10.00"), "a wet board", kFriday);
    correct();
    std::string less = kSaturday;
    book->post_sheet(less.replace(less.find("2x6 No2 9/16"), 12, "2x6 No2 8/16"), "counted again");
    whole();
    bytes_ = read_file(file());
    book.reset();
  }
  [[nodiscard]] std::filesystem::path file() const { return folder / "demo.kerf"; }

  /// What verify finds after the SQL, each finding up to its first comma: "table log"; the book is then as it was.
  [[nodiscard]] std::set<std::string> found_after(const std::string& sql) const {
    {
      SQLite::Database changed(file().string(), SQLite::OPEN_READWRITE);
      changed.exec("PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; BEGIN; " + sql +
                   "; COMMIT");
    }
    book::OpenOptions options;
    options.read_only = true;
    options.papers = project_paper;
    options.check_money = check_money;
    std::set<std::string> found;
    for (const auto& one : book::Book::open(file(), options).verify())
      found.insert(one.what.substr(0, one.what.find(',')));
    std::ofstream(file(), std::ios::binary) << bytes_;
    return found;
  }

  struct Column {
    std::string name;
    bool number = false;
  };
  /// The worked-out tables with their columns, the columns of the key among them.
  [[nodiscard]] std::map<std::string, std::vector<Column>> tables() const {
    std::map<std::string, std::vector<Column>> all;
    SQLite::Database read(file().string(), SQLite::OPEN_READONLY);
    SQLite::Statement columns(
        read,
        "SELECT t.name, c.name, c.type FROM sqlite_schema t, pragma_table_info(t.name) c "
        "WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite%' AND t.name <> 'journal' ORDER BY t.name, "
        "c.cid");
    while (columns.executeStep())
      all[columns.getColumn(0).getString()].push_back(
          {columns.getColumn(1).getString(), columns.getColumn(2).getString() == "INTEGER"});
    return all;
  }
  /// WHERE that finds the table's last row by its key.
  [[nodiscard]] std::string last_row(const std::string& table) const {
    SQLite::Database read(file().string(), SQLite::OPEN_READONLY);
    SQLite::Statement key(read, "SELECT name FROM pragma_table_info(?) WHERE pk > 0 ORDER BY pk");
    key.bind(1, table);
    std::string names;
    std::string down;
    while (key.executeStep()) {
      names += (names.empty() ? "" : ", ") + key.getColumn(0).getString();
      down += (down.empty() ? "" : ", ") + key.getColumn(0).getString() + " DESC";
    }
    return " WHERE (" + names + ") = (SELECT " + names + " FROM " + table + " ORDER BY " + down + " LIMIT 1)";
  }

 private:
  std::string bytes_;
};

}  // namespace

TEST_CASE(
    "another value in any column of the last row of any worked-out table is told with that table's name") {
  const Full full;
  const auto tables = full.tables();
  REQUIRE(tables.size() > 30);
  std::size_t most = 0;
  for (const auto& [table, columns] : tables) most = std::max(most, columns.size());
  REQUIRE(most > 15);
  for (std::size_t at = 0; at < most; ++at) {
    std::string sql;
    std::set<std::string> changed;
    for (const auto& [table, columns] : tables) {
      if (at >= columns.size()) continue;
      const auto& column = columns[at];
      sql += "UPDATE " + table + " SET " + column.name + " = " +
             (column.number ? "coalesce(" + column.name + " + 1, 1)"
                            : "coalesce(" + column.name + ", '') || 'x'") +
             full.last_row(table) + ";";
      changed.insert("table " + table);
    }
    const std::set<std::string> found = full.found_after(sql);
    for (const std::string& table : changed)
      CHECK_MESSAGE(found.count(table) == 1, table << ", column " << at + 1 << " of the table");
  }
}

TEST_CASE("the last row of any worked-out table is missed, and no table is told of that is as it was") {
  const Full full;
  const auto tables = full.tables();
  std::string sql;
  std::set<std::string> all;
  for (const auto& one : tables) {
    const std::string& table = one.first;
    SQLite::Database read(full.file().string(), SQLite::OPEN_READONLY);
    CHECK_MESSAGE(read.execAndGet("SELECT count(*) FROM " + table).getInt() > 0, table << " has no row here");
    sql += "DELETE FROM " + table + full.last_row(table) + ";";
    all.insert("table " + table);
  }
  const std::set<std::string> found = full.found_after(sql);
  for (const std::string& table : all) CHECK_MESSAGE(found.count(table) == 1, table);
  CHECK(full.found_after("DELETE FROM note" + full.last_row("note")) == std::set<std::string>{"table note"});
  CHECK(full.found_after("SELECT 1").empty());
}
