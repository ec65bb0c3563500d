// work_wood.cpp -- the worker `where-wood-went`: each run's logs as lumber, sawdust and the rest. What is counted stands in
// tuning/balance.h; here the book's counts become its unit, and a sentence is made of the sums.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "measure/heap.h"
#include "report/workers.h"
#include "tuning/balance.h"
#include "tuning/mill_model.h"
#include "tuning/residue.h"

namespace kerfbook::report {
namespace {

using tuning::Balance;
using tuning::Kerfs;

// One unit in which 1/64 in, 1/10 mm, a mil, 1/100 mm and 1/320 mm are all whole: 1/320,000 mm. Sums stay whole in it.
constexpr std::int64_t kInch = 8'128'000;
constexpr std::int64_t kSixtyFourth = kInch / 64;
constexpr std::int64_t kTenthMm = 32'000;
constexpr std::int64_t kMil = kInch / 1000;
constexpr std::int64_t kHundredthMm = 3'200;
constexpr std::int64_t kLineal = 1'000;  // of 1/320 mm

Rational cube(std::int64_t count) {
  return Rational(count) * Rational(count) * Rational(count);
}
/// A millionth of a cubic foot.
const Rational& micro_foot3() {
  static const Rational kOne = cube(12 * kInch) / Rational(1'000'000);
  return kOne;
}

/// A set-up by its name and what its saws take: a line that says another kerf of the same name is another.
struct SetUp {
  std::string name;
  Kerfs kerfs;
  bool known = true;  ///< false where neither the book nor the mill file says it of the head saw
  std::int64_t runs = 0;
  std::int64_t logs = 0;
  Balance balance;
};

struct Run {
  std::string words;  ///< "QHH WH on 2026-05-07"
  Balance balance;
  Rational counted;  ///< what its lumber would hold at its nominal size
  std::optional<Rational> overrun;
  std::size_t setup = 0;
};

/// What was taken away of the wood, solid, by the part of the balance it came out of.
struct Away {
  Rational of_rest;
  Rational of_sawdust;
};

std::optional<Rational> kerf_in_mill(const book::Mill& mill, std::string_view role) {
  const auto mils = tuning::kerf_of(mill, role);
  if (!mils) return std::nullopt;
  return Rational(*mils) * Rational(mill.units == measure::System::metric ? kHundredthMm : kMil);
}

tuning::Section section_of(const measure::Size& size) {
  const auto fine = [](const measure::Length& length) {
    return Rational(length.count) *
           Rational(length.system == measure::System::metric ? kTenthMm : kSixtyFourth);
  };
  return {fine(size.thickness), fine(size.width)};
}

class Wood {
 public:
  explicit Wood(const Given& given) : given_(given), metric_(given.setting.metric_book) {}

  Worked work() {
    take_runs();
    take_boards();
    Worked out;
    fill_setups(out.tables["setups"]);
    fill_runs(out.tables["runs"]);
    fill_residue(out.tables["residue"]);
    out.finding = finding();
    return out;
  }

 private:
  /// What a set-up line said, in mils of the book it stands in.
  static std::optional<Rational> said_kerf(const InputRows& rows, std::size_t r, const char* column) {
    const auto mils = rows.number(r, column);
    if (!mils) return std::nullopt;
    return Rational(*mils) * Rational(rows.number(r, "metric").value_or(0) != 0 ? kHundredthMm : kMil);
  }

  /// The place of the run's set-up in the list, where it is put when it is new.
  std::size_t setup_of(const InputRows& rows, std::size_t r) {
    SetUp one;
    one.name = rows.text(r, "setup");
    auto head = said_kerf(rows, r, "kerf");
    auto edger = said_kerf(rows, r, "edger");
    auto third = said_kerf(rows, r, "third");
    if (!head) head = kerf_in_mill(given_.mill, "head");
    if (!edger) edger = kerf_in_mill(given_.mill, "edger");
    if (!third) third = kerf_in_mill(given_.mill, "third");
    one.known = head.has_value();
    one.kerfs.head = head.value_or(Rational(kInch / 4));
    one.kerfs.edger = edger.value_or(one.kerfs.head);
    one.kerfs.third = third.value_or(0);
    for (std::size_t i = 0; i < setups_.size(); ++i) {
      if (setups_[i].name == one.name && setups_[i].kerfs == one.kerfs) return i;
    }
    setups_.push_back(std::move(one));
    return setups_.size() - 1;
  }

