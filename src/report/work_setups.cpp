// work_setups.cpp -- the worker `setups-compared`: two set-ups like for like. What is worked out stands in
// tuning/like_for_like.h; here the book's rows become runs, and what was found a sentence and tables.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/count.h"
#include "base/text.h"
#include "report/column_kinds.h"
#include "report/workers.h"
#include "tuning/like_for_like.h"
#include "tuning/numbers.h"
#include "tuning/tooth_lives.h"

namespace kerfbook::report {
namespace {

using tuning::LikeForLike;
using tuning::RunSawn;
using tuning::Verdict;

struct DatedRun {
  std::int64_t day = 0;
  std::string setup;
  RunSawn sawn;
  bool measured = true;  ///< every log has a diameter, a length and a scale in board feet
};

double inches(std::int64_t count, bool metric) {
  return tuning::as_double(
      measure::in_inches({count, metric ? measure::System::metric : measure::System::inch}));
}

class Compared {
 public:
  explicit Compared(const Given& given) : given_(given) {
    take_runs();
    take_logs();
    take_teeth();
    choose();
  }

  Worked work() {
    Worked out;
    if (earlier_.empty()) {
      out.finding.emplace_back("There are no two set-ups to compare: a sheet's setup line begins a new one.");
      return out;
    }
    const LikeForLike found = tuning::compare_runs(runs_of(earlier_), runs_of(later_));
    out.finding = finding(found);
    fill_measures(found, out.tables["measures"]);
    fill_curve(found, out.tables["curve"]);
    fill_runs(out.tables["runs"]);
    fill_thicknesses(out.tables["thicknesses"]);
    return out;
  }

 private:
  void take_runs() {
    const auto& rows = given_.rows("runs");
    for (std::size_t r = 0; r < rows.size(); ++r) {
      DatedRun run;
      run.day = *rows.number(r, "day");
      run.setup = rows.text(r, "setup");
      run.sawn.lumber = board_feet_of(*rows.number(r, "lumber"), given_);
      run.sawn.wood = cubic_feet_of(*rows.number(r, "wood"), given_);
      at_.emplace(run_key(rows, r), runs_.size());
      runs_.push_back(std::move(run));
    }
  }

  void take_logs() {
    const auto& rows = given_.rows("logs");
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const auto at = at_.find(run_key(rows, r));
      if (at == at_.end()) continue;
      DatedRun& run = runs_[at->second];
      const bool metric = rows.number(r, "metric").value_or(0) != 0;
      const auto diameter = rows.number(r, "diameter");
      const auto length = rows.number(r, "length");
      const auto scale = scale_bf(rows.text(r, "scale_unit"), rows.number(r, "net"));
      const auto gross = scale_bf(rows.text(r, "scale_unit"), rows.number(r, "gross"));
      if (!diameter || !length || !scale) {
        run.measured = false;
        continue;
      }
      run.sawn.logs.push_back({inches(*diameter, metric), inches(*length, metric) / 12, *scale,
                               static_cast<double>(rows.number(r, "content").value_or(0)) / 1e6,
                               gross.value_or(*scale)});
    }
  }

  /// A scale in another unit is counted as the lumber it would be.
  static std::optional<double> scale_bf(const std::string& unit, std::optional<std::int64_t> net) {
    if (!net) return std::nullopt;
    const auto factor = per_board_foot(unit, false);
    if (!factor || factor->is_zero()) return std::nullopt;
    return static_cast<double>(*net) / 1e6 * static_cast<double>(factor->den()) /
           static_cast<double>(factor->num());
  }

  /// Day and shift of the sheets on which the head saw got another edge.
  [[nodiscard]] std::set<std::pair<std::int64_t, std::int64_t>> sharpened() const {
    std::set<std::pair<std::int64_t, std::int64_t>> out;
    const auto& rows = given_.rows("work");
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (tuning::renews_edge(rows.text(r, "action")))
        out.emplace(*rows.number(r, "day"), *rows.number(r, "shift"));
    }
    return out;
  }

