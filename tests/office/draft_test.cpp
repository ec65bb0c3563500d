// Counting conventions, minimums, charges, taxes: what each does to a bill.
#include "helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kFriday = *read_day("2026-05-08");
const SheetRef kMonday = sheet_of("2026-05-04");

Draft draft_of(const std::string& toml, const std::vector<Fact>& facts, const std::string& certificate = "") {
  JobTerms job = job_terms("TER");
  job.certificate = certificate;
  return make_draft(terms_of(toml), job, job_facts(facts), {}, {}, kFriday);
}

std::string priced(const std::string& count, const std::vector<Fact>& facts) {
  const Draft draft = draft_of("[[price]]\nbasis = \"bf\"\nrate = 1.00\ncount = { " + count + " }\n", facts);
  return draft.lines.empty() ? "" : plain(draft.lines[0].quantity);
}

}  // namespace

TEST_CASE("three lines of 2 5/6 bf bill as 9 when the total is rounded and as 9 or 8.49 line by line") {
  // arithmetic: 1x4 8'6" is 2 5/6 bf; three sizes so that they are three lines
  const auto facts = tally(kMonday, "DF", "1x4: 8'6/1; 2x2: 8'6/1; 4x1: 8'6/1");
  CHECK(priced("rounding = \"total-whole\"", facts) == "9");
  CHECK(priced("rounding = \"total-hundredths\"", facts) == "8.50");
  CHECK(priced("rounding = \"line-whole\"", facts) == "9");
  CHECK(priced("rounding = \"line-hundredths\"", facts) == "8.49");
}

TEST_CASE("thickness steps are part of the price") {
  const auto facts = tally(kMonday, "DF", "1-1/8x12: 10/10");
  CHECK(priced("thickness = \"as-cut\", rounding = \"total-hundredths\"", facts) == "112.50");
  CHECK(priced("thickness = \"next-quarter\", rounding = \"total-hundredths\"", facts) == "125.00");
  CHECK(priced("thickness = \"next-inch\", rounding = \"total-hundredths\"", facts) == "200.00");
}

TEST_CASE("a log under the minimum is billed as the minimum log") {
  const std::string price = "[[price]]\nbasis = \"log-scale\"\nrule = \"doyle\"\nrate = 1.00\n";
  const std::vector<Fact> facts{log_fact(kMonday, "T1", "10x6")};
  // 10 x 6 is 13.5, 12 x 8 is 32; source: Louisiana R.S. 3:4641, ((D - 4) / 4)^2 x L
  CHECK(draft_of(price, facts).lines.at(0).quantity == Decimal{14, 0});
  const Draft minimum = draft_of(price + "minimum_log = \"12x8\"\n", facts);
  CHECK(minimum.lines.at(0).quantity == Decimal{32, 0});
  CHECK(minimum.lines.at(0).counted == "net log scale by doyle, a log counted as at least 12x8");
  CHECK(minimum.notes == std::vector<std::string>{"Charged as the minimum log: log T1, 10x6"});
}

TEST_CASE("a minimum log is the least that is charged: also for a culled log, and by the cubic metre") {
  const std::string price =
      "[[price]]\nbasis = \"log-scale\"\nrule = \"doyle\"\nrate = 1.00\nminimum_log = \"12x8\"\n";
  const auto charged = [&](const std::string& toml, const std::vector<Fact>& facts) {
    return plain(draft_of(toml, facts).lines.at(0).quantity);
  };
  // Doyle: 12 x 8 is 32. A log of 20 x 16 is 256; of it 95 % rotten 12.8 are left
  CHECK(charged(price, {log_fact(kMonday, "T1", "20x16", "95%")}) == "32");
  CHECK(charged(price, {log_fact(kMonday, "T1", "20x16", "50%")}) == "128");
  // thick but short: 20 x 6 counts as 20 x 8
  CHECK(charged(price, {log_fact(kMonday, "T1", "20x6")}) == "128");
  CHECK(charged(price, {log_fact(kMonday, "T1", "12x8"), log_fact(kMonday, "T2", "13x8")}) ==
        "73");  // 32 + 40.5
  const std::string cubic = "[[price]]\nbasis = \"m3-log\"\nrate = 100\n";
  const Fact small = log_fact(kMonday, "T1", "6x4");
  const Fact least = log_fact(kMonday, "T2", "12x8");
  // Smalian with 1/8 in a foot of taper: ends of 12 and 13 in, 8 ft: pi / 4 x (144 + 169) / 2 / 144 x 8 = 6.828601 ft3
  CHECK(scaling::content(least.log, {}).cubic_feet == 6'828'601);
  CHECK(charged(cubic + "minimum_log = \"12x8\"\n", {small}) == "0.193");  // 6.8286 x 0.0283168
  CHECK(charged(cubic, {small}) == "0.024");
}

