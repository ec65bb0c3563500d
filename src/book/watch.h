// watch.h -- what is asked of a book's connection is looked at while SQL is prepared (SQLite, "Compile-Time Authorization
// Callbacks"): it does what this program's own SQL does, and what stands in the file gets it to do nothing else.
#pragma once

#include <string_view>

struct sqlite3;
struct sqlite3_context;
struct sqlite3_value;
namespace SQLite {
class Database;
}

namespace kerfbook::book {

/// From now on this connection attaches no file, makes no trigger and no virtual table, writes to no table on behalf of a
/// view or trigger, calls no function but those that only_computes() knows, and touches no pragma but a book's own.
void watch(sqlite3* db);

/// A function of the program's own, for SQL to call.
struct Function {
  const char* name = "";
  int values = 1;
  void (*work_out)(sqlite3_context*, int, sqlite3_value**) = nullptr;
  void* data = nullptr;
  void (*drop)(void*) =
      nullptr;  ///< what becomes of `data` in the end, also when this fails; nullptr = nothing
  int flags = 0;
};
/// Adds it to the connection, and to what only_computes() knows: it must do nothing but give back a value.
void add_function(SQLite::Database& database, const Function& function);

/// A function that SQLite has built in, or add_function() has added, and that gives back a value and does nothing else.
bool only_computes(std::string_view function);

/// What is asked while SQL is prepared, as SQLite puts it; a text that does not apply is nullptr.
struct Request {
  int action = 0;
  const char* first = nullptr;
  const char* second = nullptr;
  const char* within = nullptr;  ///< the view or trigger that asks
};

/// Somebody who is asked first, for as long as it stands in place: a report's SELECT may do less than the program's own.
/// What has been prepared before need not be prepared again, as it would be with another authorizer.
class Warden {
 public:
  explicit Warden(sqlite3* db);
  Warden(const Warden&) = delete;
  Warden& operator=(const Warden&) = delete;
  virtual ~Warden();

  virtual bool allows(const Request& request) = 0;
  /// It was asked something. Nobody asks on a connection that is not watched.
  [[nodiscard]] bool was_asked() const { return asked_; }

 private:
  friend int ask(void* db, int action, const char* first, const char* second, const char* database,
                 const char* within);
  sqlite3* db_;
  Warden* outer_;
  bool asked_ = false;
};

}  // namespace kerfbook::book
