// years_bench.cpp -- a year and twenty years of day sheets: what posting and the file cost, as ratios to raw SQLite
// doing the same work in the same run; and that opening, showing, checking, posting and correcting cost the same at the
// end of twenty years as at the end of one. Reports stand in report_bench. Run by hand: years_bench [FOLDER]
//
// The floor of posting: the same rows through the C interface into a plain normalized schema, one transaction a day,
// with the same durability.
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "book/book.h"
#include "mill_years.h"

namespace fs = std::filesystem;
using namespace kerfbook;

namespace {

using bench::day_of;
using bench::kDaysAYear;
using bench::kLines;
using bench::kLogs;
using bench::seconds;
using bench::sheet_of;

double post_years(const fs::path& file, int years) {
  fs::remove(file);
  auto open = book::Book::create(file, bench::options(),
                                 book::Document{"mill", bench::mill_file(years), book::EntryKind::mill});
  return seconds([&] {
    for (int i = 0; i < years * kDaysAYear; ++i) open.post_sheet(sheet_of(i), "");
  });
}

void must(int code, sqlite3* db) {
  if (code != SQLITE_OK && code != SQLITE_DONE && code != SQLITE_ROW)
    throw std::runtime_error(sqlite3_errmsg(db));
}

/// The same days by hand: surrogate keys, an index for each day, sheets kept as text beside.
class Floor {
 public:
  explicit Floor(const fs::path& file) {
    fs::remove(file);
    must(sqlite3_open(file.c_str(), &db_), db_);
    run("PRAGMA synchronous = EXTRA");
    run("CREATE TABLE day (id INTEGER PRIMARY KEY, day TEXT UNIQUE, body TEXT);"
        "CREATE TABLE log (id INTEGER PRIMARY KEY, day_id INTEGER REFERENCES day, tag TEXT, diameter "
        "INTEGER, length INTEGER,"
        " net INTEGER);"
        "CREATE TABLE tally (id INTEGER PRIMARY KEY, day_id INTEGER REFERENCES day, job TEXT, species TEXT, "
        "size TEXT,"
        " pieces INTEGER, length INTEGER, bf INTEGER);"
        "CREATE INDEX log_day ON log (day_id); CREATE INDEX log_tag ON log (tag); CREATE INDEX tally_day ON "
        "tally (day_id);");
    prepare("INSERT INTO day (day, body) VALUES (?, ?)", day_);
    prepare("INSERT INTO log (day_id, tag, diameter, length, net) VALUES (?, ?, ?, ?, ?)", log_);
    prepare("INSERT INTO tally (day_id, job, species, size, pieces, length, bf) VALUES (?, ?, ?, ?, ?, ?, ?)",
            tally_);
  }
  Floor(const Floor&) = delete;
  Floor& operator=(const Floor&) = delete;
  ~Floor() {
    for (auto* statement : {day_, log_, tally_}) sqlite3_finalize(statement);
    sqlite3_close(db_);
  }

  void post(int number) {
    run("BEGIN IMMEDIATE");
    bind(day_, {write_day(day_of(number)), sheet_of(number)}, {});
    const auto day = sqlite3_last_insert_rowid(db_);
    for (int i = 0; i < kLogs; ++i) {
      bind(log_, {}, {{1, day}, {3, 640 + i}, {4, 7680}, {5, 100}},
           {{2, "T" + std::to_string(number * kLogs + i)}});
    }
    for (int i = 0; i < kLines; ++i) {
      bind(tally_, {}, {{1, day}, {5, 1 + i % 9}, {6, 9216}, {7, 37'748'736LL * i}},
           {{2, "J" + std::to_string(number / 5)}, {3, "DF"}, {4, "2x6"}});
    }
    run("COMMIT");
  }

 private:
  struct Number {
    int at;
    std::int64_t value;
  };
  struct Text {
    int at;
    std::string value;
  };
  void run(const char* sql) { must(sqlite3_exec(db_, sql, nullptr, nullptr, nullptr), db_); }
  void prepare(const char* sql, sqlite3_stmt*& statement) {
    must(sqlite3_prepare_v2(db_, sql, -1, &statement, nullptr), db_);
  }
  void bind(sqlite3_stmt* statement, const std::vector<std::string>& texts,
            const std::vector<Number>& numbers, const std::vector<Text>& more = {}) {
    int at = 0;
    for (const auto& text : texts) sqlite3_bind_text(statement, ++at, text.c_str(), -1, SQLITE_TRANSIENT);
    for (const auto& number : numbers) sqlite3_bind_int64(statement, number.at, number.value);
    for (const auto& text : more)
      sqlite3_bind_text(statement, text.at, text.value.c_str(), -1, SQLITE_TRANSIENT);
    must(sqlite3_step(statement), db_);
    sqlite3_reset(statement);
  }

