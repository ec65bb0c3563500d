// work_size_control.cpp -- the worker `size-control`: caliper readings by size and set-up, what to set, and the control chart.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/count.h"
#include "measure/size.h"
#include "report/workers.h"
#include "tuning/control_chart.h"
#include "tuning/numbers.h"
#include "tuning/size_finding.h"

namespace kerfbook::report {
namespace {

/// Share of readings that may be under what a board must hold: one in twenty.
constexpr double kUndersize = 0.05;

/// Boards of one size and set-up, in the order they were measured. Sizes in inches, or mm where metric.
struct Group {
  std::string size;
  std::string setup;
  bool metric = false;
  std::optional<double>
      must_hold;  ///< its nominal thickness, of a scant size its target's; absent where that is not known
  std::optional<double> kerf;
  std::optional<double> set_for;
  bool newest = true;  ///< no later set-up of the size has readings
  std::vector<tuning::BoardReadings> boards;
  std::vector<std::int64_t> days;  ///< of each board
  std::optional<tuning::SizeFinding> found;
};

/// Thousandths of an inch or hundredths of a mm, in inches, or in mm where `metric` is wanted.
double from_mils(std::int64_t mils, bool of_metric, bool metric) {
  if (of_metric && metric) return static_cast<double>(mils) / 100;
  return inches_of_mils(mils, of_metric) * (metric ? 25.4 : 1);
}

/// A size cut to less than it is called, for planing or drying, must hold what the mill file says it is cut to for the job
/// it was cut for.
std::optional<measure::Length> held_by_scant(const InputRows& rows, std::size_t r,
                                             const measure::Length& nominal, const Given& given) {
  if (rows.number(r, "jobs") != 1) return std::nullopt;  // each may have a target of its own
  const measure::Size size{nominal, {rows.number(r, "width").value_or(0), nominal.system}};
  const auto target = book::target_for(given.mill, rows.text(r, "job"), size);
  if (!target) return std::nullopt;
  return measure::converted(target->thickness, nominal.system);
}

Group group_of(const InputRows& rows, std::size_t r, const Given& given) {
  Group group;
  group.size = rows.text(r, "size");
  group.setup = rows.text(r, "setup");
  group.metric = rows.number(r, "metric").value_or(0) != 0;
  const bool scant = rows.number(r, "scant").value_or(0) != 0;
  const measure::Length nominal{rows.number(r, "thickness").value_or(0),
                                group.metric ? measure::System::metric : measure::System::inch};
  const auto held = scant ? held_by_scant(rows, r, nominal, given) : nominal;
  if (held)
    group.must_hold =
        tuning::as_double(group.metric ? measure::in_millimetres(*held) : measure::in_inches(*held));
  const bool setup_metric = rows.number(r, "setup_metric").value_or(0) != 0;
  if (const auto kerf = rows.number(r, "kerf_mils"))
    group.kerf = from_mils(*kerf, setup_metric, group.metric);
  if (const auto over = rows.number(r, "over_mils")) {
    if (!scant) group.set_for = *group.must_hold + from_mils(*over, setup_metric, group.metric);
  }
  return group;
}

/// Groups in the order their first board was measured.
std::vector<Group> groups_of(const Given& given) {
  const auto& rows = given.rows("readings");
  std::vector<Group> groups;
  std::vector<std::int64_t> last;  // day, shift, number of the board being read
  for (std::size_t r = 0; r < rows.size(); ++r) {
    Group read = group_of(rows, r, given);
    auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& g) {
      return g.size == read.size && g.setup == read.setup && g.metric == read.metric &&
             g.must_hold == read.must_hold;
    });
    if (group == groups.end()) {
      for (auto& other : groups) other.newest = other.newest && other.size != read.size;
      group = groups.insert(groups.end(), std::move(read));
    }
    const std::vector<std::int64_t> board{rows.number(r, "day").value_or(0),
                                          rows.number(r, "shift").value_or(0),
                                          rows.number(r, "number").value_or(0)};
    if (board != last) {
      group->boards.emplace_back();
      group->days.push_back(board.front());
    }
    last = board;
    group->boards.back().push_back(
        from_mils(rows.number(r, "mils").value_or(0), group->metric, group->metric));
  }
  return groups;
}

/// Board feet sawn of a size in the year.
double sawn_of(const Given& given, const std::string& size) {
  const auto& rows = given.rows("sawn");
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (rows.text(r, "size") == size) return board_feet_of(rows.number(r, "lumber").value_or(0), given);
  }
  return 0;
}

