// asked.h -- every report of a period, asked of the program and held against the reckoning.
#pragma once

#include <string>
#include <vector>

#include "answer.h"
#include "reckoning.h"

namespace reckoning {

/// What the program's reports of the period say otherwise than the reckoning, each with its report's name.
std::vector<std::string> reports_that_differ(const Desk& desk, const Reckoning& reckoned,
                                             const Period& period);

}  // namespace reckoning
