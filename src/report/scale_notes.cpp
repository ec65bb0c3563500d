#include "report/scale_notes.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "base/text.h"
#include "mill/mill.h"
#include "scaling/practice.h"

namespace kerfbook::report {
namespace {

constexpr std::array<const char*, 4> kNames{"job_id", "customer_id", "species_id", "site_id"};

bool is_asked(const Parameters& filters, const char* name) {
  return std::holds_alternative<std::int64_t>(filters.at(name));
}

void bind_days(SQLite::Statement& select, const Parameters& filters) {
  select.bind(1, std::get<std::int64_t>(filters.at("from")));
  select.bind(2, std::get<std::int64_t>(filters.at("to")));
}

/// True when every log of the days was scaled by the house's rule and no job has another: nothing to look for. Answered
/// from the sheets' own totals, so that years of one rule cost next to nothing.
bool all_by_house(const book::Book& book, const Parameters& filters) {
  const book::Mill& mill = book.mill();
  const bool own = std::any_of(mill.jobs.begin(), mill.jobs.end(),
                               [](const book::JobEntry& job) { return !job.rule.empty(); });
  if (own) return false;
  SQLite::Statement select(book.database(),
                           "SELECT 1 FROM sheet WHERE day BETWEEN ? AND ? AND rules <> ? LIMIT 1");
  bind_days(select, filters);
  select.bind(3, mill.house.name);
  return !select.executeStep();
}

/// The rule a job's logs would be scaled by today; nullptr when no file in force says it.
const std::string* rule_now(const book::Mill& mill, const std::string& job, bool was_in_a_file) {
  if (was_in_a_file && book::find_job(mill, job) == nullptr) return nullptr;
  return &book::practice_for(mill, job).name;
}

struct Scaled {
  std::set<std::string> rules;
  std::map<std::pair<std::string, std::string>, std::int64_t> older;  ///< rule and the one now: logs
};

Scaled scaled(const book::Book& book, const Parameters& filters) {
  std::string sql =
      "SELECT r.practice, coalesce(j.code, ''), EXISTS (SELECT 1 FROM mill_job m WHERE m.job = r.job), "
      "sum(r.logs - r.unscaled_logs) FROM run r LEFT JOIN job j ON j.id = r.job "
      "WHERE r.day BETWEEN ? AND ? AND r.scaled";
  for (const char* name : kNames) {
    if (!is_asked(filters, name)) continue;
    const std::string word(name, std::string(name).size() - 3);  // without _id
    sql += fmt::format(" AND {}.{} = {}", word == "customer" ? "j" : "r", word,
                       std::get<std::int64_t>(filters.at(name)));
  }
  SQLite::Statement select(book.database(), sql + " GROUP BY r.practice, r.job");
  bind_days(select, filters);
  Scaled out;
  while (select.executeStep()) {
    const std::string rule = select.getColumn(0).getString();
    out.rules.insert(rule);
    const auto* now =
        rule_now(book.mill(), select.getColumn(1).getString(), select.getColumn(2).getInt() != 0);
    if (now != nullptr && *now != rule) out.older[{rule, *now}] += select.getColumn(3).getInt64();
  }
  return out;
}

}  // namespace

std::vector<std::string> scale_notes(const book::Book& book, const Parameters& filters) {
  std::vector<std::string> notes;
  if (all_by_house(book, filters)) return notes;
  const Scaled found = scaled(book, filters);
  if (found.rules.size() > 1) {
    std::vector<std::string> words;
    for (const auto& rule : found.rules) words.push_back(scaling::rule_words(rule));
    notes.push_back(
        fmt::format("Log scale here is by {}: not one measure. --rule NAME scales all logs by one rule.",
                    join(words, " and by ")));
  }
  for (const auto& [rules, logs] : found.older) {
    notes.push_back(fmt::format("{} as scaled by {} when posted; the rule now is {}.",
                                logs == 1 ? "1 log stands" : fmt::format("{} logs stand", logs),
                                scaling::rule_words(rules.first), scaling::rule_words(rules.second)));
  }
  return notes;
}

}  // namespace kerfbook::report
