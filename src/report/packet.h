// packet.h -- several reports of one period as one Document: the week's set, for one workbook or one page.
#pragma once

#include <string>
#include <vector>

#include "report/report.h"

namespace kerfbook::report {

/// The reports of the mill file's packet, in its order; without one, a set that suits most weeks:
///
///   [packet]
///   reports = ["production", "overrun", "downtime"]
std::vector<std::string> packet_reports(const book::Mill& mill);

/// Each report in turn, its tables under its title, its meaning under its first table. A report that does not take a
/// filter asked for is shown without it. Throws as find_report() and run_report() do.
render::Document packet(const std::vector<ReportFile>& reports, const std::vector<std::string>& names,
                        const book::Book& book, const Ask& ask, const render::Style& style, Day today);

}  // namespace kerfbook::report
