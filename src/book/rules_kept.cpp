#include "book/rules_kept.h"

#include <set>

#include "base/text.h"
#include "sheet/facts.h"

namespace kerfbook::book {
namespace {

/// The jobs under which the sheet has logs, as first written; "" for logs under none.
std::set<std::string> jobs_with_logs(const sheet::Sheet& sheet) {
  std::set<std::string> jobs;
  for (const auto& fact : sheet::facts(sheet)) {
    if (std::holds_alternative<sheet::LogLine>(fact.line->fact)) jobs.insert(fact.context.job);
  }
  return jobs;
}

std::string named(const scaling::Practice& practice, const scaling::Practice& other) {
  return scaling::rule_words(practice.name) + (practice.name == other.name ? " as it was" : "");
}

}  // namespace

RulesKept rules_kept(Core& core, const sheet::Sheet& sheet, bool rescale) {
  RulesKept kept;
  const std::int64_t in_force = core.projector.mill_entry();
  const auto entry =
      core.store.number("SELECT mill_entry FROM sheet WHERE day = ? AND shift = ?", sheet.day, sheet.shift);
  kept.entry = entry.value_or(in_force);
  if (kept.entry == in_force) return kept;
  kept.keeps = !rescale;
  MillInForce then(core.store, core.projector.words(), core.projector.mills(), kept.entry);
  MillInForce now(core.store, core.projector.words(), core.projector.mills(), in_force);
  for (const std::string& job : jobs_with_logs(sheet)) {
    const scaling::Practice& before = then.practice_for(job);
    const scaling::Practice& after = now.practice_for(job);
    if (before == after) continue;
    kept.differ = true;
    const std::string logs = job.empty() ? "logs under no job" : "logs of job " + job;
    if (rescale) {
      kept.found.push_back({Severity::note,
                            {},
                            logs + ": scaled anew by " + scaling::rule_words(after.name) + ", before by " +
                                named(before, after),
                            ""});
    } else {
      kept.found.push_back({Severity::note,
                            {},
                            logs + ": they keep the log rule they were posted under, " +
                                named(before, after) + "; the mill file now has " +
                                scaling::rule_words(after.name),
                            "post with --rescale if they are to be scaled anew"});
    }
  }
  return kept;
}

}  // namespace kerfbook::book
