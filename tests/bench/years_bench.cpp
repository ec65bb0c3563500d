// years_bench.cpp -- a year and twenty years of day sheets: what posting, the file and reports cost, as ratios to raw
// SQLite doing the same work in the same run. Run by hand: years_bench [FOLDER]
//
// The floor of posting: the same rows through the C interface into a plain normalized schema, one transaction a day,
// with the same durability. The floor of an all-history report: the best hand-written SQL over the base tables.
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "book/book.h"
#include "report/report.h"

namespace fs = std::filesystem;
using namespace kerfbook;

namespace {

constexpr int kDaysAYear = 230;
constexpr int kLines = 60;
constexpr int kLogs = 12;

double seconds(const std::function<void()>& deed) {
  const auto began = std::chrono::steady_clock::now();
  deed();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
}

double best_of(int times, const std::function<void()>& deed) {
  double best = 1e9;
  for (int i = 0; i < times; ++i) best = std::min(best, seconds(deed));
  return best;
}

/// The days sawn: five a week, 46 weeks a year.
Day day_of(int number) {
  const int year = number / kDaysAYear;
  const int in_year = number % kDaysAYear;
  return make_day(2006 + year, 1, 9) + 7 * (in_year / 5) + in_year % 5;
}

std::string sheet_of(int number) {
  std::string text = "sheet " + write_day(day_of(number)) +
                     "\nsite yard\ncrew Quill 9, Bess 9\nrun 7:15-10:20 10:56-13:30\nstop 0:30 belt\njob " +
                     (number % 7 < 5 ? "J" + std::to_string(number / 5) : "own") + "\nspecies " +
                     (number % 3 == 0 ? "WH" : "DF") + "\n";
  for (int i = 0; i < kLogs; ++i) {
    text += fmt::format("log T{} {}x{}\n", number * kLogs + i, 10 + (number + 3 * i) % 12, 10 + 2 * (i % 4));
  }
  static const std::vector<std::string> sizes{"1x4", "1x6",  "1x8", "2x4", "2x6",
                                              "2x8", "2x10", "4x4", "4x6", "5/4x6"};
  for (int i = 0; i < kLines; i += 6) {
    text += sizes[static_cast<std::size_t>(i / 6)];
    for (int k = 0; k < 6; ++k) text += fmt::format(" {}/{}", 1 + (number + i + k) % 9, 8 + 2 * k);
    text += "\n";
  }
  return text;
}

book::OpenOptions options() {
  book::OpenOptions how;
  how.now = [] { return std::string("2026-01-01 20:00:00"); };
  return how;
}

double post_years(const fs::path& file, int years) {
  fs::remove(file);
  auto open = book::Book::create(file, options());
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

double report_time(const fs::path& file, const std::string& name, std::optional<Day> from,
                   std::optional<Day> to) {
  const auto open = book::Book::open(file, [] {
    auto how = options();
    how.read_only = true;
    return how;
  }());
  const auto reports = report::all_reports("");
  const auto& wanted = report::find_report(reports, name);
  report::Ask ask;
  ask.from = from;
  ask.to = to;
  return best_of(5, [&] { report::run_report(wanted, open, ask, {}, make_day(2026, 1, 1)); });
}

double by_hand(const fs::path& file) {
  sqlite3* db = nullptr;
  must(sqlite3_open_v2(file.c_str(), &db, SQLITE_OPEN_READONLY, nullptr), db);
  const double time = best_of(5, [&] {
    must(sqlite3_exec(
             db,
             "SELECT r.day, sum(r.logs), sum(r.net), sum(r.lumber), sum(r.pieces), max(s.sawing_minutes), "
             "max(s.stop_minutes), max(s.crew_minutes) FROM run r JOIN sheet s USING (day, shift) GROUP BY "
             "r.day",
             [](void*, int, char**, char**) { return 0; }, nullptr, nullptr),
         db);
  });
  sqlite3_close(db);
  return time;
}

void report_lines(const fs::path& one_year, const fs::path& twenty_years) {
  const Day day = day_of(150);
  const Day late = day_of(19 * kDaysAYear + 150);
  for (const auto& [words, span] :
       {std::pair("a day", 0), std::pair("a week", 6), std::pair("a month", 30)}) {
    for (const char* name : {"production", "overrun", "tally"}) {
      const double one = report_time(one_year, name, day, day + span);
      const double twenty = report_time(twenty_years, name, late, late + span);
      fmt::print("report {:<11} {:<8} 1 year {:8.2f} ms, 20 years {:8.2f} ms, ratio {:.2f}\n", name, words,
                 one * 1e3, twenty * 1e3, twenty / one);
    }
  }
  const double all = report_time(twenty_years, "production", std::nullopt, std::nullopt);
  const double hand = by_hand(twenty_years);
  fmt::print(
      "report production, all of 20 years {:.1f} ms; the same sums by hand in SQL {:.1f} ms; ratio {:.2f}\n",
      all * 1e3, hand * 1e3, all / hand);
}

}  // namespace

int main(int argc, char** argv) {
  const fs::path folder = argc > 1 ? fs::path(argv[1]) : fs::temp_directory_path();
  const fs::path one_year = folder / "bench-1.book";
  const fs::path twenty_years = folder / "bench-20.book";
  const fs::path floor_file = folder / "bench-floor.db";

  const double floor = floor_years(floor_file, 1);
  const double posted = post_years(one_year, 1);
  fmt::print("a year of {} sheets, {} lines each: posted in {:.2f} s, raw SQLite {:.2f} s, ratio {:.2f}\n",
             kDaysAYear, kLines, posted, floor, posted / floor);
  const auto size = [](const fs::path& file) { return static_cast<double>(fs::file_size(file)); };
  fmt::print("its file: {:.2f} MB, raw SQLite {:.2f} MB, ratio {:.2f}\n", size(one_year) / 1e6,
             size(floor_file) / 1e6, size(one_year) / size(floor_file));

  const double twenty = post_years(twenty_years, 20);
  fmt::print("twenty years: posted in {:.1f} s; a sheet at the end costs {:.2f} of one in the first year\n",
             twenty, twenty / 20 / posted);
  report_lines(one_year, twenty_years);
  for (const auto& file : {one_year, twenty_years, floor_file}) fs::remove(file);
}
