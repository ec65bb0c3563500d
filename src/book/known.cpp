#include "book/known.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "base/text.h"
#include "book/log_rows.h"
#include "mill/toml_table.h"

namespace kerfbook::book {
namespace {

using measure::System;

constexpr int kDaysATagIsRemembered = 365;  ///< tags begin again with T1 every season

System system_of(std::int64_t metric) {
  return metric != 0 ? System::metric : System::inch;
}

void take_words(Core& core, sheet::Known& known) {
  Words& words = core.projector.words();
  known.species = words.all(WordKind::species);
  known.grades = words.all(WordKind::grade);
  known.sites = words.all(WordKind::site);
  for (auto& job : words.all(WordKind::job)) {
    if (!same_word(job, "own")) known.jobs.push_back(std::move(job));
  }
  known.setups = words.all(WordKind::setup);
  for (const auto& saw : core.projector.mill().saws) known.saws.push_back(saw.role);
}

/// The words a sheet has of one kind; a word that stands nowhere but in lines is looked for in those.
using Wanted = std::set<std::string>;

/// Words of a column of lines: those of the last two years, and of the sheet's own words those met at any time.
void add_met(Core& core, const char* table, const char* column, const Wanted& wanted, Day day,
             std::vector<std::string>& met) {
  constexpr int kDaysBack = 730;
  if (wanted.empty()) return;
  core.store.each(
      fmt::format("SELECT DISTINCT {0} FROM {1} WHERE day >= ? AND {0} <> ''", column, table),
      [&](const Row& row) { met.push_back(row.text(0)); }, day - kDaysBack);
  for (const auto& word : wanted) {
    const bool known =
        std::any_of(met.begin(), met.end(), [&](const auto& one) { return same_word(one, word); });
    if (known) continue;
    if (core.store.number(fmt::format("SELECT 1 FROM {} WHERE {} = ? COLLATE NOCASE LIMIT 1", table, column),
                          word)) {
      met.push_back(word);
    }
  }
}

/// The charges the mill file names, and the causes of stops it charges for.
void take_charge_names(const Mill& mill, sheet::Known& known) {
  TomlFile file = read_toml(mill.money.toml);
  TomlTable root(file.root, "the mill file", file);
  for (TomlTable& charge : root.tables("charge")) {
    if (std::string name = charge.text("name"); !name.empty()) known.charges.push_back(std::move(name));
    for (auto& cause : charge.words("stop")) known.causes.push_back(std::move(cause));
  }
}

/// Hands, causes, buyers, charges: words that have no table of their own.
void take_line_words(Core& core, const sheet::Sheet& sheet, sheet::Known& known) {
  Wanted hands;
  Wanted causes;
  Wanted saws;
  Wanted tooth_causes;
  Wanted buyers;
  Wanted charges;
  for (const auto& line : sheet.lines) {
    if (const auto* crew = std::get_if<sheet::Crew>(&line.fact)) {
      for (const auto& hand : crew->hands) hands.insert(hand.name);
    } else if (const auto* stop = std::get_if<sheet::Stop>(&line.fact)) {
      causes.insert(stop->cause);
    } else if (const auto* teeth = std::get_if<sheet::Teeth>(&line.fact)) {
      saws.insert(teeth->saw);
      if (!teeth->cause.empty()) tooth_causes.insert(teeth->cause);
    } else if (const auto* sold = std::get_if<sheet::Sold>(&line.fact)) {
      buyers.insert(sold->buyer);
    } else if (const auto* charge = std::get_if<sheet::Charge>(&line.fact)) {
      charges.insert(charge->name);
    }
  }
  if (!causes.empty() || !charges.empty()) take_charge_names(core.projector.mill(), known);
  add_met(core, "crew", "name", hands, sheet.day, known.hands);
  add_met(core, "stop", "cause", causes, sheet.day, known.causes);
  add_met(core, "tooth_work", "saw", saws, sheet.day, known.saws);
  add_met(core, "tooth_work", "cause", tooth_causes, sheet.day, known.tooth_causes);
  add_met(core, "charge", "name", charges, sheet.day, known.charges);
  add_met(core, "sold", "buyer", buyers, sheet.day, known.buyers);
  add_met(core, "sold_bundle", "buyer", buyers, sheet.day, known.buyers);
  if (known.buyers.empty() && core.projector.mill().customers.empty()) return;
  for (const auto& customer : core.projector.mill().customers) {
    known.buyers.push_back(customer.code);
    known.buyers.push_back(customer.name);
  }
}

/// Whose lumber each job's is: the customer's, whichever of his jobs; else the mill's own; else the job's by itself.
void take_owners(Core& core, sheet::Known& known) {
  core.store.each(
      "SELECT job.code, job.owner, customer.code FROM job LEFT JOIN customer ON customer.id = job.customer",
      [&](const Row& row) {
        const std::string job = row.text(0);
        const std::string customer = row.text(2);
        known.owners[lower(job)] = !customer.empty() ? customer : row.text(1) == "own" ? "own" : job;
      });
}

void take_sizes(Core& core, sheet::Known& known) {
  core.store.each("SELECT thickness, width, metric, quarters FROM size ORDER BY id", [&](const Row& row) {
    const System system = system_of(row.number(2));
    known.sizes.push_back({{row.number(0), system}, {row.number(1), system}, row.number(3) != 0});
  });
  core.store.each("SELECT length, metric FROM board_length", [&](const Row& row) {
    known.lengths.push_back({row.number(0), system_of(row.number(1))});
  });
}

/// The newest state of each of the sheet's own tags before it: on the deck with its measure, or sawn already.
void take_tags(Core& core, const sheet::Sheet& sheet, sheet::Known& known) {
  const SheetKey key{sheet.day, sheet.shift};
  std::set<std::string> tags;
  for (const auto& line : sheet.lines) {
    if (const auto* log = std::get_if<sheet::LogLine>(&line.fact)) {
      for (auto& tag : sheet::spread(*log)) tags.insert(std::move(tag));
    }
  }
  for (const auto& tag : tags) {
    if (const auto spec = borrowed_spec(core.store, tag, key, 0)) {
      known.deck[tag] = sheet::KnownLog{spec->measure, spec->defects};
    } else if (core.store.number(
                   "SELECT 1 FROM log WHERE tag = ? AND state <> 'sawn' AND (day, shift) < (?, ?) LIMIT 1",
                   tag, key.day, key.shift)) {
      known.deck[tag] = std::nullopt;
    }
    if (core.store.number("SELECT 1 FROM log WHERE tag = ? AND state = 'sawn' AND day BETWEEN ? AND ? "
                          "AND (day, shift) <> (?, ?) LIMIT 1",
                          tag, key.day - kDaysATagIsRemembered, key.day + kDaysATagIsRemembered, key.day,
                          key.shift)) {
      known.sawn_tags.push_back(tag);
    }
    core.store.each(
        "SELECT log.state, job.code FROM log JOIN run USING (day, shift, run) LEFT JOIN job ON job.id = "
        "run.job "
        "WHERE tag = ? AND (log.day, log.shift) < (?, ?) ORDER BY log.day DESC, log.shift DESC, log.number "
        "DESC "
        "LIMIT 1",
        [&](const Row& row) {
          if (row.text(0) != "sawn" && !row.text(1).empty()) known.deck_jobs[lower(tag)] = row.text(1);
        },
        tag, key.day, key.shift);
  }
}

/// What this mill's logs have given before. A run is believed when its like was posted on three days of the last two
/// years: a single slip that was never corrected, or two, must not hide the next one. It only ever raises what is
/// believed; a mill that gives less today may well do better tomorrow. Runs of few logs, or with a log half-sawn or not
/// scaled, say too little.
void take_best_recovery(Core& core, SheetKey key, sheet::Known& known) {
  constexpr int kDaysBack = 730;
  constexpr int kLeastLogs = 3;
  constexpr std::size_t kDaysToBelieve = 3;
  constexpr std::int64_t kSolidWood = 1200;  // a cubic foot holds 12 bf and no more
  const System book = core.projector.mill().units;
  const std::int64_t counts =
      book == System::metric ? measure::kMetricCountsPerBoardFoot : measure::kCountsPerBoardFoot;
  std::map<std::int64_t, Rational> best;  // of each day
  core.store.each(
      "SELECT r.day, r.lumber, r.content FROM run r WHERE r.day >= ? AND (r.day, r.shift) < (?, ?) AND "
      "r.logs >= ? "
      "AND r.counted AND r.lumber * 1000000 > r.content * ? AND r.content > 0 AND NOT EXISTS "
      "(SELECT 1 FROM log l WHERE l.day = r.day AND l.shift = r.shift AND l.run = r.run AND l.state = "
      "'left')",
      [&](const Row& row) {
        const Rational cubic_feet(row.number(2), scaling::kPerUnit);
        const Rational given = measure::board_feet({row.number(1), book}) / cubic_feet;
        Rational& of_day = best[row.number(0)];
        if (given > of_day) of_day = given;
      },
      key.day - kDaysBack, key.day, key.shift, kLeastLogs, counts * known.best_lrf_hundredths / 100);
  if (best.size() < kDaysToBelieve) return;
  std::vector<Rational> days;
  for (const auto& [day, given] : best) days.push_back(given);
  std::sort(days.rbegin(), days.rend());
  known.best_lrf_hundredths = std::min(days[kDaysToBelieve - 1].rounded(2), kSolidWood);
}

void take_days(Core& core, SheetKey key, sheet::Known& known) {
  constexpr int kNeighbourDays = 60;
  constexpr std::size_t kDayDigits = 10;
  if (core.options.now) known.today = read_day(core.options.now().substr(0, kDayDigits));
  if (const auto newest =
          core.store.number("SELECT day FROM sheet WHERE day <> ? ORDER BY day DESC LIMIT 1", key.day)) {
    known.newest_day = Day{static_cast<std::int32_t>(*newest)};
  }
  known.has_neighbours = core.store
                             .number("SELECT 1 FROM sheet WHERE day BETWEEN ? AND ? AND day <> ? LIMIT 1",
                                     key.day - kNeighbourDays, key.day + kNeighbourDays, key.day)
                             .has_value();
}

void take_capacity(const Mill& mill, sheet::Known& known) {
  known.metric = mill.units == System::metric;
  known.money_scale = measure::money_scale(mill.currency);
  known.minor_units = 1;
  for (int i = 0; i < mill.currency.places; ++i) known.minor_units *= 10;
  known.taper = mill.taper;
  known.largest_log = mill.largest_log;
  known.longest_log = mill.longest_log;
  known.thickest_board = mill.thickest_board;
  known.widest_board = mill.widest_board;
  known.most_bf_a_day = mill.most_bf_a_day;
}

}  // namespace

sheet::Known known_for(Core& core, const sheet::Sheet& sheet) {
  sheet::Known known;
  take_words(core, known);
  take_line_words(core, sheet, known);
  take_owners(core, known);
  take_sizes(core, known);
  take_tags(core, sheet, known);
  take_days(core, {sheet.day, sheet.shift}, known);
  take_capacity(core.projector.mill(), known);
  take_best_recovery(core, {sheet.day, sheet.shift}, known);
  return known;
}

}  // namespace kerfbook::book
