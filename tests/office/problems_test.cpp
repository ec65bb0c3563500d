// problems_test.cpp -- what keeps a draft from being an invoice, and what is remarked on it, word for word.
#include "base/error.h"
#include "helpers.h"
#include "price/job_terms.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

using Words = std::vector<std::string>;

const Day kFriday = *read_day("2026-05-08");
const SheetRef kMonday = sheet_of("2026-05-04");
const std::string kByFoot = "[[price]]\nbasis = \"bf\"\nrate = 1\n";

Draft draft_of(const std::string& toml, const std::vector<Fact>& facts) {
  return make_draft(terms_of(toml), job_terms("TER"), job_facts(facts), {}, {}, kFriday);
}

std::string problems(const std::string& toml, const std::vector<Fact>& facts) {
  return join(draft_of(toml, facts).problems, "\n");
}

Fact as_sold(Fact fact) {
  fact.kind = FactKind::sold;
  return fact;
}

Fact lineal_feet_of(const std::string& size, int feet) {
  Fact fact = tally(kMonday, "DF", size + ": 8/1").front();
  fact.kind = FactKind::lineal;
  fact.length.count = 0;
  fact.count = measure::feet(feet).count;
  return fact;
}

}  // namespace

TEST_CASE("a charge line that no charge answers says why, and how it would be answered") {
  const Fact planing = charge_line(kMonday, "planing", 2);
  CHECK(problems(kByFoot, {planing}) ==
        "2026-05-04, job TER: no [[charge]] is called 'planing'; add one to the mill file");
  CHECK(problems(kByFoot + "[[charge]]\nname = \"planning\"\nflat = 10\n", {planing}) ==
        "2026-05-04, job TER: no [[charge]] is called 'planing'; did you mean 'planning'?");
  CHECK(problems(kByFoot + "[[charge]]\nname = \"planing\"\nflat = 10\nspecies = \"DF\"\n", {planing}) ==
        "2026-05-04, job TER: the [[charge]] 'planing' is only for DF, and a charge line says no such "
        "thing; write one without these conditions");
  CHECK(problems(kByFoot + "[[charge]]\nname = \"planing\"\nrate = 5\nper = \"percent\"\nautomatic = true\n",
                 {planing}) ==
        "2026-05-04, job TER: 'planing' is a per cent of the sum for sawing and comes by itself; take "
        "the charge line off the sheet");
  CHECK(problems(kByFoot, {stop(kMonday, "weather", 30, "hail", true)}) ==
        "2026-05-04, job TER: a stop for weather of 0:30 is marked 'charge', and no charge has stop = "
        "\"weather\"; add one, or waive it: waive TER 2026-05-04 weather");
  CHECK(problems(kByFoot + "[[charge]]\nname = \"x\"\nrate = 1\nper = \"piece\"\nautomatic = true\n",
                 {lineal_feet_of("1x3", 212)}) ==
        "2026-05-04, job TER: 1x3 lineal was counted by its length, and 'x' is charged by the piece");
}

TEST_CASE("work or a sale without a price asks for one") {
  const auto boards = tally(kMonday, "DF", "2x6: 16/5");
  CHECK(problems("[[price]]\nbasis = \"bf\"\nrate = 1\nspecies = \"WH\"\n", boards) ==
        "2026-05-04, job TER: no price fits 2x6x16 DF; add a [[price]] that does (rate = 0 when it is "
        "for nothing)");
  CHECK(problems(kByFoot, {as_sold(boards.front())}) ==
        "2026-05-04, job TER: no price with 'own_lumber = true' fits 2x6x16; add one, or write 'at "
        "PRICE' on the sheet's line");
  Fact bundle = boards.front();
  bundle.kind = FactKind::bundle;
  bundle.name = "B7";
  bundle.text.clear();
  CHECK(problems(kByFoot, {bundle}) ==
        "2026-05-04, job TER: bundle B7 has nothing in it: no own lumber was tallied under this tag, or "
        "all of it is sold");
  CHECK(problems("[[price]]\nbasis = \"piece\"\nrate = 2\n", {lineal_feet_of("1x3", 212)}) ==
        "2026-05-04, job TER: 1x3 lineal was counted by its length, its price is by the piece");
}

TEST_CASE("a log that cannot be billed by what it measures is told, with its price's line or its rule") {
  const std::string by = "[[price]]\nbasis = \"log-scale\"\nrate = 1\nrule = ";
  Fact unmeasured = log_fact(kMonday, "T1", "15x12");
  unmeasured.measured = false;
  CHECK(problems(by + "\"doyle\"\n", {unmeasured}) ==
        "2026-05-04, job TER: log T1 was not measured and its price is by what it measures");
  CHECK(problems(by + "\"doile\"\n", {log_fact(kMonday, "T1", "15x12")}) ==
        "2026-05-04, job TER: the price at line 1 names the log rule 'doile', which is not known");
  CHECK(problems(by + "\"smalian\"\n", {log_fact(kMonday, "T1", "15x12")}) ==
        "2026-05-04, job TER: log T1 cannot be scaled by Smalian from what was measured");
}

