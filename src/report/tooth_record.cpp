#include "report/tooth_record.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/count.h"
#include "tuning/change_interval.h"
#include "tuning/line.h"

namespace kerfbook::report {
namespace {

constexpr std::size_t kDaysToTell = 10;  ///< common practice, no source

std::tuple<std::int64_t, std::int64_t, std::int64_t> place_of(const InputRows& rows, std::size_t r) {
  return {rows.number(r, "day").value_or(0), rows.number(r, "shift").value_or(0),
          rows.number(r, "number").value_or(0)};
}

/// Where the middle of a day's lumber stands since the head saw was sharpened.
struct DayOfEdge {
  double weighted = 0;
  double lumber = 0;
  bool known = true;  ///< the head saw had been worked on before
};

using SheetKey = std::pair<std::int64_t, std::int64_t>;

std::map<SheetKey, DayOfEdge> days_of(const std::vector<RecordEntry>& record) {
  std::map<SheetKey, DayOfEdge> days;
  std::optional<double> since;
  for (const auto& entry : record) {
    auto& day = days[{std::get<0>(entry.place), std::get<1>(entry.place)}];
    if (const auto* work = std::get_if<tuning::SawWork>(&entry.what)) {
      if (work->saw == "head" && tuning::renews_edge(work->action)) since = 0;
      continue;
    }
    const double lumber = std::get<tuning::Sawn>(entry.what).bf;
    day.known = day.known && since.has_value();
    if (!since) continue;
    day.weighted += lumber * (*since + lumber / 2);
    day.lumber += lumber;
    *since += lumber;
  }
  return days;
}

/// Rows of the table, and the same as points: bf since, bf an hour.
std::vector<tuning::Point> add_days(const std::vector<RecordEntry>& record,
                                    const std::vector<SawnSheet>& sheets, const Given& given,
                                    WorkedTable& table) {
  const auto days = days_of(record);
  std::vector<tuning::Point> points;
  for (const auto& sheet : sheets) {
    const auto day = days.find({sheet.day, sheet.shift});
    if (day == days.end() || !day->second.known || !(day->second.lumber > 0) || !(sheet.minutes > 0))
      continue;
    const double since = std::max(0.0, day->second.weighted / day->second.lumber);
    table.rows.push_back(
        {sheet.day, lumber_of(since, given), lumber_of(sheet.bf, given), whole(sheet.minutes)});
    points.push_back({since, sheet.bf / (sheet.minutes / 60)});
  }
  return points;
}

/// The interval that takes the least time, sharpening and slower sawing together.
std::string interval_words(const tuning::Line& line, double longest, const Given& given) {
  const auto minutes = minutes_of_stop(given);
  if (!minutes) return {};
  const auto interval = tuning::sharpen_interval({line.intercept, line.slope}, *minutes, 60, longest);
  if (!interval || interval->past_record) return {};
  return fmt::format(
      "A stop for teeth takes {:.0f} minutes on average; by this line sharpening every {} takes the least "
      "time in all.",
      *minutes, lumber_words(interval->every_bf, given));
}

}  // namespace

std::optional<double> price_of_tooth(const Given& given, const std::string& saw) {
  const auto& rows = given.rows("rates");
  std::optional<double> price;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const std::string whose = rows.text(r, "saw");
    if (whose == saw || (whose.empty() && !price))
      price = static_cast<double>(rows.number(r, "rate").value_or(0)) / 1e6;
  }
  return price;
}

std::optional<double> minutes_of_stop(const Given& given) {
  const auto& stops = given.rows("stops");
  const auto times = stops.size() == 0 ? 0 : stops.number(0, "times").value_or(0);
  if (times < 1) return std::nullopt;
  return static_cast<double>(stops.number(0, "minutes").value_or(0)) / static_cast<double>(times);
}

std::vector<SawnSheet> sheets_of(const Given& given) {
  const auto& rows = given.rows("sheets");
  std::vector<SawnSheet> sheets;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    sheets.push_back({rows.number(r, "day").value_or(0), rows.number(r, "shift").value_or(0),
                      static_cast<double>(rows.number(r, "sawing_minutes").value_or(0)),
                      board_feet_of(rows.number(r, "lumber").value_or(0), given)});
  }
  return sheets;
}

std::vector<RecordEntry> record_of(const Given& given, const std::vector<SawnSheet>& sheets) {
  std::map<std::pair<std::int64_t, std::int64_t>, const SawnSheet*> by_day;
  for (const auto& sheet : sheets) by_day[{sheet.day, sheet.shift}] = &sheet;
  std::vector<RecordEntry> record;
  const auto& sawn = given.rows("sawn");
  for (std::size_t r = 0; r < sawn.size(); ++r) {
    const auto place = place_of(sawn, r);
    const auto sheet = by_day.find({std::get<0>(place), std::get<1>(place)});
    const double bf = board_feet_of(sawn.number(r, "lumber").value_or(0), given);
    const bool shared = sheet != by_day.end() && sheet->second->bf > 0;
    record.push_back(
        {place, tuning::Sawn{.species = sawn.text(r, "species"),
                             .bf = bf,
                             .lineal_ft = lineal_feet_of(sawn.number(r, "lineal").value_or(0)),
                             .hours = shared ? sheet->second->minutes / 60 * bf / sheet->second->bf : 0}});
  }
  const auto& work = given.rows("work");
  for (std::size_t r = 0; r < work.size(); ++r) {
    const auto place = place_of(work, r);
    record.push_back({place, tuning::SawWork{.saw = work.text(r, "saw"),
                                             .action = work.text(r, "action"),
                                             .cause = work.text(r, "cause"),
                                             .teeth = static_cast<int>(work.number(r, "teeth").value_or(0)),
                                             .day = static_cast<int>(std::get<0>(place))}});
  }
  std::stable_sort(record.begin(), record.end(),
                   [](const RecordEntry& a, const RecordEntry& b) { return a.place < b.place; });
  return record;
}

std::string add_pace(const std::vector<RecordEntry>& record, const std::vector<SawnSheet>& sheets,
                     const Given& given, WorkedTable& table) {
  const bool metric = given.setting.metric_book;
  const auto points = add_days(record, sheets, given, table);
  if (points.empty()) return {};
  const auto line = tuning::line_through(points);
  if (!line || points.size() < kDaysToTell) {
    table.notes.push_back(fmt::format(
        "Too few days to tell whether the mill slows: {}, where {} would (common practice, no source).",
        counted(static_cast<std::int64_t>(points.size()), "day"), kDaysToTell));
    return {};
  }
  const double each = metric ? 1 : 1000;  // the slope is the same in either unit
  const std::string per = metric ? "m3 an hour for each m3" : "bf an hour for each 1,000 bf";
  const auto said = [&](double slope) { return fmt::format("{:+.{}f}", slope * each, metric ? 2 : 0); };
  table.notes.push_back(
      fmt::format("Least squares: {} {} since sharpening, {} to {} with 95 in 100. The cut list and the logs "
                  "move the pace too.",
                  said(line->slope), per, said(line->slope_lower), said(line->slope_upper)));
  if (line->slope_upper >= 0)
    return "Whether the mill slows as the head saw dulls cannot be told from these days.";
  const auto longest = std::max_element(
      points.begin(), points.end(), [](const tuning::Point& a, const tuning::Point& b) { return a.x < b.x; });
  const std::string interval = interval_words(*line, longest->x, given);
  return fmt::format("The mill slows as the head saw dulls, by {:.{}f} {} since it was sharpened.{}{}",
                     -line->slope * each, metric ? 2 : 0, per, interval.empty() ? "" : " ", interval);
}

}  // namespace kerfbook::report
