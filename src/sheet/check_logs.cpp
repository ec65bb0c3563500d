// check_logs.cpp -- rules about logs and the saw: past the mill's reach, sawn twice, unknown tags, a wide kerf.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheet/check_rules.h"
#include "sheet/line_reader.h"
#include "sheet/tally_words.h"

namespace kerfbook::sheet {
namespace {

Length thickest_end(const scaling::LogMeasure& log) {
  Length most = log.small.empty() ? Length{} : log.small.front();
  for (const auto* ends : {&log.small, &log.large, &log.mid}) {
    for (const Length end : *ends) {
      if (beyond(end, most)) most = end;
    }
  }
  return most;
}

std::string tags_text(const std::vector<std::string>& tags) {
  constexpr std::size_t kShown = 5;
  std::vector<std::string> shown(tags.begin(),
                                 tags.begin() + static_cast<std::ptrdiff_t>(std::min(tags.size(), kShown)));
  return join(shown, ", ") +
         (tags.size() > kShown ? " and " + std::to_string(tags.size() - kShown) + " more" : "");
}

/// How a log that nothing has measured is written; 15-12 may have been meant as its measure.
std::string measure_meant(const std::string& tag) {
  const std::size_t dash = tag.find('-');
  if (dash != std::string::npos && all_digits(tag.substr(0, dash)) && all_digits(tag.substr(dash + 1)) &&
      tag.front() != '0') {
    return "write its measure as log " + tag.substr(0, dash) + "x" + tag.substr(dash + 1) +
           ", or with it as log " + tag + " 15x12";
  }
  return "write it as log " + tag + " 15x12";
}

std::string across(Length diameter) {
  return measure::write_inches(diameter) + (diameter.system == measure::System::inch ? " in" : "");
}

std::string said(std::size_t count, const char* one, const char* many) {
  return count == 1 ? one : many;
}

}  // namespace

/// Check values: [capacity] largest_log and longest_log, else the usual ones; and 4 in (10 cm), a round number of our
/// own, under which a log is hardly brought to a mill.
void check_capacity_of_logs(Review& review) {
  const Known& known = review.known;
  const Length largest = known.largest_log.value_or(usual(known.metric).largest_log);
  const Length longest = known.longest_log.value_or(usual(known.metric).longest_log);
  const Length thinnest = known.metric ? measure::centimetres(10) : measure::inches(4);
  for (const Line& line : review.sheet.lines) {
    const auto* log = std::get_if<LogLine>(&line.fact);
    if (log == nullptr || !log->measure) continue;
    const std::string written = in_quotes(scaling::write_log_spec(*log->measure));
    if (beyond(thickest_end(*log->measure), largest)) {
      review.warn(
          line,
          written + ": " + than_words("larger", "the mill takes", known.largest_log.has_value()) +
              across(largest),
          "diameter comes first, then length" + set_words("largest_log", known.largest_log.has_value()));
    }
    if (beyond(log->measure->length, longest)) {
      review.warn(
          line,
          written + ": " + than_words("longer", "the mill takes", known.longest_log.has_value()) +
              measure::spoken_length(longest),
          "feet or metres come after the x" + set_words("longest_log", known.longest_log.has_value()));
    }
    for (const Length end : log->measure->small) {
      if (!beyond(thinnest, end)) continue;
      review.warn(line, written + ": thinner than logs are sawn, " + across(end),
                  "diameter comes first, then length, as 15x12");
      break;
    }
  }
}

/// A log is sawn once. A tag that no line has measured counts as a log without scale: said, for it may be a slip.
void check_tags(Review& review) {
  std::set<std::string> sawn;
  for (const std::string& tag : review.known.sawn_tags) sawn.insert(lower(tag));
  std::map<const Line*, std::vector<std::string>> twice;
  std::map<const Line*, std::vector<std::string>> unmeasured;
  for (const RunFacts& run : review.runs) {
    for (const RunLog& log : run.logs) {
      if (log.tag.empty() || log.log->left_on_mill) continue;
      if (!sawn.insert(lower(log.tag)).second) {
        twice[log.line].push_back(log.tag);
        continue;
      }
      const bool on_deck = review.known.deck.count(log.tag) != 0;
      if (log.measure == nullptr && !on_deck) unmeasured[log.line].push_back(log.tag);
    }
  }
  for (const auto& [line, tags] : twice) {
    review.warn(*line, tags_text(tags) + ": sawn already" + (tags.size() == 1 ? "" : ", all of them"),
                "a log is sawn once; look at its tag, or let it stand if tags began anew");
  }
  for (const auto& [line, tags] : unmeasured) {
    review.warn(*line,
                tags_text(tags) + said(tags.size(), ": no measure of this log is known",
                                       ": no measure of these logs is known"),
                measure_meant(tags.front()) + "; else it counts as a log without scale");
  }
}

/// A log goes on the deck for one job, and is sawn for it, or for another job of the same owner.
void check_owners(Review& review) {
  std::map<std::string, std::string> lies_for = review.known.deck_jobs;
  const auto owner = [&](const std::string& job) {
    const auto known = review.known.owners.find(lower(job));
    return lower(known == review.known.owners.end() ? job : known->second);
  };
  for (const DatedFact& fact : review.facts) {
    const auto* log = std::get_if<LogLine>(&fact.line->fact);
    if (log == nullptr || log->tags.empty()) continue;
    const std::string tag = spread(*log).at(fact.item);
    const std::string& job = fact.context.job;
    std::string& before = lies_for[lower(tag)];
    if (!log->received && !before.empty() && !job.empty() && owner(before) != owner(job)) {
      review.warn(*fact.line, tag + ": came in for job " + before + ", and is sawn under job " + job,
                  "put it under job " + before + ", or give it another tag if it is another log");
    }
    before = log->received || log->left_on_mill ? job : std::string();
  }
}

/// A range without its letters twice may have been meant as one log's tag: 13-22, T13-22.
void check_ranges(Review& review) {
  for (const Line& line : review.sheet.lines) {
    const auto* log = std::get_if<LogLine>(&line.fact);
    if (log == nullptr) continue;
    for (const std::string& written : log->tags) {
      const auto tags = spread_tags(written);
      if (tags.size() < 2 || !starts_with_digit(written.substr(written.rfind('-') + 1))) continue;
      review.note(line,
                  in_quotes(written) + " is taken as a range: " + tags.front() + " to " + tags.back() + ", " +
                      std::to_string(tags.size()) + " logs",
                  "a tag of one log is written without the dash");
    }
  }
}

/// A defect found in sawing comes off besides those the log was received with. The same one written again is a slip.
void check_defects(Review& review) {
  for (const RunFacts& run : review.runs) {
    for (const RunLog& log : run.logs) {
      const auto again =
          std::find_if(log.log->defects.begin(), log.log->defects.end(), [&](const scaling::Defect& defect) {
            return std::find(log.before.begin(), log.before.end(), defect) != log.before.end();
          });
      if (again == log.log->defects.end()) continue;
      const std::string written = "defect " + scaling::write_defect(*again, review.known.metric) +
                                  (again->reason.empty() ? "" : " " + again->reason);
      review.warn(*log.line,
                  in_quotes(written) + ": written down of " + log.tag + " before, and now comes off twice",
                  "leave it out here if it is the same one");
    }
  }
}

/// Check value: the usual kerf, of any saw.
void check_kerf(Review& review) {
  const std::int64_t most = usual(review.known.metric).kerf;
  const int places = review.known.metric ? 2 : 3;
  for (const Line& line : review.sheet.lines) {
    const auto* setup = std::get_if<Setup>(&line.fact);
    if (setup == nullptr) continue;
    for (const auto& kerf : {setup->kerf_mils, setup->edger_mils, setup->third_mils}) {
      if (!kerf || *kerf <= most) continue;
      review.warn(line, "a kerf of " + plain(Decimal{*kerf, places}) + ": wider than usual, " +
                            plain(Decimal{most, places}));
    }
  }
}

}  // namespace kerfbook::sheet
