// tally_book.h -- the tally as a workbook: a sheet for the whole period and one for each of its days, struck lines
// in sight, the counting convention in words at the foot of each.
#pragma once

#include "report/report.h"

namespace kerfbook::report {

/// `tally` is the report file of that name. A period of more than a month has no sheet a day (a note says so).
render::Document tally_book(const ReportFile& tally, const book::Book& book, const Ask& ask,
                            const render::Style& style, Day today);

}  // namespace kerfbook::report
