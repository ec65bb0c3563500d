#include "book/runs.h"

#include <algorithm>
#include <tuple>

#include "base/checked_sum.h"
#include "sheet/raw_log.h"

namespace kerfbook::book {
namespace {

auto key_of(const RunTotals& run) {
  return std::tie(run.site, run.job, run.species, run.setup);
}

}  // namespace

std::optional<std::string> said(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(text);
}

void RunTotals::add_tally(std::int64_t more_pieces, std::int64_t more_lumber, std::int64_t more_wood) {
  ++lines;
  pieces = checked_sum(pieces, more_pieces);
  lumber = checked_sum(lumber, more_lumber);
  wood = checked_sum(wood, more_wood);
}

RunTotals Runs::blank(const sheet::Context& context) {
  RunTotals run;
  run.site = words_.find_or_add(WordKind::site, context.site);
  run.job = words_.find_or_add(WordKind::job, context.job);
  run.species = words_.find_or_add(WordKind::species, context.species);
  run.setup = words_.find_or_add(WordKind::setup, context.setup);
  return run;
}

RunTotals* Runs::known(const RunTotals& like) {
  const auto found = std::find_if(runs_.begin(), runs_.end(),
                                  [&](const RunTotals& run) { return key_of(run) == key_of(like); });
  return found == runs_.end() ? nullptr : &*found;
}

RunTotals& Runs::of(const sheet::DatedFact& fact) {
  RunTotals run = blank(fact.context);
  if (auto* begun = known(run)) return *begun;
  run.run = static_cast<int>(runs_.size()) + 1;
  run.first_number = fact.number;
  run.practice = &then_.practice_for(fact.context.job);
  run.unit = scaling::unit_word(unit_in(*run.practice, then_.file().units));
  return runs_.emplace_back(std::move(run));
}

std::optional<int> Runs::find(const sheet::Context& context) {
  const auto* run = known(blank(context));
  return run == nullptr ? std::nullopt : std::optional(run->run);
}

void Runs::write() {
  for (const auto& run : runs_) {
    store_.run(
        "INSERT INTO run (day, shift, run, first_number, site, job, species, setup, practice, unit, logs, "
        "unscaled_logs, gross, net, content, lines, pieces, lumber, wood) "
        "VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        key_.day, key_.shift, run.run, run.first_number, run.site, run.job, run.species, run.setup,
        run.practice->name, run.unit, run.logs, run.unscaled_logs, run.gross, run.net, run.content, run.lines,
        run.pieces, run.lumber, run.wood);
  }
}

}  // namespace kerfbook::book
