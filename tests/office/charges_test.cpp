// What the day sheets recorded comes to the draft unasked; what no charge is for stands on it without a price; what
// is let go is let go with a note.
#include "book_helpers.h"
#include "helpers.h"
#include "office/agreed_terms.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const SheetRef kMonday = sheet_of("2026-05-04");

Draft draft_of(const std::string& toml, const std::vector<Fact>& facts,
               const std::vector<Waiver>& waivers = {}) {
  return make_draft(terms_of(toml), job_terms("TER"), job_facts(facts), {}, waivers, kFriday);
}

std::string priced(const std::string& charge) {
  return "[[price]]\nbasis = \"bf\"\nrate = 1\n[[charge]]\n" + charge;
}

Fact measured_move(const Rational& miles, int minutes) {
  Fact fact = move(kMonday, "yard", "farm", miles);
  fact.minutes = minutes;
  return fact;
}

}  // namespace

TEST_CASE(
    "a stop marked charge that no charge is for stands on the draft without a price, and keeps it unissued") {
  const Draft draft =
      draft_of(priced("name = \"x\"\nflat = 1\n"), {stop(kMonday, "weather", 30, "hail", true)});
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].kind == LineKind::unpriced);
  CHECK(draft.lines[0].description == "Stop, weather: hail (no price yet)");
  CHECK(draft.lines[0].quantity == Decimal{30, 0});
  CHECK(draft.lines[0].amount.minor == 0);
  REQUIRE(draft.problems.size() == 1);
  CHECK(draft.problems[0] ==
        "2026-05-04, job TER: a stop for weather of 0:30 is marked 'charge', and no charge has stop = "
        "\"weather\"; "
        "add one, or waive it: waive TER 2026-05-04 weather");
}

TEST_CASE("waived by its cause, such a stop is a line of nothing with the note, and nothing is in the way") {
  const Draft draft =
      draft_of(priced("name = \"x\"\nflat = 1\n"), {stop(kMonday, "weather", 30, "hail", true)},
               {{kMonday.day, 1, "weather", "his hail too"}});
  CHECK(draft.problems.empty());
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].kind == LineKind::waived);
  CHECK(draft.lines[0].description == "Stop, weather: hail (waived: his hail too)");
}

TEST_CASE("a charge line that names no charge is shown with its quantity, and the nearest name is told") {
  const Draft draft = draft_of(priced("name = \"planing\"\nrate = 0.05\nper = \"bf\"\n"),
                               {charge_line(kMonday, "planning", 400, "the tongue side")});
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].description == "planning: the tongue side (no price yet)");
  CHECK(draft.lines[0].quantity == Decimal{40000, 2});
  REQUIRE(draft.problems.size() == 1);
  CHECK(draft.problems[0].find("did you mean 'planing'?") != std::string::npos);
}

TEST_CASE("a charge whose conditions no charge line can meet is told, not called unknown") {
  const Draft draft = draft_of(priced("name = \"planing\"\nrate = 0.05\nper = \"bf\"\nspecies = \"DF\"\n"),
                               {charge_line(kMonday, "planing", 400)});
  REQUIRE(draft.problems.size() == 1);
  CHECK(draft.problems[0].find("the [[charge]] 'planing' is only for DF") != std::string::npos);
}

TEST_CASE(
    "a stop not marked charge costs nothing, marked it costs its hours, and another job's hours are its "
    "own") {
  const std::string terms =
      priced("name = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = [\"waiting\", \"jam\"]\n");
  CHECK(draft_of(terms, {stop(kMonday, "waiting", 45, "tractor", false)}).lines.empty());
  CHECK(draft_of(terms, {stop(kMonday, "waiting", 45, "tractor", true)}).total.minor == 5625);
  CHECK(draft_of(terms, {stop(kMonday, "waiting", 45, "", true), stop(kMonday, "jam", 20, "", true)})
            .total.minor == 5625 + 2500);  // 0:20 at 75.00
}

TEST_CASE("a stop whose charge is written on the sheet is charged by that line, and not once more") {
  const std::string terms =
      priced("name = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = [\"waiting\", \"jam\"]\n");
  CHECK(draft_of(terms, {stop(kMonday, "waiting", 45, "tractor", true), charge_line(kMonday, "waiting", 1)})
            .total.minor == 7500);
}

TEST_CASE("a strike by the tooth, flat, by the hour it took, or all of them") {
  const std::vector<Fact> facts{stop(kMonday, "metal", 36, "staple", false),
                                teeth(kMonday, 3, "metal", "T17")};
  const auto total = [&](const std::string& how) {
    return draft_of(priced("name = \"strike\"\nstrike = true\n" + how), facts).total.minor;
  };
  CHECK(total("flat = 40\n") == 4000);
  CHECK(total("rate = 9\nper = \"tooth\"\n") == 2700);
  CHECK(total("flat = 40\nrate = 9\nper = \"tooth\"\n") == 6700);
  CHECK(total("rate = 60\nper = \"hour\"\n") == 3600);
  CHECK(total("flat = 40\nrate = 9\nper = \"tooth\"\nfree = 1\n") == 5800);
}

