// terms_slips_test.cpp -- what is wrong in the money tables of a mill file, word for word: where, what, and what would be
// right.
#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

/// `line:column what; instead` of everything found, one a line.
std::string found_in(const std::string& toml) {
  std::string out;
  for (const Diagnostic& one : read_terms(toml).found)
    out += std::to_string(one.place.line) + ":" + std::to_string(one.place.column) + " " + one.what + "; " +
           one.instead + "\n";
  return out;
}

/// The same of one [[charge]] called x, whose name is line 2.
std::string of_charge(const std::string& lines) {
  return found_in("[[charge]]\nname = \"x\"\n" + lines);
}

}  // namespace

TEST_CASE("a price says what it goes by and what it comes to, and no less than nothing") {
  CHECK(found_in("[[price]]\nname = \"Beams\"\n") ==
        "1:1 a price without a basis; add basis = \"bf\" (or hour, log-scale ...)\n"
        "1:1 a price without a rate; add rate = 0.48\n");
  CHECK(found_in("[[price]]\nbasis = \"bf\"\nrate = -0.48\n") ==
        "3:8 a price with a minus; a discount is a [[charge]] per percent\n");
  CHECK(found_in("[[price]]\nbasis = \"shares\"\nrate = 1\n") ==
        "3:8 shares are paid in lumber and have no rate; leave rate out; [[share]] says how to split\n");
  CHECK(found_in("[[price]]\nbasis = \"hour\"\nrate = 90\nown_lumber = true\n") ==
        "2:9 lumber is not sold on this basis; bf, mbf, piece, lineal-foot or m3-sawn\n");
  CHECK(found_in("[[price]]\nbasis = \"bf\"\nrate = 1\nfrom = 2026-05-06\nuntil = 2026-05-05\n") ==
        "5:9 until is before from; the last day in force, included\n");
}

TEST_CASE("a word that no price, charge, share or way of counting has is told with those there are") {
  CHECK(found_in("[[price]]\nbasis = \"stere\"\nrate = 1\n") ==
        "2:10 'stere' is not known; one of bf, mbf, log-scale, log-mbf, log, m3-log, m3-sawn, piece, "
        "lineal-foot, lineal-metre, hour, day, shares\n");
  CHECK(of_charge("rate = 1\nper = \"fortnight\"\n") ==
        "4:8 'fortnight' is not known; one of each, hour, day, mile, km, tooth, bf, mbf, piece, lineal-foot, "
        "lineal-metre, log, bundle, percent\n");
  CHECK(found_in("[[share]]\nrule = \"by-lot\"\n") ==
        "2:9 'by-lot' is not known; one of by-size-line, alternate, percent\n");
  CHECK(found_in("[[price]]\nbasis = \"bf\"\nrate = 1\ncount = { rounding = \"line-hole\" }\n") ==
        "4:23 'line-hole' is not known; did you mean line-whole?\n");
}

TEST_CASE("what a price can be narrowed by hangs on what it goes by, and each refusal says by what") {
  CHECK(found_in("[[price]]\nbasis = \"hour\"\nrate = 90\nthickness_from = \"8\"\n") ==
        "4:18 hours and days of sawing have no thickness_from; narrow it by job, customer, from and until; "
        "charge odd work by a [[charge]] per hour\n");
  CHECK(
      found_in("[[price]]\nbasis = \"log\"\nrate = 40\nsize = \"2x6\"\n") ==
      "4:8 logs have no size; narrow it by species, diameter_from, diameter_to, length_over and length_to\n");
  CHECK(
      found_in("[[price]]\nbasis = \"bf\"\nrate = 1\ndiameter_to = \"30\"\n") ==
      "4:15 boards cannot be traced to logs and have no diameter_to; narrow it by size, thickness, width or "
      "length\n");
  CHECK(found_in("[[price]]\nbasis = \"log\"\nrate = 40\nminimum_log = \"12x8\"\n") ==
        "4:15 a minimum log counts only where logs are measured; basis log-scale, log-mbf or m3-log\n");
  CHECK(found_in("[[price]]\nbasis = \"m3-log\"\nrate = 40\nrule = \"doyle\"\n") ==
        "4:8 a log rule counts only where logs are scaled; basis log-scale or log-mbf\n");
}

