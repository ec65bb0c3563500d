// guard.h -- a SELECT prepared so that it can only look: one statement, views only, and an end to its patience.
// Not here: what the columns mean (table.cpp) and where in a report file a SELECT stands (report.h).
#pragma once

#include <chrono>
#include <cstdint>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace kerfbook::report {

/// What SQL gave: nothing, a whole number, or text. Anything else is a fault of the report.
using Value = std::variant<std::monostate, std::int64_t, std::string>;
/// The same, looked at where it lies.
using View = std::variant<std::monostate, std::int64_t, std::string_view>;

/// A fault of a report's SQL: what is wrong, and where in the SQL (bytes from its start; -1 = not known).
class SqlFault : public std::runtime_error {
 public:
  SqlFault(const std::string& what, int at) : std::runtime_error(what), at_(at) {}
  [[nodiscard]] int at() const noexcept { return at_; }

 private:
  int at_;
};

constexpr std::chrono::milliseconds kPatience{30'000};  ///< with one report, all its SELECTs together
/// Of one text: what a workbook's cell holds (ECMA-376 part 1, 18.3.1.4, and Excel's own limit). It keeps every call of
/// a function short, in which the clock is not looked at: the longest, trim() with thousands of letters to take off, is under a second.
constexpr int kLongestText = 32'767;
constexpr std::int64_t kMostMemory =
    256 << 20;  ///< bytes that SQLite may have while a report's SELECT is at work

struct Limits {
  std::chrono::milliseconds time = kPatience;  ///< of stepping, all rows together
  std::int64_t rows = 2'000'000;
};

/// One SELECT, prepared behind the guard. It may read the views (names that begin v_) and through them only the
/// columns they read themselves; no table, no second statement, no write, no PRAGMA, no ATTACH. What it can cost is
/// bounded: its time, its rows, the memory SQLite takes, the length of every text it makes, and its own size. printf()
/// of more than kLongestText gives NULL; every other function fails then.
class Query {
 public:
  /// Throws SqlFault. Nothing has run when it returns.
  Query(sqlite3* db, std::string_view sql, Limits limits = {});
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;
  Query(Query&&) noexcept;
  Query& operator=(Query&&) noexcept;
  ~Query();

  [[nodiscard]] std::vector<std::string> columns() const;
  [[nodiscard]] std::vector<std::string> parameters() const;  ///< without their colon
  /// A parameter the SELECT does not use is let pass.
  void bind(const std::string& name, const Value& value);

  /// The next row; false at the end. Throws SqlFault when it takes too long or gives too many rows.
  bool step();
  /// Throws SqlFault for a number with a fraction or bytes: a report gives whole base units.
  /// Good until the next step.
  [[nodiscard]] View value(int column) const;

 private:
  struct Finalize {
    void operator()(sqlite3_stmt* statement) const noexcept;
  };
  class Clock;
  sqlite3* db_;
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
  Limits limits_;
  std::unique_ptr<Clock> clock_;  ///< from the first step on
  std::int64_t rows_ = 0;
};

}  // namespace kerfbook::report