TEST_CASE("a strike line names the log, so that the customer can be shown it") {
  const Draft draft = draft_of(priced("name = \"strike\"\ntitle = \"Metal strike\"\nstrike = true\nflat = "
                                      "40\nrate = 9\nper = \"tooth\"\n"),
                               {teeth(kMonday, 3, "metal", "T17")});
  REQUIRE(draft.lines.size() == 2);
  CHECK(draft.lines[0].description == "Metal strike: log T17");
  CHECK(draft.lines[1].description == "Metal strike: log T17");
  CHECK(draft.lines[1].day == kMonday.day);
}

TEST_CASE("travel flat, by the mile or kilometre, by the hour, one way or both") {
  const auto total = [&](const std::string& how) {
    return draft_of(priced("name = \"travel\"\nmove = true\n" + how), {measured_move(46, 225)}).total.minor;
  };
  CHECK(total("flat = 60\n") == 6000);
  CHECK(total("flat = 60\nrate = 1.75\nper = \"mile\"\n") == 6000 + 8050);
  CHECK(total("rate = 1.75\nper = \"mile\"\nround_trip = true\n") == 16100);
  CHECK(total("rate = 40\nper = \"hour\"\n") == 15000);  // 3:45
  // 46 miles are 74.029824 km exactly
  CHECK(total("rate = 1\nper = \"km\"\n") == 7403);
  CHECK(total("rate = 1\nper = \"km\"\nround_trip = true\n") == 14806);
}

