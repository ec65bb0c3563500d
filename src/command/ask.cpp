#include "command/ask.h"

namespace kerfbook::command {

Rows ask_rows(AskOptions& options) {
  return period_rows(options.days) +
         Rows{{"--job JOB", &options.ask.job, "only this job"},
              {"--customer CUSTOMER", &options.ask.customer, "only this customer's jobs"},
              {"--species SPECIES", &options.ask.species, "only this species"},
              {"--site SITE", &options.ask.site, "only what was sawn there"},
              {"--setup SETUP", &options.ask.setup, "where set-ups are compared, the later one"},
              {"--against SETUP", &options.ask.against, "and the one it is held against"},
              {"--rule RULE", &options.ask.rule,
               "scale the logs again under this rule; what was posted stays"},
              {"--reports FOLDER", &options.own_folder,
               "a folder with reports of your own (or KERFBOOK_REPORTS)"}};
}

report::Ask asked_for(const AskOptions& options, const book::Mill& mill, const Session& session) {
  report::Ask ask = options.ask;
  const Days days = days_of(options.days, mill, session);
  ask.from = days.from;
  ask.to = days.to;
  ask.period_words = days.words;
  return ask;
}

std::string own_reports(const AskOptions& options, const Session& session) {
  const auto folder = session.context().environment("KERFBOOK_REPORTS");
  return !options.own_folder.empty() ? options.own_folder : folder.value_or("");
}

}  // namespace kerfbook::command
