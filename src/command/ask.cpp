#include "command/ask.h"

#include <CLI/CLI.hpp>

#include "base/error.h"

namespace kerfbook::command {
namespace {

Day read_bound(const std::string& text, const char* option) {
  if (const auto day = read_day(text)) return *day;
  throw WrongUsage(std::string(option) + " takes a day as 2026-05-08, not '" + text + "'");
}

}  // namespace

void add_ask_options(CLI::App& app, AskOptions& options) {
  app.add_option("--from", options.from, "first day")->type_name("DAY");
  app.add_option("--to", options.to, "last day, included")->type_name("DAY");
  app.add_option("--period", options.period, "\"this week\", 2026-05, 2026-w19, yesterday, season, DAY..DAY")
      ->type_name("WORDS");
  app.add_option("--job", options.ask.job, "only this job")->type_name("JOB");
  app.add_option("--customer", options.ask.customer, "only this customer's jobs")->type_name("CUSTOMER");
  app.add_option("--species", options.ask.species, "only this species")->type_name("SPECIES");
  app.add_option("--site", options.ask.site, "only what was sawn there")->type_name("SITE");
  app.add_option("--rule", options.ask.rule, "scale the logs again under this rule; what was posted stays")
      ->type_name("RULE");
  app.add_option("--reports", options.own_folder, "a folder with reports of your own (or KERFBOOK_REPORTS)")
      ->type_name("FOLDER");
}

report::Ask asked_for(const AskOptions& options, const book::Mill& mill, const Session& session) {
  report::Ask ask = options.ask;
  if (!options.period.empty()) {
    if (!options.from.empty() || !options.to.empty()) {
      throw WrongUsage("give --period, or --from and --to; not both");
    }
    const auto period = report::read_period(options.period, session.today(), mill.week_start,
                                            mill.season_month, mill.season_day);
    ask.from = period.from;
    ask.to = period.to;
    ask.period_words = period.words;
  }
  if (!options.from.empty()) ask.from = read_bound(options.from, "--from");
  if (!options.to.empty()) ask.to = read_bound(options.to, "--to");
  if (ask.from && ask.to && *ask.to < *ask.from) {
    throw WrongUsage("--to " + write_day(*ask.to) + " is before --from " + write_day(*ask.from));
  }
  return ask;
}

std::vector<report::ReportFile> reports_for(const AskOptions& options, const Session& session) {
  const auto folder = session.context().environment("KERFBOOK_REPORTS");
  return report::all_reports(!options.own_folder.empty() ? options.own_folder : folder.value_or(""));
}

}  // namespace kerfbook::command