  void take_runs() {
    const auto& rows = given_.rows("runs");
    const Rational count = cube(metric_ ? kTenthMm : kSixtyFourth);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      Run run;
      run.balance.logs = Rational(*rows.number(r, "content")) * micro_foot3();
      run.balance.lumber = Rational(*rows.number(r, "wood")) * count;
      run.counted = Rational(*rows.number(r, "lumber")) * count;
      run.words = join_words(rows, r);
      run.setup = setup_of(rows, r);
      const auto net = rows.number(r, "net").value_or(0);
      if (!metric_ && rows.text(r, "scale_unit") == "bf" && net > 0)
        run.overrun = tuning::overrun_percent(
            Rational(*rows.number(r, "lumber"), measure::kCountsPerBoardFoot), Rational(net, 1'000'000));
      at_.emplace(run_key(rows, r), runs_.size());
      runs_.push_back(std::move(run));
    }
  }

  [[nodiscard]] std::string join_words(const InputRows& rows, std::size_t r) const {
    std::vector<std::string> words;
    for (const char* column : {"job", "species"}) {
      if (auto word = rows.text(r, column); !word.empty()) words.push_back(std::move(word));
    }
    words.push_back("on " + day_words(*rows.number(r, "day"), given_));
    return join(words, " ");
  }

  void take_boards() {
    const auto& runs = given_.rows("runs");
    const auto& rows = given_.rows("boards");
    const Rational count = cube(metric_ ? kTenthMm : kSixtyFourth);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const auto at = at_.find(run_key(rows, r));
      const auto length = Rational(rows.number(r, "lineal").value_or(0)) * Rational(kLineal);
      if (at == at_.end() || length.is_zero()) continue;
      const Rational area = Rational(rows.number(r, "wood").value_or(0)) * count / length;
      const auto section = section_of_boards(rows, r, area);
      const auto& kerfs = setups_[runs_[at->second].setup].kerfs;
      Rational& dust = runs_[at->second].balance.sawdust;
      // Rounded to a millionth of a cubic foot, as log volumes are.
      dust = dust +
             Rational((tuning::sawdust(section, length, kerfs) / micro_foot3()).rounded(0)) * micro_foot3();
    }
    for (std::size_t r = 0; r < runs_.size(); ++r) {
      SetUp& setup = setups_[runs_[r].setup];
      ++setup.runs;
      setup.logs += runs.number(r, "logs").value_or(0);
      setup.balance += runs_[r].balance;
      whole_ += runs_[r].balance;
    }
  }

  /// By the targets of the mill file, the house's and every job's.
  [[nodiscard]] tuning::Section section_of_boards(const InputRows& rows, std::size_t r,
                                                  const Rational& area) const {
    const bool metric = rows.number(r, "metric").value_or(0) != 0;
    const auto system = metric ? measure::System::metric : measure::System::inch;
    const measure::Size nominal{{rows.number(r, "thickness").value_or(0), system},
                                {rows.number(r, "width").value_or(0), system}};
    std::vector<tuning::Section> targets;
    const auto look = [&](const std::vector<book::NamedSize>& sizes) {
      if (const auto target = book::target_in(sizes, nominal)) targets.push_back(section_of(*target));
    };
    look(given_.mill.sizes);
    for (const auto& job : given_.mill.jobs) look(job.sizes);
    return tuning::section_cut(section_of(nominal), area, targets, metric ? kHundredthMm : kMil);
  }

  [[nodiscard]] std::int64_t mils(const Rational& length) const {
    return (length / Rational(metric_ ? kHundredthMm : kMil)).rounded(0);
  }
  static std::int64_t micro_feet3(const Rational& volume) { return (volume / micro_foot3()).rounded(0); }

