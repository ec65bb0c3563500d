// report_bench.cpp -- what reports cost. A day, week or month must cost the same on a book of twenty years as on one of
// one year; an all-history report is set against hand-written SQL on the base tables (by_hand/NAME.sql, a statement for
// each SELECT of the report), which must give the very same rows into a C++ vector in the same run. Processor time, the best of several,
// each contender in turn.
//
//   report_bench [FOLDER] [REPORT...]    books kept in a folder and used again; all-history ratios of some reports only
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <ctime>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <vector>

#include "mill_years.h"
#include "office/unbilled.h"
#include "report/filters.h"
#include "report/report.h"
#include "report/rows.h"

using namespace kerfbook;
namespace fs = std::filesystem;

namespace {

constexpr int kRounds = 9;
constexpr int kYears = 20;

double processor_seconds(const std::function<void()>& deed) {
  const auto now = [] {
    timespec time{};
    ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) * 1e-9;
  };
  const double began = now();
  deed();
  return now() - began;
}

/// The least time of each deed, taken in turn so that a busy machine slows all alike.
std::vector<double> least(const std::vector<std::function<void()>>& deeds) {
  std::vector<double> best(deeds.size(), 1e9);
  for (int round = 0; round < kRounds; ++round) {
    for (std::size_t i = 0; i < deeds.size(); ++i) best[i] = std::min(best[i], processor_seconds(deeds[i]));
  }
  return best;
}

using Cells = std::vector<report::Value>;

// ---- by hand ------------------------------------------------------------------------------------------------------

std::vector<std::string> statements_by_hand(const std::string& name) {
  std::ifstream file(fs::path(KERFBOOK_ROOT) / "tests/bench/by_hand" / (name + ".sql"));
  std::stringstream text;
  text << file.rdbuf();
  std::vector<std::string> statements;
  std::string one;
  for (const char c : text.str()) {
    one += c;
    if (c == ';' && sqlite3_complete(one.c_str()) != 0) statements.push_back(std::exchange(one, {}));
  }
  return statements;
}

/// A connection as a program of the hand's own would open it.
class Hand {
 public:
  explicit Hand(const fs::path& file) {
    sqlite3* db = nullptr;
    const int code = sqlite3_open_v2(file.c_str(), &db, SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX, nullptr);
    db_.reset(db);
    if (code != SQLITE_OK) throw std::runtime_error(sqlite3_errmsg(db));
  }

  Cells rows(const std::string& sql) const {
    sqlite3_stmt* prepared = nullptr;
    const int code = sqlite3_prepare_v2(db_.get(), sql.c_str(), -1, &prepared, nullptr);
    const std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement(prepared, sqlite3_finalize);
    if (code != SQLITE_OK) throw std::runtime_error(sqlite3_errmsg(db_.get()) + (": " + sql));
    Cells cells;
    const int columns = sqlite3_column_count(prepared);
    while (sqlite3_step(prepared) == SQLITE_ROW) {
      for (int c = 0; c < columns; ++c) cells.push_back(cell(prepared, c));
    }
    return cells;
  }

 private:
  static report::Value cell(sqlite3_stmt* row, int column) {
    switch (sqlite3_column_type(row, column)) {
      case SQLITE_INTEGER:
        return static_cast<std::int64_t>(sqlite3_column_int64(row, column));
      case SQLITE_TEXT: {
        const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(row, column));
        return std::string(text, static_cast<std::size_t>(sqlite3_column_bytes(row, column)));
      }
      default:
        return std::monostate{};
    }
  }

  std::unique_ptr<sqlite3, int (*)(sqlite3*)> db_{nullptr, sqlite3_close};
};

// ---- by the engine ------------------------------------------------------------------------------------------------

const std::vector<report::ReportFile>& reports() {
  static const auto all = report::all_reports("");
  return all;
}

const Day kToday = make_day(2026, 1, 1);

/// A table's SELECT and that of its notes, table by table.
std::vector<std::string> statements_of(const report::ReportFile& wanted) {
  std::vector<std::string> statements;
  for (const auto& table : wanted.tables) {
    statements.push_back(table.sql);
    if (!table.notes_sql.empty()) statements.push_back(table.notes_sql);
  }
  return statements;
}

std::vector<report::Raw> rows_of(const report::ReportFile& wanted, const book::Book& book) {
  const book::Still still(book);
  const auto filters = report::filtered(wanted, book, {}, {}, kToday);
  std::vector<report::Raw> tables;
  for (const auto& sql : statements_of(wanted)) {
    report::Query query(book.database().getHandle(), report::fitted(sql, filters.parameters));
    tables.push_back(report::read_rows(query, filters.parameters));
  }
  return tables;
}

