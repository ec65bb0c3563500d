// Time is money to the minute: hours are whole minutes up to the amount, whatever calls for them.
#include <rapidcheck.h>

#include "helpers.h"
#include "paper/paper.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const char* const kHourly =
    "[[price]]\nbasis = \"hour\"\nrate = 60\n"
    "[[charge]]\nname = \"waiting\"\nrate = 60\nper = \"hour\"\nstop = \"waiting\"\n"
    "[[charge]]\nname = \"metal\"\nflat = 10\nrate = 60\nper = \"hour\"\nstrike = true\n"
    "[[charge]]\nname = \"road\"\nrate = 60\nper = \"hour\"\nmove = true\n"
    "[[charge]]\nname = \"bundling\"\nrate = 45\nper = \"hour\"\n"
    "[[charge]]\nname = \"loading\"\nrate = 60\nper = \"hour\"\nfree = 0.5\n";

const SheetRef kDay = sheet_of("2026-05-04");

Draft draft_of(const std::string& toml, const std::vector<Fact>& facts,
               const std::vector<Billed>& before = {}) {
  return make_draft(terms_of(toml), job_terms("TER"), job_facts(facts), before, {}, kDay.day);
}

std::int64_t sawn(int minutes, const std::string& rate) {
  return draft_of("[[price]]\nbasis = \"hour\"\nrate = " + rate + "\n", {sawing(kDay, minutes)}).total.minor;
}

}  // namespace

TEST_CASE("sawing time bills its minutes: 1:20 at 60 is 80.00, 0:35 is 35.00, 6:05 at 95 is 577.92") {
  CHECK(sawn(80, "60") == 8000);
  CHECK(sawn(35, "60") == 3500);
  CHECK(sawn(365, "95") == 57792);  // 577.91 2/3, rounded once
  CHECK(rc::check("any minutes at any rate", [] {
    const int minutes = *rc::gen::inRange(1, 2000);
    const int cents = *rc::gen::inRange(2000, 20'000);
    const std::string rate = plain(Decimal{cents, 2});
    RC_ASSERT(sawn(minutes, rate) == Rational(std::int64_t{minutes} * cents, 60).rounded(0));
  }));
}

TEST_CASE("minutes of many days are added before they are billed") {
  std::vector<Fact> facts;
  for (const char* day : {"2026-05-04", "2026-05-05", "2026-05-06"})
    facts.push_back(sawing(sheet_of(day), 35));
  const Draft draft = draft_of(kHourly, facts);
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].quantity == Decimal{105, 0});
  CHECK(draft.lines[0].timed);
  CHECK(quantity_of(draft.lines[0]) == Rational(7, 4));
  CHECK(draft.total.minor == 10500);
}

TEST_CASE("waiting, strikes, moves, extras and what is free by the hour are billed to the minute too") {
  Fact road = move(kDay, "yard", "Tervane farm", 23);
  road.minutes = 80;
  const Draft draft =
      draft_of(kHourly, {stop(kDay, "waiting", 35, "tractor", true), stop(kDay, "metal", 5, "nail", false),
                         road, charge_line(kDay, "bundling", Rational(6, 10)),
                         charge_line(kDay, "loading", Rational(7, 6))});
  CHECK(line_called(draft, "waiting").amount.minor == 3500);
  CHECK(line_called(draft, "road").amount.minor == 8000);
  CHECK(line_called(draft, "bundling").amount.minor == 2700);  // 0.6 h typed by hand is 36 minutes
  CHECK(line_called(draft, "bundling").quantity == Decimal{36, 0});
  CHECK(line_called(draft, "loading").amount.minor == 4000);  // 1:10 less the free half hour
  std::int64_t strike = 0;
  for (const BillLine& line : draft.lines)
    if (line.title == "metal" && line.timed) strike = line.amount.minor;
  CHECK(strike == 500);
}

TEST_CASE("corrected time is billed by the minutes it differs") {
  const Draft first = draft_of(kHourly, {sawing(kDay, 60), stop(kDay, "waiting", 20, "", true)});
  const SheetRef corrected = sheet_of("2026-05-04", 2, "watch was slow");
  const Draft next = draft_of(kHourly, {sawing(corrected, 80), stop(corrected, "waiting", 35, "", true)},
                              {billed(first, "invoice 1")});
  CHECK(next.total.minor == 3500);  // 20 and 15 minutes more
  for (const BillLine& line : next.lines) CHECK(line.timed);
}

TEST_CASE("a frozen line of time is read back in minutes") {
  Paper paper;
  paper.day = kDay.day;
  const Draft draft = draft_of(kHourly, {sawing(kDay, 80)});
  paper.lines = draft.lines;
  paper.items = draft.items;
  const Paper thawed = read_paper(write_paper(paper));
  CHECK(thawed.lines == paper.lines);
  CHECK(thawed.items.at(0).rate == paper.items.at(0).rate);
  CHECK(write_paper(thawed) == write_paper(paper));
}
