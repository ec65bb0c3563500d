// work_yield.cpp -- the worker `yield`: runs against the best pattern of their logs, what a change would be worth on them, and
// the pattern of the commonest log.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "report/workers.h"
#include "tuning/mill_model.h"
#include "tuning/run_yield.h"
#include "tuning/what_if.h"

namespace kerfbook::report {
namespace {

using tuning::kFineInch;
using Key = std::tuple<std::int64_t, std::int64_t, std::int64_t>;  // day, shift, run

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

Key key_of(const InputRows& rows, std::size_t r) {
  return {rows.number(r, "day").value_or(0), rows.number(r, "shift").value_or(0),
          rows.number(r, "run").value_or(0)};
}

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
    for (const auto& row : rows_) runs.push_back(row.run);
    for (const auto& way : ways_)
      mills_.push_back(tuning::saw_mill(mill_, way.job, way.kerfs, way.sizes, way.lengths));
    const auto found = tuning::find_yield(mills_, runs);
    put_runs(found);
    out_.finding.push_back(tuning::yield_in_words(found.all));
    if (found.all.logs > 0) put_changes();
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
  /// Counts of the book's volume.
  [[nodiscard]] std::int64_t volume(double cubic_inches) const {
    const double per_inch = system() == measure::System::metric ? 254 : 64;
    return std::llround(cubic_inches * per_inch * per_inch * per_inch);
  }
  [[nodiscard]] std::int64_t nominal(std::int64_t counts) const {
    return measure::converted(measure::Volume{counts, measure::System::inch}, system()).count;
  }
  [[nodiscard]] double cubic_inches(std::int64_t counts) const {
    const double per_inch = system() == measure::System::metric ? 254 : 64;
    return static_cast<double>(counts) / (per_inch * per_inch * per_inch);
  }

