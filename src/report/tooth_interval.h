// tooth_interval.h -- for the worker tooth-life: at what interval sharpening a saw costs least by the record, age replacement
// (tuning/change_interval.h) with the mill file's costs.
// Inside the room; knows no database.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/tooth_record.h"

namespace kerfbook::report {

/// What an hour costs by the mill file and the period's sheets, in whole money.
struct CostOfHour {
  double crew = 0;    ///< one hand's, on average
  double sawing = 0;  ///< all that is paid by the crew hour and the sawing hour, over the hours sawn
};
/// Of the input `spent`; nullopt without a cost of a crew hour, or without sawing hours.
std::optional<CostOfHour> cost_of_hour(const Given& given, const std::vector<SawnSheet>& sheets);

/// Adds a row for the saw of these lives of sharpenings, and says what it comes to. Empty when too few were worn: that is
/// said with how long they last.
std::string add_interval(const std::vector<tuning::ToothLife>& edges, const std::optional<CostOfHour>& hour,
                         const Given& given, WorkedTable& table);

}  // namespace kerfbook::report
