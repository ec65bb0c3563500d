#include "book/watch.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <set>
#include <string>

namespace kerfbook::book {
namespace {

/// What SQLite has built in, sorted. Not among them: load_extension(), and what belongs to modules with tables of their own.
constexpr std::string_view kComputingWords =
    "-> ->> abs acos acosh asin asinh atan atan2 atanh avg ceil ceiling changes char coalesce concat "
    "concat_ws cos cosh count cume_dist current_date current_time current_timestamp date datetime "
    "degrees dense_rank exp first_value floor format glob group_concat hex ifnull iif instr "
    "json json_array json_array_length json_extract json_group_array json_group_object json_insert "
    "json_object json_patch json_quote json_remove json_replace json_set json_type json_valid julianday "
    "lag last_insert_rowid last_value lead length like likelihood likely ln log log10 log2 lower ltrim "
    "max min mod nth_value ntile nullif octet_length percent_rank pi pow "
    "power printf quote radians random randomblob rank replace round row_number rtrim "
    "sign sin sinh soundex sqrt strftime string_agg substr substring subtype sum tan tanh "
    "time timediff total total_changes trim trunc typeof unhex unicode unistr unistr_quote "
    "unixepoch unlikely upper zeroblob";

constexpr auto kComputing = [] {
  std::array<std::string_view, std::count(kComputingWords.begin(), kComputingWords.end(), ' ') + 1> words{};
  std::string_view rest = kComputingWords;
  for (auto& word : words) {
    word = rest.substr(0, rest.find(' '));
    rest.remove_prefix(std::min(word.size() + 1, rest.size()));
  }
  return words;
}();
static_assert(std::is_sorted(kComputing.begin(), kComputing.end()));

/// Sorted: what this room asks of an open book or sets in it.
constexpr auto kPragmas = std::to_array<std::string_view>(
    {"application_id", "foreign_key_check", "integrity_check", "journal_mode", "page_count", "page_size",
     "schema_version", "table_info", "user_version"});
static_assert(std::is_sorted(kPragmas.begin(), kPragmas.end()));

/// The program's own, by the names they were added with.
std::set<std::string, std::less<>>& own_functions() {
  static std::set<std::string, std::less<>> names;
  return names;
}

thread_local Warden* in_charge = nullptr;  ///< the innermost; a connection is used by one thread

bool is_of_a_book(const Request& request) {
  switch (request.action) {
    case SQLITE_SELECT:
    case SQLITE_READ:
    case SQLITE_RECURSIVE:
    case SQLITE_TRANSACTION:
    case SQLITE_SAVEPOINT:
      return true;
    case SQLITE_FUNCTION:
      return only_computes(request.second);
    case SQLITE_INSERT:
    case SQLITE_UPDATE:
    case SQLITE_DELETE:
    case SQLITE_CREATE_TABLE:
    case SQLITE_CREATE_INDEX:
    case SQLITE_CREATE_VIEW:
    case SQLITE_CREATE_TEMP_TABLE:
    case SQLITE_CREATE_TEMP_INDEX:
    case SQLITE_CREATE_TEMP_VIEW:
    case SQLITE_DROP_TABLE:
    case SQLITE_DROP_INDEX:
    case SQLITE_DROP_VIEW:
    case SQLITE_DROP_TEMP_TABLE:
    case SQLITE_DROP_TEMP_INDEX:
    case SQLITE_DROP_TEMP_VIEW:
    case SQLITE_REINDEX:
      return request.within == nullptr;
    case SQLITE_PRAGMA:
      return std::binary_search(kPragmas.begin(), kPragmas.end(), std::string_view(request.first));
    default:
      return false;
  }
}

}  // namespace

int ask(void* db, int action, const char* first, const char* second, const char*, const char* within) {
  const Request request{action, first, second, within};
  Warden* const warden = in_charge;
  if (warden == nullptr || warden->db_ != db) return is_of_a_book(request) ? SQLITE_OK : SQLITE_DENY;
  warden->asked_ = true;
  return warden->allows(request) ? SQLITE_OK : SQLITE_DENY;
}

void watch(sqlite3* db) {
  sqlite3_set_authorizer(db, ask, db);
}

void add_function(SQLite::Database& database, const Function& function) {
  const int code = sqlite3_create_function_v2(database.getHandle(), function.name, function.values,
                                              SQLITE_UTF8 | SQLITE_INNOCUOUS | function.flags, function.data,
                                              function.work_out, nullptr, nullptr, function.drop);
  if (code != SQLITE_OK) throw SQLite::Exception(database.getHandle(), code);
  own_functions().insert(function.name);
}

bool only_computes(std::string_view function) {
  return std::binary_search(kComputing.begin(), kComputing.end(), function) ||
         own_functions().contains(function);
}

Warden::Warden(sqlite3* db) : db_(db), outer_(in_charge) {
  in_charge = this;
}

Warden::~Warden() {
  in_charge = outer_;
}

}  // namespace kerfbook::book