TEST_CASE("the length and the diameter of a log narrow a price by the log") {
  const std::string terms =
      "[[price]]\nbasis = \"log\"\nrate = 40\n"
      "[[price]]\nbasis = \"log\"\nrate = 60\ndiameter_from = 24\nname = \"Thick logs\"\n"
      "[[price]]\nbasis = \"log\"\nrate = 80\nlength_over = \"16\"\nname = \"Long logs\"\n"
      "[[price]]\nbasis = \"log\"\nrate = 100\nlength_over = \"16\"\ndiameter_from = 24\nname = \"Both\"\n";
  const Draft draft = draft_of(terms, {log_fact(kMonday, "T1", "23x16"), log_fact(kMonday, "T2", "23/25x16"),
                                       log_fact(kMonday, "T3", "20x16'6"), log_fact(kMonday, "T4", "30x18")});
  CHECK(line_called(draft, "Sawing").amount.minor == 4000);
  CHECK(line_called(draft, "Thick logs").amount.minor == 6000);
  CHECK(line_called(draft, "Long logs").amount.minor == 8000);
  CHECK(line_called(draft, "Both").amount.minor == 10000);
}

TEST_CASE("feet counted by their length are surcharged and priced whole, also under surface measure") {
  Fact battens = tally(kMonday, "DF", "1x3: 8/1").front();
  battens.kind = FactKind::lineal;
  battens.length.count = 0;
  battens.count = measure::feet(212).count;
  const std::string count =
      "count = { surface_measure = true, length = \"whole-foot-down\", rounding = \"total-hundredths\" }\n";
  // 212 ft of 1x3 are 53 bf, whatever is done with single boards
  CHECK(priced("surface_measure = true, length = \"whole-foot-down\", rounding = \"total-hundredths\"",
               {battens}) == "53.00");
  CHECK(draft_of("[[price]]\nbasis = \"lineal-foot\"\nrate = 0.10\n" + count, {battens}).total.minor == 2120);
  const Draft planed = draft_of(
      "[[price]]\nbasis = \"lineal-foot\"\nrate = 0\n"
      "[[charge]]\nname = \"planing\"\nrate = 0.05\nper = \"lineal-foot\"\nautomatic = true\n",
      {battens});
  CHECK(planed.total.minor == 1060);
  const Draft by_piece = draft_of("[[price]]\nbasis = \"piece\"\nrate = 2\n", {battens});
  REQUIRE(by_piece.problems.size() == 1);
  CHECK(by_piece.problems[0].find("was counted by its length, its price is by the piece") !=
        std::string::npos);
}

TEST_CASE("a small job is raised to its minimum, and later work is set against it") {
  const Terms terms = terms_of("[[price]]\nbasis = \"bf\"\nrate = 1.00\nminimum_job = 250.00\n");
  const auto first = tally(kMonday, "DF", "1x12: 10/10");
  const Draft small = make_draft(terms, job_terms("TER"), job_facts(first), {}, {}, kFriday);
  CHECK(small.total.minor == 25000);
  CHECK(small.minimum.minor == 15000);
  auto all = first;
  append(all, tally(sheet_of("2026-05-05"), "DF", "1x12: 10/10"));
  const std::vector<Billed> before{billed(small, "invoice 1")};
  const Draft second = make_draft(terms, job_terms("TER"), job_facts(all), before, {}, kFriday);
  CHECK(second.total.minor == 0);  // 100.00 more, the minimum now needs 100.00 less
  append(all, tally(sheet_of("2026-05-06"), "DF", "1x12: 10/20"));
  const Draft third = make_draft(terms, job_terms("TER"), job_facts(all), before, {}, kFriday);
  CHECK(third.total.minor == 15000);  // 400.00 in all, 250.00 billed
}

TEST_CASE(
    "a charge line on the sheet goes before what the sheet calls for unasked, and teeth are always added") {
  const std::string terms =
      "[[price]]\nbasis = \"bf\"\nrate = 1\n"
      "[[charge]]\nname = \"metal-strike\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n";
  std::vector<Fact> facts{stop(kMonday, "metal", 36, "staple", false), teeth(kMonday, 3, "metal", "T17")};
  CHECK(draft_of(terms, facts).total.minor == 6700);
  facts.push_back(charge_line(kMonday, "metal-strike", 1));
  CHECK(draft_of(terms, facts).total.minor == 6700);
  facts.push_back(teeth(kMonday, 2, "wear", "T18"));  // not the customer's
  CHECK(draft_of(terms, facts).total.minor == 6700);
  // no stop written down: each log with teeth gone to metal is a strike
  CHECK(draft_of(terms, {teeth(kMonday, 1, "metal", "T1"), teeth(kMonday, 1, "metal", "T1"),
                         teeth(kMonday, 1, "metal", "T2")})
            .total.minor == 2 * 4000 + 3 * 900);
}

