#include "office/unbilled.h"

#include <SQLiteCpp/Database.h>
#include <sqlite3.h>

#include <map>
#include <memory>
#include <string>

#include "base/text.h"
#include "book/watch.h"
#include "office/office.h"

namespace kerfbook::billing {
namespace {

using Sums = std::map<std::string, std::int64_t>;  // by job in small letters, minor units

void unbilled(sqlite3_context* context, int, sqlite3_value** values) {
  const auto& sums = *static_cast<const Sums*>(sqlite3_user_data(context));
  const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(values[0]));
  const auto found = text == nullptr ? sums.end() : sums.find(lower(text));
  if (found == sums.end()) return sqlite3_result_null(context);
  sqlite3_result_int64(context, found->second);
}

void drop(void* sums) {
  delete static_cast<Sums*>(sums);
}

void hand_over(const book::Book& book, std::unique_ptr<Sums> sums) {
  // SQLite keeps the sums and drops them with the function, also when it cannot be added
  book::add_function(book.database(), {"unbilled", 1, unbilled, sums.release(), drop});
}

}  // namespace

void register_unbilled(const book::Book& book, Day today) {
  auto sums = std::make_unique<Sums>();
  for (const Waiting& one : waiting(book, today, today)) {
    if (!one.job.empty() && one.problems == 0) sums->emplace(lower(one.job), one.before_tax.minor);
  }
  hand_over(book, std::move(sums));
}

void register_unbilled(const book::Book& book) {
  hand_over(book, std::make_unique<Sums>());
}

}  // namespace kerfbook::billing
