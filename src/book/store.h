// store.h -- SQL statements prepared once and run with values: the one way this room talks to SQLite.
// It knows no table. Errors come out as SQLite::Exception and become sentences in book.cpp.
#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include <concepts>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "base/day.h"

namespace kerfbook::book {

/// The number of a row in a word table (site, species, job, ...).
using Id = std::int64_t;

/// One row of an answer, read by column from 0. Good only inside the call it is handed to.
class Row {
 public:
  explicit Row(const SQLite::Statement& statement) : statement_(statement) {}
  [[nodiscard]] bool is_null(int column) const { return statement_.getColumn(column).isNull(); }
  [[nodiscard]] std::int64_t number(int column) const { return statement_.getColumn(column).getInt64(); }
  [[nodiscard]] std::string text(int column) const { return statement_.getColumn(column).getString(); }
  [[nodiscard]] std::optional<std::int64_t> maybe(int column) const {
    return is_null(column) ? std::nullopt : std::optional(number(column));
  }

 private:
  const SQLite::Statement& statement_;
};

class Store {
 public:
  explicit Store(SQLite::Database& database) : database_(database) {}

  /// Runs a statement that gives no rows. Values fill its ? marks in order; an empty optional is NULL.
  template <class... Values>
  void run(std::string_view sql, const Values&... values) {
    const Use use(statement(sql));
    bind(*use, values...);
    while (use->executeStep()) {
    }
  }

  /// Calls `take(const Row&)` for every row, in order. `sql` must not be run again from inside `take`.
  template <class Take, class... Values>
  void each(std::string_view sql, Take&& take, const Values&... values) {
    const Use use(statement(sql));
    bind(*use, values...);
    const Row row(*use);
    while (use->executeStep()) take(row);
  }

  /// The first column of the first row; nullopt when there is no row or it is NULL.
  template <class... Values>
  std::optional<std::int64_t> number(std::string_view sql, const Values&... values) {
    const Use use(statement(sql));
    bind(*use, values...);
    if (!use->executeStep()) return std::nullopt;
    return Row(*use).maybe(0);
  }

  [[nodiscard]] std::int64_t last_id() const { return database_.getLastInsertRowid(); }
  [[nodiscard]] SQLite::Database& database() const { return database_; }

 private:
  /// A statement in use, put back ready for the next: one left half-read would keep the book locked.
  class Use {
   public:
    explicit Use(SQLite::Statement& statement) : statement_(statement) {}
    Use(const Use&) = delete;
    Use& operator=(const Use&) = delete;
    ~Use() { statement_.tryReset(); }
    SQLite::Statement& operator*() const { return statement_; }
    SQLite::Statement* operator->() const { return &statement_; }

   private:
    SQLite::Statement& statement_;
  };

  struct Hash : std::hash<std::string_view> {
    using is_transparent = void;
  };

  SQLite::Statement& statement(std::string_view sql) {
    auto found = prepared_.find(sql);
    if (found == prepared_.end()) {
      const std::string text(sql);
      found = prepared_.emplace(text, std::make_unique<SQLite::Statement>(database_, text)).first;
    }
    return *found->second;
  }

  template <class... Values>
  static void bind(SQLite::Statement& statement, const Values&... values) {
    int mark = 0;
    (bind_one(statement, ++mark, values), ...);
  }
  template <std::integral T>
  static void bind_one(SQLite::Statement& statement, int mark, T value) {
    statement.bind(mark, static_cast<std::int64_t>(value));
  }
  static void bind_one(SQLite::Statement& statement, int mark, Day day) { statement.bind(mark, day.number); }
  static void bind_one(SQLite::Statement& statement, int mark, std::nullopt_t) { statement.bind(mark); }
  static void bind_one(SQLite::Statement& statement, int mark, std::string_view text) {
    statement.bind(mark, std::string(text));
  }
  template <class T>
  static void bind_one(SQLite::Statement& statement, int mark, const std::optional<T>& value) {
    if (value) {
      bind_one(statement, mark, *value);
    } else {
      statement.bind(mark);
    }
  }

  SQLite::Database& database_;
  std::unordered_map<std::string, std::unique_ptr<SQLite::Statement>, Hash, std::equal_to<>> prepared_;
};

}  // namespace kerfbook::book
