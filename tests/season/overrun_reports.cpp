// overrun_reports.cpp -- overrun and recovery by run, job, set-up, species and diameter.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "sums.h"

namespace reckoning {
namespace {

std::string class_of(const Fraction& diameter, bool metric) {
  const std::int64_t wide = metric ? 5 : 3;
  const std::int64_t from = (diameter / wide).whole() * wide;
  return std::to_string(from) + " to " + std::to_string(from + wide) + (metric ? " cm" : " in");
}

}  // namespace

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
  // the mean diameter of a run goes by inches or, where all its logs are metric, by centimetres; a run with a log that
  // was not measured, or without logs, has none
  struct Logs {
    std::int64_t logs = 0;
    bool scaled = false;
    Fraction gross, deduction, net, content;
  };
  std::map<std::pair<std::string, std::string>, Sums> by_mean;
  std::map<std::pair<std::string, std::string>, Logs> by_log;
  for (const auto& run : runs_) {
    if (!period.has(run.day) || !run.sawn()) continue;
    std::int64_t measured = 0;
    bool all_metric = true;
    Fraction inches;
    for (const auto& sheet : sheets_) {
      if (sheet.day != run.day || sheet.shift != run.shift) continue;
      for (const auto& log : sheet.logs) {
        const Stand& at = log.at;
        const bool here = std::tie(at.site, at.job, at.species, at.setup) ==
                          std::tie(run.site, run.job, run.species, run.named_setup);
        if (!here || log.state != Log::State::sawn) continue;
        if (!log.measure) {
          ++by_log[{"", ""}].logs;
          continue;
        }
        ++measured;
        const bool metric = log.measure->metric;
        const Fraction small = small_end(*log.measure);
        all_metric = all_metric && metric;
        inches += metric ? small / Fraction(254, 100) : small;
        const auto scale = scale_of(log, run.rule);
        Logs& own = by_log[{class_of(small, metric), run.rule}];
        ++own.logs;
        own.scaled = true;
        own.gross += scale->gross;
        own.deduction += scale->deduction;
        own.net += scale->net;
        own.content += content_of(*log.measure, mill_.trim);
      }
    }
    const bool known = measured > 0 && measured == run.logs;
    const Fraction mean =
        known ? inches / measured * (all_metric ? Fraction(254, 100) : Fraction(1)) : Fraction(0);
    by_mean[{known ? class_of(mean, all_metric) : "", run.logs > run.unscaled ? run.rule : ""}].add(run);
  }
  Table runs;
  runs.name = "overrun";
  runs.keys = {"diameter", "rule"};
  runs.sums = {"runs", "logs", "net_scale_bf", "lumber_bf", "log_ft3", "unscaled_logs"};
  runs.ratios = {{"overrun_percent", kOverrun},
                 {"lrf", {"counted_lumber", "counted_content"}},
                 {"recovery_percent", {"counted_wood", "counted_content", 100}}};
  for (const auto& [key, made] : by_mean) {
    Row row{{"diameter", text_or_dash(key.first)},
            {"rule", text_or_dash(key.second)},
            {"runs", figure(made.runs)},
            {"logs", figure(made.logs)},
            {"net_scale_bf", made.scaled ? figure(made.net) : Cell()},
            {"lumber_bf", figure(made.lumber)},
            {"log_ft3", dash_if_zero(made.content)},
            {"unscaled_logs", figure(made.unscaled)}};
    put_counted(made, row);
    runs.rows.push_back(row);
  }
  Table logs;
  logs.name = "logs";
  logs.keys = {"diameter", "rule"};
  logs.sums = {"logs", "gross_bf", "deduction_bf", "net_bf", "log_ft3"};
  logs.ratios = {{"defect_percent", {"deduction_bf", "gross_bf", 100}},
                 {"net_per_ft3", {"net_bf", "log_ft3"}}};
  for (const auto& [key, made] : by_log) {
    const auto known = [scaled = made.scaled](const Fraction& value) {
      return scaled ? figure(value) : Cell();
    };
    logs.rows.push_back({{"diameter", text_or_dash(key.first)},
                         {"rule", text_or_dash(key.second)},
                         {"logs", figure(made.logs)},
                         {"gross_bf", known(made.gross)},
                         {"deduction_bf", known(made.deduction)},
                         {"net_bf", known(made.net)},
                         {"log_ft3", known(made.content)}});
  }
  return {runs, logs};
}

}  // namespace reckoning
