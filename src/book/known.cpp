#include "book/known.h"

#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "base/text.h"
#include "book/log_rows.h"

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
  for (const auto& saw : core.projector.mill().saws) known.saws.push_back(saw.role);
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
      "AND r.unscaled_logs = 0 AND r.lumber * 1000000 > r.content * ? AND r.content > 0 AND NOT EXISTS "
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
  known.taper = mill.taper;
  if (mill.largest_log) known.largest_diameter = *mill.largest_log;
  if (mill.longest_log) known.longest_log = *mill.longest_log;
  if (mill.thickest_board) known.thickest_board = *mill.thickest_board;
  if (mill.widest_board) known.widest_board = *mill.widest_board;
  if (mill.most_bf_a_day) known.bf_per_day_most = *mill.most_bf_a_day;
}

}  // namespace

sheet::Known known_for(Core& core, const sheet::Sheet& sheet) {
  sheet::Known known;
  take_words(core, known);
  take_sizes(core, known);
  take_tags(core, sheet, known);
  take_days(core, {sheet.day, sheet.shift}, known);
  take_capacity(core.projector.mill(), known);
  take_best_recovery(core, {sheet.day, sheet.shift}, known);
  return known;
}

}  // namespace kerfbook::book
