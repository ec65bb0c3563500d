// under_no_job_test.cpp -- whatever could be charged is a job's, the mill's own, or listed as no job's: never dropped.
#include <rapidcheck.h>

#include "book/store.h"
#include "book_helpers.h"
#include "office/draft_work.h"
#include "office/under_no_job.h"
#include "sheet/facts.h"
#include "sheet/read.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const std::string kMill =
    "[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"hour\"\nrate = 60\n"
    "[[charge]]\nname = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = \"waiting\"\n"
    "[[charge]]\nname = \"metal\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n"
    "[[charge]]\nname = \"travel\"\nrate = 2\nper = \"mile\"\nmove = true\n"
    "[[job]]\ncode = \"STK\"\nowner = \"own\"\n";

std::vector<UnderNoJob> open_of(const DemoBook& demo) {
  std::vector<UnderNoJob> all = under_no_job(*demo.book, kFriday);
  std::erase_if(all, [](const UnderNoJob& one) { return !one.let_go.empty(); });
  return all;
}

std::string listed(const DemoBook& demo) {
  std::string out;
  for (const UnderNoJob& one : open_of(demo)) out += one.what + ": " + one.words + "\n";
  return out;
}

int pick(int least, int past) {
  return *rc::gen::inRange(least, past);
}
std::string one_of(const std::vector<std::string>& words) {
  return words[static_cast<std::size_t>(pick(0, static_cast<int>(words.size())))];
}

std::string random_line() {
  const std::string own = pick(0, 4) == 0 ? ", job " + one_of({"TER", "QHH", "own"}) : "";
  switch (pick(0, 11)) {
    case 0:
      return "site " + one_of({"farm", "yard"});
    case 1:
    case 2:
      return "job " + one_of({"TER", "QHH", "own"});
    case 3:
      return "sawing 7:00-7:" + std::to_string(pick(10, 59)) + own;
    case 4:
      return "stop 0:" + std::to_string(pick(10, 59)) +
             one_of({" waiting, charge", " rain", " metal", " belt, charge"}) + own;
    case 5:
      return "teeth head replaced " + std::to_string(pick(1, 5)) + one_of({" metal", " wear"}) + own;
    case 6:
      return "move farm to yard " + std::to_string(pick(1, 50)) + " mi" + own;
    case 7:
      return "charge " + one_of({"TER", "QHH", "own"}) + " planing " + std::to_string(pick(1, 50));
    case 8:
      return "log " + std::to_string(pick(8, 20)) + "x16";
    case 9:
      return "1x3 " + std::to_string(pick(1, 300)) + "lf";
    default:
      return one_of({"2x6 ", "less 1x4 "}) + std::to_string(pick(1, 9)) + "/12";
  }
}

/// One number for everything that can be charged, so that nothing can be lost and nothing counted twice unnoticed.
struct Sums {
  std::int64_t sawing = 0;
  std::int64_t logs = 0;
  std::int64_t pieces = 0;
  std::int64_t lineal = 0;
  std::int64_t stops = 0;
  std::int64_t teeth = 0;
  std::int64_t moves = 0;
  std::int64_t charges = 0;
  bool operator==(const Sums&) const = default;
};

void add(Sums& sums, const billing::Fact& fact) {
  switch (fact.kind) {
    case FactKind::sawing:
      sums.sawing += fact.count;
      break;
    case FactKind::log:
      ++sums.logs;
      break;
    case FactKind::pieces:
      sums.pieces += fact.count;
      break;
    case FactKind::lineal:
      sums.lineal += fact.count;
      break;
    case FactKind::stop:
      if (fact.chargeable || fact.name == "metal") ++sums.stops;
      break;
    case FactKind::teeth:
      if (fact.cause == "metal") ++sums.teeth;
      break;
    case FactKind::move:
      ++sums.moves;
      break;
    case FactKind::charge:
      ++sums.charges;
      break;
    default:
      break;
  }
}

/// What is said of the sheet itself, without a word of whose it is.
Sums on_sheet(const sheet::Sheet& sheet) {
  Sums sums;
  for (const auto& fact : sheet::facts(sheet)) {
    const sheet::Fact& line = fact.line->fact;
    if (!sheet::could_be_charged(line)) continue;
    if (const auto* sawing = std::get_if<sheet::Sawing>(&line))
      for (const Span& span : sawing->spans) sums.sawing += span.minutes();
    if (const auto* tally = std::get_if<sheet::Tally>(&line))
      sums.pieces += (tally->sense == sheet::Sense::sawn ? 1 : -1) * tally->items[fact.item].pieces;
    if (const auto* tally = std::get_if<sheet::LinealTally>(&line)) sums.lineal += tally->total.count;
    sums.logs += std::holds_alternative<sheet::LogLine>(line) ? 1 : 0;
    sums.stops += std::holds_alternative<sheet::Stop>(line) ? 1 : 0;
    sums.teeth += std::holds_alternative<sheet::Teeth>(line) ? 1 : 0;
    sums.moves += std::holds_alternative<sheet::Move>(line) ? 1 : 0;
    sums.charges += std::holds_alternative<sheet::Charge>(line) ? 1 : 0;
  }
  return sums;
}