  /// Lumber since the head saw's edge was renewed, by whole sheets: up to the middle of the run's own.
  void take_teeth() {
    const auto& rows = given_.rows("sheets");
    const auto edges = sharpened();
    std::optional<double> since;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const double lumber = board_feet_of(rows.number(r, "lumber").value_or(0), given_);
      const auto day = *rows.number(r, "day");
      const auto shift = *rows.number(r, "shift");
      if (since) {
        for (auto at = at_.lower_bound({day, shift, 0}); at != at_.end(); ++at) {
          if (std::get<0>(at->first) != day || std::get<1>(at->first) != shift) break;
          runs_[at->second].sawn.since_teeth = *since + lumber / 2;
        }
        *since += lumber;
      }
      if (edges.contains({day, shift})) since = 0;
    }
  }

  /// The two that were asked for; else the newest that was sawn with, against the one before it.
  void choose() {
    std::erase_if(runs_, [](const DatedRun& run) { return !run.measured; });
    std::vector<std::string> met;  // in the order in which each was last sawn with
    for (const auto& run : runs_) {
      std::erase(met, run.setup);
      met.push_back(run.setup);
    }
    std::string later = given_.ask.setup;
    if (later.empty() && !met.empty()) later = met.back();
    std::string earlier = given_.ask.against;
    if (earlier.empty()) {
      const auto at = std::find(met.begin(), met.end(), later);
      if (at != met.end() && at != met.begin()) earlier = *(at - 1);
    }
    if (later.empty() || earlier.empty() || later == earlier) return;
    later_ = later;
    earlier_ = earlier;
  }

  [[nodiscard]] std::vector<RunSawn> runs_of(const std::string& setup) const {
    std::vector<RunSawn> out;
    for (const auto& run : runs_) {
      if (run.setup == setup) out.push_back(run.sawn);
    }
    return out;
  }

  // ---- what is said ------------------------------------------------------------------------------------------
  [[nodiscard]] std::string signed_words(double number, int places) const {
    return (number < 0 ? "" : "+") + words_of(number, places, given_);
  }

  [[nodiscard]] std::vector<std::string> finding(const LikeForLike& found) const {
    std::vector<std::string> out{verdict_words(found)};
    std::vector<std::string> moved;
    if (found.sizes_differ)
      moved.emplace_back(
          "a board foot does not hold the same wood in both, so their sizes or targets differ");
    if (found.teeth_differ) moved.emplace_back("one was sawn on much duller teeth");
    if (!moved.empty()) out.push_back("What differs beside the set-up: " + join(moved, "; ") + ".");
    return out;
  }

  [[nodiscard]] std::string verdict_words(const LikeForLike& found) const {
    const std::string pair = fmt::format("set-up {} against {}", later_, earlier_);
    const std::string logs = fmt::format("({} logs and {})", found.after.logs, found.before.logs);
    switch (found.verdict) {
      case Verdict::too_few_logs:
        return fmt::format(
            "Too few logs to tell {} {}: under {} in either anything can be chance (common practice, no "
            "source); {} more "
            "are wanted.",
            pair, logs, tuning::kFewLogs, found.more_logs.value_or(0));
      case Verdict::cannot_tell:
        return fmt::format(
            "The record cannot tell {} {} apart.{}", pair, logs,
            found.more_logs
                ? " About " + counted(static_cast<std::int64_t>(*found.more_logs), "log") + " more would."
                : "");
      case Verdict::better:
        return fmt::format("The mill cuts better: {} gets {} % more lumber out of like logs {}.", pair,
                           words_of(found.lumber->percent, 1, given_), logs);
      case Verdict::worse:
        return fmt::format("The mill cuts worse: {} gets {} % less lumber out of like logs {}.", pair,
                           words_of(-found.lumber->percent, 1, given_), logs);
      case Verdict::counted_only:
        return fmt::format(
            "The mill does not cut better: {} counts {} % more board feet and cuts {} % less wood out of "
            "like logs {}.",
            pair, words_of(found.lumber->percent, 1, given_), words_of(-found.wood->percent, 1, given_),
            logs);
    }
    return {};
  }

  // ---- what is shown -----------------------------------------------------------------------------------------
  static void add_measure(WorkedTable& table, const char* measure, const char* unit,
                          std::optional<double> earlier, std::optional<double> later) {
    std::optional<double> change;
    if (earlier && later) change = *later - *earlier;
    table.rows.push_back(
        {std::string(measure), std::string(unit), micro(earlier), micro(later), micro(change)});
  }

  void fill_measures(const LikeForLike& found, WorkedTable& table) const {
    const auto& a = found.before;
    const auto& b = found.after;
    add_measure(table, "Overrun, as it is", "%", a.crude.overrun, b.crude.overrun);
    add_measure(table, "Overrun, one mix of diameters", "%", a.one_mix.overrun, b.one_mix.overrun);
    add_measure(table, "Overrun before defects, as it is", "%", a.crude.gross_overrun, b.crude.gross_overrun);
    add_measure(table, "Overrun before defects, one mix", "%", a.one_mix.gross_overrun,
                b.one_mix.gross_overrun);
    add_measure(table, "LRF, as it is", "bf/ft3", a.crude.lrf, b.crude.lrf);
    add_measure(table, "LRF, one mix", "bf/ft3", a.one_mix.lrf, b.one_mix.lrf);
    add_measure(table, "Recovery, as it is", "%", a.crude.recovery, b.crude.recovery);
    add_measure(table, "Recovery, one mix", "%", a.one_mix.recovery, b.one_mix.recovery);
    add_measure(table, "Mean diameter", "in", a.mean_diameter, b.mean_diameter);
    add_measure(table, "Counted in a cubic foot of lumber", "bf", a.bf_a_foot3, b.bf_a_foot3);
    add_measure(table, "Lumber since the head saw's teeth", "bf", a.since_teeth, b.since_teeth);
    const auto side_words = [&](const std::string& setup, const tuning::Side& side) {
      return fmt::format("set-up {}, {} in {}, {}", setup,
                         counted(static_cast<std::int64_t>(side.logs), "log"),
                         counted(static_cast<std::int64_t>(side.runs), "run"), days_of(setup));
    };
    table.notes.push_back("Earlier: " + side_words(earlier_, a) + ". Later: " + side_words(later_, b) + ".");
    for (const auto* side : {&a, &b}) {
      if (side->left_out == 0) continue;
      table.notes.push_back(fmt::format(
          "{} of set-up {} in a class of diameters that the other has none of {} left out of one mix.",
          counted(static_cast<std::int64_t>(side->left_out), "log"), side == &a ? earlier_ : later_,
          side->left_out == 1 ? "is" : "are"));
    }
  }

  [[nodiscard]] std::string days_of(const std::string& setup) const {
    std::optional<std::int64_t> first;
    std::int64_t last = 0;
    for (const auto& run : runs_) {
      if (run.setup != setup) continue;
      if (!first) first = run.day;
      last = run.day;
    }
    if (!first) return "no run";
    const std::string newest = day_words(last, given_);
    return *first == last ? newest : day_words(*first, given_) + " to " + newest;
  }

  static void fill_curve(const LikeForLike& found, WorkedTable& table) {
    const auto add = [&](const char* what, const std::optional<tuning::Gain>& gain) {
      if (gain)
        table.rows.push_back(
            {std::string(what), micro(gain->percent), micro(gain->lower), micro(gain->upper)});
    };
    add("Board feet counted", found.lumber);
    add("Wood really cut", found.wood);
    if (found.lumber) table.notes.push_back("Verdict: " + tuning::in_words(found.verdict) + ".");
  }

  void fill_runs(WorkedTable& table) const {
    for (const auto& run : runs_) {
      if (run.setup != earlier_ && run.setup != later_) continue;
      double content = 0;
      double diameters = 0;
      for (const auto& log : run.sawn.logs) {
        content += log.content;
        diameters += log.diameter;
      }
      const auto logs = static_cast<double>(run.sawn.logs.size());
      const Value recovery = content > 0 ? micro(100 * run.sawn.wood / content) : Value();
      const bool first = run.setup == earlier_;
      table.rows.push_back({run.day, run.setup, static_cast<std::int64_t>(run.sawn.logs.size()),
                            logs > 0 ? micro(diameters / logs) : Value(), first ? recovery : Value(),
                            first ? Value() : recovery});
    }
  }

  void fill_thicknesses(WorkedTable& table) const {
    const auto& rows = given_.rows("boards");
    std::map<std::string, double> whole;
    std::vector<std::string> order;
    std::map<std::string, std::map<std::string, double>> parts;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const std::string setup = rows.text(r, "setup");
      if (setup != earlier_ && setup != later_) continue;
      const auto lumber = static_cast<double>(rows.number(r, "lumber").value_or(0));
      const bool metric = rows.number(r, "metric").value_or(0) != 0;
      const std::string words = words_of_thickness(rows.number(r, "thickness").value_or(0), metric);
      if (std::find(order.begin(), order.end(), words) == order.end()) order.push_back(words);
      parts[words][setup] += lumber;
      whole[setup] += lumber;
    }
    for (const auto& words : order) {
      const auto share = [&](const std::string& setup) {
        return whole[setup] > 0 ? micro(100 * parts[words][setup] / whole[setup]) : Value();
      };
      table.rows.push_back({words, share(earlier_), share(later_)});
    }
  }

  static std::string words_of_thickness(std::int64_t count, bool metric) {
    const Rational shown_in(count, metric ? 10 : 64);
    return shortest(shown(shown_in, 3)) + (metric ? " mm" : " in");
  }

  const Given& given_;
  std::vector<DatedRun> runs_;
  std::map<RunKey, std::size_t> at_;
  std::string earlier_;
  std::string later_;
};

Worked work(const Given& given) {
  return Compared(given).work();
}

}  // namespace

Worker setups_compared() {
  return {.name = "setups-compared",
          .reads = {{"runs", {"day", "shift", "run", "setup", "lumber", "wood"}},
                    {"logs",
                     {"day", "shift", "run", "diameter", "length", "metric", "net", "gross", "scale_unit",
                      "content"}},
                    {"sheets", {"day", "shift", "lumber"}},
                    {"work", {"day", "shift", "action"}},
                    {"boards", {"setup", "thickness", "metric", "lumber"}}},
          .gives = {{"measures", {"measure", "unit", "earlier", "later", "change"}},
                    {"curve", {"what", "gain_percent", "least_percent", "most_percent"}},
                    {"runs", {"day", "setup", "logs", "mean_diameter", "earlier_percent", "later_percent"}},
                    {"thicknesses", {"thickness", "earlier_percent", "later_percent"}}},
          .work = work};
}

}  // namespace kerfbook::report
