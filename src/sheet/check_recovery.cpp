// check_recovery.cpp -- rules that weigh what was tallied: a run against the logs it came from, a day against the mill.
#include <algorithm>

#include "sheet/check_rules.h"
#include "sheet/line_reader.h"

namespace kerfbook::sheet {
namespace {

// A run tallies more than its logs could give when it is a tenth above the best the mill is known to do, in board
// feet for each cubic foot of log: by default 8.00 (two thirds of the log in boards, counted nominal), so 8.80.
// Log scale is no measure for this: honest finish-size framing stands 38 % above International 1/4-inch and 70 % and
// more above Doyle, and none of it is a slip. Six Alaska mills gave 6.56 to 10.01 bf a cubic foot (USDA FS
// PNW-GTR-544, 2002), so a mill that does better than 8 must be able to say so: Known::best_lrf_hundredths.
const Rational kLeeway(11, 10);
// Under 3 bf a cubic foot, a quarter of the log, a sheet's second side may be missing: a round number of our own.
const Rational kLeast = 3;
constexpr std::size_t kLogsToJudgeLittle = 3;

Rational content_of(const RunFacts& run, const scaling::Taper& taper) {
  Rational cubic_feet;
  for (const RunLog& log : run.logs) {
    cubic_feet = cubic_feet + Rational(scaling::content(*log.measure, taper).cubic_feet, scaling::kPerUnit);
  }
  return cubic_feet;
}

Rational lumber_of_run(const RunFacts& run) {
  Rational bf;
  for (const Boards& boards : run.boards) bf = bf + boards.bf();
  return bf;
}

/// " on 645 bf of log scale (Int. 1/4)"; empty when a log cannot be scaled so.
std::string scale_text(const RunFacts& run, const scaling::Practice& practice) {
  std::int64_t net = 0;
  std::string unit = "bf";
  for (const RunLog& log : run.logs) {
    const auto scale = scaling::scale(*log.measure, log.defects(), practice);
    if (!scale) return {};
    net += scale->net;
    unit = scaling::unit_word(scale->unit);
  }
  const int places = unit == "m3" ? 2 : 0;
  return " on " + rounded_text({net, scaling::kPerUnit}, places) + " " +
         (unit == "m3"    ? "m³"
          : unit == "ft3" ? "ft³"
                          : unit) +
         " of log scale (" + scaling::rule_words(practice.name) + ")";
}

/// 32 as 23, when that is less. 20 is not 02.
std::optional<std::int64_t> digits_swapped(std::int64_t pieces) {
  if (pieces < 10 || pieces > 99 || pieces % 10 == 0) return std::nullopt;
  const std::int64_t other = pieces % 10 * 10 + pieces / 10;
  return other < pieces ? std::optional(other) : std::nullopt;
}

struct Suspect {
  const Boards* boards = nullptr;
  std::int64_t instead = 0;  ///< 0 = no pair of digits explains it
};

/// The item whose swapped digits take most off and still leave a believable run; else the largest item.
Suspect find_suspect(const RunFacts& run, const Rational& lumber, const Rational& most) {
  Suspect largest;
  Suspect swapped;
  Rational largest_bf;
  Rational most_off;
  for (const Boards& boards : run.boards) {
    if (boards.sign < 0) continue;
    if (largest.boards == nullptr || boards.bf() > largest_bf) {
      largest = {&boards, 0};
      largest_bf = boards.bf();
    }
    const auto other = digits_swapped(boards.pieces);
    if (!other) continue;
    const Rational off = boards.bf() * Rational(boards.pieces - *other, boards.pieces);
    if (lumber - off <= most && off > most_off) {
      swapped = {&boards, *other};
      most_off = off;
    }
  }
  return swapped.boards != nullptr ? swapped : largest;
}

std::string run_name(const Context& context) {
  std::string name = context.job.empty() ? "this run" : "job " + context.job;
  if (!context.species.empty()) name += ", " + context.species;
  return name;
}

void too_much(Review& review, const RunFacts& run, const Rational& lumber, const Rational& content,
              const Rational& most) {
  const Suspect suspect = find_suspect(run, lumber, most);
  if (suspect.boards == nullptr) return;
  const std::string size = measure::write_size(suspect.boards->size, review.known.metric);
  std::string instead = "look again at " + size + " " + suspect.boards->written;
  if (suspect.instead > 0) {
    instead += "; " + std::to_string(suspect.instead) + " pieces would be " +
               rounded_text(lumber - suspect.boards->bf() * Rational(suspect.boards->pieces - suspect.instead,
                                                                     suspect.boards->pieces),
                            0) +
               " bf";
  }
  review.warn(*suspect.boards->line,
              run_name(run.context) + " tallies " + rounded_text(lumber, 0) + " bf" +
                  scale_text(run, review.practice) + ": " + rounded_text(lumber / content, 1) +
                  " bf for each cubic foot of its logs, more than usual, " + rounded_text(most / content, 1),
              instead);
}

}  // namespace

/// See kLeeway and kLeast above. No opinion on a run with a log that was not measured.
void check_recovery(Review& review) {
  const Rational best(review.known.best_lrf_hundredths, 100);
  for (const RunFacts& run : review.runs) {
    if (run.logs.empty() || run.boards.empty() || !run.all_measured()) continue;
    const Rational content = content_of(run, review.known.taper);
    const Rational lumber = lumber_of_run(run);
    if (content.is_zero() || lumber <= Rational(0)) continue;
    if (lumber > content * best * kLeeway) too_much(review, run, lumber, content, content * best * kLeeway);
    const bool carried = std::any_of(run.logs.begin(), run.logs.end(),
                                     [](const RunLog& log) { return log.log->left_on_mill; });
    if (lumber < content * kLeast && run.logs.size() >= kLogsToJudgeLittle && !carried) {
      review.warn(*run.boards.front().line,
                  run_name(run.context) + " tallies " + rounded_text(lumber, 0) + " bf" +
                      scale_text(run, review.practice) + ": only " + rounded_text(lumber / content, 1) +
                      " bf for each cubic foot of its logs",
                  "is a side of the tally sheet missing?");
    }
  }
}

/// Check value: [capacity] bf_a_day, else the usual.
void check_day_total(Review& review) {
  Rational total;
  const Boards* largest = nullptr;
  for (const RunFacts& run : review.runs) {
    for (const Boards& boards : run.boards) {
      total = total + boards.bf();
      if (largest == nullptr || boards.bf() > largest->bf()) largest = &boards;
    }
  }
  const Known& known = review.known;
  const std::int64_t most = known.most_bf_a_day.value_or(usual(known.metric).bf_a_day);
  if (largest == nullptr || total <= Rational(most)) return;
  review.warn(*largest->line,
              "the day tallies " + rounded_text(total, 0) + " bf, " +
                  than_words("more", "the mill saws in a day", known.most_bf_a_day.has_value()) +
                  rounded_text(most, 0) + " bf",
              "its largest item is " + measure::write_size(largest->size, known.metric) + " " +
                  largest->written + set_words("bf_a_day", known.most_bf_a_day.has_value()));
}

}  // namespace kerfbook::sheet
