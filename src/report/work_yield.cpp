// work_yield.cpp -- the worker `yield`: runs against the best pattern of their logs, what a change would be worth on them, and
// the pattern of the commonest log.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/count.h"
#include "report/workers.h"
#include "sheet/raw_log.h"
#include "tuning/few_logs.h"
#include "tuning/mill_model.h"
#include "tuning/run_yield.h"
#include "tuning/what_if.h"

namespace kerfbook::report {
namespace {

using tuning::kFineInch;
constexpr double kBoardFoot = 144;  // cubic inches

/// What is cut alike: a job's targets and list under one set-up.
struct Way {
  std::string job;
  tuning::SetupKerfs kerfs;
  std::vector<measure::Size> sizes;
  std::vector<measure::Length> lengths;
};

struct RunRow {
  std::size_t row = 0;  ///< of the input
  tuning::SawnRun run;
};

template <class T>
void add_new(std::vector<T>& list, const T& one) {
  if (std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
}

class Yield {
 public:
  explicit Yield(const Given& given) : given_(given), mill_(given.mill) {}

  Worked work() {
    read();
    std::vector<tuning::SawnRun> runs;
    std::vector<tuning::SawMill> mills;
    for (const auto& row : rows_) runs.push_back(row.run);
    for (const auto& mill : mills_) mills.push_back(mill.mill);
    const auto found = tuning::find_yield(mills, runs);
    put_runs(found);
    say(found);
    if (found.all.logs > 0) put_changes(found.all.bf);
    if (found.common && found.all.logs > 0) put_pattern(*found.common);
    out_.foot.push_back(
        "The best pattern: layers of one thickness across the log's end, boards side by side in each, "
        "shorter ones out of "
        "the taper; a kerf between any two.");
    return std::move(out_);
  }

 private:
  [[nodiscard]] measure::System system() const {
    return given_.setting.metric_book ? measure::System::metric : measure::System::inch;
  }

  /// A run whose set-up has no kerf, or one of whose logs was not measured or is larger than the model is made for, is
  /// not reckoned with.
  void read() {
    const auto logs = logs_of_runs();
    std::map<RunKey, std::size_t> way_of;
    const auto& runs = given_.rows("runs");
    for (std::size_t r = 0; r < runs.size(); ++r) {
      const RunKey key = run_key(runs, r);
      const auto own = logs.find(key);
      const auto kerfs =
          tuning::kerfs_of(mill_, {runs.number(r, "kerf"), runs.number(r, "edger"), runs.number(r, "over")});
      if (!kerfs || own == logs.end()) {
        ++left_out_;
        continue;
      }
      way_of[key] = way(runs.text(r, "job"), *kerfs);
      RunRow row{r, {way_of[key], own->second, 0, 0}};
      row.run.bf = board_feet_of(runs.number(r, "lumber").value_or(0), given_);
      row.run.lumber_in3 = kBoardFoot * board_feet_of(runs.number(r, "wood").value_or(0), given_);
      rows_.push_back(std::move(row));
    }
    read_sizes(way_of);
    for (const auto& way : ways_)
      mills_.push_back({tuning::saw_mill(mill_, way.job, way.kerfs, way.sizes, way.lengths), {}});
    for (const auto& [row, run] : rows_) {
      auto& logs_of_mill = mills_[run.mill].logs;
      logs_of_mill.insert(logs_of_mill.end(), run.logs.begin(), run.logs.end());
    }
  }

  /// The model's logs are sound, whatever defects were written; none of a run with one that it cannot take.
  [[nodiscard]] std::map<RunKey, std::vector<tuning::SawLog>> logs_of_runs() const {
    std::map<RunKey, std::vector<tuning::SawLog>> logs;
    std::vector<RunKey> unknown;
    const auto& measured = given_.rows("logs");
    for (std::size_t r = 0; r < measured.size(); ++r) {
      const RunKey key = run_key(measured, r);
      const auto spec = book::read_spec(measured.text(r, "spec"), measured.number(r, "metric") == 1);
      const auto log = spec ? tuning::saw_log(spec->measure, mill_.taper) : std::nullopt;
      if (log && std::max(log->small_end, log->large_end) <= tuning::kMostModelled)
        logs[key].push_back(*log);
      else
        unknown.push_back(key);
    }
    for (const auto& key : unknown) logs.erase(key);
    return logs;
  }

  /// What was cut of a run is on the list of its way.
  void read_sizes(const std::map<RunKey, std::size_t>& way_of) {
    const auto& sizes = given_.rows("sizes");
    for (std::size_t r = 0; r < sizes.size(); ++r) {
      const auto at = way_of.find(run_key(sizes, r));
      if (at == way_of.end()) continue;
      const auto its = sizes.number(r, "metric") == 1 ? measure::System::metric : measure::System::inch;
      const auto length = [&](const char* column) {
        return measure::Length{sizes.number(r, column).value_or(0), its};
      };
      add_new(ways_[at->second].sizes, measure::Size{length("thickness"), length("width")});
      add_new(ways_[at->second].lengths, length("length"));
    }
  }

  std::size_t way(const std::string& job, const tuning::SetupKerfs& kerfs) {
    for (std::size_t i = 0; i < ways_.size(); ++i) {
      if (ways_[i].job == job && ways_[i].kerfs == kerfs) return i;
    }
    ways_.push_back({job, kerfs, {}, {}});
    return ways_.size() - 1;
  }

  void put_runs(const tuning::YieldFinding& found) {
    const auto& runs = given_.rows("runs");
    auto& table = out_.tables["yield"];
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const auto& share = found.runs[i];
      const std::size_t r = rows_[i].row;
      table.rows.push_back({runs.number(r, "day").value_or(0), runs.text(r, "job"), runs.text(r, "species"),
                            runs.text(r, "setup"), static_cast<std::int64_t>(share.logs),
                            lumber_of(share.expected.bf(), given_), runs.number(r, "lumber").value_or(0),
                            runs.number(r, "wood").value_or(0),
                            lumber_of(share.expected.lumber_in3 / kBoardFoot, given_),
                            lumber_of(share.expected.log_in3 / kBoardFoot, given_)});
    }
    if (found.over_most > 0) {
      table.notes.push_back(
          "More than 100 % of the best in " + runs_words(found.over_most) +
          ": look for a slip in the tally, logs measured too small, or lumber of other logs.");
    }
    if (left_out_ > 0) {
      table.notes.push_back(
          "Left out: " + runs_words(left_out_) +
          " without all logs measured, with one over 72 in, or without a set-up that has its kerf.");
    }
  }

  static std::string runs_words(std::size_t count) {
    return counted(static_cast<std::int64_t>(count), "run");
  }

  void say(const tuning::YieldFinding& found) {
    out_.finding.push_back(tuning::yield_in_words(found.all));
    if (found.over_most > 0 && found.all.verdict() == tuning::YieldVerdict::told) {
      out_.finding.push_back("Counted in that: " + runs_words(found.over_most) +
                             " over 100 %, where something is measured or tallied wrongly.");
    }
    if (found.all.logs > 0 && found.all.logs < tuning::kFewLogs) {
      out_.finding.push_back(fmt::format(
          "Too few logs to tell: under {} the share, and what a change would be worth, can be chance "
          "(common practice, no source).",
          tuning::kFewLogs));
    }
  }

  /// The changes that are looked at, each made by every mill.
  [[nodiscard]] std::vector<tuning::MillChange> changes() const {
    const bool metric = given_.setting.metric_book;
    const tuning::Fine little = metric ? kFineInch * 10 / 254 : kFineInch / 32;
    const std::string named = metric ? "1 mm" : "1/32 in";
    std::vector<tuning::MillChange> all{{"kerf of both saws " + named + " less", {}},
                                        {"boards cut " + named + " thinner", {}},
                                        {"boards cut " + named + " thinner and narrower", {}}};
    for (const auto& [mill, logs] : mills_) {
      all[0].mills.push_back(tuning::with_less_kerf(mill, little));
      all[1].mills.push_back(tuning::with_less_target(mill, little, 0));
      all[2].mills.push_back(tuning::with_less_target(mill, little, little));
    }
    if (metric) return all;
    for (const char* size : {"1x3", "1x4", "2x4"}) all.push_back(also_cutting(*measure::read_size(size)));
    return all;
  }

  [[nodiscard]] tuning::MillChange also_cutting(const measure::Size& size) const {
    tuning::MillChange change{"also cutting " + measure::write_size(size), {}};
    for (std::size_t m = 0; m < mills_.size(); ++m) {
      const Way& way = ways_[m];
      const bool cut = std::find(way.sizes.begin(), way.sizes.end(), size) != way.sizes.end();
      change.mills.push_back(
          cut ? mills_[m].mill
              : tuning::with_size(mills_[m].mill,
                                  tuning::saw_product(mill_, way.job, way.kerfs, size, way.lengths)));
    }
    return change;
  }

  void put_changes(double bf_of_these) {
    const auto& year = given_.rows("year");
    const double year_bf = board_feet_of(year.size() > 0 ? year.number(0, "lumber").value_or(0) : 0, given_);
    const auto price = price_of_lumber(given_);
    const auto found =
        tuning::what_if(mills_, changes(), {year_bf, year_bf * price.value_or(0), bf_of_these});
    if (found.now.bf_counts <= 0) return;
    auto& table = out_.tables["what_if"];
    const tuning::WhatIf* most = nullptr;
    for (const auto& change : found.changes) {
      if (change.gain_percent > (most == nullptr ? 0 : most->gain_percent)) most = &change;
      table.rows.push_back({change.name, micro(change.gain_percent), lumber_of(change.bf_of_these, given_),
                            lumber_of(change.bf_a_year, given_),
                            price ? micro(change.money_a_year) : Value{}});
    }
    if (most != nullptr) {
      out_.finding.push_back(
          fmt::format("Of the changes looked at, {} is worth most: {:.1f} % more lumber of these logs.",
                      most->name, most->gain_percent));
    }
    table.notes.emplace_back(
        "The model's gain in percent, laid on the lumber that was cut: of these logs, and of the 365 days to "
        "the last day sawn. Worth a year: at the mean price of the lumber invoiced in those days and since, "
        "by the "
        "board foot, the thousand or the m3.");
  }

  void put_pattern(const tuning::CommonLog& common) {
    const auto& mill = mills_[common.mill].mill;
    const auto pattern = tuning::SawingModel(mill).best(common.log);
    auto& table = out_.tables["pattern"];
    render::LogEnd end;
    const auto inches = [](tuning::Fine length) { return static_cast<double>(length) / kFineInch; };
    end.small_end = inches(common.log.small_end);
    end.large_end = inches(common.log.large_end);
    std::map<std::pair<measure::Size, measure::Length>, std::int64_t> pieces;
    for (const auto& board : pattern.boards) {
      const auto& size = mill.products[board.product].nominal;
      ++pieces[{size, board.length}];
      const std::string called = measure::write_size(size, given_.setting.metric_book);
      end.boards.push_back({inches(board.left), inches(board.top), inches(board.across), inches(board.down),
                            called, called + ", " + measure::spoken_length(board.length),
                            !board.whole_length});
    }
    for (const auto& [piece, count] : pieces) {
      const auto lumber = measure::converted(measure::volume(piece.first, piece.second, count), system());
      const auto length = measure::converted(piece.second, system());
      table.rows.push_back(
          {measure::write_size(piece.first, given_.setting.metric_book), length.count, count, lumber.count});
    }
    const auto nominal_length = common.log.length - common.log.trim;
    end.title =
        given_.setting.metric_book
            ? fmt::format("A log of {:.0f} cm x {:.1f} m", end.small_end * 2.54,
                          inches(nominal_length) * 0.0254)
            : fmt::format("A log of {:.0f} in x {:.0f} ft", end.small_end, inches(nominal_length) / 12);
    table.notes.push_back(fmt::format("{}; {} of its kind in this period.", end.title, common.count));
    table.log_end = std::move(end);
  }

  const Given& given_;
  const book::Mill& mill_;
  std::vector<Way> ways_;
  std::vector<tuning::MillLogs> mills_;  ///< one for each way
  std::vector<RunRow> rows_;
  std::size_t left_out_ = 0;
  Worked out_;
};

Worked work(const Given& given) {
  return Yield(given).work();
}

}  // namespace

Worker yield_of_logs() {
  return {.name = "yield",
          .reads = {{"runs",
                     {"day", "shift", "run", "job", "species", "setup", "lumber", "wood", "kerf", "edger",
                      "over"}},
                    {"logs", {"day", "shift", "run", "spec", "metric"}},
                    {"sizes", {"day", "shift", "run", "thickness", "width", "length", "metric"}},
                    {"year", {"lumber"}},
                    lumber_price_input()},
          .gives = {{"yield",
                     {"day", "job", "species", "setup", "logs", "best_bf", "lumber_bf", "wood", "best_wood",
                      "log_volume"}},
                    {"what_if", {"change", "gain_percent", "gain_bf", "bf_a_year", "money_a_year"}},
                    {"pattern", {"board", "length_ft", "pieces", "bf"}}},
          .work = work};
}

}  // namespace kerfbook::report
