// like_for_like.h -- two set-ups or two stretches of the record compared: as they are (crude), over one mix of diameters, and
// against the mill's own yield curve of the earlier one, with an interval and a verdict. Statistics are doubles: nothing
// here is stored or billed.
//
// Overrun alone misleads: it moves with the diameters, the rule, nominal sizes and defects. So board feet and the wood really
// cut are both held against the curve: where more board feet are counted and less wood is cut, the sizes changed and not
// the sawing (common practice, no source).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tuning/few_logs.h"

namespace kerfbook::tuning {

struct LogSawn {
  double diameter = 0;  ///< small end, inches
  double length = 0;    ///< feet
  double scale = 0;     ///< net, by the rule asked for; bf
  double content = 0;   ///< ft3
  double gross = 0;     ///< scale before defects; bf
};

/// A run: logs in, boards out; which board came of which log is not known.
struct RunSawn {
  std::vector<LogSawn> logs;
  double lumber = 0;                  ///< nominal, bf
  double wood = 0;                    ///< green, as really cut, ft3
  std::optional<double> since_teeth;  ///< bf sawn since work on the head saw's teeth, at the run's middle
};

/// Total over total; nullopt over nothing.
struct Measures {
  std::optional<double> overrun;  ///< percent, over net scale
  std::optional<double>
      gross_overrun;          ///< percent, over scale before defects, which are the logs' and not the saw's
  std::optional<double> lrf;  ///< bf per ft3 of log
  std::optional<double> recovery;  ///< percent of the log's volume
};

struct Side {
  std::size_t runs = 0;
  std::size_t logs = 0;
  double mean_diameter = 0;
  Measures crude;
  /// Over one mix: what the boards of each class of both sides together would have been counted, had this side sawn them all.
  /// A run's boards are shared out to its logs by D x D x L. Classes that one side lacks are left out.
  Measures one_mix;
  std::size_t left_out = 0;           ///< logs of classes the other side lacks
  std::optional<double> since_teeth;  ///< mean over runs by their board feet
  double bf_a_foot3 = 0;  ///< board feet counted per cubic foot of wood: how full the sizes are cut
};

/// Against the curve: 100 (got / expected - 1), with limits.
struct Gain {
  double percent = 0;
  double lower = 0;
  double upper = 0;
  double error_before =
      0;  ///< standard errors of the logarithm of got / expected, by resampling either side's runs
  double error_after = 0;
  double reach = 0;  ///< Student's factor
};

enum class Verdict {
  too_few_logs,
  cannot_tell,
  better,
  worse,
  counted_only,  ///< more board feet are counted, but less wood is cut
};

struct LikeForLike {
  Side before;
  Side after;
  int terms = 0;               ///< of the curve; 0 = none could be fitted
  std::optional<Gain> lumber;  ///< board feet against the curve; nothing with fewer than two runs a side
  std::optional<Gain> wood;    ///< wood really cut against its own curve
  Verdict verdict = Verdict::too_few_logs;
  /// Logs more of the later one that would tell, were the difference what it looks like now (at least 2 in 100), with the
  /// scatter seen; nothing where even very many would not, where there are
  /// as many already, or the verdict is in. Of too few logs: what lacks to kFewLogs.
  std::optional<std::size_t> more_logs;
  bool teeth_differ = false;  ///< one side was sawn on teeth half as dull again as the other's
  bool sizes_differ = false;  ///< board feet per wood differ by 2 in 100 or more: cut lists or targets differ
};

constexpr int kResamples = 400;
constexpr unsigned kSeed = 1;  ///< of the resampling, always the same: the same record gives the same limits

/// On simulated books of 25 runs a side, logs scattering by 10 % and days by 3 %, 500 of each: nothing changed, a change is called
/// in 3.0 in 100; only larger, only smaller logs 2.6 and 2.8; teeth wearing in both 3.2; 5 % more of each log is found in
/// 89 of 100, 3 % less in 50 (tests/tuning/simulated_books_test.cpp with KERFBOOK_BOOKS=500).
/// Runs without logs or lumber are left out. `class_width` in inches: 12 to under 15, and so on, for 3.
LikeForLike compare_runs(std::vector<RunSawn> before, std::vector<RunSawn> after, double class_width = 3,
                         double confidence = 0.95);

/// "cutting better", "cutting worse", "cannot tell", ... as a column has it.
std::string in_words(Verdict verdict);

}  // namespace kerfbook::tuning
