#include "command/period.h"

#include "base/error.h"
#include "report/report.h"

namespace kerfbook::command {

Rows period_rows(PeriodOptions& options) {
  return {
      {"--from DAY", &options.from, "first day"},
      {"--to DAY", &options.to, "last day, included"},
      {"--period WORDS", &options.period, "\"this week\", 2026-05, 2026-w19, yesterday, season, DAY..DAY"}};
}

Day read_bound(const std::string& text, const char* option) {
  if (const auto day = read_day(text)) return *day;
  throw WrongUsage(std::string(option) + " takes a day as 2026-05-08, not '" + text + "'");
}

Days days_of(const PeriodOptions& options, const book::Mill& mill, const Session& session) {
  Days days;
  if (!options.period.empty()) {
    if (!options.from.empty() || !options.to.empty())
      throw WrongUsage("give --period, or --from and --to; not both");
    const auto period = report::read_period(options.period, session.today(), mill.week_start,
                                            mill.season_month, mill.season_day);
    days.from = period.from;
    days.to = period.to;
    days.words = period.words;
  }
  if (!options.from.empty()) days.from = read_bound(options.from, "--from");
  if (!options.to.empty()) days.to = read_bound(options.to, "--to");
  if (days.from && days.to && *days.to < *days.from) {
    throw WrongUsage("--to " + write_day(*days.to) + " is before --from " + write_day(*days.from));
  }
  return days;
}

}  // namespace kerfbook::command