TEST_CASE("a stop marked charge that no charge is for is a problem, never forgotten in silence") {
  const Draft draft =
      draft_of("[[price]]\nbasis = \"bf\"\nrate = 1\n", {stop(kMonday, "weather", 30, "hail", true)});
  REQUIRE(draft.problems.size() == 1);
  CHECK(draft.problems[0].find("stop = \"weather\"") != std::string::npos);
  CHECK(draft_of("[[price]]\nbasis = \"bf\"\nrate = 1\n", {stop(kMonday, "weather", 30, "hail", false)})
            .problems.empty());
  const Draft unknown =
      draft_of("[[charge]]\nname = \"bundling\"\nrate = 45\n", {charge_line(kMonday, "bundeling", 2)});
  REQUIRE(unknown.problems.size() == 1);
  CHECK(unknown.problems[0].find("did you mean 'bundling'?") != std::string::npos);
}

TEST_CASE("travel: one way, both ways, the first miles free, miles and kilometres") {
  const std::vector<Fact> facts{move(kMonday, "yard", "farm", 23)};
  const auto total = [&](const std::string& how) {
    return draft_of("[[charge]]\nname = \"travel\"\nmove = true\n" + how, facts).total.minor;
  };
  CHECK(total("rate = 1.75\nper = \"mile\"\n") == 4025);
  CHECK(total("rate = 1.75\nper = \"mile\"\nround_trip = true\n") == 8050);
  CHECK(total("flat = 20\nrate = 1.75\nper = \"mile\"\nfree = 13\n") == 2000 + 1750);
  // 23 miles = 37.014912 km exactly; the quantity is rounded to hundredths, once
  CHECK(total("rate = 1.00\nper = \"km\"\n") == 3701);
  CHECK(total("flat = 60\n") == 6000);
}

TEST_CASE("surcharges come with the pieces they are for, a discount with the sum for sawing") {
  const auto facts = tally(kMonday, "DF", "8x12: 20/2; 2x6: 12/10");
  const Draft draft = draft_of(
      "[[price]]\nbasis = \"bf\"\nrate = 0.50\n"
      "[[charge]]\nname = \"long timber\"\nrate = 0.10\nper = \"bf\"\nautomatic = true\nlength_over = "
      "\"16\"\n"
      "[[charge]]\nname = \"discount\"\nrate = -10\nper = \"percent\"\nautomatic = true\n",
      facts);
  // 320 + 120 bf at 0.50, 320 bf at 0.10, 10 % off the 220.00
  CHECK(line_called(draft, "long timber").amount.minor == 3200);
  CHECK(line_called(draft, "discount").amount.minor == -2200);
  CHECK(draft.total.minor == 22000 + 3200 - 2200);
}

TEST_CASE("a surcharge by the thousand board feet is a thousandth of it for each") {
  const Draft draft = draft_of(
      "[[price]]\nbasis = \"bf\"\nrate = 0.50\n"
      "[[charge]]\nname = \"long\"\nrate = 80\nper = \"MBF\"\nautomatic = true\nlength_over = \"16\"\n",
      tally(kMonday, "DF", "8x12: 20/2; 2x6: 12/10"));
  CHECK(line_called(draft, "long").amount.minor == 2560);  // 320 bf at 80.00 for 1,000
}

TEST_CASE("a tax holds from its first day to its last, both included, by the day of the bill") {
  const auto facts = tally(kMonday, "DF", "1x12: 10/10");
  const auto tax = [&](const std::string& when) {
    return draft_of(
               "[[price]]\nbasis = \"bf\"\nrate = 1.20\n[[tax]]\nname = \"GST\"\nrate = 5\non = "
               "\"sawing\"\n" +
                   when,
               facts)
        .total.minor;
  };
  CHECK(tax("from = 2026-05-08\n") == 12600);
  CHECK(tax("from = 2026-05-09\n") == 12000);
  CHECK(tax("until = 2026-05-08\n") == 12600);
  CHECK(tax("until = 2026-05-07\n") == 12000);
}

