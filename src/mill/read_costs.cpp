// read_costs.cpp -- what the work costs, and what is due by engine hours.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "measure/size.h"
#include "mill/mill_tables.h"
#include "mill/rate_doubt.h"

namespace kerfbook::book {
namespace {

constexpr std::int64_t kMicro = 1'000'000;

struct PerRow {
  std::string_view word;  ///< as the mill file writes it
  std::string_view use;   ///< as v_use.per has it
  std::string_view unit;
  std::int64_t whole;    ///< counts of v_use in one unit
  std::string_view who;  ///< key that may limit it; "" = none
  std::int64_t most;     ///< dollars a unit that are believed
};

/// What a cost goes by. A thousand board feet are counted as the book counts volumes.
constexpr std::array kPers{
    PerRow{"crew-hour", "crew-hour", "crew hour", 60, "hand", 1'000},
    PerRow{"sawing-hour", "sawing-hour", "sawing hour", 60, "", 2'000},
    PerRow{"engine-hour", "engine-hour", "engine hour", 10, "", 2'000},
    PerRow{"day", "day", "day sawn", 1, "", 20'000},
    PerRow{"year", "day", "day sawn", 1, "", 1'000'000},
    PerRow{"MBF", "lumber", "MBF", 1000 * measure::kCountsPerBoardFoot, "", 20'000},
    PerRow{"m3", "lumber", "m3", measure::kMetricCountsPerCubicMetre, "", 5'000},
    PerRow{"log", "log", "log", 1, "", 2'000},
    PerRow{"tooth", "tooth", "tooth", 1, "saw", 1'000},
    PerRow{"gallon", "gal", "gal", kMicro, "", 50},
    PerRow{"litre", "l", "l", kMicro, "", 12},
    PerRow{"mile", "mi", "mi", kMicro, "", 100},
    PerRow{"km", "km", "km", kMicro, "", 100},
};

Result<const PerRow*> read_per(std::string_view typed) {
  std::vector<std::string> words;
  for (const PerRow& row : kPers) {
    if (same_word(row.word, typed)) return &row;
    words.emplace_back(row.word);
  }
  return Slip{"'" + std::string(typed) + "' is nothing a cost goes by", "one of " + join(words, ", "), 0};
}

/// Lumber is measured in board feet or in cubic metres, as the book is.
void check_unit(TomlTable& table, const PerRow& per, bool metric) {
  if (per.use != "lumber" || (per.word == "m3") == metric) return;
  table.wrong_at("per", std::string("this mill's lumber is not counted by ") + std::string(per.word),
                 metric ? "write per = \"m3\"" : "write per = \"MBF\"");
}

void read_year(TomlTable& table, Cost& cost) {
  const auto days = table.whole("days", 1, 366);
  if (days) cost.whole = *days;
  if (!days && !table.has("days")) {
    table.wrong_at("per", "a year's cost without the days it is spread over",
                   "write days = 120, the days a year the mill saws");
  }
}

Cost read_cost(TomlTable& table, bool metric, std::int64_t money_scale) {
  Cost cost;
  cost.name = table.text("name");
  if (cost.name.empty()) table.wrong_at("name", "a [[cost]] without a name", "write name = \"Insurance\"");
  const auto rate = table.number("rate", 6);
  if (rate && !rate->is_negative()) {
    cost.rate_micro = rate->rounded(6);
  } else if (rate || !table.has("rate")) {
    table.wrong_at("rate", "a [[cost]] needs a rate without a minus", "write rate = 24.00");
  }
  if (const auto from = table.day("from")) cost.from = *from;
  const auto per = table.read<const PerRow*>("per", read_per);
  if (!per) {
    if (!table.has("per"))
      table.wrong_at("per", "a [[cost]] that goes by nothing", "write per = \"crew-hour\"");
    for (const char* key : {"days", "hand", "saw"}) table.allow(key);
    table.finish();
    return cost;
  }
  const PerRow& row = **per;
  cost.per = row.use;
  cost.unit = row.unit;
  cost.whole = row.whole;
  check_unit(table, row, metric);
  if (rate) doubt_rate(table, "rate", *rate, {0, row.most}, money_scale, "per " + std::string(row.word));
  if (row.word == "year") read_year(table, cost);
  if (!row.who.empty()) cost.who = table.text(row.who);
  table.finish();
  return cost;
}

/// Of entries with one name the later one takes over from its first day on.
void end_earlier(std::vector<TomlTable>& tables, std::vector<Cost>& costs) {
  for (std::size_t i = 0; i < costs.size(); ++i) {
    for (std::size_t k = 0; k < costs.size(); ++k) {
      if (i == k || costs[i].name.empty() || !same_word(costs[i].name, costs[k].name)) continue;
      if (costs[i].from == costs[k].from && k < i) {
        tables[i].wrong_at("name", "a second [[cost]] called '" + costs[i].name + "' from the same day",
                           "give it a name of its own, or a first day, as from = 2026-07-01");
      }
      if (costs[i].from < costs[k].from) costs[i].to = std::min(costs[i].to, costs[k].from - 1);
    }
  }
}

}  // namespace

void read_costs(TomlTable& root, Mill& mill) {
  const bool metric = mill.units == measure::System::metric;
  auto tables = root.tables("cost");
  for (auto& table : tables)
    mill.costs.push_back(read_cost(table, metric, measure::money_scale(mill.currency)));
  end_earlier(tables, mill.costs);
}

void read_services(TomlTable& root, Mill& mill) {
  for (auto& table : root.tables("service")) {
    Service service;
    service.name = table.text("name");
    const auto every = table.number("every", 1);
    if (every && Rational(0) < *every) {
      service.every_tenths = every->rounded(1);
    } else if (every || !table.has("every")) {
      table.wrong_at("every", "a [[service]] needs its engine hours, above nothing", "write every = 50");
    }
    table.finish();
    const auto same = [&](const Service& other) { return same_word(other.name, service.name); };
    if (std::any_of(mill.services.begin(), mill.services.end(), same)) {
      table.wrong_at("name", "a second [[service]] called '" + service.name + "'",
                     "give each a name of its own");
    } else if (service.every_tenths > 0) {
      mill.services.push_back(std::move(service));
    }
  }
}

}  // namespace kerfbook::book
