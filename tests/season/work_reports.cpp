// work_reports.cpp -- what the work took: rates, cost, fuel, stops, teeth, crew, moves.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "reckoning.h"

namespace reckoning {
namespace {

constexpr std::int64_t kMillion = 1'000'000;
const Fraction kMinute(1, 60);

bool gives_new_teeth(const Teeth& work) {
  return work.action == "replaced" || work.action == "full-set";
}

std::string spoken(const std::string& action) {
  std::string words = action;
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

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

Fraction lumber_on(const std::vector<Run>& runs, const Period& period) {
  Fraction sum;
  for (const auto& run : runs)
    if (period.has(run.day)) sum += run.lumber;
  return sum;
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
    made.days.insert(run->day);
    made.lumber += run->lumber;
    made.pieces += run->pieces;
  }
  std::set<std::string> with_hours;
  std::map<Date, bool> shared;  // days whose crew time under no job is divided among jobs
  for (const Sheet* sheet : in(period)) {
    for (const auto& span : sheet->sawing) {
      jobs[span.at.job].minutes += span.minutes;
      if (!span.at.job.empty()) shared[sheet->day] = true;
    }
    for (const auto& hand : sheet->crew)
      if (!hand.at.job.empty()) with_hours.insert(hand.at.job);
  }
  for (const auto& job : with_hours) jobs[job];
  for (auto& [job, made] : jobs)
    if (!job.empty())
      for (const auto& [day, hours] : crew_hours_of(job))
        if (period.has(day)) made.crew += hours;
  for (const Sheet* sheet : in(period))
    for (const auto& hand : sheet->crew)
      if (hand.at.job.empty() && !shared[sheet->day]) jobs[""].crew += kMinute * hand.minutes;
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
                          {"crew_hours", idle_or(made.crew)}});
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
    put_line(entry->text("name"), figure(rate), quantity, (quantity * rate).nearest(kMillion));
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

std::vector<Table> Reckoning::downtime(const Period& period) const {
  struct Cause {
    std::int64_t stops = 0;
    int minutes = 0, charged = 0;
  };
  std::map<std::string, Cause> causes;
  Table every;
  every.name = "stops";
  every.keys = {"day", "cause", "minutes", "text", "charged_to"};
  every.sums = {"minutes"};
  int all = 0;
  for (const Sheet* sheet : in(period))
    for (const auto& stop : sheet->stops) {
      Cause& cause = causes[stop.cause];
      ++cause.stops;
      cause.minutes += stop.minutes;
      if (stop.charge) cause.charged += stop.minutes;
      all += stop.minutes;
      every.rows.push_back(
          {{"day", text_of(sheet->day)},
           {"cause", stop.cause},
           {"minutes", figure(stop.minutes)},
           {"charged_to",
            stop.charge ? Cell(stop.at.job.empty() ? std::string("yes") : stop.at.job) : Cell()},
           {"text", text_or_dash(stop.text)}});
    }
  Table table;
  table.name = "downtime";
  table.keys = {"cause"};
  table.sums = {"stops", "minutes", "chargeable_minutes"};
  table.ratios = {{"share_percent", {"minutes", "all_minutes", 100, 0, true}},
                  {"minutes_per_mbf", {"minutes", "lumber", 1000, 0, true}}};
  for (const auto& [name, cause] : causes)
    table.rows.push_back({{"cause", name},
                          {"stops", figure(cause.stops)},
                          {"minutes", figure(cause.minutes)},
                          {"chargeable_minutes", figure(cause.charged)},
                          {"all_minutes", figure(all)},
                          {"lumber", figure(lumber_on(runs_, period))}});
  return {table, every};
}

std::vector<Table> Reckoning::teeth(const Period& period) const {
  struct Before {
    Fraction lumber, feet;
    int minutes = 0;
  };
  Table works;
  works.name = "teeth";
  works.keys = {"day", "saw", "action", "cause", "log", "text", "teeth"};
  works.sums = {"teeth"};
  std::map<std::string, Before> last;  // what the book had sawn at the work before on each saw
  Before so_far;
  std::map<Date, int> minutes;
  for (const auto& sheet : sheets_)
    for (const auto& span : sheet.sawing) minutes[sheet.day] += span.minutes;
  for (const auto& sheet : sheets_) {
    int up_to = 0;
    for (const auto& [day, sawn] : minutes)
      if (!(sheet.day < day)) up_to += sawn;
    std::size_t next = 0;
    const auto saw_up_to = [&](int place) {
      for (; next < sheet.boards.size() && sheet.boards[next].at.place < place; ++next) {
        so_far.lumber += lumber_of(sheet.boards[next]);
        so_far.feet += feet_of(sheet.boards[next]);
      }
    };
    for (const auto& work : sheet.teeth) {
      saw_up_to(work.at.place);
      const auto before = last.find(work.saw);
      const bool known = before != last.end();
      if (period.has(sheet.day)) {
        const bool in_a_run = std::any_of(runs_.begin(), runs_.end(), [&](const Run& run) {
          return run.day == sheet.day && run.shift == sheet.shift &&
                 std::tie(run.site, run.job, run.species, run.named_setup) ==
                     std::tie(work.at.site, work.at.job, work.at.species, work.at.setup);
        });
        works.rows.push_back(
            {{"day", text_of(sheet.day)},
             {"saw", work.saw},
             {"action", spoken(work.action)},
             {"teeth", work.count ? figure(*work.count) : Cell()},
             {"cause", text_or_dash(work.cause)},
             {"species", in_a_run ? text_or_dash(work.at.species) : Cell()},
             {"log", text_or_dash(work.log)},
             {"since_bf", known ? figure(so_far.lumber - before->second.lumber) : Cell()},
             {"since_lineal_ft", known ? figure(so_far.feet - before->second.feet) : Cell()},
             {"since_hours", known ? figure(kMinute * (up_to - before->second.minutes)) : Cell()},
             {"text", text_or_dash(work.text)}});
      }
      last[work.saw] = {so_far.lumber, so_far.feet, up_to};
    }
    saw_up_to(1'000'000'000);
  }
  return {works};
}

std::vector<Table> Reckoning::crew(const Period& period) const {
  struct Made {
    std::set<std::string> hands;
    std::set<Date> days;
    int minutes = 0;
  };
  std::map<std::string, Made> by_activity, by_hand;
  int all = 0;
  for (const Sheet* sheet : in(period))
    for (const auto& hand : sheet->crew) {
      Made& activity = by_activity[hand.activity.empty() ? "the day's work" : hand.activity];
      activity.hands.insert(hand.name);
      activity.minutes += hand.minutes;
      by_hand[hand.name].days.insert(sheet->day);
      by_hand[hand.name].minutes += hand.minutes;
      all += hand.minutes;
    }
  Table activities;
  activities.name = "crew";
  activities.keys = {"activity"};
  activities.sums = {"hours"};
  activities.ratios = {{"share_percent", {"hours", "all_hours", 100, 0, true}}};
  for (const auto& [name, made] : by_activity)
    activities.rows.push_back({{"activity", name},
                               {"hands", figure(static_cast<std::int64_t>(made.hands.size()))},
                               {"hours", figure(kMinute * made.minutes)},
                               {"all_hours", figure(kMinute * all)}});
  Table hands;
  hands.name = "hands";
  hands.keys = {"name"};
  hands.sums = {"hours"};
  for (const auto& [name, made] : by_hand)
    hands.rows.push_back({{"name", name},
                          {"days", figure(static_cast<std::int64_t>(made.days.size()))},
                          {"hours", figure(kMinute * made.minutes)}});
  return {activities, hands};
}

std::vector<Table> Reckoning::moves(const Period& period) const {
  Table moved;
  moved.name = "moves";
  moved.keys = {"day", "from_site", "to_site"};
  moved.sums = {"distance", "hours"};
  for (const Sheet* sheet : in(period))
    for (const auto& move : sheet->moves)
      moved.rows.push_back({{"day", text_of(sheet->day)},
                            {"from_site", move.from},
                            {"to_site", move.to},
                            {"job", text_or_dash(move.at.job)},
                            {"distance", figure(move.distance)},
                            {"hours", dash_if_zero(kMinute * move.minutes)}});
  struct Made {
    std::set<Date> days;
    std::int64_t logs = 0;
    Fraction lumber;
    int minutes = 0;
  };
  std::map<std::string, Made> sites;
  for (const Run* run : in(period, {})) {
    Made& made = sites[run->site];
    made.days.insert(run->day);
    made.logs += run->logs;
    made.lumber += run->lumber;
  }
  for (const Sheet* sheet : in(period))
    for (const auto& span : sheet->sawing) sites[span.at.site].minutes += span.minutes;
  Table table;
  table.name = "sites";
  table.keys = {"site"};
  table.sums = {"logs", "lumber_bf", "sawing_hours"};
  table.ratios = {{"bf_per_sawing_hour", {"lumber_bf", "sawing_hours"}}};
  for (const auto& [site, made] : sites)
    table.rows.push_back({{"site", text_or_dash(site)},
                          {"days", idle_or(static_cast<std::int64_t>(made.days.size()))},
                          {"logs", idle_or(made.logs)},
                          {"lumber_bf", idle_or(made.lumber)},
                          {"sawing_hours", idle_or(kMinute * made.minutes)}});
  return {moved, table};
}

}  // namespace reckoning
