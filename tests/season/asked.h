// asked.h -- every report of a period, asked of the program and held against the reckoning.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answer.h"
#include "reckoning.h"

namespace reckoning {

/// What the program's reports of the period say otherwise than the reckoning, each with its report's name. With a turn
/// (0, 1, 2) the reports of hours, lumber, logs, fuel, cost and pace, and a third of the others; without, all.
std::vector<std::string> reports_that_differ(const Desk& desk, const Reckoning& reckoned,
                                             const Period& period, std::optional<int> turn = {});

/// The same of one day's report `day`.
std::vector<std::string> day_that_differs(const Desk& desk, const Reckoning& reckoned, const Date& day);

/// The same of production, overrun and tally narrowed to a job, customer, species or site.
std::vector<std::string> narrowed_that_differ(const Desk& desk, const Reckoning& reckoned,
                                              const Period& period, const Filter& filter);

/// The same of production and overrun with all logs scaled again; `reckoned` is by that rule.
std::vector<std::string> rescaled_that_differ(const Desk& desk, const Reckoning& reckoned,
                                              const Period& period, const std::string& rule);

}  // namespace reckoning
