// check_lumber.cpp -- rules about boards: past the mill's reach, lengths that cannot be, two systems, lines typed
// twice, calipers. What a run or a day tallies against its logs is in check_recovery.cpp.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheet/check_rules.h"
#include "sheet/line_reader.h"
#include "sheet/tally_words.h"
#include "sheet/write.h"

namespace kerfbook::sheet {
namespace {

/// Even feet from 6 to 20, or 0.3 m steps from 1.8 to 6.0 m: what anyone cuts, our own reckoning.
bool is_usual(Length length) {
  const bool inch = length.system == measure::System::inch;
  const std::int64_t step = inch ? 2 * measure::kPerFoot : 3 * measure::kPerMetre / 10;
  const std::int64_t steps = length.count / step;
  return length.count % step == 0 && steps >= (inch ? 3 : 6) && steps <= (inch ? 10 : 20);
}

bool is_new(const std::vector<Length>& known, Length length) {
  if (known.empty() || is_usual(length)) return false;
  return std::find(known.begin(), known.end(), length) == known.end();
}

/// The longest log of the run; nullopt when a log was not measured or there is none.
std::optional<Length> longest_log(const RunFacts& run) {
  if (run.logs.empty() || !run.all_measured()) return std::nullopt;
  Length most = run.logs.front().measure->length;
  for (const RunLog& log : run.logs) {
    if (beyond(log.measure->length, most)) most = log.measure->length;
  }
  return most;
}

/// `16/24`: would it make sense read as 16 ft, 24 pieces? Only when 16 ft has been cut before, or is what logs give.
std::string turned_round(const Boards& boards) {
  const bool whole_feet =
      boards.length.system == measure::System::inch && boards.length.count % measure::kPerFoot == 0;
  const std::int64_t feet = boards.length.count / measure::kPerFoot;
  constexpr std::int64_t kShortest = 4;
  constexpr std::int64_t kLongest = 30;
  if (!whole_feet || boards.pieces < kShortest || boards.pieces > kLongest) return {};
  return "pieces come first; were " + std::to_string(feet) + " pieces of " + std::to_string(boards.pieces) +
         " ft meant, write " + std::to_string(feet) + "/" + std::to_string(boards.pieces);
}

/// 16.4 is read as decimals of a foot, and was perhaps meant as 16 ft 4 in. Nobody cuts a board to less than an eighth of an inch.
std::string feet_and_inches(const Boards& boards) {
  for (const int places : {1, 2}) {
    const std::string text = plain(shown(measure::in_feet(boards.length), places));
    const auto read = measure::read_feet(text);
    if (!read || *read != boards.length) continue;
    const std::size_t point = text.find('.');
    const std::string inches = text.substr(point + 1);
    if (std::stoi(inches) > 11) return {};
    return "if feet and inches were meant, write " + std::to_string(boards.pieces) + "/" +
           text.substr(0, point) + "'" + inches + "\"";
  }
  return {};
}
bool is_too_fine(const Boards& boards) {
  constexpr std::int64_t kEighth = measure::kPerInch / 8;
  return boards.length.system == measure::System::inch && boards.length.count % kEighth != 0;
}

bool is_lineal(const Boards& boards) {
  return std::holds_alternative<LinealTally>(boards.line->fact);
}

}  // namespace

/// Check values: [capacity] largest_board, else the usual one, either side being the thickness.
void check_capacity_of_boards(Review& review) {
  const Known& known = review.known;
  const bool own = known.thickest_board && known.widest_board;
  const Length thickest = known.thickest_board.value_or(usual(known.metric).thickest_board);
  const Length widest = known.widest_board.value_or(usual(known.metric).widest_board);
  for (const RunFacts& run : review.runs) {
    std::set<Size> said;
    for (const Boards& boards : run.boards) {
      const Length thick = std::min(boards.size.thickness, boards.size.width);
      const Length wide = std::max(boards.size.thickness, boards.size.width);
      const bool fits = !beyond(thick, thickest) && !beyond(wide, widest);
      if (fits || boards.sign < 0 || !said.insert(boards.size).second) continue;
      review.warn(*boards.line,
                  in_quotes(measure::write_size(boards.size, known.metric)) + ": " +
                      than_words("larger", "the mill cuts in one pass", own) +
                      measure::write_size({thickest, widest, false}, known.metric),
                  "a size is thickness by width" + set_words("largest_board", own));
    }
  }
}

/// A board is no longer than the longest log of its run; else an unusual length never cut before may be a slip.
void check_lengths(Review& review) {
  std::set<Length> said;
  const Length longest_taken = review.known.longest_log.value_or(usual(review.known.metric).longest_log);
  for (const RunFacts& run : review.runs) {
    const auto longest = longest_log(run);
    for (const Boards& boards : run.boards) {
      if (boards.sign < 0 || is_lineal(boards)) continue;
      if (beyond(boards.length, longest_taken)) {
        review.warn(*boards.line,
                    in_quotes(boards.written) + ": " +
                        than_words("longer", "any log the mill takes", review.known.longest_log.has_value()) +
                        measure::spoken_length(longest_taken),
                    turned_round(boards));
      } else if (is_too_fine(boards) && said.insert(boards.length).second) {
        review.warn(*boards.line, in_quotes(boards.written) + ": a length finer than boards are cut to",
                    feet_and_inches(boards));
      } else if (longest && beyond(boards.length, *longest)) {
        review.warn(*boards.line,
                    in_quotes(boards.written) + ": longer than any log of this run, " +
                        measure::spoken_length(*longest),
                    turned_round(boards));
      } else if (is_new(review.known.lengths, boards.length) && said.insert(boards.length).second) {
        review.warn(*boards.line,
                    in_quotes(boards.written) + ": no board of " + measure::spoken_length(boards.length) +
                        " was tallied before",
                    turned_round(boards));
      }
    }
  }
}

/// In a book without units = "metric" a log's plain numbers are inches and feet; beside boards in millimetres they were
/// most likely centimetres and metres.
void check_log_units(Review& review) {
  if (review.known.metric) return;
  const auto of_metric = [](const Size& size) { return size.thickness.system == measure::System::metric; };
  const auto& sizes = review.known.sizes;
  const bool metric_before = !sizes.empty() && std::all_of(sizes.begin(), sizes.end(), of_metric);
  for (const RunFacts& run : review.runs) {
    const bool metric_here =
        !run.boards.empty() && std::all_of(run.boards.begin(), run.boards.end(),
                                           [&](const Boards& one) { return of_metric(one.size); });
    if (!(run.boards.empty() ? metric_before : metric_here)) continue;
    const auto inches = std::find_if(run.logs.begin(), run.logs.end(), [](const RunLog& log) {
      return log.log->measure && log.log->measure->length.system == measure::System::inch;
    });
    if (inches == run.logs.end()) continue;
    const std::string written = scaling::write_log_spec(*inches->log->measure);
    const std::size_t x = written.find('x');
    review.warn(*inches->line,
                in_quotes(written) + " is read as inches and feet, and the boards are in millimetres",
                "write " + written.substr(0, x) + "cm" + written.substr(x) +
                    "m, or post a mill file with units = \"metric\", by which plain numbers are read so");
  }
}

/// Inches and millimetres within one job: one of them is a slip.
void check_systems(Review& review) {
  std::map<std::string, measure::System> first;
  std::set<std::string> said;
  for (const RunFacts& run : review.runs) {
    for (const Boards& boards : run.boards) {
      const measure::System system = boards.size.thickness.system;
      const auto [at, fresh] = first.try_emplace(lower(run.context.job), system);
      if (fresh || at->second == system || !said.insert(run.context.job).second) continue;
      review.warn(*boards.line, in_quotes(measure::write_size(boards.size, review.known.metric)) +
                                    " is read as " +
                                    (system == measure::System::inch ? "inches" : "millimetres") +
                                    ", the sizes before it as " +
                                    (system == measure::System::inch ? "millimetres" : "inches"));
    }
  }
}

/// The same size with the same pieces and lengths, two or more, twice in a run: typed twice?
void check_repeats(Review& review) {
  std::vector<std::pair<Context, const Tally*>> seen;
  for (const DatedFact& fact : review.facts) {
    const auto* tally = std::get_if<Tally>(&fact.line->fact);
    if (tally == nullptr || fact.item > 0 || tally->items.size() < 2) continue;
    const bool again = std::any_of(seen.begin(), seen.end(), [&](const auto& before) {
      return before.first == fact.context && *before.second == *tally;
    });
    if (again)
      review.warn(*fact.line, "the same line stands above already", "typed twice? take one out if so");
    seen.emplace_back(fact.context, tally);
  }
}

/// A caliper reads within half an inch of the size it is put to.
void check_calipers(Review& review) {
  for (const Line& line : review.sheet.lines) {
    const auto* thick = std::get_if<Thick>(&line.fact);
    if (thick == nullptr) continue;
    const bool metric = is_metric(thick->size);
    const Rational size =
        metric ? measure::in_millimetres(thick->size.thickness) : measure::in_inches(thick->size.thickness);
    const Rational most = metric ? Rational(13) : Rational(1, 2);
    for (const std::int64_t reading : thick->readings) {
      const Rational read(reading, metric ? 100 : 1000);
      const Rational off = read > size ? read - size : size - read;
      if (off <= most) continue;
      review.warn(line, plain(Decimal{reading, metric ? 2 : 3}) + ": far from the thickness of " +
                            measure::write_size(thick->size, review.known.metric));
      break;
    }
  }
}

}  // namespace kerfbook::sheet
