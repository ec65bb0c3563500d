// lumber_reports.cpp -- production and overrun with all its cuts, the tally, whose lumber it is, and the year.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "reckoning.h"

namespace reckoning {
namespace {

const Fraction kHour(1, 60);

Fraction hours(int minutes) {
  return kHour * minutes;
}

/// Sums a report makes of runs; what overrun and recovery count is kept beside, for their ratios.
struct Sums {
  std::int64_t runs = 0, logs = 0, unscaled = 0, lines = 0, pieces = 0, counted = 0;
  bool scaled = false;
  Fraction net, lumber, content, counted_lumber, counted_net, counted_content, counted_wood;

  void add(const Run& run) {
    ++runs;
    logs += run.logs;
    unscaled += run.unscaled;
    lines += run.lines;
    pieces += run.pieces;
    lumber += run.lumber;
    if (run.logs > run.unscaled) {
      scaled = true;
      net += run.net;
      content += run.content;
    }
    if (!run.counted()) return;
    ++counted;
    counted_lumber += run.lumber;
    counted_net += run.net;
    counted_content += run.content;
    counted_wood += run.wood;
  }
};

void put_counted(const Sums& sums, Row& row) {
  if (sums.counted == 0) return;
  row["counted_lumber"] = figure(sums.counted_lumber);
  row["counted_net"] = figure(sums.counted_net);
  row["counted_content"] = figure(sums.counted_content);
  row["counted_wood"] = figure(sums.counted_wood);
}

const Ratio kOverrun{"counted_lumber", "counted_net", 100, 100};

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

std::string class_of(const Fraction& diameter, bool metric) {
  const std::int64_t wide = metric ? 5 : 3;
  const std::int64_t from = (diameter / wide).whole() * wide;
  return std::to_string(from) + " to " + std::to_string(from + wide) + (metric ? " cm" : " in");
}

}  // namespace

Table Reckoning::production(By by, const Period& period, const Filter& filter) const {
  struct Time {
    int sawing = 0, stops = 0, crew = 0;
    bool any = false;
  };
  std::map<std::string, Sums> sums;
  std::map<std::string, std::set<Date>> days;
  std::map<std::string, std::vector<std::string>> sites;
  std::map<std::string, Time> time;
  for (const Run* run : in(period, filter)) {
    const std::string name = period_name(by, run->day);
    sums[name].add(*run);
    days[name].insert(run->day);
    auto& known = sites[name];
    if (!run->site.empty() && std::find(known.begin(), known.end(), run->site) == known.end())
      known.push_back(run->site);
  }
  // hours stand by the day; under a job, customer or site those written under it, under a species none
  const bool by_filter = !filter.none();
  if (filter.species.empty() && (!by_filter || by == By::day)) {
    for (const Sheet* sheet : in(period)) {
      Time& at = time[period_name(by, sheet->day)];
      Filter own = filter;
      own.species.clear();
      const auto of = [&](const Stand& stand) { return fits(own, stand.job, "", stand.site); };
      at.any = at.any || !by_filter;
      for (const auto& one : sheet->sawing)
        if (of(one.at)) at.sawing += one.minutes, at.any = true;
      for (const auto& one : sheet->stops)
        if (of(one.at)) at.stops += one.minutes, at.any = true;
      for (const auto& one : sheet->crew)
        if (filter.site.empty() && of(one.at)) at.crew += one.minutes, at.any = true;
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
    if (by == By::day || !by_filter) {
      row["sawing_hours"] = idle_or(hours(time[name].sawing));
      row["stop_hours"] = idle_or(hours(time[name].stops));
      row["crew_hours"] = idle_or(hours(time[name].crew));
    }
    table.rows.push_back(row);
  }
  return table;
}

Table Reckoning::overrun(Cut cut, const Period& period, const Filter& filter) const {
  Table table;
  table.sums = {"logs", "net_scale_bf", "lumber_bf", "log_ft3", "unscaled_logs"};
  table.ratios = {{"overrun_percent", kOverrun},
                  {"lrf", {"counted_lumber", "counted_content"}},
                  {"recovery_percent", {"counted_wood", "counted_content", 100}}};
  using Key = std::tuple<std::string, std::string, std::string>;
  std::map<Key, Sums> sums;
  const auto put = [&](const Sums& made, Row row) {
    row["logs"] = figure(made.logs);
    row["net_scale_bf"] = made.scaled ? figure(made.net) : Cell();
    row["log_ft3"] = made.scaled ? figure(made.content) : Cell();
    row["lumber_bf"] = figure(made.lumber);
    row["unscaled_logs"] = figure(made.unscaled);
    if (cut == Cut::run)
      row["pieces"] = figure(made.pieces);
    else
      row["runs"] = figure(made.runs);
    put_counted(made, row);
    table.rows.push_back(row);
  };
  if (cut == Cut::run) {
    table.keys = {"day", "job", "species", "setup", "site", "lumber_bf"};
    table.sums.emplace_back("pieces");
  } else {
    table.sums.emplace_back("runs");
    if (cut == Cut::job) table.keys = {"job", "rule"};
    if (cut == Cut::species) table.keys = {"species", "rule"};
    if (cut == Cut::setup) table.keys = {"setup", "species", "rule"};
  }
  for (const Run* run : in(period, filter)) {
    if (run->logs == 0 && run->lines == 0) continue;
    if (cut == Cut::run) {
      Sums one;
      one.add(*run);
      put(one, {{"day", text_of(run->day)},
                {"job", text_or_dash(run->job)},
                {"species", text_or_dash(run->species)},
                {"setup", text_or_dash(run->setup)},
                {"site", text_or_dash(run->site)}});
    } else {
      const std::string& first = cut == Cut::job ? run->job : cut == Cut::species ? run->species : run->setup;
      sums[{first, cut == Cut::setup ? run->species : "", run->rule}].add(*run);
    }
  }
  for (const auto& [key, made] : sums) {
    const auto& [first, species, rule] = key;
    Row row{{"rule", rule}};
    row[cut == Cut::job ? "job" : cut == Cut::species ? "species" : "setup"] = text_or_dash(first);
    if (cut == Cut::setup) row["species"] = text_or_dash(species);
    put(made, row);
  }
  return table;
}

std::vector<Table> Reckoning::overrun_by_diameter(const Period& period) const {
  // the mean diameter of a run goes by inches or, where all its logs are metric, by centimetres
  struct Logs {
    std::int64_t logs = 0;
    Fraction gross, deduction, net, content;
  };
  std::map<std::pair<std::string, std::string>, Sums> by_mean;
  std::map<std::pair<std::string, std::string>, Logs> by_log;
  for (const auto& run : runs_) {
    if (!period.has(run.day)) continue;
    std::int64_t measured = 0;
    bool all_metric = true;
    Fraction inches;
    for (const auto& sheet : sheets_) {
      if (sheet.day != run.day || sheet.shift != run.shift) continue;
      for (const auto& log : sheet.logs) {
        const Stand& at = log.at;
        const bool here = std::tie(at.site, at.job, at.species, at.setup) ==
                          std::tie(run.site, run.job, run.species, run.named_setup);
        if (!here || log.state != Log::State::sawn || !log.measure) continue;
        ++measured;
        const bool metric = log.measure->metric;
        const Fraction small = small_end(*log.measure);
        all_metric = all_metric && metric;
        inches += metric ? small / Fraction(254, 100) : small;
        const auto scale = scale_of(log, run.rule);
        Logs& own = by_log[{class_of(small, metric), run.rule}];
        ++own.logs;
        own.gross += scale->gross;
        own.deduction += scale->deduction;
        own.net += scale->net;
        own.content += content_of(*log.measure, mill_.trim);
      }
    }
    if (measured == 0 || !run.counted()) continue;
    const Fraction mean = inches / measured * (all_metric ? Fraction(254, 100) : Fraction(1));
    by_mean[{class_of(mean, all_metric), run.rule}].add(run);
  }
  Table runs;
  runs.name = "overrun";
  runs.keys = {"diameter", "rule"};
  runs.sums = {"runs", "logs", "net_scale_bf", "lumber_bf", "log_ft3"};
  runs.ratios = {{"overrun_percent", {"lumber_bf", "net_scale_bf", 100, 100}},
                 {"lrf", {"lumber_bf", "log_ft3"}},
                 {"recovery_percent", {"wood", "log_ft3", 100}}};
  for (const auto& [key, made] : by_mean)
    runs.rows.push_back({{"diameter", key.first},
                         {"rule", key.second},
                         {"runs", figure(made.runs)},
                         {"logs", figure(made.logs)},
                         {"net_scale_bf", figure(made.net)},
                         {"lumber_bf", figure(made.lumber)},
                         {"log_ft3", figure(made.content)},
                         {"wood", figure(made.counted_wood)}});
  Table logs;
  logs.name = "logs";
  logs.keys = {"diameter", "rule"};
  logs.sums = {"logs", "gross_bf", "deduction_bf", "net_bf", "log_ft3"};
  logs.ratios = {{"defect_percent", {"deduction_bf", "gross_bf", 100}},
                 {"net_per_ft3", {"net_bf", "log_ft3"}}};
  for (const auto& [key, made] : by_log)
    logs.rows.push_back({{"diameter", key.first},
                         {"rule", key.second},
                         {"logs", figure(made.logs)},
                         {"gross_bf", figure(made.gross)},
                         {"deduction_bf", figure(made.deduction)},
                         {"net_bf", figure(made.net)},
                         {"log_ft3", figure(made.content)}});
  return {runs, logs};
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
