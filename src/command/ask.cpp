#include "command/ask.h"

#include <CLI/CLI.hpp>

namespace kerfbook::command {

void add_ask_options(CLI::App& app, AskOptions& options) {
  add_period_options(app, options.days);
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
  const Days days = days_of(options.days, mill, session);
  ask.from = days.from;
  ask.to = days.to;
  ask.period_words = days.words;
  return ask;
}

std::vector<report::ReportFile> reports_for(const AskOptions& options, const Session& session) {
  const auto folder = session.context().environment("KERFBOOK_REPORTS");
  return report::all_reports(!options.own_folder.empty() ? options.own_folder : folder.value_or(""));
}

}  // namespace kerfbook::command
