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

/// What is expected of a mill whose file says nothing of it: round numbers of our own, which a warning calls usual.
struct Usual {
  Length largest_log;  ///< diameter
  Length longest_log;
  Length thickest_board;
  Length widest_board;
  std::int64_t bf_a_day;
  std::int64_t kerf;  ///< thousandths of an inch, in a metric book hundredths of a millimetre
};
Usual usual(bool metric);

/// What the book and the mill file know, handed in. Empty sets mean "nothing known": no opinion then.
struct Known {
  bool metric = false;  ///< the book's units: what kerf and lengths in messages are counted in
  std::vector<std::string> species;
  std::vector<std::string> grades;
  std::vector<std::string> jobs;  ///< without `own`, which is always known
  std::vector<std::string> sites;
  std::vector<std::string> saws;
  std::vector<std::string> hands;
  std::vector<std::string> causes;        ///< of stops
  std::vector<std::string> tooth_causes;  ///< of work on teeth
  std::vector<std::string> buyers;
  std::vector<std::string> charges;  ///< names of charges
  std::vector<std::string> setups;
  std::vector<Size> sizes;
  std::vector<Length> lengths;  ///< tallied before
  std::map<std::string, std::optional<KnownLog>>
      deck;  ///< logs received or left, not sawn yet; nothing = not measured
  std::map<std::string, std::string>
      deck_jobs;                              ///< by tag in small letters: the job a log lies on the deck for
  std::map<std::string, std::string> owners;  ///< by job in small letters: whose its lumber is, in a word
  std::optional<Day> today;                   ///< when the sheet is looked at
  std::optional<Day> newest_day;              ///< of the sheets posted, but this one
  bool has_neighbours = false;                ///< there is another sheet within two months of this one
  std::vector<std::string> sawn_tags;         ///< tags already sawn on other days of the last year

  // What this mill takes, from [capacity] of its mill file; of what is not said there usual() is expected.
  std::optional<Length> largest_log;  ///< diameter
  std::optional<Length> longest_log;
  std::optional<Length> thickest_board;
  std::optional<Length> widest_board;
  std::optional<std::int64_t> most_bf_a_day;

  /// What one unit of a large currency (dollar, pound, euro) is in the book's money: by it the prices believed grow.
  std::int64_t money_scale = 1;
  std::int64_t minor_units = 100;  ///< in a unit of money

  scaling::Taper taper;  ///< for the content of logs of which only the small end was measured
  /// The most board feet a run of this mill is known to have given for each cubic foot of its logs, in hundredths.
  /// 8 is a round number of our own, two thirds of the log in boards counted nominal; more where the book has it.
  std::int64_t best_lrf_hundredths = 800;
};

/// In order of place: warnings for the implausible, notes for words that look like a slip for a known one.
/// `practice` is the house log rule, named where a run's scale is quoted.
std::vector<Diagnostic> check(const Sheet& sheet, const Known& known, const scaling::Practice& practice);

}  // namespace kerfbook::sheet
