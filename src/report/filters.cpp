#include "report/filters.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/error.h"
#include "base/text.h"
#include "render/renderer.h"
#include "tuning/few_logs.h"

namespace kerfbook::report {
namespace {

constexpr std::int64_t kBeforeAll = -1'000'000;  // day numbers that stand for no first and no last day
constexpr std::int64_t kAfterAll = 1'000'000;

/// A filter that names something of the book.
struct Named {
  const char* word;  ///< the filter
  std::string Ask::*asked;
  const char* id;     ///< the parameter with its number
  const char* known;  ///< SELECT of code, name and number
};

constexpr const char* kSetups = "SELECT name, '', id FROM setup ORDER BY name";

const std::array<Named, 6> kNamed{
    {{"job", &Ask::job, "job_id", "SELECT code, name, id FROM job ORDER BY code"},
     {"customer", &Ask::customer, "customer_id", "SELECT code, name, id FROM customer ORDER BY code"},
     {"species", &Ask::species, "species_id", "SELECT code, name, id FROM species ORDER BY code"},
     {"site", &Ask::site, "site_id", "SELECT name, '', id FROM site ORDER BY name"},
     {"setup", &Ask::setup, "setup_id", kSetups},
     {"against", &Ask::against, "against_id", kSetups}}};

bool takes(const ReportFile& report, const std::string& filter) {
  return std::find(report.filters.begin(), report.filters.end(), filter) != report.filters.end();
}

bool takes_days(const ReportFile& report) {
  return takes(report, "from") && takes(report, "to");
}

/// What may be asked of a report, as options of the command.
std::string options_of(const ReportFile& report) {
  std::vector<std::string> options;
  if (takes_days(report)) options.emplace_back("--period");
  for (const auto& filter : report.filters) options.push_back("--" + filter);
  return options.empty() ? "it takes none of these options" : "it takes " + join(options, ", ");
}

void check_taken(const ReportFile& report, const std::string& filter) {
  if (takes(report, filter)) return;
  throw WrongUsage(
      fmt::format("report {} cannot be limited by --{}; {}", report.name, filter, options_of(report)));
}

/// A period may have been given by any of three options, so all of them are named.
void check_days_taken(const ReportFile& report, const Ask& ask) {
  if (!ask.from && !ask.to) return;
  if (!takes(report, "from") && !takes(report, "to")) {
    throw WrongUsage(fmt::format("report {} is always over all days: leave out --period, --from and --to; {}",
                                 report.name, options_of(report)));
  }
  if (ask.from) check_taken(report, "from");
  if (ask.to) check_taken(report, "to");
}

/// A word of the book.
struct Word {
  std::string code;
  std::int64_t id;
};

/// Found by code or by name; case does not matter.
Word known_as(const book::Book& book, const Named& named, const std::string& typed) {
  SQLite::Statement select(book.database(), named.known);
  std::vector<std::string> known;
  while (select.executeStep()) {
    const std::string code = select.getColumn(0).getString();
    const std::string name = select.getColumn(1).getString();
    if (same_word(code, typed) || (!name.empty() && same_word(name, typed))) {
      return {code, select.getColumn(2).getInt64()};
    }
    known.push_back(code);
    if (!name.empty()) known.push_back(name);
  }
  const std::string near = nearest(typed, known);
  throw Refused(fmt::format("{} '{}' is not in the book; {}", named.word, typed,
                            !near.empty()   ? "did you mean " + near + "?"
                            : known.empty() ? fmt::format("it has no {} yet", named.word)
                                            : "it has " + join(known, ", ")));
}

std::optional<Day> newest_day(const book::Book& book) {
  SQLite::Statement select(book.database(), "SELECT max(day) FROM sheet");
  if (!select.executeStep() || select.getColumn(0).isNull()) return std::nullopt;
  return Day{select.getColumn(0).getInt()};
}

/// "2026-05-04 to 2026-05-08", with the words it was asked in before it.
std::string period_words(const Ask& ask, const render::Style& style) {
  std::string days;
  if (ask.from && ask.to) {
    days = *ask.from == *ask.to ? weekday_name(*ask.from) + " " + day_words(*ask.from, style)
                                : day_words(*ask.from, style) + " to " + day_words(*ask.to, style);
  } else if (ask.from) {
    days = "from " + day_words(*ask.from, style);
  } else if (ask.to) {
    days = "to " + day_words(*ask.to, style);
  } else {
    return "all days";
  }
  if (ask.period_words.ends_with(days)) return ask.period_words;
  return ask.period_words.empty() ? days : ask.period_words + ": " + days;
}

/// Past a quoted text or a remark that begins at `at`, else past one byte.
std::size_t past(std::string_view sql, std::size_t at) {
  const auto behind = [&](std::string_view end) {
    const std::size_t found = sql.find(end, at + 1);
    return found == std::string_view::npos ? sql.size() : found + end.size();
  };
  if (sql[at] == '\'' || sql[at] == '"') return behind(sql.substr(at, 1));
  if (sql.substr(at, 2) == "--") return behind("\n");
  if (sql.substr(at, 2) == "/*") return behind("*/");
  return at + 1;
}

/// Past the bracket that closes the one at `at`.
std::size_t past_bracket(std::string_view sql, std::size_t at) {
  int depth = 0;
  while (at < sql.size()) {
    if (sql[at] == '(') ++depth;
    if (sql[at] == ')' && --depth == 0) return at + 1;
    at = past(sql, at);
  }
  return at;
}

void blank(std::string& sql, std::size_t from, std::size_t to) {
  for (; from < to; ++from) {
    if (sql[from] != '\n') sql[from] = ' ';
  }
}

/// `(:job IS NULL OR job = :job)`, whose bracket stands at `at`.
void fit_filter(std::string& sql, std::size_t at, const Parameters& parameters) {
  for (const auto& [name, value] : parameters) {
    const std::string opening = "(:" + name + " IS NULL OR ";
    if (sql.compare(at, opening.size(), opening) != 0) continue;
    if (std::holds_alternative<std::monostate>(value)) {
      blank(sql, at + 1, past_bracket(sql, at) - 1);
      sql[at + 1] = '1';
    } else {
      blank(sql, at + 1, at + opening.size());
    }
  }
}

bool is_name_part(char c) {
  return c == '_' || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// `r.day BETWEEN :from AND :to`, whose `day` stands at `at`: left out when all days are asked for.
void fit_period(std::string& sql, std::size_t at) {
  constexpr std::string_view kPeriod = "day BETWEEN :from AND :to";
  if (sql.compare(at, kPeriod.size(), kPeriod) != 0) return;
  std::size_t begin = at;
  if (begin > 0 && sql[begin - 1] == '.') --begin;
  while (begin > 0 && begin < at && is_name_part(sql[begin - 1])) --begin;
  if (begin == at && at > 0 && is_name_part(sql[at - 1])) return;
  blank(sql, begin, at + kPeriod.size());
  sql[begin] = '1';
}

}  // namespace

std::string day_words(Day day, const render::Style& style) {
  return render::shown_cell(day, {.name = "", .heading = "", .kind = render::ColumnKind::day}, style);
}

std::string fitted(std::string sql, const Parameters& parameters) {
  const auto is = [&](const char* name, std::int64_t day) {
    const auto found = parameters.find(name);
    return found != parameters.end() && found->second == Value(day);
  };
  const bool all_days = is("from", kBeforeAll) && is("to", kAfterAll);
  for (std::size_t at = 0; at < sql.size(); at = past(sql, at)) {
    if (sql[at] == '(') fit_filter(sql, at, parameters);
    if (sql[at] == 'd' && all_days) fit_period(sql, at);
  }
  return sql;
}

Filtered filtered(const ReportFile& report, const book::Book& book, const Ask& ask,
                  const render::Style& style, Day today) {
  Filtered out;
  out.ask = ask;
  check_days_taken(report, ask);
  if (report.needs == "day" && !ask.from && !ask.to)
    out.ask.from = out.ask.to = newest_day(book).value_or(today);
  out.parameters["from"] = out.ask.from ? std::int64_t{out.ask.from->number} : kBeforeAll;
  out.parameters["to"] = out.ask.to ? std::int64_t{out.ask.to->number} : kAfterAll;
  out.parameters["today"] = std::int64_t{today.number};
  out.parameters["week_start"] = std::int64_t{book.mill().week_start};
  out.parameters["few_logs"] = static_cast<std::int64_t>(tuning::kFewLogs);
  if (takes(report, "from") || takes(report, "to")) out.words.push_back(period_words(out.ask, style));
  for (const auto& named : kNamed) {
    std::string& asked = out.ask.*named.asked;
    if (asked.empty()) {
      out.parameters[named.word] = std::monostate{};
      out.parameters[named.id] = std::monostate{};
      continue;
    }
    check_taken(report, named.word);
    const Word known = known_as(book, named, asked);
    asked = known.code;
    out.parameters[named.word] = asked;
    out.parameters[named.id] = known.id;
    out.words.push_back(std::string(named.word) + " " + asked);
  }
  return out;
}

}  // namespace kerfbook::report