int rows_of(const UnderNoJob& one) {
  return 1 + static_cast<int>(std::count(one.content.begin(), one.content.end(), '\n'));
}

/// The rows listed under no job, and the lines they stand on.
void add(Sums& sums, const UnderNoJob& one, const sheet::Sheet& sheet) {
  std::set<int> lines(one.lines.begin(), one.lines.end());
  Sums here;
  for (const auto& fact : sheet::facts(sheet)) {
    if (lines.count(fact.line->place.line) == 0) continue;
    const sheet::Fact& line = fact.line->fact;
    if (const auto* sawing = std::get_if<sheet::Sawing>(&line))
      for (const Span& span : sawing->spans) here.sawing += span.minutes();
    if (const auto* tally = std::get_if<sheet::Tally>(&line))
      here.pieces += (tally->sense == sheet::Sense::sawn ? 1 : -1) * tally->items[fact.item].pieces;
    if (const auto* tally = std::get_if<sheet::LinealTally>(&line)) here.lineal += tally->total.count;
  }
  sums.sawing += here.sawing;
  sums.pieces += here.pieces;
  sums.lineal += here.lineal;
  if (one.what == "logs") sums.logs += rows_of(one);
  if (one.what == "teeth") sums.teeth += rows_of(one);
  if (one.what == "move") sums.moves += rows_of(one);
  if (one.words.starts_with("stop")) sums.stops += rows_of(one);
}

}  // namespace

TEST_CASE(
    "everything that could be charged is in exactly one place: a job's facts, own work, or under no job") {
  const DemoBook demo(kMill, false, "2023-01-01 08:00:00");
  demo.book->post_sheet(
      "sheet 2023-12-31\njob TER\njob QHH\njob own\ncharge TER x\ncharge QHH x\ncharge own x\n", "");
  Day day = *read_day("2024-01-01");
  CHECK(rc::check("one place", [&] {
    day = day + 1;
    std::string text = "sheet " + write_day(day) + "\n";
    for (int lines = pick(1, 14); lines > 0; --lines) text += random_line() + "\n";
    RC_LOG() << text;
    demo.book->post_sheet(text, "");
    const sheet::Sheet sheet = sheet::read(text).sheet;
    Sums sums;
    std::int64_t own_marked = 0;
    for (const char* job : {"TER", "QHH", "own"}) {
      for (const billing::Fact& fact : job_facts(*demo.book, job, day).facts) {
        if (fact.kind == FactKind::once || fact.sheet.day != day) continue;
        // a charge mark on own work is listed, for nobody pays it: it is counted there
        const bool marked = fact.kind == FactKind::charge || (fact.kind == FactKind::stop && fact.chargeable);
        if (std::string(job) == "own" && fact.kind == FactKind::charge) ++own_marked;
        if (std::string(job) == "own" && marked && fact.kind == FactKind::stop) continue;
        add(sums, fact);
      }
    }
    for (const UnderNoJob& one : under_no_job(*demo.book, day)) {
      if (one.day != day) continue;
      if (one.words.starts_with("charge")) own_marked -= rows_of(one);
      add(sums, one, sheet);
    }
    RC_ASSERT(sums == on_sheet(sheet));
    RC_ASSERT(own_marked == 0);
  }));
}

TEST_CASE(
    "two hourly jobs with their sawing above their lines: nobody is billed the other's, and all of it is "
    "listed") {
  const DemoBook demo(kMill, false);
  const std::string sheet =
      "sheet 2026-05-05\nsawing 7:00-9:00\njob CAMP\n2x6 1/16\nsite B\nsawing 10:00-16:00\njob SMITH\n2x6 "
      "1/16\n";
  demo.book->post_sheet(sheet, "");
  CHECK(demo.draft("CAMP").lines.empty());
  CHECK(demo.draft("SMITH").lines.empty());
  CHECK(listed(demo) == "sawing: sawing time, 8:00\n");
  CHECK(under_no_job(*demo.book, kFriday).at(0).lines == std::vector<int>{2, 6});
  demo.book->post_sheet(
      "sheet 2026-05-05\nsawing 7:00-9:00, job CAMP\njob CAMP\n2x6 1/16\nsite B\nsawing 10:00-16:00, job "
      "SMITH\n"
      "job SMITH\n2x6 1/16\n",
      "whose hours they were");
  CHECK(demo.draft("CAMP").total == money("120.00"));
  CHECK(demo.draft("SMITH").total == money("360.00"));
  CHECK(listed(demo).empty());
}

