#include "report/guard.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <set>
#include <tuple>

#include "base/exact.h"
#include "base/input.h"
#include "base/text.h"
#include "book/schema.h"
#include "book/watch.h"

namespace kerfbook::report {
namespace {

constexpr int kStepsBetweenLooks = 20'000;  // of SQLite's machine: well under a millisecond

bool is_view_name(std::string_view name) {
  return name.starts_with("v_");
}

/// A column of a table read on behalf of a view.
using Read = std::tuple<std::string, std::string, std::string>;  // view, table, column

/// What SQLite asked leave for while it prepared a statement.
struct LeaveAsked {
  std::set<Read> through_views;
  std::string refused;  ///< the first thing refused, in words; empty = nothing
};

std::string text_of(const char* text) {
  return text == nullptr ? "" : text;
}

/// Asked in place of the book's own watch while a report's SELECT is prepared.
class Reader : public book::Warden {
 public:
  Reader(sqlite3* db, LeaveAsked& asked) : Warden(db), asked_(asked) {}

  bool allows(const book::Request& request) override {
    switch (request.action) {
      case SQLITE_SELECT:
      case SQLITE_RECURSIVE:
        return true;
      case SQLITE_FUNCTION:
        return book::only_computes(request.second) || refuse("it calls " + text_of(request.second));
      case SQLITE_READ:
        return may_read(text_of(request.first), text_of(request.second), request.within);
      default:
        return refuse("it does more than read");
    }
  }

 private:
  bool refuse(std::string what) {
    if (asked_.refused.empty()) asked_.refused = std::move(what);
    return false;
  }

  bool may_read(const std::string& table, const std::string& column, const char* view) {
    if (is_view_name(table)) return true;
    // count(*) of a view asks for its table with no column and no view: it gives away a number of rows at most
    if (column.empty()) return true;
    if (view == nullptr || !is_view_name(view)) return refuse("it reads the table " + table);
    asked_.through_views.emplace(view, table, column);
    return true;
  }