TEST_CASE("work that nothing or two prices pay for is remarked on, and bars no invoice") {
  const auto boards = tally(kMonday, "DF", "2x6: 16/5");
  const Draft unpaid = draft_of("[[price]]\nbasis = \"log\"\nrate = 40\n", boards);
  CHECK(unpaid.problems.empty());
  CHECK(join(unpaid.remarks, "\n") ==
        "2026-05-04, job TER: lumber of DF is priced by its logs and the sheet has no "
        "log of DF, so nothing is charged for it here");
  CHECK(join(draft_of("[[price]]\nbasis = \"hour\"\nrate = 90\n", boards).remarks, "\n") ==
        "2026-05-04, job TER: sawing is priced by the hour and the sheet has no sawing time under it, so "
        "nothing is charged");
  std::vector<Fact> both = boards;
  both.push_back(log_fact(kMonday, "T1", "15x12"));
  const std::string two =
      "[[price]]\nbasis = \"bf\"\nrate = 1\nsize = \"2x6\"\n[[price]]\nbasis = \"log\"\nrate = 40\n";
  CHECK(join(draft_of(two, both).remarks, "\n") ==
        "2026-05-04, job TER: both the lumber and the logs of DF are charged");
}

TEST_CASE("a mill file whose prices cannot be is told with its line when a bill wants them") {
  book::Mill mill;
  mill.money.toml = "[[price]]\nbasis = \"bfs\"\nrate = 1\n";
  CHECK_THROWS_WITH_AS(
      billing::terms_of(mill),
      "the mill file, line 2: 'bfs' is not known; did you mean bf?; correct it and post it again", Refused);
}

TEST_CASE(
    "a discount is of what the sawing comes to: not of the minimum, nor of charges, nor of lumber sold") {
  const std::string off = "[[charge]]\nname = \"off\"\nrate = -10\nper = \"percent\"\nautomatic = true\n";
  const auto boards = tally(kMonday, "DF", "1x12: 10/10");  // 100 bf
  const Draft small = draft_of("[[price]]\nbasis = \"bf\"\nrate = 1\nminimum_job = 250\n" + off, boards);
  CHECK(small.sawing.minor == 10000);
  CHECK(small.minimum.minor == 15000);
  CHECK(line_called(small, "off on sawing").amount.minor == -1000);
  std::vector<Fact> charged = boards;
  charged.push_back(charge_line(kMonday, "set-up", 1));
  const Draft with_charge = draft_of(kByFoot + "[[charge]]\nname = \"set-up\"\nflat = 150\n" + off, charged);
  CHECK(with_charge.total.minor == 10000 + 15000 - 1000);
  std::vector<Fact> sale{as_sold(boards.front())};
  const Draft sold =
      draft_of("[[price]]\nbasis = \"bf\"\nrate = 2\nown_lumber = true\nminimum_job = 900\n" + off, sale);
  CHECK(sold.sawing.minor == 0);
  CHECK(sold.total.minor == 20000);  // neither discount nor minimum
}

TEST_CASE("a correction of what was billed keeps the rate it was billed at; what was not there has today's") {
  const JobTerms job = job_terms("TER");
  const Terms then = terms_of(kByFoot);
  const Terms now = terms_of("[[price]]\nbasis = \"bf\"\nrate = 3\n");
  const Billed before = billed(
      make_draft(then, job, job_facts(tally(kMonday, "DF", "1x12: 10/10")), {}, {}, kFriday), "invoice 1");
  const SheetRef mended = sheet_of("2026-05-04", 2, "counted again");
  const Draft more =
      make_draft(now, job, job_facts(tally(mended, "DF", "1x12: 10/12; 1x12: 16/1")), {before}, {}, kFriday);
  // two boards more of those billed at 1.00, and one of 16 ft that was on no bill at 3.00
  CHECK(more.total.minor == 2000 + 4800);
  const Draft fewer =
      make_draft(now, job, job_facts(tally(mended, "DF", "1x12: 10/9")), {before}, {}, kFriday);
  CHECK(fewer.total.minor == -1000);
}

TEST_CASE(
    "a log that another sheet changed, and a sheet whose invoice was cancelled, say why they are billed "
    "again") {
  const JobTerms job = job_terms("TER");
  const Terms terms = terms_of("[[price]]\nbasis = \"log-scale\"\nrule = \"doyle\"\nrate = 1\n");
  const auto bill = [&](const std::vector<Fact>& facts, const std::vector<Billed>& before) {
    return make_draft(terms, job, job_facts(facts), before, {}, kFriday);
  };
  Fact log = log_fact(kMonday, "T1", "12x16");  // 64 by Doyle
  const Billed first = billed(bill({log}, {}), "invoice 1");
  Fact thicker = log_fact(kMonday, "T1", "16x16");  // 144
  thicker.source_corrected = true;
  const Draft changed = bill({thicker}, {first});
  REQUIRE_FALSE(changed.lines.empty());
  CHECK(changed.lines[0].description.starts_with(
      "Correction of another sheet, which changes that of 2026-05-04: Sawing: log T1"));
  CHECK(changed.total.minor == 14400 - 6400);
  Billed cancelled = first;
  cancelled.cancelled = true;
  Billed later = first;  // an adjustment that billed nothing of it
  later.paper = "invoice 2";
  later.items.clear();
  const Draft again = bill({log}, {cancelled, later});
  REQUIRE(again.lines.size() == 1);
  CHECK(again.lines[0].description ==
        "Billed again, its invoice being cancelled: sheet of 2026-05-04: Sawing: log T1");
  CHECK(again.total.minor == 6400);
}

