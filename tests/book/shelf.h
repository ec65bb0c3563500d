// shelf.h -- a scratch folder with one book in it, for the tests of this room.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "book/book.h"
#include "slurp.h"

namespace kerfbook::tests {

namespace fs = std::filesystem;

class Shelf {
 public:
  Shelf() {
    std::string pattern = (fs::temp_directory_path() / "kerfbook-shelf-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
  }
  Shelf(const Shelf&) = delete;
  Shelf& operator=(const Shelf&) = delete;
  ~Shelf() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }

  [[nodiscard]] fs::path file() const { return folder_ / "mill.book"; }
  [[nodiscard]] fs::path folder() const { return folder_; }
  [[nodiscard]] std::string bytes() const { return slurp(file()); }
  [[nodiscard]] static std::string slurp(const fs::path& path) { return tests::slurp(path); }
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(folder_))
      found.push_back(entry.path().filename().string());
    std::sort(found.begin(), found.end());
    return found;
  }

  [[nodiscard]] static book::OpenOptions options(bool read_only = false) {
    book::OpenOptions options;
    options.read_only = read_only;
    options.now = [] { return std::string("2026-06-01 20:00:00"); };
    return options;
  }
  [[nodiscard]] book::Book new_book() const { return book::Book::create(file(), options()); }
  [[nodiscard]] book::Book open(bool read_only = false) const {
    return book::Book::open(file(), options(read_only));
  }

  [[nodiscard]] book::Book demo_week_as_first_posted() const {
    const fs::path demo = fs::path(KERFBOOK_ROOT) / "demo_data";
    auto book = book::Book::create(
        file(), options(), book::Document{"hargan.toml", slurp(demo / "hargan.toml"), book::EntryKind::mill});
    std::vector<book::Document> sheets;
    for (const char* day : {"04", "05", "06", "07", "08"}) {
      const std::string name = std::string("2026-05-") + day + ".sheet";
      sheets.push_back({name, slurp(demo / name)});
    }
    book.post_all(sheets, "");
    return book;
  }
  /// The demo's mill file and the first three days of its week, the last of them corrected: entries 1 to 5.
  [[nodiscard]] book::Book few_days() const {
    const fs::path demo = fs::path(KERFBOOK_ROOT) / "demo_data";
    auto book = book::Book::create(
        file(), options(), book::Document{"hargan.toml", slurp(demo / "hargan.toml"), book::EntryKind::mill});
    for (const char* day : {"04", "05", "06"})
      book.post_sheet(slurp(demo / (std::string("2026-05-") + day + ".sheet")), "");
    book.post_sheet(slurp(demo / "2026-05-06.sheet") + "note corrected\n", "a note was left out");
    return book;
  }
  static void correct_thursday(book::Book& book) {
    book.post_sheet(slurp(fs::path(KERFBOOK_ROOT) / "demo_data" / "corrections" / "2026-05-07.sheet"),
                    "bundle count: 23, not 32");
  }
  [[nodiscard]] book::Book demo_week() const {
    auto book = demo_week_as_first_posted();
    correct_thursday(book);
    return book;
  }

  static std::int64_t number(const book::Book& book, const std::string& sql) {
    return book.database().execAndGet(sql).getInt64();
  }
  static std::string text(const book::Book& book, const std::string& sql) {
    return book.database().execAndGet(sql).getString();
  }
  /// Every row of every table but the journal, as text.
  static std::string dump(const book::Book& book) {
    std::string out;
    auto& database = book.database();
    SQLite::Statement tables(
        database, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'journal' ORDER BY name");
    while (tables.executeStep()) {
      const std::string table = tables.getColumn(0).getString();
      std::vector<std::string> rows;
      SQLite::Statement all(database, "SELECT * FROM " + table);
      while (all.executeStep()) {
        std::string row = table + ":";
        for (int i = 0; i < all.getColumnCount(); ++i) {
          row += all.getColumn(i).isNull() ? " NULL" : " '" + all.getColumn(i).getString() + "'";
        }
        rows.push_back(row + "\n");
      }
      std::sort(rows.begin(), rows.end());
      for (const auto& row : rows) out += row;
    }
    return out;
  }

 private:
  fs::path folder_;
};

}  // namespace kerfbook::tests
