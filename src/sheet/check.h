// check.h -- is what the sheet says plausible? Warnings only: nothing here stops a post.
// Check values marked `common practice, no source` stand in check.cpp beside each rule.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "scaling/practice.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// What the book and the mill file know, handed in. Empty sets mean "nothing known": everything is new then.
struct Known {
  std::vector<std::string> species;
  std::vector<std::string> grades;
  std::vector<std::string> jobs;  ///< without `own`, which is always known
  std::vector<std::string> sites;
  std::vector<std::string> saws;
  std::vector<Size> sizes;
  std::vector<Length> lengths;                                     ///< tallied before; empty = no opinion
  std::map<std::string, std::optional<scaling::LogMeasure>> deck;  ///< logs received or left, not sawn yet
  std::vector<std::string> sawn_tags;  ///< tags already sawn on other days of the last year

  Length largest_diameter = measure::feet(8);                    ///< of a log. common practice, no source
  Length longest_log = {27 * 768 + 384, measure::System::inch};  ///< 27.5 ft. common practice, no source
  Length thickest_board = measure::inches(10);                   ///< common practice, no source
  Length widest_board = measure::inches(12);                     ///< common practice, no source
  std::int64_t kerf_mils_most = 313;      ///< 5/16 in, rounded up to a mil. common practice, no source
  std::int64_t bf_per_day_most = 10'000;  ///< large clear logs, experienced crew. common practice, no source
};

/// In order of place: errors where a tag or reference cannot be resolved (a log tag with no measure anywhere),
/// warnings for the implausible, notes for words that are new ("species 'DG' is new; did you mean DF?").
std::vector<Diagnostic> check(const Sheet& sheet, const Known& known, const scaling::Practice& practice);

}  // namespace kerfbook::sheet
