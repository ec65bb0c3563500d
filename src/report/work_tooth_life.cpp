// work_tooth_life.cpp -- the worker `tooth-life`: lives of sharpenings and sets, by saw, species and cause, and the pace since.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <set>
#include <tuple>

#include "base/text.h"
#include "report/tooth_interval.h"
#include "report/tooth_record.h"
#include "report/workers.h"
#include "tuning/log_rank.h"
#include "tuning/tooth_lives.h"

namespace kerfbook::report {
namespace {

using tuning::EndedBy;
using tuning::LifeOf;
using tuning::ToothLife;

constexpr int kCurveRows = 16;

using Lives = std::vector<ToothLife>;

Lives some(const Lives& lives, const std::function<bool(const ToothLife&)>& wanted) {
  Lives out;
  std::copy_if(lives.begin(), lives.end(), std::back_inserter(out), wanted);
  return out;
}

std::vector<tuning::Life> in_bf(const Lives& lives) {
  return as_lives(lives, tuning::LifeIn::bf);
}

std::int64_t count_by(const Lives& lives, EndedBy by) {
  return std::count_if(lives.begin(), lives.end(), [&](const ToothLife& life) { return life.by == by; });
}

std::string life_words(LifeOf of) {
  return of == LifeOf::edge ? "sharpening" : "set";
}

void add_saw(const Lives& lives, const Given& given, WorkedTable& table) {
  const auto curve = survival_of(in_bf(lives));
  std::optional<double> shortest, longest;
  double lumber = 0;
  std::int64_t teeth = 0;
  for (const auto& life : lives) {
    lumber += life.bf;
    teeth += life.teeth;
    if (life.by != EndedBy::wear) continue;
    shortest = std::min(shortest.value_or(life.bf), life.bf);
    longest = std::max(longest.value_or(life.bf), life.bf);
  }
  auto median = life_quantile(curve);
  if (count_by(lives, EndedBy::wear) < kWornToTell) median.lower = median.upper = std::nullopt;
  const auto median_in = [&](tuning::LifeIn in) {
    return life_quantile(survival_of(as_lives(lives, in))).at;
  };
  const auto price = price_of_tooth(given, lives.front().saw);
  const auto cost =
      price && teeth > 0 ? std::optional<double>(*price * static_cast<double>(teeth)) : std::nullopt;
  table.rows.push_back(
      {life_words(lives.front().of), lives.front().saw, static_cast<std::int64_t>(lives.size()),
       count_by(lives, EndedBy::wear), count_by(lives, EndedBy::strike), count_by(lives, EndedBy::record),
       lumber_of(median.at, given), lumber_of(median.lower, given), lumber_of(median.upper, given),
       lumber_of(shortest, given), lumber_of(longest, given), micro(median_in(tuning::LifeIn::hours)),
       lineal_of(median_in(tuning::LifeIn::lineal_ft)), teeth, micro(cost), lumber_of(lumber, given)});
}

void add_species(const Lives& lives, const Given& given, WorkedTable& table) {
  auto median = life_quantile(survival_of(in_bf(lives)));
  if (count_by(lives, EndedBy::wear) < kWornToTell) median.lower = median.upper = std::nullopt;
  table.rows.push_back({lives.front().saw, lives.front().species, static_cast<std::int64_t>(lives.size()),
                        count_by(lives, EndedBy::wear), count_by(lives, EndedBy::strike),
                        lumber_of(median.at, given), lumber_of(median.lower, given),
                        lumber_of(median.upper, given)});
}

void add_causes(const Lives& edges, const Given& given, WorkedTable& table) {
  struct Sum {
    std::int64_t times = 0, teeth = 0;
    double lumber = 0;
  };
  std::map<std::pair<std::string, std::string>, Sum> sums;
  for (const auto& life : edges) {
    if (life.by == EndedBy::record) continue;
    auto& sum = sums[{life.saw, life.cause}];
    ++sum.times;
    sum.teeth += life.teeth;
    sum.lumber += life.bf;
  }
  for (const auto& [key, sum] : sums) {
    table.rows.push_back({key.first, key.second.empty() ? Value{} : Value{key.second}, sum.times, sum.teeth,
                          lumber_of(sum.lumber, given)});
  }
}

/// 1, 2 or 5 times a power of ten, the least that is not under `rough`.
double round_step(double rough) {
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double one : {1.0, 2.0, 5.0}) {
    if (one * power >= rough * (1 - 1e-12)) return one * power;
  }
  return 10 * power;
}

/// Survival at even steps, so that the picture is to scale.
void add_curve(const Lives& edges, const Given& given, WorkedTable& table) {
  const auto of = [&](const std::function<bool(const std::string&)>& saw) {
    return survival_of(in_bf(some(edges, [&](const ToothLife& life) { return saw(life.saw); })));
  };
  const std::vector<tuning::Survival> curves{
      of([](const std::string& saw) { return saw == "head"; }),
      of([](const std::string& saw) { return saw == "edger"; }),
      of([](const std::string& saw) { return saw != "head" && saw != "edger"; })};
  double longest = 0;
  for (const auto& curve : curves) {
    if (!curve.steps.empty()) longest = std::max(longest, curve.longest);
  }
  if (!(longest > 0)) return;
  const double step =
      round_step(told_lumber(longest, given) / kCurveRows) / told_lumber(1, given);  // even as it is told
  for (double since = 0; since < longest + step; since += step) {
    std::vector<Value> row{lumber_of(since, given)};
    for (const auto& curve : curves) {
      const auto left = curve.steps.empty() ? std::nullopt : survival_at(curve, since);
      row.push_back(left ? micro(100 * *left) : Value{});
    }
    table.rows.push_back(std::move(row));
  }
}

struct Group {
  std::string name;
  Lives lives;
};

/// What is compared, and how a sentence names one of it: saws, "on the head saw"; species, "in DF on the head saw".
struct Comparison {
  std::string what;
  std::string before;
  std::string after;
};

/// The one that lasts longest against the one that lasts shortest, by their medians.
std::string longest_words(const std::vector<Group>& groups, const Comparison& by, double p,
                          const Given& given) {
  const Group* longest = nullptr;
  const Group* shortest = nullptr;
  double most = 0, least = 0;
  for (const auto& group : groups) {
    const auto median = life_quantile(survival_of(in_bf(group.lives))).at;
    const double lasts = median.value_or(std::numeric_limits<double>::infinity());
    if (longest == nullptr || lasts > most) std::tie(longest, most) = std::pair(&group, lasts);
    if (shortest == nullptr || lasts < least) std::tie(shortest, least) = std::pair(&group, lasts);
  }
  if (longest == shortest || !std::isfinite(least)) return {};
  return fmt::format(
      "Sharpenings last longer {0}{1}{2} than {0}{3}{2} ({4} against {5}); chance alone would do as much in "
      "fewer than {6} "
      "of 1,000 such records.",
      by.before, longest->name, by.after, shortest->name,
      std::isfinite(most) ? lumber_words(most, given) : "more than the record", lumber_words(least, given),
      static_cast<int>(1000 * p) + 1);
}

/// Groups with enough worn, against each other. The sentence it comes to; empty when nothing can be said.
std::string add_compared(const Comparison& by, const std::vector<Group>& all, const Given& given,
                         WorkedTable& table) {
  std::vector<Group> groups;
  std::vector<std::vector<tuning::Life>> lives;
  std::vector<std::string> names;
  std::int64_t worn = 0;
  for (const auto& group : all) {
    const auto own = count_by(group.lives, EndedBy::wear);
    if (own < kWornToTell) continue;
    groups.push_back(group);
    lives.push_back(in_bf(group.lives));
    names.push_back(group.name);
    worn += own;
  }
  if (all.size() < 2) return {};
  const auto test = tuning::log_rank(lives);
  if (!test) {
    for (const auto& group : all) {
      if (std::find(names.begin(), names.end(), group.name) == names.end()) names.push_back(group.name);
    }
    table.rows.push_back(
        {by.what, join(names, ", "), Value{}, Value{}, Value{}, Value{}, "too few worn to tell"});
    return {};
  }
  const bool differ = test->p < 0.05;
  table.rows.push_back({by.what, join(names, ", "), worn, micro(test->chi_square),
                        std::int64_t{test->freedom}, micro(test->p), differ ? "they differ" : "cannot tell"});
  return differ ? longest_words(groups, by, test->p, given) : std::string();
}

std::string saw_words(const Lives& edges, const Given& given) {
  const auto& saw = edges.front().saw;
  const auto worn = count_by(edges, EndedBy::wear);
  const auto median = life_quantile(survival_of(in_bf(edges)));
  if (worn == 0) return {};
  if (worn < kWornToTell)
    return fmt::format(
        "Too few sharpenings of the {} saw to tell how long one lasts and what interval costs least: {} "
        "worn, "
        "where {} would tell (common practice, no source).",
        saw, worn, kWornToTell);
  if (!median.at) return fmt::format("More than half the sharpenings of the {} saw outlast the record.", saw);
  std::string words =
      fmt::format("A sharpening of the {} saw lasts about {}: half are worn sooner, half last longer", saw,
                  lumber_words(*median.at, given));
  if (median.lower && median.upper) {
    words += fmt::format("; the record leaves it between {} and {}", lumber_words(*median.lower, given),
                         lumber_words(*median.upper, given));
  }
  return words + ".";
}

Worked work(const Given& given) {
  const auto sheets = sheets_of(given);
  const auto record = record_of(given, sheets);
  std::vector<tuning::SawRecord> stream;
  for (const auto& entry : record) stream.push_back(entry.what);
  const Lives lives = tooth_lives(stream);
  Worked out;
  const Lives edges = some(lives, [](const ToothLife& life) { return life.of == LifeOf::edge; });
  std::set<std::string> saws;
  for (const auto& life : lives) saws.insert(life.saw);
  const auto say = [&](std::string words) {
    if (!words.empty()) out.finding.push_back(std::move(words));
  };
  std::vector<Group> by_saw;
  const auto hour = cost_of_hour(given, sheets);
  for (const auto& saw : saws) {
    for (const LifeOf of : {LifeOf::edge, LifeOf::set}) {
      const Lives own = some(lives, [&](const ToothLife& life) { return life.saw == saw && life.of == of; });
      if (!own.empty()) add_saw(own, given, out.tables["saws"]);
      if (own.empty() || of == LifeOf::set) continue;
      by_saw.push_back({saw, own});
      say(saw_words(own, given));
      auto words = add_interval(own, hour, given, out.tables["interval"]);
      if (std::find(out.finding.begin(), out.finding.end(), words) == out.finding.end())
        say(std::move(words));
    }
  }
  say(add_compared({"Saws", "on the ", " saw"}, by_saw, given, out.tables["compared"]));
  for (const auto& saw : by_saw) {
    std::map<std::string, Lives> by_species;
    for (const auto& life : saw.lives) by_species[life.species].push_back(life);
    std::vector<Group> groups;
    for (const auto& [species, own] : by_species) {
      add_species(own, given, out.tables["species"]);
      groups.push_back({species.empty() ? "no species" : species, own});
    }
    say(add_compared({"Species, " + saw.name + " saw", "in ", " on the " + saw.name + " saw"}, groups, given,
                     out.tables["compared"]));
  }
  add_causes(edges, given, out.tables["causes"]);
  add_curve(edges, given, out.tables["curve"]);
  say(add_pace(record, sheets, given, out.tables["pace"]));
  return out;
}

}  // namespace