TEST_CASE("what stands above the only job of a day is billed to it") {
  const std::string above =
      "sawing 7:00-9:00\nstop 0:36 waiting tractor, charge\nteeth head replaced 3 metal\nmove a to b 10 mi\n";
  for (const std::string& text : {above + "job TER\n2x6 1/16\n", "job TER\n" + above + "2x6 1/16\n"}) {
    const DemoBook demo(kMill, false);
    demo.book->post_sheet("sheet 2026-05-05\n" + text, "");
    CHECK(demo.draft("TER").total ==
          money("252.00"));  // 2 h 120, 0.6 h 45, strike 40 and 3 teeth 27, 10 mi 20
    CHECK(listed(demo).empty());
  }
}

TEST_CASE("a stop marked to be charged is listed on a day without a job, and under own work") {
  const DemoBook demo(kMill, false);
  demo.book->post_sheet("sheet 2026-05-05\nstop 0:36 waiting tractor, charge\n", "");
  demo.book->post_sheet("sheet 2026-05-06\njob own\nstop 0:30 waiting, charge\nsawing 7:00-8:00\n", "");
  demo.book->post_sheet("sheet 2026-05-07\njob STK\nstop 0:20 belt, charge\n", "");
  CHECK(listed(demo) ==
        "waiting: stop for waiting, 0:36, tractor\nwaiting: stop for waiting, 0:30\nbelt: stop for belt, "
        "0:20\n");
}

TEST_CASE("a book that knows no job is asked for none") {
  const DemoBook demo("[mill]\nname = \"Mill\"\n", false);
  demo.book->post_sheet("sheet 2026-05-05\nsawing 7:00-8:00\nlog 12x16\n2x6 1/16\nmove a to b 3 mi\n", "");
  CHECK(listed(demo).empty());
}

TEST_CASE(
    "work under no job is let go with a reason, shows so, comes back when asked for or when it changes") {
  const DemoBook demo(kMill, false);
  const std::string sheet =
      "sheet 2026-05-05\nsawing 7:00-9:00\n2x6 3/16\njob CAMP\n2x6 1/16\njob SMITH\n2x6 1/16\n";
  demo.book->post_sheet(sheet, "");
  Waiver sawing{*read_day("2026-05-05"), 1, "Sawing", "showing Bess the set-works"};
  CHECK(listed(demo) == "sawing: sawing time, 2:00\nlumber: 3 pieces, 48.00 bf\n");
  CHECK_THROWS_WITH_AS(let_go(*demo.book, {sawing.day, 1, "move", "why"}, kFriday),
                       "the sheet of 2026-05-05: no 'move' is open under no job; there is sawing, lumber",
                       Refused);
  CHECK_THROWS_AS(let_go(*demo.book, {sawing.day, 1, "sawing", " "}, kFriday), Refused);
  const auto done = let_go(*demo.book, sawing, kFriday);
  REQUIRE(done.size() == 1);
  CHECK(done.front().words == "sawing time, 2:00");
  CHECK(done.front().mark.entry == demo.book->newest().entry);
  CHECK(listed(demo) == "lumber: 3 pieces, 48.00 bf\n");
  CHECK(under_no_job(*demo.book, kFriday).at(0).let_go == "showing Bess the set-works");
  CHECK_THROWS_AS(let_go(*demo.book, sawing, kFriday), Refused);  // it is let go already
  // let go it stays when another line is corrected, and is open again when it is itself
  demo.book->post_sheet("sheet 2026-05-05\n; a remark\n" + sheet.substr(17), "a remark");
  CHECK(listed(demo) == "lumber: 3 pieces, 48.00 bf\n");
  demo.book->post_sheet("sheet 2026-05-05\nsawing 7:00-9:30\n" + sheet.substr(34), "half past");
  CHECK(listed(demo) == "sawing: sawing time, 2:30\nlumber: 3 pieces, 48.00 bf\n");
  let_go(*demo.book, {sawing.day, 1, "all", "no matter"}, kFriday);
  CHECK(listed(demo).empty());
  let_go(*demo.book, {sawing.day, 1, "all", "it does matter", true}, kFriday);
  CHECK(listed(demo) == "sawing: sawing time, 2:30\nlumber: 3 pieces, 48.00 bf\n");
  demo.whole();
}
