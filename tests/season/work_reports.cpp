// work_reports.cpp -- stops, teeth, crew and moves.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "sums.h"

namespace reckoning {
namespace {

std::string spoken(const std::string& action) {
  std::string words = action;
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

}  // namespace

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
        works.rows.push_back(
            {{"day", text_of(sheet.day)},
             {"saw", work.saw},
             {"action", spoken(work.action)},
             {"teeth", work.count ? figure(*work.count) : Cell()},
             {"cause", text_or_dash(work.cause)},
             {"species", in_a_run(sheet, work.at) ? text_or_dash(work.at.species) : Cell()},
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
  return {works, teeth_by_cause(period), teeth_by_species(period)};
}

bool Reckoning::in_a_run(const Sheet& sheet, const Stand& at) const {
  return std::any_of(runs_.begin(), runs_.end(), [&](const Run& run) {
    return run.day == sheet.day && run.shift == sheet.shift &&
           std::tie(run.site, run.job, run.species, run.named_setup) ==
               std::tie(at.site, at.job, at.species, at.setup);
  });
}

Table Reckoning::teeth_by_cause(const Period& period) const {
  struct Made {
    std::int64_t times = 0, teeth = 0;
    bool counted = false;
  };
  std::map<std::tuple<std::string, std::string, std::string>, Made> causes;
  for (const Sheet* sheet : in(period))
    for (const auto& work : sheet->teeth) {
      Made& made = causes[{work.saw, spoken(work.action), work.cause}];
      ++made.times;
      made.counted = made.counted || work.count.has_value();
      made.teeth += work.count.value_or(0);
    }
  Table table;
  table.name = "causes";
  table.keys = {"saw", "action", "cause"};
  table.sums = {"times", "teeth"};
  table.ratios = {{"teeth_per_mbf", {"teeth", "lumber", 1000, 0, true}}};
  for (const auto& [key, made] : causes)
    table.rows.push_back({{"saw", std::get<0>(key)},
                          {"action", std::get<1>(key)},
                          {"cause", text_or_dash(std::get<2>(key))},
                          {"times", figure(made.times)},
                          {"teeth", made.counted ? figure(made.teeth) : Cell()},
                          {"lumber", figure(lumber_on(runs_, period))}});
  return table;
}

Table Reckoning::teeth_by_species(const Period& period) const {
  struct Made {
    std::int64_t times = 0;
    std::optional<std::int64_t> replaced, metal;
    Fraction lumber;
  };
  std::map<std::string, Made> species;
  bool any = false;
  for (const Sheet* sheet : in(period))
    for (const auto& work : sheet->teeth) {
      any = true;
      Made& made = species[in_a_run(*sheet, work.at) ? work.at.species : ""];
      ++made.times;
      if (!gives_new_teeth(work) || !work.count) continue;
      made.replaced = made.replaced.value_or(0) + *work.count;
      if (work.cause == "metal") made.metal = made.metal.value_or(0) + *work.count;
    }
  for (const Run* run : in(period, {})) species[run->species].lumber += run->lumber;
  Table table;
  table.name = "species";
  table.keys = {"species"};
  table.sums = {"times", "replaced", "metal", "lumber_bf"};
  table.ratios = {{"teeth_per_mbf", {"replaced", "lumber_bf", 1000}}};
  const auto count = [](const std::optional<std::int64_t>& teeth) { return teeth ? figure(*teeth) : Cell(); };
  if (any)
    for (const auto& [name, made] : species)
      table.rows.push_back({{"species", text_or_dash(name)},
                            {"times", figure(made.times)},
                            {"replaced", count(made.replaced)},
                            {"metal", count(made.metal)},
                            {"lumber_bf", idle_or(made.lumber)}});
  return table;
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
    if (run->sawn()) made.days.insert(run->day);
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
