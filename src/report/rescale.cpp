#include "report/rescale.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <vector>

#include "base/error.h"
#include "base/text.h"
#include "book/schema.h"
#include "mill/mill.h"
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

/// A book with the views of another program, opened to be read, has this program's in front of them (schema.h).
bool has_others_views(SQLite::Database& db) {
  return db.execAndGet("SELECT count(*) FROM temp.sqlite_schema WHERE type = 'view'").getInt() > 0;
}

/// The rows of the program's own view: never those of a view of the same name that another has put into the file.
std::string own_rows(const std::string& view, bool others) {
  if (!others) return "main." + view;
  const auto& views = book::program_views();
  const auto own =
      std::find_if(views.begin(), views.end(), [&](const auto& one) { return one.name == view; });
  constexpr std::string_view kAs = " AS";
  return "(" + own->sql.substr(own->sql.find(kAs) + kAs.size()) + "\n)";
}

/// `CREATE TEMP VIEW name` over the program's own, column for column, some of them worked out anew. The columns are
/// taken from the view, so one added there needs no word here.
void shadow(SQLite::Database& db, const std::string& view, bool others,
            const std::map<std::string, std::string>& anew) {
  SQLite::Statement columns(db, "SELECT name FROM pragma_table_info(?)");
  columns.bind(1, view);
  std::vector<std::string> list;
  while (columns.executeStep()) {
    const std::string name = columns.getColumn(0).getString();
    const auto changed = anew.find(name);
    list.push_back((changed == anew.end() ? "old." + book::as_name(name) : changed->second) + " AS " +
                   book::as_name(name));
  }
  columns.reset();
  if (others) db.exec("DROP VIEW temp." + view);
  db.exec(fmt::format("CREATE TEMP VIEW {} AS SELECT {} FROM {} old", view, join(list, ", "),
                      own_rows(view, others)));
}

/// A figure scaled before, of the days asked for, else worked out on the spot.
std::string scaled_before(const std::string& column, const std::string& table, const std::string& key,
                          const std::string& else_) {
  return fmt::format(
      "CASE WHEN old.day BETWEEN (SELECT first FROM temp.rescaled) AND (SELECT last FROM temp.rescaled) THEN "
      "(SELECT {0} FROM temp.{1} s WHERE s.day = old.day AND s.shift = old.shift AND s.{2} = old.{2}) ELSE "
      "{3} "
      "END",
      column, table, key, else_);
}

std::string of_logs(const std::string& sum) {
  return fmt::format(
      "(SELECT {} FROM temp.v_log_id l WHERE l.day = old.day AND l.shift = old.shift AND l.run = old.run "
      "AND l.state = 'sawn')",
      sum);
}

/// Every log of the days is scaled once: a report asks for the same figure several times over.
void scale_logs(SQLite::Database& db, const std::string& rule, bool others, std::int64_t from,
                std::int64_t to) {
  db.exec(
      "CREATE TEMP TABLE rescaled (first INTEGER, last INTEGER);"
      "CREATE TEMP TABLE rescaled_log (day INTEGER, shift INTEGER, number INTEGER, run INTEGER, sawn "
      "INTEGER, "
      "gross INTEGER, net INTEGER, PRIMARY KEY (day, shift, number)) WITHOUT ROWID;"
      "CREATE TEMP TABLE rescaled_run (day INTEGER, shift INTEGER, run INTEGER, gross INTEGER, net INTEGER, "
      "unscaled INTEGER, PRIMARY KEY (day, shift, run)) WITHOUT ROWID");
  const auto fill = [&](const std::string& sql) {
    SQLite::Statement statement(db, sql);
    statement.bind(1, from);
    statement.bind(2, to);
    statement.exec();
  };
  fill("INSERT INTO temp.rescaled VALUES (?, ?)");
  fill(
      fmt::format("INSERT INTO temp.rescaled_log SELECT day, shift, number, run, state = 'sawn', "
                  "gross_scale({0}, spec, metric), net_scale({0}, spec, metric) FROM {1} "
                  "WHERE day BETWEEN ? AND ?",
                  rule, own_rows("v_log_id", others)));
  fill(
      fmt::format("INSERT INTO temp.rescaled_run SELECT r.day, r.shift, r.run, coalesce(sum(l.gross), 0), "
                  "coalesce(sum(l.net), 0), coalesce(sum(l.sawn AND l.net IS NULL), 0) FROM {} r LEFT JOIN "
                  "temp.rescaled_log l ON l.day = r.day AND l.shift = r.shift AND l.run = r.run AND l.sawn "
                  "WHERE r.day BETWEEN ? AND ? GROUP BY r.day, r.shift, r.run",
                  own_rows("v_run_id", others)));
}