TEST_CASE("a move told in kilometres is charged by the mile as well") {
  Fact fact = measured_move(0, 0);
  fact.quantity = Rational(1'609'344, 100'000);  // 10 miles
  fact.kilometres = true;
  CHECK(draft_of(priced("name = \"travel\"\nmove = true\nrate = 2\nper = \"mile\"\n"), {fact}).total.minor ==
        2000);
}

TEST_CASE("oversize logs are charged unasked by their diameter, each, or named on the sheet by the hour") {
  const std::vector<Fact> facts{log_fact(kMonday, "T1", "29x12"), log_fact(kMonday, "T2", "30x12"),
                                log_fact(kMonday, "T3", "34/36x16")};
  const Draft each = draft_of(
      priced("name = \"oversize\"\nrate = 15\nper = \"log\"\nautomatic = true\ndiameter_from = \"30\"\n"),
      facts);
  REQUIRE(each.lines.size() == 1);
  CHECK(each.lines[0].quantity == Decimal{2, 0});
  CHECK(each.total.minor == 3000);
  std::vector<Fact> named = facts;
  named.push_back(charge_line(kMonday, "oversize", Rational(3, 2), "splitting T3"));
  CHECK(draft_of(priced("name = \"oversize\"\nrate = 60\nper = \"hour\"\n"), named).total.minor == 9000);
}

TEST_CASE(
    "edging, planing, stickering, bundling, delivery and storage are charged by what the sheet counts") {
  const std::string terms =
      priced("name = \"edging\"\nrate = 50\nper = \"hour\"\n") +
      "[[charge]]\nname = \"planing\"\nrate = 0.055\nper = \"bf\"\n"
      "[[charge]]\nname = \"stickering\"\nrate = 30\nper = \"mbf\"\n"
      "[[charge]]\nname = \"bundling\"\nrate = 6\nper = \"bundle\"\n"
      "[[charge]]\nname = \"delivery\"\nflat = 20\nrate = 2\nper = \"mile\"\nfree = 10\n"
      "[[charge]]\nname = \"storage\"\nrate = 1.50\nper = \"day\"\n"
      "[[charge]]\nname = \"coffee\"\nflat = 2\n";
  const auto total = [&](const std::string& name, const Rational& quantity) {
    return draft_of(terms, {charge_line(kMonday, name, quantity)}).total.minor;
  };
  CHECK(total("edging", Rational(5, 2)) == 12500);
  CHECK(total("planing", 412) == 2266);
  CHECK(total("stickering", Rational(3, 2)) == 4500);
  CHECK(total("bundling", 4) == 2400);
  CHECK(total("delivery", 23) == 2000 + 2600);
  CHECK(total("delivery", 8) == 2000);
  CHECK(total("storage", 21) == 3150);
  CHECK(total("coffee", 3) == 600);
}

TEST_CASE("sawn by the hour without a run line, or by log scale without a log: told before it is issued") {
  const auto boards = tally(kMonday, "DF", "2x6: 12/10");
  const Draft hours = draft_of("[[price]]\nbasis = \"hour\"\nrate = 90\n", boards);
  CHECK(hours.lines.empty());
  REQUIRE(hours.remarks.size() == 1);
  CHECK(hours.remarks[0] ==
        "2026-05-04, job TER: sawing is priced by the hour and the sheet has no sawing time under it, so "
        "nothing is "
        "charged");
  const std::string scale = "[[price]]\nbasis = \"log-scale\"\nrate = 0.45\n";
  CHECK(draft_of(scale, boards).remarks.size() == 1);
  std::vector<Fact> with_log = boards;
  with_log.push_back(log_fact(kMonday, "T1", "15x12"));
  CHECK(draft_of(scale, with_log).remarks.empty());
  const Draft both = draft_of(
      scale + "length_over = \"8\"\n[[price]]\nbasis = \"bf\"\nrate = 1\nsize = \"2x6\"\n", with_log);
  REQUIRE(both.remarks.size() == 1);
  CHECK(both.remarks[0].find("both the lumber and the logs of DF are charged") != std::string::npos);
}

TEST_CASE("what is billed already has nothing more to be said of it, whatever the mill file says now") {
  const auto boards = tally(kMonday, "DF", "2x6: 12/10");
  const Draft issued = draft_of("[[price]]\nbasis = \"bf\"\nrate = 1\n", boards);
  const Draft next =
      make_draft(terms_of("[[price]]\nbasis = \"bf\"\nrate = 1\nspecies = \"RC\"\n"), job_terms("TER"),
                 job_facts(boards), {billed(issued, "invoice 1")}, {}, kFriday);
  CHECK(next.problems.empty());
  CHECK(next.lines.empty());
}

TEST_CASE("a day is charged once for all its sheets, also when nobody wrote the hours") {
  const std::string terms = "[[price]]\nbasis = \"day\"\nrate = 800\n";
  std::vector<Fact> facts = tally(kMonday, "DF", "2x6: 12/10");
  SheetRef second = kMonday;
  second.shift = 2;
  append(facts, tally(second, "DF", "2x6: 12/5"));
  append(facts, tally(sheet_of("2026-05-05"), "DF", "2x6: 12/5"));
  facts.push_back(stop(sheet_of("2026-05-06"), "weather", 480, "", false));
  CHECK(draft_of(terms, facts).total.minor == 160000);
}

TEST_CASE("a charge waived by mistake is charged after all, and none is waived twice or let go unasked") {
  const DemoBook demo;
  const Waiver waiting{*read_day("2026-05-05"), 1, "waiting", "rain had made the lane soft"};
  Waiver back = waiting;
  back.back = true;
  CHECK_THROWS_AS(waive(*demo.book, "TER", back, kFriday), Refused);
  waive(*demo.book, "TER", waiting, kFriday);
  CHECK_THROWS_AS(waive(*demo.book, "TER", waiting, kFriday), Refused);
  CHECK(demo.draft("TER").total.minor == 188231 - 5625);
  waive(*demo.book, "TER", back, kFriday);
  CHECK(demo.draft("TER").total.minor == 188231);
  waive(*demo.book, "TER", waiting, kFriday);
  CHECK(demo.draft("TER").total.minor == 188231 - 5625);
  demo.whole();
}

TEST_CASE("a charge once a job is waived by the job, and not any more once it is billed") {
  const DemoBook demo;
  const Waiver set_up{Day{}, 0, "set-up", "promised on the telephone"};
  waive(*demo.book, "TER", set_up, kFriday);
  const Draft draft = demo.draft("TER");
  CHECK(draft.total.minor == 188231 - 15000);
  CHECK(line_called(draft, "Set-up and take-down (waived: promised on the telephone)").amount.minor == 0);
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  Waiver back = set_up;
  back.back = true;
  CHECK_THROWS_AS(waive(*demo.book, "TER", back, kFriday), Refused);
  demo.whole();
}

TEST_CASE("an invoice is not issued while something on it has no price, and is when that is waived") {
  const DemoBook demo;
  demo.book->post_sheet("sheet 2026-05-09\nsite yard\nstop 0:30 weather hail, charge QHH\n", "");
  const Day saturday = kFriday + 1;
  CHECK_THROWS_AS(issue_invoice(*demo.book, "QHH", saturday, saturday), Refused);
  CHECK(issue_invoice(*demo.book, "TER", saturday, saturday).number == 1);
  waive(*demo.book, "QHH", {saturday, 1, "weather", "it hailed on all of us"}, saturday);
  const Paper invoice = issue_invoice(*demo.book, "QHH", saturday, saturday);
  CHECK(invoice.amount.minor == 55436 + 4992);
  CHECK(text_of(invoice.document).find("(waived: it hailed on all of us)") != std::string::npos);
  demo.whole();
}