  LeaveAsked& asked_;
};

/// What a SELECT may not be larger than. All reports that are built in need a tenth of it at most.
struct Most {
  int what;
  int value;
};
constexpr std::array kMost{
    Most{SQLITE_LIMIT_LENGTH, kLongestText},  Most{SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 1000},
    Most{SQLITE_LIMIT_SQL_LENGTH, 256 << 10}, Most{SQLITE_LIMIT_COLUMN, 200},
    Most{SQLITE_LIMIT_EXPR_DEPTH, 200},       Most{SQLITE_LIMIT_COMPOUND_SELECT, 50},
    Most{SQLITE_LIMIT_VDBE_OP, 100'000},      Most{SQLITE_LIMIT_FUNCTION_ARG, 100},
    Most{SQLITE_LIMIT_VARIABLE_NUMBER, 100}};

constexpr std::size_t kWhilePreparing = kMost.size();
constexpr std::size_t kWhileStepping = 2;  ///< the first two; the others are looked at in preparing alone

/// Holds a connection to these limits while a report's own SELECT is prepared or stepped, and no longer: the program's
/// own statements may carry a whole mill file.
class Fence {
 public:
  Fence(sqlite3* db, std::size_t limits)
      : db_(db), limits_(limits), memory_(sqlite3_hard_heap_limit64(kMostMemory)) {
    for (std::size_t i = 0; i < limits_; ++i)
      before_.at(i) = sqlite3_limit(db_, kMost.at(i).what, kMost.at(i).value);
  }
  Fence(const Fence&) = delete;
  Fence& operator=(const Fence&) = delete;
  ~Fence() {
    for (std::size_t i = 0; i < limits_; ++i) sqlite3_limit(db_, kMost.at(i).what, before_.at(i));
    sqlite3_hard_heap_limit64(memory_);
  }

 private:
  sqlite3* db_;
  std::size_t limits_;
  sqlite3_int64 memory_;
  std::array<int, kMost.size()> before_{};
};

/// SQLite's words, or ours where a limit was met.
std::string words_of(sqlite3* db, int result) {
  if (result == SQLITE_TOOBIG)
    return fmt::format("it makes a text of more than {} bytes, the most a cell holds; make a shorter one",
                       grouped({kLongestText, 0}));
  if (result == SQLITE_NOMEM)
    return fmt::format("it takes more than {} of memory; ask for less at once",
                       shown_bytes(static_cast<std::size_t>(kMostMemory)));
  return sqlite3_errmsg(db);
}

struct Prepared {
  sqlite3_stmt* statement = nullptr;
  std::size_t used = 0;  ///< bytes of the text
};

Prepared prepare(sqlite3* db, std::string_view sql, LeaveAsked& asked) {
  const Reader reader(db, asked);
  const Fence fence(db, kWhilePreparing);
  Prepared out;
  const char* tail = nullptr;
  const int result = sqlite3_prepare_v2(db, sql.data(), static_cast<int>(sql.size()), &out.statement, &tail);
  if (result != SQLITE_OK) {
    const int at = sqlite3_error_offset(db);
    if (!asked.refused.empty())
      throw SqlFault(asked.refused + "; a report reads the views (v_...) and nothing else", at);
    throw SqlFault(words_of(db, result), at);
  }
  if (out.statement != nullptr &&
      !reader.was_asked()) {  // VACUUM asks nobody, and so does all that is not watched
    sqlite3_finalize(out.statement);
    throw SqlFault("it does more than read; a report reads the views (v_...) and nothing else", 0);
  }
  out.used = static_cast<std::size_t>(tail - sql.data());
  return out;
}

/// A WITH table that takes the name of a view would read in the view's name what the view does not show. So each
/// view is asked what it reads, and nothing else may be read through it.
void check_reads(sqlite3* db, const LeaveAsked& asked) {
  std::set<std::string> views;
  for (const auto& [view, table, column] : asked.through_views) views.insert(view);
  for (const auto& view : views) {
    LeaveAsked own;
    try {
      sqlite3_finalize(prepare(db, "SELECT * FROM " + book::as_name(view), own).statement);
    } catch (const SqlFault&) {
      own.through_views.clear();  // no such view: nothing may be read in its name
    }
    for (const auto& read : asked.through_views) {
      if (std::get<0>(read) == view && !own.through_views.contains(read)) {
        throw SqlFault(fmt::format("it reads {}.{} in the name of {}, which does not show it",
                                   std::get<1>(read), std::get<2>(read), view),
                       -1);
      }
    }
  }
}

/// Comments and blanks may follow the statement; a second one may not.
void check_nothing_follows(sqlite3* db, std::string_view sql, std::size_t used) {
  while (used < sql.size()) {
    LeaveAsked asked;
    Prepared next;
    try {
      next = prepare(db, sql.substr(used), asked);
    } catch (const SqlFault&) {
      throw SqlFault("a second statement follows; write one SELECT a table", static_cast<int>(used));
    }
    if (next.statement != nullptr) {
      sqlite3_finalize(next.statement);
      throw SqlFault("a second statement follows; write one SELECT a table", static_cast<int>(used));
    }
    if (next.used == 0) return;
    used += next.used;
  }
}

}  // namespace

/// Stops a statement that has run out of time, for as long as it stands in place.
class Query::Clock {
 public:
  Clock(sqlite3* db, std::chrono::milliseconds time)
      : db_(db), until_(std::chrono::steady_clock::now() + time) {
    sqlite3_progress_handler(db_, kStepsBetweenLooks, look, this);
  }
  Clock(const Clock&) = delete;
  Clock& operator=(const Clock&) = delete;
  ~Clock() { sqlite3_progress_handler(db_, 0, nullptr, nullptr); }

 private:
  static int look(void* data) {
    return std::chrono::steady_clock::now() > static_cast<const Clock*>(data)->until_ ? 1 : 0;
  }