std::string of_runs(const std::string& what, const std::string& also) {
  return fmt::format("(SELECT {} FROM temp.v_run_id r WHERE r.day = old.day AND r.shift = old.shift AND {})",
                     what, also);
}

}  // namespace

Rescaled::Rescaled(const book::Book& book, const std::string& rule, std::int64_t from, std::int64_t to)
    : book_(book) {
  if (rule.empty()) return;
  rule_ = known_rule(book, rule);
  const std::string name = sql_text(rule_);
  const std::string unit = fmt::format("scale_unit({})", name);
  const auto of_log = [&](const std::string& column, const std::string& function) {
    return scaled_before(column, "rescaled_log", "number",
                         fmt::format("{}({}, old.spec, old.metric)", function, name));
  };
  const auto of_run = [](const std::string& column, const std::string& sum) {
    return scaled_before(column, "rescaled_run", "run", of_logs(sum));
  };
  others_ = has_others_views(book.database());
  scale_logs(book.database(), name, others_, from, to);
  const std::string gross = of_log("gross", "gross_scale");
  const std::string net = of_log("net", "net_scale");
  // a log the rule cannot scale stands under no rule, as it does when it is posted
  const auto if_scaled = [&net](const std::string& word) {
    return fmt::format("CASE WHEN {} IS NOT NULL THEN {} END", net, word);
  };
  for (const char* view : {"v_log_id", "v_log", "v_deck"}) {
    shadow(book.database(), view, others_,
           {{"rule", if_scaled(name)},
            {"scale_unit", if_scaled(unit)},
            {"gross", gross},
            {"net", net},
            {"deduction", gross + " - " + net}});
  }
  const std::string unscaled = of_run("unscaled", "coalesce(sum(l.net IS NULL), 0)");
  const auto flag = [&unscaled](const char* column) {
    return fmt::format("(SELECT {} FROM (SELECT old.logs, {} AS unscaled_logs, old.lumber))",
                       book::flag_rule("run", column), unscaled);
  };
  for (const char* view : {"v_run_id", "v_run"}) {
    shadow(book.database(), view, others_,
           {{"rule", name},
            {"scale_unit", unit},
            {"gross", of_run("gross", "coalesce(sum(l.gross), 0)")},
            {"net", of_run("net", "coalesce(sum(l.net), 0)")},
            {"unscaled_logs", unscaled},
            {"scaled", flag("scaled")},
            {"counted", flag("counted")}});
  }
  shadow(book.database(), "v_sheet", others_,
         {{"rules", of_runs("max(rule)", "r.scaled")},
          {"scale_units", of_runs("max(scale_unit)", "r.scaled")},
          {"unscaled_logs", of_runs("coalesce(sum(unscaled_logs), 0)", "1")},
          {"net", of_runs("sum(net)", "r.scaled")},
          {"counted_lumber", of_runs("sum(lumber)", "r.counted")},
          {"counted_net", of_runs("sum(net)", "r.counted")}});
}

Rescaled::~Rescaled() {
  if (rule_.empty()) return;
  book_.database().tryExec(
      "DROP VIEW IF EXISTS temp.v_sheet; DROP VIEW IF EXISTS temp.v_deck; DROP VIEW IF EXISTS temp.v_run; "
      "DROP VIEW IF EXISTS temp.v_run_id; "
      "DROP VIEW IF EXISTS temp.v_log; DROP VIEW IF EXISTS temp.v_log_id; "
      "DROP TABLE IF EXISTS temp.rescaled; DROP TABLE IF EXISTS temp.rescaled_log; "
      "DROP TABLE IF EXISTS temp.rescaled_run");
  if (!others_) return;
  try {
    book::make_temporary_views(book_.database());
  } catch (const SQLite::Exception&) {  // what is asked next finds no view, and says so
  }
}

}  // namespace kerfbook::report