bool same(const report::Raw& raw, const Cells& hand) {
  if (hand.size() != raw.rows() * raw.names.size()) return false;
  for (std::size_t i = 0; i < hand.size(); ++i) {
    const report::View cell = raw.at(i / raw.names.size(), i % raw.names.size());
    const bool alike = std::visit([&](const auto& value) { return report::View(value) == cell; }, hand[i]);
    if (!alike) return false;
  }
  return true;
}

// ---- what is printed ----------------------------------------------------------------------------------------------

void stretches(const book::Book& one, const book::Book& twenty) {
  fmt::print("{:<34} {:>12} {:>12} {:>7}\n", "a stretch at the end of the book", "20 years ms", "1 year ms",
             "ratio");
  for (const auto& wanted : reports()) {
    for (const auto& [words, days] : {std::pair("day", 1), std::pair("week", 7), std::pair("month", 30)}) {
      const auto ask = [length = days](int years) {
        report::Ask some;
        some.to = bench::day_of(years * bench::kDaysAYear - 1);
        some.from = *some.to - (length - 1);
        return some;
      };
      if (std::find(wanted.filters.begin(), wanted.filters.end(), "from") == wanted.filters.end()) continue;
      const auto many = ask(kYears);
      const auto few = ask(1);
      const auto times = least({[&] { report::run_report(wanted, twenty, many, {}, kToday); },
                                [&] { report::run_report(wanted, one, few, {}, kToday); }});
      fmt::print("{:<34} {:>12.3f} {:>12.3f} {:>7.2f}\n", wanted.name + ", a " + words, times[0] * 1e3,
                 times[1] * 1e3, times[0] / times[1]);
    }
  }
}

void all_history(const report::ReportFile& wanted, const book::Book& book, const Hand& hand) {
  const auto statements = statements_by_hand(wanted.name);
  std::size_t rows = 0;
  const auto tables = rows_of(wanted, book);
  for (std::size_t i = 0; i < tables.size(); ++i) {
    rows += tables[i].rows();
    if (i < statements.size() && !same(tables[i], hand.rows(statements[i]))) {
      throw std::runtime_error(
          fmt::format("{}, SELECT {}: the hand-written SQL gives other rows", wanted.name, i + 1));
    }
  }
  const auto by_hand = [&] {
    for (const auto& statement : statements) hand.rows(statement);
  };
  const auto times = least(
      {[&] { rows_of(wanted, book); }, [&] { report::run_report(wanted, book, {}, {}, kToday); }, by_hand});
  fmt::print("{:<22} {:>7} {:>10.2f} {:>10.2f}", wanted.name, rows, times[0] * 1e3, times[1] * 1e3);
  if (statements.size() == tables.size()) {
    fmt::print(" {:>10.2f} {:>7.2f} {:>7.2f}", times[2] * 1e3, times[0] / times[2], times[1] / times[2]);
  }
  fmt::print("\n");
  std::fflush(stdout);
}

fs::path book_of(const fs::path& folder, int years) {
  return folder / fmt::format("kerfbook-bench-{}-years.book", years);
}

void compare(const fs::path& folder, const std::vector<std::string>& only) {
  for (const int years : {1, kYears}) {
    if (!fs::exists(book_of(folder, years))) bench::fill(book_of(folder, years), years);
  }
  const Hand hand(book_of(folder, kYears));
  const auto twenty = book::Book::open(book_of(folder, kYears), bench::options(true));
  billing::register_unbilled(twenty);  // what bills would come to is billing's to measure
  if (only.empty()) stretches(book::Book::open(book_of(folder, 1), bench::options(true)), twenty);
  fmt::print("\n{:<22} {:>7} {:>10} {:>10} {:>10} {:>7} {:>7}\n", "all twenty years", "rows", "rows ms",
             "document", "by hand", "ratio", "ratio");
  for (const auto& wanted : reports()) {
    if (only.empty() || std::find(only.begin(), only.end(), wanted.name) != only.end()) {
      all_history(wanted, twenty, hand);
    }
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::string> only(argv + 1, argv + argc);
  const bool kept = !only.empty() && fs::is_directory(only.front());
  const fs::path folder = kept ? fs::path(only.front())
                               : fs::temp_directory_path() / fmt::format("kerfbook-bench-{}", ::getpid());
  if (kept) only.erase(only.begin());
  fs::create_directory(folder);
  int code = 0;
  try {
    compare(folder, only);
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}\n", fault.what());
    code = 1;
  }
  if (!kept) fs::remove_all(folder);
  return code;
}
