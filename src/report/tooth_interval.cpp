#include "report/tooth_interval.h"

#include <fmt/format.h>

#include "tuning/change_interval.h"

namespace kerfbook::report {
namespace {

using tuning::EndedBy;
using tuning::ToothLife;

/// What the sharpenings that ended by wear come to.
struct Worn {
  std::int64_t times = 0;
  double teeth = 0;  ///< put in by one, on average
};

Worn worn_of(const std::vector<ToothLife>& edges) {
  Worn worn;
  for (const auto& life : edges) {
    if (life.by != EndedBy::wear) continue;
    ++worn.times;
    worn.teeth += life.teeth;
  }
  if (worn.times > 0) worn.teeth /= static_cast<double>(worn.times);
  return worn;
}

/// Either the costs, or what the book lacks for them: what it is called in a cell, and the sentence.
struct Priced {
  std::optional<tuning::ChangeCosts> costs;
  std::string verdict;
  std::string words;
};

Priced price(const std::string& saw, const Worn& worn, const std::optional<CostOfHour>& hour,
             const Given& given) {
  const auto lacking = [&](const char* verdict, const char* words) {
    return Priced{std::nullopt, verdict,
                  fmt::format("At what interval sharpening costs least cannot be told: {}.", words)};
  };
  if (!hour)
    return lacking("no cost of an hour",
                   "the book has no cost of a crew hour, or no sawing hours (mill file: [[cost]], per = "
                   "\"crew-hour\")");
  const auto minutes = minutes_of_stop(given);
  if (!minutes || !(*minutes > 0))
    return lacking("no stop for teeth",
                   "no sheet of the period has a stop for teeth (as in stop 0:20 teeth)");
  const auto tooth = price_of_tooth(given, saw);
  if (!tooth && worn.teeth > 0)
    return lacking("no price of a tooth",
                   "the book has no price of a tooth (mill file: [[cost]], per = \"tooth\")");
  return {tuning::change_costs(worn.teeth, tooth.value_or(0), *minutes, hour->crew, hour->sawing), {}, {}};
}

std::string per_mbf(double cost_of_bf, const Given& given) {
  const bool metric = given.setting.metric_book;
  return money_words(cost_of_bf * (metric ? 1 / told_lumber(1, given) : 1000), given) +
         (metric ? " per m3" : " per MBF");
}

}  // namespace

std::optional<CostOfHour> cost_of_hour(const Given& given, const std::vector<SawnSheet>& sheets) {
  double sawn = 0;
  for (const auto& sheet : sheets) sawn += sheet.minutes;
  CostOfHour hour;
  double spent = 0;
  const auto& rows = given.rows("spent");
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const double cost = static_cast<double>(rows.number(r, "cost").value_or(0)) / 1e6;
    const auto minutes = static_cast<double>(rows.number(r, "minutes").value_or(0));
    spent += cost;
    if (rows.text(r, "per") == "crew-hour" && minutes > 0) hour.crew = cost / minutes * 60;
  }
  if (!(hour.crew > 0) || !(sawn > 0)) return std::nullopt;
  hour.sawing = spent / sawn * 60;
  return hour;
}

std::string add_interval(const std::vector<ToothLife>& edges, const std::optional<CostOfHour>& hour,
                         const Given& given, WorkedTable& table) {
  const auto& saw = edges.front().saw;
  const auto worn = worn_of(edges);
  const auto add = [&](std::vector<Value> figures, std::string verdict) {
    figures.resize(7);
    std::vector<Value> row{saw, worn.times};
    row.insert(row.end(), figures.begin(), figures.end());
    row.push_back(std::move(verdict));
    table.rows.push_back(std::move(row));
  };
  if (worn.times < kWornToTell) {
    add({}, "too few worn to tell");
    return {};
  }
  const auto priced = price(saw, worn, hour, given);
  if (!priced.costs) {
    add({}, priced.verdict);
    return priced.words;
  }
  const auto [planned, forced] = *priced.costs;
  const auto curve = survival_of(as_lives(edges, tuning::LifeIn::bf));
  const auto interval = tuning::change_interval(curve, planned, forced);
  const auto mean = tuning::mean_life(curve);
  if (!interval || !mean || !(mean->mean > 0)) {
    add({micro(planned), micro(forced)}, "no lumber between sharpenings");
    return {};
  }
  const std::string now = per_mbf(forced / mean->mean, given);
  if (!interval->plan_pays) {
    add({micro(planned), micro(forced), lumber_of(mean->mean, given)}, "as long as they last");
    return fmt::format(
        "By the record nothing is saved by sharpening the {} saw sooner: let its teeth go as long as they "
        "last, {} "
        "on average at {}.",
        saw, lumber_words(mean->mean, given), now);
  }
  const auto& best = interval->candidates[interval->best];
  add({micro(planned), micro(forced), lumber_of(mean->mean, given), lumber_of(best.every, given),
       micro(1000 * best.cost_rate), lumber_of(1000, given), micro(100 * best.reached)},
      "sooner");
  return fmt::format(
      "Sharpening the {} saw every {} would cost least, {}; when it is dull, every {} on average, it costs "
      "{}. "
      "Strikes are in neither.",
      saw, lumber_words(best.every, given), per_mbf(best.cost_rate, given), lumber_words(mean->mean, given),
      now);
}

}  // namespace kerfbook::report