TEST_CASE("a line says that tax falls on it, and that none does where a certificate excuses it") {
  const auto facts = tally(kMonday, "DF", "1x12: 10/10");
  const std::string terms =
      "[[price]]\nbasis = \"bf\"\nrate = 1.20\n[[tax]]\nname = \"GST\"\nrate = 5\non = \"sawing\"\n";
  CHECK(draft_of(terms, facts).lines.at(0).taxed);
  CHECK_FALSE(draft_of(terms, facts, "CERT-7").lines.at(0).taxed);
  const std::string as_well =
      terms + "[[tax]]\nname = \"PST\"\nrate = 7\non = \"sawing\"\ncertificate = false\n";
  CHECK(draft_of(as_well, facts, "CERT-7").lines.at(0).taxed);
}

TEST_CASE("a tax that is added is no part of what an included one is taken out of") {
  const Draft draft = draft_of(
      "[[price]]\nbasis = \"bf\"\nrate = 1.20\n[[tax]]\nname = \"VAT\"\nrate = 20\non = \"sawing\"\nincluded "
      "= true\n"
      "[[tax]]\nname = \"levy\"\nrate = 5\non = \"sawing\"\n",
      tally(kMonday, "DF", "1x12: 10/10"));
  CHECK(draft.taxes.at(0).amount.minor == 2000);  // of 120.00, 100.00 and 20 per cent of it
  CHECK(draft.taxes.at(1).amount.minor == 600);
  CHECK(draft.total.minor == 12600);
}

TEST_CASE("tax by kind of line: added, included, excused by a certificate") {
  const auto facts = tally(kMonday, "DF", "1x12: 10/10");
  const std::string price = "[[price]]\nbasis = \"bf\"\nrate = 1.20\n";
  const std::string added = price +
                            "[[tax]]\nname = \"GST\"\nrate = 5\non = \"sawing\"\n[[tax]]\nname = "
                            "\"PST\"\nrate = 7\non = \"sawing\"\n";
  const Draft plain_draft = draft_of(added, facts);
  CHECK(plain_draft.subtotal.minor == 12000);
  CHECK(plain_draft.total.minor == 12000 + 600 + 840);
  const Draft excused = draft_of(added, facts, "CERT-7");
  CHECK(excused.total.minor == 12000);
  CHECK(excused.taxes.at(0).excused == "CERT-7");
  const std::string included =
      price + "[[tax]]\nname = \"VAT\"\nrate = 20\non = \"sawing\"\nincluded = true\n";
  const Draft inside = draft_of(included, facts);
  CHECK(inside.total.minor == 12000);
  CHECK(inside.taxes.at(0).amount.minor == 2000);
  CHECK(draft_of(included, facts, "CERT-7").total.minor == 10000);
  CHECK(draft_of(price + "[[tax]]\nname = \"T\"\nrate = 5\non = \"lumber\"\n", facts).taxes.empty());
}

TEST_CASE("two taxes included in one price share what is above the sum without them") {
  // arithmetic: 112.00 at 5 and 7 percent included is 100.00 + 5.00 + 7.00
  const Draft draft = draft_of(
      "[[price]]\nbasis = \"bf\"\nrate = 1.12\n[[tax]]\nname = \"A\"\nrate = 5\non = \"sawing\"\nincluded = "
      "true\n"
      "[[tax]]\nname = \"B\"\nrate = 7\non = \"sawing\"\nincluded = true\n",
      tally(kMonday, "DF", "1x12: 10/10"));
  CHECK(draft.taxes.at(0).amount.minor == 500);
  CHECK(draft.taxes.at(1).amount.minor == 700);
  CHECK(draft.total.minor == 11200);
}

TEST_CASE("alternate boards, halves and percentages give every board to one side and carry the rest") {
  std::vector<ShareLine> lines{
      {"", "RC", "", *measure::read_size("1x12"), measure::feet(12), 5, Rational(12), 0, 0},
      {"", "RC", "", *measure::read_size("1x6"), measure::feet(10), 4, Rational(5), 0, 0}};
  const Split alternate = divide(lines, ShareRule::alternate, 50, 0);
  CHECK(alternate.customer_pieces == 5);
  CHECK(alternate.mill_pieces == 4);
  CHECK(alternate.customer_bf == Rational(36 + 10));
  CHECK(alternate.carried == Rational(40 - 46));  // owed to the mill
  const Split halves = divide(lines, ShareRule::by_size_line, 50, alternate.carried);
  CHECK(halves.mill_pieces == 5);  // the odd board goes to the side that was behind
  CHECK(halves.carried == Rational(-6) + Rational(40) - halves.customer_bf);
  const Split third = divide(lines, ShareRule::percent, Rational(100, 3), 0);
  CHECK(third.customer_pieces + third.mill_pieces == 9);
  const Rational off = third.carried.is_negative() ? -third.carried : third.carried;
  CHECK(off <= Rational(12));
}
