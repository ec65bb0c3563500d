// cost_reports.cpp -- board feet an hour by job, what the work costs, fuel and engine hours.
#include <algorithm>

#include "measures.h"
#include "sums.h"

namespace reckoning {
namespace {

constexpr std::int64_t kMillion = 1'000'000;

/// Readings of the hour meter in the order of the book, each with the hours since the one before.
struct Reading {
  Date day;
  std::optional<Fraction> since;
};
std::vector<Reading> readings_of(const std::vector<Sheet>& sheets) {
  std::vector<Reading> all;
  std::optional<Fraction> before;
  for (const auto& sheet : sheets)
    for (const auto& meter : sheet.meters) {
      all.push_back({sheet.day, before ? std::optional(meter.hours - *before) : std::nullopt});
      before = meter.hours;
    }
  return all;
}

}  // namespace

Table Reckoning::rates(const Period& period) const {
  struct Made {
    std::set<Date> days;
    Fraction lumber;
    std::int64_t pieces = 0;
    int minutes = 0;
    Fraction crew;
  };
  std::map<std::string, Made> jobs;
  for (const Run* run : in(period, {})) {
    Made& made = jobs[run->job];
    if (run->sawn()) made.days.insert(run->day);
    made.lumber += run->lumber;
    made.pieces += run->pieces;
  }
  std::set<std::string> all{""};
  for (const auto& run : runs_) all.insert(run.job);
  for (const auto& sheet : sheets_) {
    for (const auto& span : sheet.sawing) {
      all.insert(span.at.job);
      if (period.has(sheet.day)) jobs[span.at.job].minutes += span.minutes;
    }
    for (const auto& hand : sheet.crew) all.insert(hand.at.job);
  }
  for (const auto& job : all)
    for (const auto& [day, hours] : crew_hours_of(job))
      if (period.has(day)) jobs[job].crew += hours;
  Table table;
  table.keys = {"job"};
  table.sums = {"lumber_bf", "pieces", "sawing_hours", "crew_hours"};
  table.ratios = {{"bf_per_sawing_hour", {"lumber_bf", "sawing_hours"}},
                  {"bf_per_crew_hour", {"lumber_bf", "crew_hours"}},
                  {"pieces_per_sawing_hour", {"pieces", "sawing_hours"}}};
  for (const auto& [job, made] : jobs)
    table.rows.push_back({{"job", text_or_dash(job)},
                          {"days", idle_or(static_cast<std::int64_t>(made.days.size()))},
                          {"lumber_bf", idle_or(made.lumber)},
                          {"pieces", idle_or(made.pieces)},
                          {"sawing_hours", idle_or(kMinute * made.minutes)},
                          {"crew_hours", shared(made.crew)}});
  return table;
}

std::vector<Table> Reckoning::cost(const Period& period) const {
  struct Use {
    Date day;
    Fraction quantity;
  };
  const std::vector<const Entry*> costs = mill_.all("cost");
  const auto own_entry = [&](const std::string& per, const std::string& key, const std::string& who) {
    return std::any_of(costs.begin(), costs.end(),
                       [&](const Entry* one) { return one->text("per") == per && one->text(key) == who; });
  };
  const auto uses_of = [&](const Entry& entry) {
    const std::string per = entry.text("per");
    std::vector<Use> uses;
    std::map<Date, bool> sawn;
    for (const auto& run : runs_) {
      if (run.logs > 0 || run.lines > 0) sawn[run.day] = true;
      if (per == "MBF") uses.push_back({run.day, run.lumber / 1000});
      if (per == "log") uses.push_back({run.day, run.logs});
    }
    if (per == "day" || per == "year")
      for (const auto& [day, yes] : sawn) uses.push_back({day, 1});
    if (per == "engine-hour")
      for (const auto& reading : readings_of(sheets_))
        if (reading.since) uses.push_back({reading.day, *reading.since});
    for (const auto& sheet : sheets_) {
      const auto add = [&](const Fraction& quantity) { uses.push_back({sheet.day, quantity}); };
      if (per == "crew-hour")
        for (const auto& hand : sheet.crew)
          if (entry.has("hand") ? entry.text("hand") == hand.name : !own_entry(per, "hand", hand.name))
            add(kMinute * hand.minutes);
      if (per == "sawing-hour")
        for (const auto& span : sheet.sawing) add(kMinute * span.minutes);
      if (per == "tooth")
        for (const auto& work : sheet.teeth)
          if (gives_new_teeth(work) && work.count) add(*work.count);
      if (per == "gallon")
        for (const auto& fuel : sheet.fuel)
          if (!fuel.paid && fuel.unit == "gal") add(fuel.quantity);
      if (per == "mile")
        for (const auto& move : sheet.moves)
          if (!move.kilometres) add(move.distance);
    }
    return uses;
  };
  Table lines;
  lines.name = "cost";
  lines.keys = {"name"};
  lines.sums = {"cost"};
  lines.ratios = {{"per_mbf", {"cost", "lumber", 1000, 0, true}},
                  {"share_percent", {"cost", "all_cost", 100, 0, true}}};
  std::map<std::string, Fraction> months;
  Fraction all;
  const Fraction lumber = lumber_on(runs_, period);
  const auto put_line = [&](const std::string& name, const Cell& rate, const Fraction& quantity,
                            const Fraction& sum) {
    all += sum;
    lines.rows.push_back({{"name", name},
                          {"quantity", figure(quantity)},
                          {"rate", rate},
                          {"cost", figure(sum)},
                          {"lumber", figure(lumber)}});
  };
  for (const Entry* entry : costs) {
    Fraction rate = entry->number("rate");
    if (entry->text("per") == "year") rate = rate / entry->number("days");
    Fraction quantity;
    std::map<std::string, Fraction> by_month;
    for (const auto& use : uses_of(*entry)) {
      if (!period.has(use.day)) continue;
      quantity += use.quantity;
      by_month[text_of(use.day).substr(0, 7)] += use.quantity;
    }
    if (quantity.is_zero()) continue;
    for (const auto& [month, used] : by_month)
      if (!used.is_zero()) months[month] += (used * rate).nearest(kMillion);
    // what a year costs a day is printed to the cent, and counted exactly
    put_line(entry->text("name"), figure(entry->text("per") == "year" ? rate.nearest(100) : rate), quantity,
             (quantity * rate).nearest(kMillion));
  }
  Fraction filled, paid;
  for (const Sheet* sheet : in(period))
    for (const auto& fuel : sheet->fuel)
      if (fuel.paid) {
        filled += fuel.quantity;
        paid += *fuel.paid;
        months[text_of(sheet->day).substr(0, 7)] += *fuel.paid;
      }
  if (!filled.is_zero()) put_line("Fuel, as paid on the sheets", Cell(), filled, paid);
  for (auto& row : lines.rows) row["all_cost"] = figure(all);
  Table by_month;
  by_month.name = "months";
  by_month.keys = {"month"};
  by_month.sums = {"lumber_bf", "cost"};
  by_month.ratios = {{"per_mbf", {"cost", "lumber_bf", 1000}}};
  std::map<std::string, Fraction> cut;
  for (const auto& run : runs_)
    if (period.has(run.day)) cut[text_of(run.day).substr(0, 7)] += run.lumber;
  std::set<std::string> names;
  for (const auto& [month, sum] : months) names.insert(month);
  for (const auto& [month, sum] : cut)
    if (!sum.is_zero()) names.insert(month);
  for (const auto& month : names)
    by_month.rows.push_back(
        {{"month", month}, {"lumber_bf", idle_or(cut[month])}, {"cost", idle_or(months[month])}});
  return {lines, by_month};
}

Table Reckoning::fuel(const Period& period) const {
  struct Week {
    Fraction lumber, fuel, paid, engine;
    std::int64_t teeth = 0;
    bool filled = false, metered = false, toothed = false, bought = false;
  };
  std::map<std::string, Week> weeks;
  for (const Sheet* sheet : in(period)) {
    Week& week = weeks[text_of(monday_of(sheet->day))];
    for (const auto& fuel : sheet->fuel) {
      week.filled = true;
      week.fuel += fuel.quantity;
      if (fuel.paid) {
        week.bought = true;
        week.paid += *fuel.paid;
      }
    }
    for (const auto& work : sheet->teeth)
      if (gives_new_teeth(work) && work.count) {
        week.toothed = true;
        week.teeth += *work.count;
      }
  }
  for (const auto& run : runs_)
    if (period.has(run.day)) weeks[text_of(monday_of(run.day))].lumber += run.lumber;
  for (const auto& reading : readings_of(sheets_))
    if (period.has(reading.day)) {
      Week& week = weeks[text_of(monday_of(reading.day))];
      week.metered = true;
      week.engine += reading.since.value_or(Fraction(0));
    }
  Table table;
  table.keys = {"week"};
  table.sums = {"lumber_bf", "fuel", "engine_hours", "teeth", "fuel_paid"};
  table.ratios = {{"fuel_per_mbf", {"fuel", "lumber_bf", 1000}},
                  {"engine_hours_per_mbf", {"engine_hours", "lumber_bf", 1000}},
                  {"fuel_per_engine_hour", {"fuel", "engine_hours"}},
                  {"teeth_per_mbf", {"teeth", "lumber_bf", 1000}}};
  for (const auto& [name, week] : weeks)
    table.rows.push_back({{"week", name},
                          {"lumber_bf", idle_or(week.lumber)},
                          {"fuel", week.filled ? figure(week.fuel) : Cell()},
                          {"engine_hours", week.metered ? idle_or(week.engine) : Cell()},
                          {"teeth", week.toothed ? figure(week.teeth) : Cell()},
                          {"fuel_paid", week.bought ? figure(week.paid) : Cell()}});
  return table;
}

}  // namespace reckoning
