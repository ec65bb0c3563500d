// work_line.cpp -- the worker `straight-line`: a line through the points of a SELECT, for reports of one's own too. What x
// and y are, and their units, the report knows.
#include <fmt/format.h>

#include "report/workers.h"
#include "tuning/line.h"

namespace kerfbook::report {
namespace {

std::vector<tuning::Point> points_of(const InputRows& rows) {
  std::vector<tuning::Point> points;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const auto x = rows.number(r, "x");
    const auto y = rows.number(r, "y");
    if (x && y) points.push_back({static_cast<double>(*x), static_cast<double>(*y)});
  }
  return points;
}

/// A slope whose limits hold nothing may be level.
std::string finding(const tuning::Line& line) {
  if (line.slope_lower <= 0 && line.slope_upper >= 0)
    return "These points do not show whether the line rises or falls.";
  return line.slope > 0 ? "The line rises." : "The line falls.";
}

Worked work(const Given& given) {
  const auto points = points_of(given.rows("points"));
  Worked out;
  auto& table = out.tables["line"];
  const auto line = tuning::line_through(points);
  if (!line) {
    out.finding.emplace_back("Too few points for a line.");
    return out;
  }
  out.finding.push_back(finding(*line));
  table.rows.push_back({static_cast<std::int64_t>(line->points), micro(line->intercept), micro(line->slope),
                        micro(line->slope_lower), micro(line->slope_upper)});
  table.notes.emplace_back("Least squares; the limits of the slope by Student's t, 95 in 100.");
  return out;
}

}  // namespace

Worker straight_line() {
  return {.name = "straight-line",
          .reads = {{"points", {"x", "y"}}},
          .gives = {{"line", {"points", "at_zero", "slope", "slope_lower", "slope_upper"}}},
          .work = work};
}

}  // namespace kerfbook::report
