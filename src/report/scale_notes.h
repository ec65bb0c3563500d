// scale_notes.h -- what must be said where a log scale, an overrun or an LRF is shown: that the logs were scaled by more
// than one rule, or by another rule than the mill file has now. Said by the engine, in one wording for every report.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "report/filters.h"

namespace kerfbook::report {

/// Of the logs sawn that the filters leave. Empty when all were scaled by the rule that is in force for their job. A job
/// that a mill file had once and has no more keeps the rule of its days, and is not spoken of.
std::vector<std::string> scale_notes(const book::Book& book, const Parameters& filters);

}  // namespace kerfbook::report