std::string unit_of(const Group& group) {
  return group.metric ? "mm" : "in";
}

std::string said(double size, const Group& group) {
  return group.metric ? fmt::format("{:.1f} mm", size) : fmt::format("{:.3f} in", size);
}

std::string called(const Group& group) {
  return group.size + (group.setup.empty() ? "" : " under set-up " + group.setup);
}

std::string verdict_of(const Group& group) {
  if (!group.must_hold) return "no size to hold";
  switch (group.found->verdict) {
    case tuning::SizeVerdict::too_few_boards:
      return "too few boards to tell";
    case tuning::SizeVerdict::thin:
      return "too thin";
    case tuning::SizeVerdict::well_set:
      return "set right";
    case tuning::SizeVerdict::thick:
      return "thicker than needed";
  }
  return {};
}

void add_spread(const Group& group, WorkedTable& table) {
  const auto& s = group.found->spread;
  table.rows.push_back({group.size, group.setup, static_cast<std::int64_t>(s.boards),
                        static_cast<std::int64_t>(s.readings), micro(s.mean), micro(s.within),
                        micro(s.of_board_means), micro(s.between_component), micro(s.of_all_readings),
                        micro(s.of_components), unit_of(group)});
  if (s.component_was_negative) {
    table.notes.push_back(called(group) +
                          ": boards differ by no more than their own readings make them, so nothing is "
                          "left between boards (the component came out negative and is given as 0).");
  }
}

void add_target(const Group& group, const Given& given, bool priced, WorkedTable& table) {
  const auto& f = *group.found;
  const bool held = group.must_hold.has_value();
  const bool gain = held && f.today && group.newest && f.verdict == tuning::SizeVerdict::thick;
  std::vector<Value> row{group.size, group.setup};
  row.push_back(micro(group.must_hold));
  row.push_back(held ? micro(100 * f.undersize_today) : Value{});
  row.push_back(micro(group.set_for));
  row.push_back(micro(f.spread.mean));
  row.push_back(held ? micro(f.target) : Value{});
  row.push_back(held && f.today ? micro(f.today->size) : Value{});
  row.push_back(held && f.error ? micro(2 * *f.error) : Value{});
  row.push_back(micro(f.holds));
  row.push_back(held && f.today ? micro(100 * f.today->wood_share) : Value{});
  row.push_back(gain ? lumber_of(f.today->bf_a_year, given) : Value{});
  row.push_back(gain && priced ? micro(f.today->money_a_year) : Value{});
  row.emplace_back(verdict_of(group));
  row.emplace_back(unit_of(group));
  table.rows.push_back(std::move(row));
}

std::string remark_of(const tuning::ChartPoint& mean, const tuning::ChartPoint* spread) {
  if (mean.outside) return mean.value > mean.upper ? "thick: outside" : "thin: outside";
  if (spread != nullptr && spread->outside) return "uneven along its length";
  return mean.in_run ? "run" : "";
}

/// Size by size, so that limits stand in blocks.
void add_chart(const Group& group, WorkedTable& table) {
  const bool many =
      std::any_of(group.boards.begin(), group.boards.end(), [](const auto& b) { return b.size() > 10; });
  const auto chart =
      tuning::control_chart(group.boards, many ? tuning::ChartBy::deviations : tuning::ChartBy::ranges);
  if (!chart || group.boards.size() < 2) return;
  for (const auto& mean : chart->means) {
    const auto spread = std::find_if(chart->spreads.begin(), chart->spreads.end(),
                                     [&](const tuning::ChartPoint& p) { return p.board == mean.board; });
    const bool has = spread != chart->spreads.end();
    table.rows.push_back({static_cast<std::int64_t>(table.rows.size() + 1), group.days[mean.board],
                          group.size, group.setup, micro(mean.value - mean.centre),
                          micro(mean.lower - mean.centre), micro(mean.upper - mean.centre),
                          has ? micro(spread->value) : Value{}, has ? micro(spread->upper) : Value{},
                          remark_of(mean, has ? &*spread : nullptr), unit_of(group)});
  }
}

