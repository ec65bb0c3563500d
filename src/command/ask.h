// ask.h -- the options by which a person narrows what reports answer: days, job, customer, species, site, rule.
#pragma once

#include <string>

#include "command/command.h"
#include "command/period.h"
#include "report/report.h"

namespace kerfbook::command {

struct AskOptions {
  PeriodOptions days;
  std::string own_folder;
  report::Ask ask;
};
Rows ask_rows(AskOptions& options);

/// The days and filters asked for. WrongUsage for what is no day or no period.
report::Ask asked_for(const AskOptions& options, const book::Mill& mill, const Session& session);
/// The folder of the person's own reports (--reports, or KERFBOOK_REPORTS); empty when there is none.
std::string own_reports(const AskOptions& options, const Session& session);

}  // namespace kerfbook::command