  sqlite3* db_;
  std::chrono::steady_clock::time_point until_;
};

Query::Query(Query&&) noexcept = default;
Query& Query::operator=(Query&&) noexcept = default;
Query::~Query() = default;

void Query::Finalize::operator()(sqlite3_stmt* statement) const noexcept {
  sqlite3_finalize(statement);
}

Query::Query(sqlite3* db, std::string_view sql, Limits limits) : db_(db), limits_(limits) {
  LeaveAsked asked;
  const Prepared prepared = prepare(db, sql, asked);
  statement_.reset(prepared.statement);
  if (statement_ == nullptr) throw SqlFault("there is no SELECT here", -1);
  if (sqlite3_stmt_isexplain(statement_.get()) != 0)
    throw SqlFault("it explains a SELECT; write the SELECT", 0);
  if (sqlite3_stmt_readonly(statement_.get()) == 0) throw SqlFault("it does more than read", 0);
  check_nothing_follows(db, sql, prepared.used);
  check_reads(db, asked);
}

std::vector<std::string> Query::columns() const {
  std::vector<std::string> names;
  const int count = sqlite3_column_count(statement_.get());
  for (int i = 0; i < count; ++i) names.emplace_back(sqlite3_column_name(statement_.get(), i));
  return names;
}

std::vector<std::string> Query::parameters() const {
  std::vector<std::string> names;
  const int count = sqlite3_bind_parameter_count(statement_.get());
  for (int i = 1; i <= count; ++i) {
    const std::string name = text_of(sqlite3_bind_parameter_name(statement_.get(), i));
    names.push_back(name.starts_with(":") ? name.substr(1) : name);
  }
  return names;
}

void Query::bind(const std::string& name, const Value& value) {
  const int at = sqlite3_bind_parameter_index(statement_.get(), (":" + name).c_str());
  if (at == 0) return;
  int result = SQLITE_OK;
  if (const auto* number = std::get_if<std::int64_t>(&value)) {
    result = sqlite3_bind_int64(statement_.get(), at, *number);
  } else if (const auto* text = std::get_if<std::string>(&value)) {
    result = sqlite3_bind_text(statement_.get(), at, text->data(), static_cast<int>(text->size()),
                               SQLITE_TRANSIENT);
  } else {
    result = sqlite3_bind_null(statement_.get(), at);
  }
  if (result != SQLITE_OK) throw SqlFault(sqlite3_errmsg(db_), -1);
}

bool Query::step() {
  if (!clock_) clock_ = std::make_unique<Clock>(db_, limits_.time);
  int result = SQLITE_OK;
  {
    const Fence fence(db_, kWhileStepping);
    result = sqlite3_step(statement_.get());
  }
  if (result != SQLITE_ROW) clock_.reset();
  if (result == SQLITE_DONE) return false;
  if (result == SQLITE_INTERRUPT) {
    throw SqlFault(fmt::format("it takes longer than {} seconds; a WITH RECURSIVE without an end?",
                               std::chrono::duration_cast<std::chrono::seconds>(kPatience).count()),
                   -1);
  }
  if (result != SQLITE_ROW) throw SqlFault(words_of(db_, result), -1);
  if (++rows_ > limits_.rows) throw SqlFault(fmt::format("it gives more than {} rows", limits_.rows), -1);
  return true;
}

View Query::value(int column) const {
  switch (sqlite3_column_type(statement_.get(), column)) {
    case SQLITE_NULL:
      return std::monostate{};
    case SQLITE_INTEGER:
      return static_cast<std::int64_t>(sqlite3_column_int64(statement_.get(), column));
    case SQLITE_TEXT: {
      const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
      return std::string_view(text, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column)));
    }
    default:
      throw SqlFault(
          fmt::format("column {} gives a number with a fraction or bytes; give whole base units and let "
                      "the header divide (of=A/B)",
                      sqlite3_column_name(statement_.get(), column)),
          -1);
  }
}

}  // namespace kerfbook::report