  sqlite3* db_ = nullptr;
  sqlite3_stmt* day_ = nullptr;
  sqlite3_stmt* log_ = nullptr;
  sqlite3_stmt* tally_ = nullptr;
};

double floor_years(const fs::path& file, int years) {
  Floor floor(file);
  return seconds([&] {
    for (int i = 0; i < years * kDaysAYear; ++i) floor.post(i);
  });
}

/// What an evening asks of a book, each from opening the file to closing it.
struct Evening {
  const char* words;
  std::function<void(const fs::path& file, int days)> deed;
};

const std::vector<Evening>& evenings() {
  static const std::vector<Evening> all{
      {"open", [](const fs::path& file, int) { book::Book::open(file, bench::options(true)); }},
      {"show a day",
       [](const fs::path& file, int days) {
         const auto open = book::Book::open(file, bench::options(true));
         const auto shown = open.revisions(write_day(day_of(days - 3)));
         if (shown.empty()) throw std::runtime_error("the day is not in the book");
       }},
      {"check a sheet",
       [](const fs::path& file, int days) {
         book::Book::open(file, bench::options(true)).check_sheet(sheet_of(days));
       }},
      {"post a sheet",
       [](const fs::path& file, int days) {
         static int posted = 0;
         book::Book::open(file, bench::options()).post_sheet(sheet_of(days + posted++ / 2), "");
       }},
      {"correct a sheet", [](const fs::path& file, int days) {
         static int corrected = 0;
         const auto text = corrected % 2 == 0 ? bench::corrected_sheet_of(days - 5) : sheet_of(days - 5);
         ++corrected;
         book::Book::open(file, bench::options()).post_sheet(text, "split");
       }}};
  return all;
}

void evening_lines(const fs::path& one_year, const fs::path& twenty_years) {
  fmt::print("\n{:<24} {:>12} {:>12} {:>7}\n", "an evening", "20 years ms", "1 year ms", "ratio");
  for (const auto& evening : evenings()) {
    double one = 1e9;
    double twenty = 1e9;
    for (int i = 0; i < 15; ++i) {
      one = std::min(one, seconds([&] { evening.deed(one_year, kDaysAYear); }));
      twenty = std::min(twenty, seconds([&] { evening.deed(twenty_years, 20 * kDaysAYear); }));
    }
    fmt::print("{:<24} {:>12.2f} {:>12.2f} {:>7.2f}\n", evening.words, twenty * 1e3, one * 1e3, twenty / one);
  }
}

void proving(const char* words, const fs::path& file, int years) {
  auto open = book::Book::open(file, bench::options());
  const double verify = seconds([&] {
    if (!open.verify().empty()) throw std::runtime_error("the book is damaged");
  });
  const double rebuild = seconds([&] { open.rebuild(); });
  fmt::print("{}: verify {:.2f} s, rebuild {:.2f} s; a year {:.2f} and {:.2f} s\n", words, verify, rebuild,
             verify / years, rebuild / years);
}

}  // namespace

int main(int argc, char** argv) {
  const fs::path folder = argc > 1 ? fs::path(argv[1]) : fs::temp_directory_path();
  const fs::path one_year = folder / "kerfbook-bench-posted-1.book";
  const fs::path twenty_years = folder / "kerfbook-bench-posted-20.book";
  const fs::path floor_file = folder / "kerfbook-bench-floor.db";

  const double floor = floor_years(floor_file, 1);
  const double posted = post_years(one_year, 1);
  fmt::print(
      "a year of {} sheets, {} tally lines and {} logs each: posted in {:.2f} s, raw SQLite {:.2f} s, ratio "
      "{:.2f}\n",
      kDaysAYear, kLines, kLogs, posted, floor, posted / floor);
  const auto size = [](const fs::path& file) { return static_cast<double>(fs::file_size(file)); };
  fmt::print("its file: {:.2f} MB, raw SQLite {:.2f} MB, ratio {:.2f}\n", size(one_year) / 1e6,
             size(floor_file) / 1e6, size(one_year) / size(floor_file));

  const double twenty = post_years(twenty_years, 20);
  fmt::print("twenty years: posted in {:.1f} s; a sheet costs {:.2f} of one in a single year\n", twenty,
             twenty / 20 / posted);
  proving("one year", one_year, 1);
  proving("twenty years", twenty_years, 20);
  evening_lines(one_year, twenty_years);
  for (const auto& file : {one_year, twenty_years, floor_file}) fs::remove(file);
}
