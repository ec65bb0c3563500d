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

std::string said(std::size_t count, const char* one, const char* many) {
  return count == 1 ? one : many;
}

}  // namespace

/// Check values: Known::largest_diameter and longest_log.
void check_capacity_of_logs(Review& review) {
  for (const Line& line : review.sheet.lines) {
    const auto* log = std::get_if<LogLine>(&line.fact);
    if (log == nullptr || !log->measure) continue;
    const Length most = thickest_end(*log->measure);
    if (beyond(most, review.known.largest_diameter)) {
      review.warn(line,
                  in_quotes(scaling::write_log_spec(*log->measure)) + ": larger than the mill takes, " +
                      measure::write_inches(review.known.largest_diameter) + " in",
                  "diameter comes first, then length");
    }
    if (beyond(log->measure->length, review.known.longest_log)) {
      review.warn(line, in_quotes(scaling::write_log_spec(*log->measure)) + ": longer than the mill takes, " +
                            measure::spoken_length(review.known.longest_log));
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
                "write it as log " + tags.front() + " 15x12; else it counts as a log without scale");
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

/// Check value: Known::kerf_mils_most, in a metric book brought to hundredths of a millimetre.
void check_kerf(Review& review) {
  const std::int64_t mils = review.known.kerf_mils_most;
  const std::int64_t most = review.known.metric ? Rational(Wide{mils} * 254, 100).rounded(0) : mils;
  const int places = review.known.metric ? 2 : 3;
  for (const Line& line : review.sheet.lines) {
    const auto* setup = std::get_if<Setup>(&line.fact);
    if (setup == nullptr || !setup->kerf_mils || *setup->kerf_mils <= most) continue;
    review.warn(line, "a kerf of " + plain(Decimal{*setup->kerf_mils, places}) +
                          ": wider than such saws cut, " + plain(Decimal{most, places}));
  }
}

}  // namespace kerfbook::sheet