  /// A run whose set-up has no kerf, or one of whose logs was not measured or is larger than the model is made for, is
  /// not reckoned with.
  void read() {
    std::map<Key, std::vector<tuning::SawLog>> logs;
    std::map<Key, bool> unknown;
    const auto& measured = given_.rows("logs");
    for (std::size_t r = 0; r < measured.size(); ++r) {
      std::string written = measured.text(r, "spec");
      written = written.substr(0, written.find(" defect"));  // the model's logs are sound
      const auto spec = scaling::read_log_spec(written, measured.number(r, "metric") == 1);
      const auto log = spec ? tuning::saw_log(*spec, mill_.taper) : std::nullopt;
      const bool reckoned = log && std::max(log->small_end, log->large_end) <= tuning::kMostModelled;
      if (reckoned) logs[key_of(measured, r)].push_back(*log);
      if (!reckoned) unknown[key_of(measured, r)] = true;
    }
    std::map<Key, std::size_t> way_of;
    const auto& runs = given_.rows("runs");
    for (std::size_t r = 0; r < runs.size(); ++r) {
      const Key key = key_of(runs, r);
      const auto kerfs = tuning::kerfs_of(mill_, runs.number(r, "kerf"), runs.number(r, "over"));
      if (!kerfs || unknown[key] || logs[key].empty()) {
        ++left_out_;
        continue;
      }
      way_of[key] = way(runs.text(r, "job"), *kerfs);
      RunRow row{r, {way_of[key], logs[key], 0, 0}};
      row.run.bf = cubic_inches(runs.number(r, "lumber").value_or(0)) / 144;
      row.run.lumber_in3 = cubic_inches(runs.number(r, "wood").value_or(0));
      rows_.push_back(std::move(row));
    }
    const auto& sizes = given_.rows("sizes");
    for (std::size_t r = 0; r < sizes.size(); ++r) {
      const auto at = way_of.find(key_of(sizes, r));
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
      const auto& known = ways_[i].kerfs;
      if (ways_[i].job == job && known.head == kerfs.head && known.edger == kerfs.edger &&
          known.over == kerfs.over)
        return i;
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
                            nominal(share.expected.bf_counts), runs.number(r, "lumber").value_or(0),
                            runs.number(r, "wood").value_or(0), volume(share.expected.lumber_in3),
                            volume(share.expected.log_in3)});
    }
    const auto over = std::count_if(found.runs.begin(), found.runs.end(), [](const auto& share) {
      return share.verdict() == tuning::YieldVerdict::over_most;
    });
    if (over > 0)
      table.notes.push_back(
          fmt::format("More than 100 % of the best in {} {}: look for a slip in the tally, logs measured "
                      "too small, or lumber of other logs.",
                      over, over == 1 ? "run" : "runs"));
    if (left_out_ > 0) {
      table.notes.push_back(
          fmt::format("Left out: {} {} without all logs measured, with one over 72 in, or without a set-up "
                      "that has its kerf.",
                      left_out_, left_out_ == 1 ? "run" : "runs"));
    }
  }

  /// The changes that are looked at, each as the whole list of mills.
  [[nodiscard]] std::vector<std::pair<std::string, std::vector<tuning::SawMill>>> changes() const {
    const bool metric = given_.setting.metric_book;
    const tuning::Fine little = metric ? kFineInch * 10 / 254 : kFineInch / 32;
    const std::string named = metric ? "1 mm" : "1/32 in";
    std::vector<std::pair<std::string, std::vector<tuning::SawMill>>> all{
        {"kerf of both saws " + named + " less", {}},
        {"boards cut " + named + " thinner", {}},
        {"boards cut " + named + " thinner and narrower", {}}};
    for (const auto& mill : mills_) {
      all[0].second.push_back(tuning::with_less_kerf(mill, little));
      all[1].second.push_back(tuning::with_less_target(mill, little, 0));
      all[2].second.push_back(tuning::with_less_target(mill, little, little));
    }
    for (const char* size : {"1x3", "1x4", "2x4"}) {
      if (metric) break;
      all.push_back({std::string("also cutting ") + size, {}});
      for (std::size_t m = 0; m < mills_.size(); ++m) {
        auto sizes = ways_[m].sizes;
        add_new(sizes, *measure::read_size(size));
        all.back().second.push_back(
            tuning::saw_mill(mill_, ways_[m].job, ways_[m].kerfs, sizes, ways_[m].lengths));
      }
    }
    return all;
  }

  [[nodiscard]] tuning::LogYield yield_by(const std::vector<tuning::SawMill>& mills) const {
    tuning::LogYield sum;
    for (std::size_t m = 0; m < mills.size(); ++m) {
      std::vector<tuning::SawLog> logs;
      for (const auto& row : rows_)
        if (row.run.mill == m) logs.insert(logs.end(), row.run.logs.begin(), row.run.logs.end());
      sum += tuning::sum_of(tuning::yields_of(tuning::SawingModel(mills[m]), logs));
    }
    return sum;
  }

  void put_changes() {
    const auto& year = given_.rows("year");
    const auto of_year = [&](const char* column) {
      return year.size() > 0 ? year.number(0, column).value_or(0) : 0;
    };
    const double year_bf = cubic_inches(of_year("lumber")) / 144;
    const std::int64_t amount = of_year("amount");
    const std::int64_t billed_micro = of_year("bf_micro");
    const double now = yield_by(mills_).bf();
    if (now <= 0) return;
    double period_bf = 0;
    for (const auto& row : rows_) period_bf += row.run.bf;
    auto& table = out_.tables["what_if"];
    std::pair<double, std::string> most{0, ""};
    for (const auto& [name, mills] : changes()) {
      const double gain = yield_by(mills).bf() / now - 1;
      if (gain > most.first) most = {gain, name};
      Value money;
      if (billed_micro > 0)
        money = static_cast<std::int64_t>(std::llround(gain * year_bf * static_cast<double>(amount) /
                                                       (static_cast<double>(billed_micro) / 1e6)));
      table.rows.push_back(
          {name, micro(100 * gain), volume(gain * period_bf * 144), volume(gain * year_bf * 144), money});
    }
    if (!most.second.empty())
      out_.finding.push_back(
          fmt::format("Of the changes looked at, {} is worth most: {:.1f} % more lumber of these logs.",
                      most.second, 100 * most.first));
    table.notes.emplace_back(
        "The model's gain in percent, laid on the lumber that was cut: of these logs, and of the 365 days to "
        "the last day sawn. Money at the mean price of what was billed by the board foot in those days.");
  }

  void put_pattern(const tuning::CommonLog& common) {
    const auto& mill = mills_[common.mill];
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
  std::vector<tuning::SawMill> mills_;
  std::vector<RunRow> rows_;
  int left_out_ = 0;
  Worked out_;
};

Worked work(const Given& given) {
  return Yield(given).work();
}

}  // namespace

Worker yield_of_logs() {
  return {.name = "yield",
          .reads = {{"runs",
                     {"day", "shift", "run", "job", "species", "setup", "lumber", "wood", "kerf", "over"}},
                    {"logs", {"day", "shift", "run", "spec", "metric"}},
                    {"sizes", {"day", "shift", "run", "thickness", "width", "length", "metric"}},
                    {"year", {"lumber", "amount", "bf_micro"}}},
          .gives = {{"yield",
                     {"day", "job", "species", "setup", "logs", "best_bf", "lumber_bf", "wood", "best_wood",
                      "log_volume"}},
                    {"what_if", {"change", "gain_percent", "gain_bf", "bf_a_year", "money_a_year"}},
                    {"pattern", {"board", "length_ft", "pieces", "bf"}}},
          .work = work};
}

}  // namespace kerfbook::report