std::string thick_words(const Group& group, bool priced, const Given& given) {
  const auto& f = *group.found;
  std::string words = fmt::format(
      "{} is cut thicker than it need be: {} on average, where {} would keep 19 readings in 20 at {} or "
      "more. "
      "That takes {:.1f} % of the wood",
      called(group), said(f.spread.mean, group), said(*f.target, group), said(*group.must_hold, group),
      100 * f.today->wood_share);
  if (f.today->bf_a_year > 0 && group.newest) {
    words += ", " + lumber_words(f.today->bf_a_year, given) + " a year";
    if (priced) words += fmt::format(" or {}{:.0f}", given.setting.money_sign, f.today->money_a_year);
  }
  return words + ".";
}

std::string words_of(const Group& group, bool priced, const Given& given) {
  const auto& f = *group.found;
  switch (f.verdict) {
    case tuning::SizeVerdict::thick:
      return thick_words(group, priced, given);
    case tuning::SizeVerdict::thin:
      return fmt::format("{} is set too thin: {:.0f} readings in 100 are under {}; set for {} five would be.",
                         called(group), 100 * f.undersize_today, said(*group.must_hold, group),
                         said(*f.target, group));
    case tuning::SizeVerdict::well_set:
      return fmt::format(
          "{} is set right: it averages {}, and {} is needed for 19 readings in 20 at {} or more.",
          called(group), said(f.spread.mean, group), said(*f.target, group), said(*group.must_hold, group));
    case tuning::SizeVerdict::too_few_boards:
      break;
  }
  return {};
}

/// Where to look: common practice, no source.
std::string cause_of(const Group& group) {
  const auto& s = group.found->spread;
  if (s.boards < tuning::kBoardsToTell || !s.between_component) return {};
  if (*s.within > 1.5 * *s.between_component)
    return called(group) +
           " strays more along a board than from one to the next: look to teeth, lead, tension and feed.";
  if (*s.between_component > 1.5 * *s.within)
    return called(group) +
           " strays more from board to board than along one: look to the set-works and to how the log lies.";
  return {};
}

std::string too_few(const std::vector<Group>& groups) {
  const Group* most = nullptr;
  for (const auto& group : groups) {
    if (group.must_hold && (most == nullptr || group.boards.size() > most->boards.size())) most = &group;
  }
  if (most == nullptr)
    return "What was measured is all cut to less than it is called, for planing or drying; what it must hold "
           "is not in the book.";
  return fmt::format(
      "Too few boards to tell: {} has the most, {}; {} of one size under one set-up would tell (common "
      "practice, no source).",
      called(*most), counted(static_cast<std::int64_t>(most->boards.size()), "board"), tuning::kBoardsToTell);
}

Worked work(const Given& given) {
  auto groups = groups_of(given);
  const auto price = price_of_lumber(given);
  Worked out;
  for (auto& group : groups) {
    group.found = tuning::find_size(group.boards, {.critical = group.must_hold.value_or(0),
                                                   .undersize_share = kUndersize,
                                                   .kerf = group.kerf.value_or(0),
                                                   .bf_a_year = sawn_of(given, group.size),
                                                   .price_per_mbf = 1000 * price.value_or(0)});
    add_spread(group, out.tables["sizes"]);
    add_target(group, given, price.has_value(), out.tables["targets"]);
    add_chart(group, out.tables["boards"]);
    if (auto cause = cause_of(group); !cause.empty()) out.tables["sizes"].notes.push_back(std::move(cause));
    if (!group.must_hold || !group.newest) continue;
    if (auto words = words_of(group, price.has_value(), given); !words.empty())
      out.finding.push_back(std::move(words));
  }
  if (out.finding.empty() && !groups.empty()) out.finding.push_back(too_few(groups));
  return out;
}

}  // namespace

Worker size_control() {
  return {.name = "size-control",
          .reads = {{"readings",
                     {"day", "shift", "number", "size", "thickness", "width", "metric", "mils", "setup",
                      "kerf_mils", "over_mils", "setup_metric", "scant", "jobs", "job"}},
                    {"sawn", {"size", "lumber"}},
                    lumber_price_input()},
          .gives = {{"sizes",
                     {"size", "setup", "boards", "readings", "mean", "within", "board_means", "between",
                      "all_readings", "together", "unit"}},
                    {"targets",
                     {"size", "setup", "must_hold", "under_percent", "set_for", "mean", "needed", "oversize",
                      "give_or_take", "holds", "wood_percent", "lumber", "money", "verdict", "unit"}},
                    {"boards",
                     {"board", "day", "size", "setup", "off", "lower", "upper", "range", "range_upper",
                      "remark", "unit"}}},
          .work = work};
}

}  // namespace kerfbook::report
