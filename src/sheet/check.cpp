// check.cpp -- gathers the sheet into runs and asks every rule. The rules are in the files named in check_rules.h.
#include "sheet/check.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "sheet/check_rules.h"

namespace kerfbook::sheet {
namespace {

using Rule = void (*)(Review&);
constexpr std::array<Rule, 24> kRules{
    check_day,       check_capacity_of_logs,
    check_tags,      check_defects,
    check_kerf,      check_capacity_of_boards,
    check_lengths,   check_systems,
    check_repeats,   check_recovery,
    check_day_total, check_calipers,
    check_crew,      check_sawing_times,
    check_stops,     check_charged_stops,
    check_meter,     check_words,
    check_owners,    check_ranges,
    check_prices,    check_stops_by_length,
    check_log_units, check_jobs,
};

std::string item_text(std::int64_t pieces, const Length& length, const Size& size) {
  return std::to_string(pieces) + "/" +
         measure::write_length(length, size.thickness.system == measure::System::metric);
}

/// The words of a book are the same in any case.
bool same_run(const Context& a, const Context& b) {
  return same_word(a.site, b.site) && same_word(a.job, b.job) && same_word(a.species, b.species) &&
         same_word(a.setup, b.setup);
}

int sign_of(Sense sense) {
  return sense == Sense::sawn ? 1 : -1;
}

}  // namespace

Usual usual(bool metric) {
  if (metric) {
    return {measure::centimetres(150),
            measure::centimetres(900),
            measure::centimetres(30),
            measure::centimetres(60),
            8'000,
            1'000};
  }
  return {measure::inches(60), measure::feet(30), measure::inches(12), measure::inches(24), 8'000, 400};
}

std::string than_words(const char* more, const char* the_mill, bool of_mill) {
  return std::string(more) + " than " + (of_mill ? the_mill : "usual") + ", ";
}

std::string set_words(const char* key, bool of_mill) {
  return of_mill ? "" : std::string("; if that is usual here, set [capacity] ") + key + " in the mill file";
}

Rational Boards::bf() const {
  return measure::board_feet(measure::volume(size, length, pieces)) * Rational(sign);
}

std::vector<scaling::Defect> RunLog::defects() const {
  std::vector<scaling::Defect> all = before;
  all.insert(all.end(), log->defects.begin(), log->defects.end());
  return all;
}

bool RunFacts::all_measured() const {
  return std::all_of(logs.begin(), logs.end(), [](const RunLog& log) { return log.measure != nullptr; });
}

Review::Review(const Sheet& of, const Known& knowing, const scaling::Practice& by)
    : sheet(of), known(knowing), practice(by), facts(kerfbook::sheet::facts(of)) {
  for (const auto& [tag, log] : known.deck) {
    if (log) received_[lower(tag)] = *log;
  }
  for (const DatedFact& fact : facts) {
    gather_log(fact);
    gather_boards(fact);
  }
}

void Review::warn(const Line& line, std::string what, std::string instead) {
  found.push_back({Severity::warning, line.place, std::move(what), std::move(instead)});
}

void Review::note(const Line& line, std::string what, std::string instead) {
  found.push_back({Severity::note, line.place, std::move(what), std::move(instead)});
}

RunFacts& Review::run_of(const Context& context) {
  for (RunFacts& run : runs) {
    if (same_run(run.context, context)) return run;
  }
  runs.push_back({context, {}, {}});
  return runs.back();
}

void Review::gather_log(const DatedFact& fact) {
  const auto* log = std::get_if<LogLine>(&fact.line->fact);
  if (log == nullptr) return;
  const auto tags = spread(*log);
  const std::string tag = fact.item < tags.size() ? tags[fact.item] : std::string();
  RunLog of{fact.line, log, tag, log->measure ? &*log->measure : nullptr, {}};
  if (const auto deck = received_.find(lower(tag)); deck != received_.end() && !log->measure) {
    of.measure = &deck->second.measure;
    of.before = deck->second.defects;
    deck->second.defects = of.defects();
  }
  if (log->measure && !tag.empty()) received_[lower(tag)] = {*log->measure, log->defects};
  if (!log->received) run_of(fact.context).logs.push_back(std::move(of));
}

void Review::gather_boards(const DatedFact& fact) {
  Boards boards;
  boards.line = fact.line;
  if (const auto* tally = std::get_if<Tally>(&fact.line->fact)) {
    const auto& item = tally->items[fact.item];
    boards = {fact.line,   tally->size,           item.length,
              item.pieces, sign_of(tally->sense), item_text(item.pieces, item.length, tally->size)};
  } else if (const auto* random = std::get_if<RandomTally>(&fact.line->fact)) {
    const auto& board = random->boards[fact.item];
    const Size size{random->thickness, board.width, random->quarters};
    boards = {fact.line,
              size,
              board.length,
              board.pieces,
              sign_of(random->sense),
              measure::write_inches(board.width) + "x" + measure::write_feet(board.length)};
  } else if (const auto* lineal = std::get_if<LinealTally>(&fact.line->fact)) {
    boards = {fact.line, lineal->size,           lineal->total,
              1,         sign_of(lineal->sense), measure::write_feet(lineal->total) + "lf"};
  } else {
    return;
  }
  run_of(fact.context).boards.push_back(std::move(boards));
}

std::string rounded_text(const Rational& value, int places) {
  return grouped(shown(value, places));
}

std::vector<Diagnostic> check(const Sheet& sheet, const Known& known, const scaling::Practice& practice) {
  Review review(sheet, known, practice);
  for (const Rule rule : kRules) rule(review);
  sort_by_place(review.found);
  return std::move(review.found);
}

}  // namespace kerfbook::sheet
