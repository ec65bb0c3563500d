// check.h -- is what the sheet says plausible? Warnings and notes only: nothing here stops a post.
// Each rule with its check value stands in check_logs.cpp, check_lumber.cpp, check_times.cpp or check_words.cpp.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "scaling/practice.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// A log as it lies on the deck.
struct KnownLog {
  scaling::LogMeasure measure;
  std::vector<scaling::Defect> defects;
};

/// What the book and the mill file know, handed in. Empty sets mean "nothing known": no opinion then.
struct Known {
  bool metric = false;  ///< the book's units: what kerf and lengths in messages are counted in
  std::vector<std::string> species;
  std::vector<std::string> grades;
  std::vector<std::string> jobs;  ///< without `own`, which is always known
  std::vector<std::string> sites;
  std::vector<std::string> saws;
  std::vector<Size> sizes;
  std::vector<Length> lengths;  ///< tallied before
  std::map<std::string, std::optional<KnownLog>>
      deck;                            ///< logs received or left, not sawn yet; nothing = not measured
  std::vector<std::string> sawn_tags;  ///< tags already sawn on other days of the last year

  Length largest_diameter = measure::feet(8);  ///< of a log. common practice, no source
  Length longest_log = {27 * measure::kPerFoot + measure::kPerFoot / 2,
                        measure::System::inch};  ///< 27.5 ft. common practice, no source
  Length thickest_board = measure::inches(10);   ///< common practice, no source
  Length widest_board = measure::inches(12);     ///< common practice, no source
  std::int64_t kerf_mils_most = 313;             ///< 5/16 in, rounded up to a mil. common practice, no source
  std::int64_t bf_per_day_most = 10'000;  ///< large clear logs, experienced crew. common practice, no source

  scaling::Taper taper;  ///< for the content of logs of which only the small end was measured
  /// The most board feet a run of this mill is known to have given for each cubic foot of its logs, in hundredths.
  /// 8.00 is two thirds of the log in boards counted nominal (common practice, no source); more where the book has it.
  std::int64_t best_lrf_hundredths = 800;
};

/// In order of place: warnings for the implausible, notes for words that look like a slip for a known one.
/// `practice` is the house log rule, named where a run's scale is quoted.
std::vector<Diagnostic> check(const Sheet& sheet, const Known& known, const scaling::Practice& practice);

}  // namespace kerfbook::sheet
