// period.h -- --from, --to and --period, the same for every command that looks at some days.
#pragma once

#include <optional>
#include <string>

#include "command/command.h"

namespace kerfbook::command {

struct PeriodOptions {
  std::string from;
  std::string to;
  std::string period;
};
Rows period_rows(PeriodOptions& options);

/// First and last day, both included; each absent when not said.
struct Days {
  std::optional<Day> from;
  std::optional<Day> to;
  std::string words;  ///< as --period said it ("last week"), for a heading; else empty
};
/// WrongUsage for what is no day or period, and when --period stands beside --from or --to.
Days days_of(const PeriodOptions& options, const book::Mill& mill, const Session& session);
/// A day given to the option `option`; WrongUsage when it is none.
Day read_bound(const std::string& text, const char* option);

}  // namespace kerfbook::command