Worker tooth_life() {
  return {
      .name = "tooth-life",
      .reads = {{"sawn", {"day", "shift", "number", "species", "lumber", "lineal"}},
                {"sheets", {"day", "shift", "sawing_minutes", "lumber"}},
                {"work", {"day", "shift", "number", "saw", "action", "cause", "teeth"}},
                {"rates", {"saw", "rate"}},
                {"stops", {"times", "minutes"}},
                {"spent", {"per", "cost", "minutes"}}},
      .gives = {{"saws",
                 {"life", "saw", "lives", "worn", "strikes", "running", "median_bf", "lower", "upper",
                  "shortest", "longest", "median_hours", "median_lineal", "teeth", "cost", "lumber_bf"}},
                {"curve", {"since_bf", "head", "edger", "other"}},
                {"interval",
                 {"saw", "worn", "planned", "forced", "mean_bf", "best_bf", "best_cost", "thousand_bf",
                  "as_planned", "verdict"}},
                {"species", {"saw", "species", "lives", "worn", "strikes", "median_bf", "lower", "upper"}},
                {"causes", {"saw", "cause", "times", "teeth", "lumber_bf"}},
                {"compared", {"what", "groups", "worn", "chi_square", "freedom", "p", "verdict"}},
                {"pace", {"day", "since_bf", "lumber", "sawing"}}},
      .work = work};
}

}  // namespace kerfbook::report
