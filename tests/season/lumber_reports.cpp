// lumber_reports.cpp -- production, the tally, whose lumber it is, and the year.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "sums.h"

namespace reckoning {
namespace {

std::string period_name(By by, const Date& day) {
  const std::string text = text_of(day);
  switch (by) {
    case By::day:
      return text;
    case By::week:
      return text_of(monday_of(day));
    case By::month:
      return text.substr(0, 7);
    case By::year:
      return text.substr(0, 4);
  }
  return "";
}

}  // namespace

Table Reckoning::production(By by, const Period& period, const Filter& filter) const {
  struct Time {
    int sawing = 0, stops = 0;
    Fraction crew;
    bool any = false;
  };
  std::map<std::string, Sums> sums;
  std::map<std::string, std::set<Date>> days;
  std::map<std::string, std::vector<std::string>> sites;
  std::map<std::string, Time> time;
  for (const Run* run : in(period, filter)) {
    const std::string name = period_name(by, run->day);
    sums[name].add(*run);
    if (run->sawn()) days[name].insert(run->day);
    auto& known = sites[name];
    if (!run->site.empty() && std::find(known.begin(), known.end(), run->site) == known.end())
      known.push_back(run->site);
  }
  // under a job, customer or site the time written under it; a species has none, and crew time has no site
  const bool by_filter = !filter.none();
  const bool by_job = !filter.job.empty() || !filter.customer.empty();
  if (filter.species.empty()) {
    for (const Sheet* sheet : in(period)) {
      Time& at = time[period_name(by, sheet->day)];
      at.any = at.any || !by_filter;
      for (const auto& one : sheet->sawing)
        if (fits(filter, one.at.job, "", one.at.site)) at.sawing += one.minutes, at.any = true;
      for (const auto& one : sheet->stops)
        if (fits(filter, one.at.job, "", one.at.site)) at.stops += one.minutes, at.any = true;
      if (!by_filter)
        for (const auto& one : sheet->crew) at.crew += kMinute * one.minutes;
    }
    std::set<std::string> jobs;
    for (const auto& [code, job] : mill_.jobs) jobs.insert(code);
    jobs.insert("own");
    if (by_job && filter.site.empty())
      for (const auto& job : jobs)
        if (fits(filter, job, "", ""))
          for (const auto& [day, worked] : crew_hours_of(job))
            if (period.has(day)) {
              time[period_name(by, day)].crew += worked;
              time[period_name(by, day)].any = true;
            }
  }
  std::set<std::string> names;
  for (const auto& [name, one] : sums) names.insert(name);
  for (const auto& [name, one] : time)
    if (one.any) names.insert(name);

  Table table;
  static const char* const kKey[] = {"day", "week", "month", "year"};
  const std::string key = kKey[static_cast<int>(by)];
  table.keys = {key};
  table.sums = {"logs", "net_scale_bf", "lumber_bf", "pieces", "sawing_hours", "stop_hours", "crew_hours"};
  if (by == By::day)
    table.sums.emplace_back("unscaled_logs");
  else
    table.sums.emplace_back("days");
  table.ratios = {{"overrun_percent", kOverrun},
                  {"bf_per_sawing_hour", {"lumber_bf", "sawing_hours"}},
                  {"bf_per_crew_hour", {"lumber_bf", "crew_hours"}}};
  for (const auto& name : names) {
    Row row;
    row[key] = name;
    const Sums& made = sums[name];
    row["logs"] = idle_or(made.logs);
    row["pieces"] = idle_or(made.pieces);
    row["lumber_bf"] = idle_or(made.lumber);
    row["net_scale_bf"] = made.scaled ? figure(made.net) : Cell();
    if (by == By::day) {
      row["unscaled_logs"] = idle_or(made.unscaled);
      std::string all;
      for (const auto& site : sites[name]) all += (all.empty() ? "" : " / ") + site;
      if (!all.empty()) row["site"] = all;
    } else {
      row["days"] = idle_or(static_cast<std::int64_t>(days[name].size()));
    }
    put_counted(made, row);
    row["sawing_hours"] = idle_or((kMinute * time[name].sawing));
    row["stop_hours"] = idle_or((kMinute * time[name].stops));
    row["crew_hours"] = by_job ? shared(time[name].crew) : idle_or(time[name].crew);
    if (by != By::day)
      row["mean_bf"] = rolling_mean(by, date_of((name + "-01-01").substr(0, 10)), period.to, filter);
    table.rows.push_back(row);
  }
  return table;
}

Cell Reckoning::rolling_mean(By by, const Date& first, const Date& last, const Filter& filter) const {
  std::set<std::string> names;
  Date at = first;
  for (int i = 0; i < (by == By::week ? 4 : 3); ++i) {
    names.insert(period_name(by, at));
    at = date_of_number(number_of(by == By::year    ? Date{at.year, 1, 1}
                                  : by == By::month ? Date{at.year, at.month, 1}
                                                    : monday_of(at)) -
                        1);
  }
  Fraction lumber;
  std::set<std::string> sawn;
  for (const auto& run : runs_) {
    const std::string name = period_name(by, run.day);
    if (last < run.day || names.count(name) == 0 || !run.sawn() ||
        !fits(filter, run.job, run.species, run.site))
      continue;
    sawn.insert(name);
    lumber += run.lumber;
  }
  return sawn.empty() ? Cell() : idle_or(lumber / static_cast<std::int64_t>(sawn.size()));
}

Table Reckoning::tally(const Period& period, const Filter& filter) const {
  using Key = std::tuple<std::string, std::string, std::string, std::string, bool, Fraction>;
  const auto less = [](const Key& a, const Key& b) {
    const auto words = [](const Key& key) {
      return std::tie(std::get<0>(key), std::get<1>(key), std::get<2>(key), std::get<3>(key),
                      std::get<4>(key));
    };
    return words(a) != words(b) ? words(a) < words(b) : std::get<5>(a) < std::get<5>(b);
  };
  std::map<Key, std::pair<std::int64_t, Fraction>, decltype(less)> sums(less);
  for (const Sheet* sheet : in(period))
    for (const auto& boards : sheet->boards) {
      const Stand& at = boards.at;
      if (!fits(filter, at.job, at.species, at.site)) continue;
      const Fraction length = boards.lineal ? Fraction(0) : in_feet(boards.length, boards.section.metric);
      auto& [pieces, bf] = sums[{at.job, at.species, at.grade, boards.section.name, boards.lineal, length}];
      pieces += boards.pieces;
      bf += lumber_of(boards);
    }
  Table table;
  table.name = "tally";
  table.keys = {"job", "species", "grade", "size", "length_ft", "pieces"};
  table.sums = {"pieces", "bf"};
  for (const auto& [key, sum] : sums) {
    const auto& [job, species, grade, size, lineal, length] = key;
    if (sum.first == 0 && sum.second.is_zero()) continue;
    table.rows.push_back({{"job", text_or_dash(job)},
                          {"species", text_or_dash(species)},
                          {"grade", text_or_dash(grade)},
                          {"size", size},
                          {"length_ft", lineal ? Cell() : figure(length)},
                          {"pieces", lineal ? Cell() : figure(sum.first)},
                          {"bf", figure(sum.second)}});
  }
  return table;
}

std::vector<Table> Reckoning::ownership(const Period& period) const {
  struct Made {
    std::set<std::string> jobs;
    Sums sums;
  };
  std::map<std::string, Made> by_owner;
  std::map<std::string, Made> by_job;
  Fraction all;
  for (const Run* run : in(period, {})) {
    const std::string owner = mill_.owner_of(run->job);
    Made& made = by_owner[owner.empty() ? "no job named" : owner == "customer" ? "custom" : owner];
    made.sums.add(*run);
    if (!run->job.empty()) made.jobs.insert(run->job);
    by_job[run->job].sums.add(*run);
    all += run->lumber;
  }
  Table owners;
  owners.name = "ownership";
  owners.keys = {"owner"};
  owners.sums = {"logs", "pieces", "lumber_bf"};
  owners.ratios = {{"share_percent", {"lumber_bf", "all_lumber", 100, 0, true}}};
  for (const auto& [owner, made] : by_owner)
    if (made.sums.logs > 0 || made.sums.lines > 0)
      owners.rows.push_back({{"owner", owner},
                             {"jobs", figure(static_cast<std::int64_t>(made.jobs.size()))},
                             {"logs", figure(made.sums.logs)},
                             {"pieces", figure(made.sums.pieces)},
                             {"lumber_bf", figure(made.sums.lumber)},
                             {"all_lumber", figure(all)}});
  Table jobs;
  jobs.name = "jobs";
  jobs.keys = {"job"};
  jobs.sums = {"logs", "pieces", "lumber_bf"};
  for (const auto& [job, made] : by_job)
    if (made.sums.logs > 0 || made.sums.lines > 0)
      jobs.rows.push_back({{"job", text_or_dash(job)},
                           {"customer", text_or_dash(mill_.customer_of(job))},
                           {"logs", figure(made.sums.logs)},
                           {"pieces", figure(made.sums.pieces)},
                           {"lumber_bf", figure(made.sums.lumber)}});
  return {owners, jobs};
}

std::vector<Table> Reckoning::year(const Period& period) const {
  struct Logs {
    std::int64_t logs = 0;
    bool scaled = false;
    Fraction net, content;
  };
  const auto group = [&](const std::string& species) {
    const auto at = mill_.groups.find(species);
    return at == mill_.groups.end() ? species : at->second;
  };
  std::map<std::tuple<std::string, std::string, std::string, std::string>, Logs> sawn;
  std::map<std::string, std::string> origins;
  for (const auto& sheet : sheets_)
    for (const auto& log : sheet.logs) {
      if (log.state == Log::State::received) origins[log.tag] = log.origin;
      if (log.state != Log::State::sawn || !period.has(sheet.day)) continue;
      const std::string rule = rule_of(log.at.job);
      const auto scale = scale_of(log, rule);
      const std::string origin = log.tag.empty() || origins.count(log.tag) == 0 ? "" : origins[log.tag];
      Logs& made = sawn[{text_of(sheet.day).substr(0, 4), group(log.at.species), origin, scale ? rule : ""}];
      ++made.logs;
      made.scaled = made.scaled || scale.has_value();
      if (scale) made.net += scale->net;
      if (log.measure) made.content += content_of(*log.measure, mill_.trim);
    }
  Table logs;
  logs.name = "logs";
  logs.keys = {"year", "species_group", "origin", "rule"};
  logs.sums = {"logs", "net_bf", "log_ft3"};
  for (const auto& [key, made] : sawn) {
    const auto& [year, species, origin, rule] = key;
    logs.rows.push_back({{"year", year},
                         {"species_group", text_or_dash(species)},
                         {"origin", text_or_dash(origin)},
                         {"rule", text_or_dash(rule)},
                         {"logs", figure(made.logs)},
                         {"net_bf", made.scaled ? figure(made.net) : Cell()},
                         {"log_ft3", made.scaled ? figure(made.content) : Cell()}});
  }
  std::map<std::tuple<std::string, std::string, std::string>, Sums> lumber;
  for (const Run* run : in(period, {})) {
    const std::string owner = mill_.owner_of(run->job);
    lumber[{text_of(run->day).substr(0, 4), group(run->species), owner == "customer" ? "custom" : owner}].add(
        *run);
  }
  Table made;
  made.name = "lumber";
  made.keys = {"year", "species_group", "owner"};
  made.sums = {"pieces", "lumber_bf"};
  for (const auto& [key, sums] : lumber) {
    const auto& [year, species, owner] = key;
    if (sums.lines == 0) continue;
    made.rows.push_back({{"year", year},
                         {"species_group", text_or_dash(species)},
                         {"owner", text_or_dash(owner)},
                         {"pieces", figure(sums.pieces)},
                         {"lumber_bf", figure(sums.lumber)}});
  }
  return {logs, made};
}

}  // namespace reckoning