TEST_CASE("a charge says its name and a sum, and can be called for") {
  CHECK(found_in("[[charge]]\nflat = 10\n") == "1:1 a charge without a name; add name = \"set-up\"\n");
  CHECK(of_charge("") ==
        "1:1 a charge with neither flat nor rate; add flat = 150.00, or rate = 45.00 and per = \"hour\"\n");
  CHECK(of_charge("rate = 5\nper = \"percent\"\n") ==
        "4:7 a per cent of the sum for sawing comes by itself; add automatic = true\n");
  CHECK(of_charge("rate = 5\nper = \"hour\"\nautomatic = true\n") ==
        "5:13 nothing calls for it by itself; per bf, mbf, piece, lineal-foot, lineal-metre, log or percent; "
        "once a job: once = true\n");
  CHECK(of_charge("rate = 5\nflat = 10\nper = \"bf\"\nautomatic = true\n") ==
        "4:8 an automatic charge has no flat sum; a flat sum comes with once = true\n");
  CHECK(of_charge("rate = 5\nonce = true\n") ==
        "3:8 a charge once a job has nothing to count; give it flat alone\n");
  CHECK(of_charge("rate = 5\nper = \"mile\"\nmove = true\nfree = -10\n") ==
        "6:8 a free part with a minus; write how much costs nothing, as free = 10\n");
  CHECK(of_charge("rate = 5\nper = \"log\"\nautomatic = true\ngrade = \"Sel\"\n") ==
        "6:9 logs have no grade; narrow it by species, diameter_from, diameter_to, length_over and "
        "length_to\n");
  CHECK(of_charge("rate = 5\nper = \"bf\"\nautomatic = true\ndiameter_from = \"30\"\n") ==
        "6:17 boards cannot be traced to logs and have no diameter_from; charge it per log\n");
}

TEST_CASE("a share, a tax and an agreement that cannot be say what would be right") {
  CHECK(found_in("[[share]]\npercent = 120\n") ==
        "2:11 a share outside 0 to 100; the customer's share, as percent = 50\n");
  CHECK(found_in("[[share]]\npercent = -1\n").starts_with("2:11 a share outside 0 to 100; "));
  CHECK(found_in("[[tax]]\nrate = 5\non = \"lumber\"\n") ==
        "1:1 a tax without a name; add name = \"Sales tax\"\n");
  CHECK(found_in("[[tax]]\nname = \"T\"\n") ==
        "1:1 a tax without a rate; add rate = 5, in percent\n"
        "1:1 a tax that falls on nothing; add on = [\"lumber\"] (kinds: sawing, service, lumber or your "
        "own)\n");
  CHECK(found_in("[[tax]]\nname = \"T\"\nrate = -5\non = \"lumber\"\n") ==
        "3:8 a tax with a minus; in percent, as rate = 5\n");
  CHECK(
      found_in("[[tax]]\nname = \"T\"\nrate = 5\non = \"firewood\"\n") ==
      "4:6 no price and no charge has tax = \"firewood\"; sawing, service, lumber, or the tax of a price or "
      "charge above\n");
  CHECK(found_in("[[agreement]]\nagreed = 2026-05-01\n") ==
        "1:1 an agreement without a job; add job = \"TER\"\n");
  CHECK(found_in("[[agreement]]\njob = \"A\"\n[[agreement]]\njob = \"a\"\n") ==
        "4:7 a second agreement for job a; one [[agreement]] a job\n");
}

TEST_CASE("a rate far off is doubted with the basis that was perhaps meant") {
  CHECK(
      found_in("[[price]]\nbasis = \"log-mbf\"\nrate = 0.31\n") ==
      "3:8 0.31 a thousand board feet of net log scale: under 10, which such a price seldom is; a price for "
      "one board foot of log scale has basis = \"log-scale\"\n");
  CHECK(found_in("[[price]]\nbasis = \"hour\"\nrate = 9500\n") ==
        "3:8 9500 an hour: over 2000, which such a price seldom is; look at rate and basis again\n");
  CHECK(found_in("[[price]]\nbasis = \"log\"\nrate = 2500\n").starts_with("3:8 2500 a log: over 2000"));
  CHECK(found_in("[[price]]\nbasis = \"m3-log\"\nrate = 6000\n")
            .starts_with("3:8 6000 a cubic metre of log: "));
  CHECK(
      found_in("[[price]]\nbasis = \"m3-sawn\"\nrate = 6000\n").starts_with("3:8 6000 a cubic metre sawn: "));
  CHECK(found_in("[[price]]\nbasis = \"lineal-foot\"\nrate = 101\n").starts_with("3:8 101 a lineal foot: "));
  CHECK(
      found_in("[[price]]\nbasis = \"lineal-metre\"\nrate = 301\n").starts_with("3:8 301 a lineal metre: "));
  CHECK(of_charge("rate = 4500\nper = \"hour\"\n") ==
        "3:8 4500 per hour: over 2000, which such a price seldom is; look at rate and per again\n");
  CHECK(of_charge("rate = 0.05\nper = \"percent\"\nautomatic = true\n") ==
        "3:8 0.05 percent: under 0.1, which such a price seldom is; 5 % is written rate = 5\n");
  CHECK(found_in("[[share]]\npercent = 0.5\n") ==
        "2:11 0.5 percent: under 1, which such a price seldom is; a half is written percent = 50\n");
}
