// check_rules.h -- what the rules of check.h share: the sheet with its context, gathered into runs. Internal.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/check.h"
#include "sheet/facts.h"

namespace kerfbook::sheet {

/// One tally item as a rule weighs it. `sign` is -1 for less and resaw.
struct Boards {
  const Line* line = nullptr;
  Size size;
  Length length;
  std::int64_t pieces = 0;
  int sign = 1;
  std::string written;  ///< as in the sheet: `32/16`
  [[nodiscard]] Rational bf() const;
};

struct RunLog {
  const Line* line = nullptr;
  const LogLine* log = nullptr;
  std::string tag;                               ///< empty = none
  const scaling::LogMeasure* measure = nullptr;  ///< its own, or the deck's; null = not measured
  std::vector<scaling::Defect> before;           ///< written down on earlier lines
  [[nodiscard]] std::vector<scaling::Defect> defects() const;  ///< those and the line's own
};

/// Logs in and boards out of one site, job, species and set-up.
struct RunFacts {
  Context context;  ///< of its first fact; grade and bundle mean nothing here
  std::vector<RunLog> logs;
  std::vector<Boards> boards;
  [[nodiscard]] bool all_measured() const;
};

/// What every rule is given, and where it says what it found.
class Review {
 public:
  Review(const Sheet& sheet, const Known& known, const scaling::Practice& practice);

  const Sheet& sheet;
  const Known& known;
  const scaling::Practice& practice;
  std::vector<DatedFact> facts;
  std::vector<RunFacts> runs;
  std::vector<Diagnostic> found;

  void warn(const Line& line, std::string what, std::string instead = {});
  void note(const Line& line, std::string what, std::string instead = {});

 private:
  void gather_boards(const DatedFact& fact);
  void gather_log(const DatedFact& fact);
  RunFacts& run_of(const Context& context);

  std::map<std::string, KnownLog>
      received_;  ///< `in` lines of this sheet, and the deck; by tag in small letters
};

/// A value for the eye: 989.33 as 989, 9.42 as 9.4.
std::string rounded_text(const Rational& value, int places);

/// "larger than the mill takes, " of a limit of its own, "larger than usual, " of ours.
std::string than_words(const char* more, const char* the_mill, bool of_mill);
/// What a mill that does such things sets in its file, as the end of an advice; empty when it has.
std::string set_words(const char* key, bool of_mill);

// check_logs.cpp
void check_capacity_of_logs(Review& review);
void check_tags(Review& review);
void check_owners(Review& review);
void check_ranges(Review& review);
void check_defects(Review& review);
void check_kerf(Review& review);

// check_lumber.cpp
void check_capacity_of_boards(Review& review);
void check_lengths(Review& review);
void check_systems(Review& review);
void check_log_units(Review& review);
void check_repeats(Review& review);
void check_recovery(Review& review);
void check_day_total(Review& review);
void check_calipers(Review& review);

// check_jobs.cpp
void check_jobs(Review& review);

// check_times.cpp
void check_day(Review& review);
void check_crew(Review& review);
void check_sawing_times(Review& review);
void check_stops(Review& review);
void check_charged_stops(Review& review);
void check_stops_by_length(Review& review);
void check_meter(Review& review);

// check_prices.cpp
void check_prices(Review& review);

// check_words.cpp
void check_words(Review& review);

}  // namespace kerfbook::sheet
