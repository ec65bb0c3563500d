#include "book/known.h"

#include <set>

#include "base/text.h"
#include "book/log_rows.h"

namespace kerfbook::book {
namespace {

using measure::Length;
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
      for (auto& tag : tags_of(*log)) tags.insert(std::move(tag));
    }
  }
  for (const auto& tag : tags) {
    if (const auto spec = borrowed_spec(core.store, tag, key, 0)) {
      known.deck[tag] = spec->measure;
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
  take_capacity(core.projector.mill(), known);
  return known;
}

}  // namespace kerfbook::book
