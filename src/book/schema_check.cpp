#include "book/schema_check.h"

#include <fmt/format.h>

#include <map>
#include <set>
#include <string_view>

#include "base/text.h"

namespace kerfbook::book {
namespace {

constexpr std::string_view kOwnIndex = "sqlite_autoindex_";

/// A row of sqlite_schema.
struct Found {
  std::string type;
  std::string name;
  std::string table;
  std::int64_t page = 0;           ///< where it begins in the file; of a view 0
  std::optional<std::string> sql;  ///< SQLite keeps none for the indexes it makes by itself
};

std::string_view word_of(Thing::Kind kind) {
  switch (kind) {
    case Thing::Kind::table:
      return "table";
    case Thing::Kind::index:
      return "index";
    case Thing::Kind::view:
      return "view";
  }
  return "";
}

/// Of an index the table it is on; else the name itself.
std::string_view table_of(const Thing& thing) {
  if (thing.kind != Thing::Kind::index) return thing.name;
  constexpr std::string_view kOn = " ON ";
  const std::string_view rest = std::string_view(thing.sql).substr(thing.sql.find(kOn) + kOn.size());
  return rest.substr(0, rest.find(' '));
}

/// How many indexes SQLite makes by itself for a table: one for each UNIQUE that is not in a remark.
int own_indexes_of(std::string_view sql) {
  constexpr std::string_view kWord = "UNIQUE";
  int count = 0;
  for (auto at = sql.find(kWord); at != std::string_view::npos; at = sql.find(kWord, at + 1)) {
    const auto line = sql.rfind('\n', at) + 1;  // npos + 1 is the beginning
    count += sql.substr(line, at - line).find("--") == std::string_view::npos ? 1 : 0;
  }
  return count;
}

/// SQLite's own notes on how many rows the indexes have: another program's, and harmless.
bool is_notes(const Found& found) {
  return found.sql == "CREATE TABLE sqlite_stat1(tbl,idx,stat)" ||
         found.sql == "CREATE TABLE sqlite_stat4(tbl,idx,neq,nlt,ndlt,sample)";
}

std::string shown(std::string_view name) {
  constexpr int kWidth = 40;  // it may be any length, and hold anything
  std::string line = fit_to_print(name);
  for (char& c : line) c = c == '\n' || c == '\t' ? ' ' : c;
  return in_quotes(clip(line, kWidth));
}

class Check {
 public:
  Check(const Edition& edition, bool is_newest) : edition_(edition), is_newest_(is_newest) {
    for (const auto& thing : edition.things) expected_.emplace(thing.name, &thing);
    if (is_newest) {
      for (const auto& view : program_views()) expected_.emplace(view.name, &view);
    }
  }

  void look_at(const Found& found) {
    if (found.type == "view" && !is_newest_) return;
    look_at_page(found);
    if (!found.sql) return look_at_own_index(found);
    const auto thing = expected_.find(found.name);
    if (thing == expected_.end() || word_of(thing->second->kind) != found.type) {
      look_at_unknown(found);
    } else {
      compare(found, *thing->second);
      expected_.erase(thing);
    }
  }

  SchemaDoubts finish() {
    for (const auto& thing : edition_.things) {
      if (thing.kind == Thing::Kind::table && own_indexes_[thing.name] != own_indexes_of(thing.sql))
        strange(fmt::format("table {} is not as a book has it", thing.name));
    }
    for (const auto& [name, thing] : expected_) {
      const std::string what = fmt::format("{} {} is missing", word_of(thing->kind), name);
      if (thing->kind == Thing::Kind::table) strange(what);
      if (thing->kind == Thing::Kind::index) doubts_.mendable.push_back(what);
      if (thing->kind == Thing::Kind::view) doubts_.views_are_current = false;
    }
    return std::move(doubts_);
  }

 private:
  /// Page 1 holds the schema itself. What two things share, writing to one of them writes into the other.
  void look_at_page(const Found& found) {
    if (found.type == "view" || (found.page > 1 && pages_.insert(found.page).second)) return;
    strange(fmt::format("{} {} has no page of its own", fit_to_print(found.type), shown(found.name)));
  }

  void strange(std::string what) { doubts_.strange.push_back(std::move(what)); }

  void look_at_own_index(const Found& found) {
    if (found.type == "index" && found.name.starts_with(kOwnIndex) && expected_or_seen(found.table)) {
      ++own_indexes_[found.table];
    } else {
      look_at_unknown(found);
    }
  }

  bool expected_or_seen(const std::string& table) const {
    for (const auto& thing : edition_.things) {
      if (thing.kind == Thing::Kind::table && thing.name == table) return true;
    }
    return false;
  }

  void look_at_unknown(const Found& found) {
    const std::string what =
        fmt::format("{} {} is no part of a book", fit_to_print(found.type), shown(found.name));
    if (is_notes(found)) {
      doubts_.mendable.push_back(what);
    } else {
      strange(what);
    }
  }

  void compare(const Found& found, const Thing& thing) {
    if (found.sql == thing.sql && found.table == table_of(thing)) return;
    if (thing.kind == Thing::Kind::view) {
      doubts_.views_are_current = false;
    } else {
      strange(fmt::format("{} {} is not as a book has it", word_of(thing.kind), thing.name));
    }
  }

  const Edition& edition_;
  bool is_newest_;
  std::map<std::string_view, const Thing*> expected_;  ///< and not met yet
  std::map<std::string, int> own_indexes_;
  std::set<std::int64_t> pages_;
  SchemaDoubts doubts_;
};

}  // namespace

SchemaDoubts check_schema(Store& store, const Edition& edition, const Edition& newest) {
  Check check(edition, edition.number == newest.number);
  store.each("SELECT type, name, tbl_name, rootpage, sql FROM sqlite_schema", [&](const Row& row) {
    check.look_at({row.text(0), row.text(1), row.text(2), row.number(3),
                   row.is_null(4) ? std::nullopt : std::optional(row.text(4))});
  });
  return check.finish();
}

}  // namespace kerfbook::book