  /// By name; of one name in the order they were sawn with.
  void fill_setups(WorkedTable& table) const {
    std::vector<const SetUp*> order;
    for (const auto& one : setups_) order.push_back(&one);
    std::stable_sort(order.begin(), order.end(),
                     [](const SetUp* a, const SetUp* b) { return a->name < b->name; });
    for (const SetUp* one : order) {
      const auto& kerfs = one->kerfs;
      table.rows.push_back({one->name.empty() ? Value() : Value(one->name), mils(kerfs.head),
                            mils(kerfs.edger), kerfs.third.is_zero() ? Value() : Value(mils(kerfs.third)),
                            one->runs, one->logs, micro_feet3(one->balance.logs),
                            micro_feet3(one->balance.lumber), micro_feet3(one->balance.sawdust),
                            micro_feet3(one->balance.rest())});
      if (!one->known) {
        table.notes.push_back("The kerf of set-up " + (one->name.empty() ? "-" : one->name) +
                              " is not in the book; a quarter inch is taken (common practice, no source).");
      }
    }
  }

  void fill_residue(WorkedTable& table) {
    const auto& rows = given_.rows("residue");
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const auto quantity = *rows.number(r, "quantity");
      const std::string unit = rows.text(r, "unit");
      const std::string kind = rows.text(r, "kind");
      const auto heap = measure::heap_unit(unit).value_or(measure::HeapUnit::cubic_foot);
      const Rational solid = measure::heap_feet3(Rational(quantity, 1'000'000), heap) *
                             tuning::solid_share(kind).value_or(Rational(0));
      const auto part = tuning::out_of(kind);
      Value of;
      if (part == tuning::OutOf::sawdust) {
        of = micro_feet3(whole_.sawdust);
        away_.of_sawdust = away_.of_sawdust + solid;
      } else if (part == tuning::OutOf::rest) {
        of = micro_feet3(whole_.rest());
        away_.of_rest = away_.of_rest + solid;
      }
      table.rows.push_back({kind, quantity, unit, (solid * 1'000'000).rounded(0),
                            part == tuning::OutOf::sawdust ? Value("sawdust")
                            : part == tuning::OutOf::rest  ? Value("rest")
                                                           : Value(),
                            of});
    }
  }

  void fill_runs(WorkedTable& table) const {
    const auto& rows = given_.rows("runs");
    const auto text = [&](std::size_t r, const char* column) {
      auto words = rows.text(r, column);
      return words.empty() ? Value() : Value(std::move(words));
    };
    for (std::size_t r = 0; r < runs_.size(); ++r) {
      const Balance& one = runs_[r].balance;
      table.rows.push_back({*rows.number(r, "day"), text(r, "job"), text(r, "species"), text(r, "setup"),
                            *rows.number(r, "logs"), micro_feet3(one.logs), *rows.number(r, "lumber"),
                            *rows.number(r, "net"), rows.text(r, "scale_unit"), micro_feet3(one.lumber),
                            micro_feet3(one.sawdust), micro_feet3(one.rest())});
      if (one.is_fault()) {
        table.notes.push_back(
            runs_[r].words +
            ": more wood out than the logs held. A log or a board is measured wrongly, or a log is not "
            "in the book.");
      }
    }
  }

  [[nodiscard]] std::string percent(const Rational& part, const Balance& of, int places = 0) const {
    const auto share = tuning::percent_of_logs(part, of);
    return share ? words_of(*share, places, given_) : "-";
  }

  [[nodiscard]] std::vector<std::string> finding() const {
    if (runs_.empty()) return {};
    if (whole_.is_fault()) {
      return {
          "More wood is tallied than the logs held: something is measured wrongly or missing from the book."};
    }
    std::vector<std::string> out{fmt::format(
        "Of 100 parts of log {} went into lumber, {} into sawdust and {} into slabs, edgings and trim.",
        percent(whole_.lumber, whole_), percent(whole_.sawdust, whole_), percent(whole_.rest(), whole_))};
    if (auto trap = best_overrun(); !trap.empty()) out.push_back(std::move(trap));
    for (auto& words : of_residue()) out.push_back(std::move(words));
    return out;
  }

  /// What was taken away, against what the balance says there was.
  [[nodiscard]] std::vector<std::string> of_residue() const {
    constexpr std::int64_t kHeapsDiffer =
        130;  // percent; as much may be a loose or a tight heap: common practice, no source
    std::vector<std::string> out;
    const auto told = [&](const Rational& away, const Rational& there, const char* what) {
      if (away.is_zero() || there.is_zero() || there.is_negative()) return;
      const Rational share = away * micro_foot3() * 1'000'000 * 100 / there;
      out.push_back(fmt::format(
          "What was taken away of {} holds about {} of wood, {} % of what the logs left{}.", what,
          solid_words(away), words_of(share, 0, given_),
          share > Rational(kHeapsDiffer) ? ": more than there was, so a heap, a log or a board is measured "
                                           "wrongly, or it came of other logs"
                                         : ""));
    };
    told(away_.of_rest, whole_.rest(), "slabs, edgings, trim and chips");
    told(away_.of_sawdust, whole_.sawdust, "sawdust");
    return out;
  }

  /// "113 ft3", in a metric book "3.2 m3".
  [[nodiscard]] std::string solid_words(const Rational& feet3) const {
    if (!metric_) return words_of(feet3, 0, given_) + " ft3";
    return words_of(feet3 / measure::heap_feet3(1, measure::HeapUnit::cubic_metre), 1, given_) + " m3";
  }

  /// Where the best overrun is not the best cutting: its boards hold less wood than they are counted for.
  [[nodiscard]] std::string best_overrun() const {
    const Run* best = nullptr;
    for (const auto& run : runs_) {
      if (run.overrun && (best == nullptr || *run.overrun > *best->overrun)) best = &run;
    }
    if (best == nullptr || runs_.size() < 2) return {};
    const bool under_size = best->balance.lumber < best->counted;
    const auto part = [](const Balance& one) {
      return Rational(micro_feet3(one.lumber), micro_feet3(one.logs));
    };
    if (!under_size || part(best->balance) >= part(whole_)) return {};
    return fmt::format(
        "The best overrun, +{} % ({}), is not good recovery: its boards are counted at their nominal size "
        "and cut "
        "smaller, so only {} % of those logs went into boards, against {} % of all.",
        words_of(*best->overrun, 1, given_), best->words, percent(best->balance.lumber, best->balance, 1),
        percent(whole_.lumber, whole_, 1));
  }

  const Given& given_;
  bool metric_;
  std::vector<SetUp> setups_;
  std::vector<Run> runs_;
  std::map<RunKey, std::size_t> at_;
  Balance whole_;
  Away away_;
};

Worked work(const Given& given) {
  return Wood(given).work();
}

}  // namespace

Worker where_wood_went() {
  return {.name = "where-wood-went",
          .reads = {{"runs",
                     {"day", "shift", "run", "job", "species", "setup", "logs", "net", "scale_unit", "lumber",
                      "wood", "content", "kerf", "edger", "third", "metric"}},
                    {"boards", {"day", "shift", "run", "thickness", "width", "metric", "lineal", "wood"}},
                    {"residue", {"kind", "quantity", "unit"}}},
          .gives = {{"setups",
                     {"setup", "head_kerf", "edger_kerf", "third_kerf", "runs", "logs", "log_ft3",
                      "lumber_ft3", "sawdust_ft3", "rest_ft3"}},
                    {"runs",
                     {"day", "job", "species", "setup", "logs", "log_ft3", "lumber", "net", "scale_unit",
                      "lumber_ft3", "sawdust_ft3", "rest_ft3"}},
                    {"residue", {"kind", "quantity", "unit", "solid_ft3", "of", "of_ft3"}}},
          .work = work};
}

}  // namespace kerfbook::report
