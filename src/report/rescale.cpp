#include "report/rescale.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <map>
#include <vector>

#include "base/error.h"
#include "base/text.h"
#include "book/mill.h"
#include "scaling/practice.h"

namespace kerfbook::report {
namespace {

/// A text as SQL writes it.
std::string sql_text(const std::string& text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("''") : std::string(1, c);
  return out + "'";
}

std::string known_rule(const book::Book& book, const std::string& asked) {
  if (const auto practice = book::practice_named(book.mill(), asked)) return practice->name;
  std::vector<std::string> known = scaling::practice_names();
  for (const auto& practice : book.mill().practices) known.push_back(practice.name);
  const std::string near = nearest(asked, known);
  if (!near.empty()) throw Refused(fmt::format("rule '{}' is not known; did you mean {}?", asked, near));
  const std::string reason = scaling::why_not(asked);
  throw Refused(fmt::format("rule '{}' is not known; {}", asked,
                            reason.empty() ? "one of " + join(known, ", ") : reason));
}

/// `CREATE TEMP VIEW name` over the book's own, column for column, some of them worked out anew. The columns are
/// taken from the view, so one added there needs no word here.
void shadow(SQLite::Database& db, const std::string& view, const std::map<std::string, std::string>& anew) {
  SQLite::Statement columns(db, "SELECT name FROM pragma_table_info(" + sql_text(view) + ", 'main')");
  std::vector<std::string> list;
  while (columns.executeStep()) {
    const std::string name = columns.getColumn(0).getString();
    const auto changed = anew.find(name);
    list.push_back((changed == anew.end() ? "old." + name : changed->second) + " AS " + name);
  }
  db.exec(fmt::format("CREATE TEMP VIEW {} AS SELECT {} FROM main.{} old", view, join(list, ", "), view));
}

std::string of_logs(const std::string& what, const std::string& also = "") {
  return fmt::format(
      "(SELECT {} FROM temp.v_log_id l WHERE l.day = old.day AND l.shift = old.shift AND l.run = old.run "
      "AND l.state = 'sawn'{})",
      what, also);
}

std::string of_runs(const std::string& what, const std::string& also) {
  return fmt::format("(SELECT {} FROM temp.v_run_id r WHERE r.day = old.day AND r.shift = old.shift AND {})",
                     what, also);
}

}  // namespace

Rescaled::Rescaled(const book::Book& book, const std::string& rule) : book_(book) {
  if (rule.empty()) return;
  rule_ = known_rule(book, rule);
  const std::string name = sql_text(rule_);
  const std::string gross = fmt::format("gross_scale({}, old.spec, old.metric)", name);
  const std::string net = fmt::format("net_scale({}, old.spec, old.metric)", name);
  const std::string unit = fmt::format("scale_unit({})", name);
  for (const char* view : {"v_log_id", "v_log", "v_deck"}) {
    shadow(book.database(), view,
           {{"rule", name},
            {"scale_unit", unit},
            {"gross", gross},
            {"net", net},
            {"deduction", gross + " - " + net}});
  }
  for (const char* view : {"v_run_id", "v_run"}) {
    shadow(book.database(), view,
           {{"rule", name},
            {"scale_unit", unit},
            {"gross", of_logs("coalesce(sum(l.gross), 0)")},
            {"net", of_logs("coalesce(sum(l.net), 0)")},
            {"unscaled_logs", of_logs("count(*)", " AND l.net IS NULL")}});
  }
  const std::string scaled = "r.logs > r.unscaled_logs";
  const std::string counted = "r.logs > 0 AND r.unscaled_logs = 0 AND r.lumber > 0";
  shadow(book.database(), "v_sheet",
         {{"rules", of_runs("max(rule)", scaled)},
          {"scale_units", of_runs("max(scale_unit)", scaled)},
          {"unscaled_logs", of_runs("coalesce(sum(unscaled_logs), 0)", "1")},
          {"net", of_runs("sum(net)", scaled)},
          {"counted_lumber", of_runs("sum(lumber)", counted)},
          {"counted_net", of_runs("sum(net)", counted)}});
}

Rescaled::~Rescaled() {
  if (rule_.empty()) return;
  book_.database().tryExec(
      "DROP VIEW IF EXISTS temp.v_sheet; DROP VIEW IF EXISTS temp.v_deck; DROP VIEW IF EXISTS temp.v_run; "
      "DROP VIEW IF EXISTS temp.v_run_id; "
      "DROP VIEW IF EXISTS temp.v_log; DROP VIEW IF EXISTS temp.v_log_id");
}

}  // namespace kerfbook::report