TEST_CASE("why one price holds and another does not is said of each condition") {
  const Terms terms = terms_of(
      "[[price]]\nbasis = \"log-scale\"\nrate = 1\n[[price]]\nname = \"thick\"\nbasis = \"log-scale\"\nrate "
      "= "
      "2\ndiameter_from = 24\n[[price]]\nname = \"later\"\nbasis = \"log-scale\"\nrate = 3\nfrom = "
      "2026-05-01\n"
      "[[price]]\nname = \"last\"\nbasis = \"log-scale\"\nrate = 4\nfrom = 2026-05-01\n");
  Question asked{"TER", "TER", "DF", "", std::nullopt, measure::feet(16), kFriday};
  asked.diameter = measure::inches(15);
  CHECK(join(explain_price(terms, asked), "\n") ==
        "'last' (line 14, 4.00 a unit of net log scale) is used, not 'later' (line 9, 3.00 a unit of net log "
        "scale): it stands later in the mill file\n"
        "'Sawing' (line 1, 1.00 a unit of net log scale) fits, but 'last' (line 14, 4.00 a unit of net log "
        "scale) is used: it came into force later\n"
        "'thick' (line 4, 2.00 a unit of net log scale) does not fit: it is for logs of another diameter\n"
        "'later' (line 9, 3.00 a unit of net log scale) fits, but 'last' (line 14, 4.00 a unit of net log "
        "scale) is used: it stands later in the mill file");
  const auto title = [](const std::string& conditions) {
    return price_title(terms_of("[[price]]\nbasis = \"log\"\nrate = 1\n" + conditions).prices.at(0));
  };
  CHECK(title("diameter_to = 12\n") == "Sawing, logs up to 12 in thick");
  CHECK(title("diameter_from = 12\n") == "Sawing, logs 12 in and thicker");
  CHECK(title("diameter_from = 12\ndiameter_to = 20\n") == "Sawing, logs 12 in to 20 in thick");
}

TEST_CASE("how lumber is shared is said with its rule and the customer's part") {
  CHECK(share_words(ShareRule::by_size_line, 50) ==
        "on halves, by size line; odd boards from the largest down, each to the side that is behind");
  CHECK(share_words(ShareRule::alternate, 60) ==
        "60 % of the lumber to the customer, alternate boards from the largest down, the customer first");
  CHECK(share_words(ShareRule::percent, Rational(100, 3)) ==
        "33.333 % of the lumber to the customer, board by board from the largest down, to the side that is "
        "behind");
}

TEST_CASE("why several bills are not what one would be is said of each line") {
  const auto one = tally(kMonday, "DF", "1x4: 8'6/1");  // 2 5/6 bf: 3 as billed
  const auto other =
      tally(sheet_of("2026-05-05"), "DF", "1x4: 8'6/1");  // and 3 again; together 5 2/3, billed 6
  std::vector<Fact> all = one;
  append(all, other);
  append(all, tally(sheet_of("2026-05-05"), "DF", "1x4: 8'6/1"));  // three are 8 1/2: 9 as billed
  std::vector<Fact> rest = other;
  append(rest, other);
  const auto explained = [&](const std::string& toml) {
    Words words;
    for (const Difference& one_of : explain_difference(
             draft_of(toml, all), {draft_of(toml, one), draft_of(toml, one), draft_of(toml, one)}))
      words.push_back(one_of.words + " (" + std::to_string(one_of.more.minor) + ")");
    return words;
  };
  CHECK(join(explained("[[price]]\nbasis = \"bf\"\nrate = 1\ncount = { rounding = \"total-hundredths\" }\n"),
             "\n") ==
        "Sawing: 8.50 bf on one bill, 2.83 + 2.83 + 2.83 = 8.49 as billed; each paper rounds its own "
        "quantity (-1)");
  const Draft at_once = draft_of("[[price]]\nbasis = \"piece\"\nrate = 0.333\n", all);
  const Draft single = draft_of("[[price]]\nbasis = \"piece\"\nrate = 0.333\n", one);
  const auto coins = explain_difference(at_once, {single, single, single});
  REQUIRE(coins.size() == 1);  // 3 at 0.333 are 1.00; one is 0.33
  CHECK(coins[0].words == "Sawing: the sum is rounded to the smallest coin on each of 3 papers");
  const auto none = explain_difference(at_once, {});
  REQUIRE(none.size() == 1);
  CHECK(none[0].words == "Sawing: on no paper");
}
