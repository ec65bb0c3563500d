// sense_test.cpp -- what is read sensibly, and what is doubted because it would cost somebody money unseen.
#include <doctest/doctest.h>

#include "sheet/check.h"
#include "sheet/facts.h"
#include "sheet/read.h"
#include "sheet/write.h"

using namespace kerfbook;
using namespace kerfbook::sheet;

namespace {

ReadSheet read_lines(const std::string& lines, bool metric = false) {
  return read("sheet 2026-05-05\n" + lines, {metric, 2});
}

/// All that reading and checking say, one a line: "2: what; instead".
std::string said(const std::string& lines, const Known& known = {}) {
  ReadSheet got = read_lines(lines, known.metric);
  if (!has_error(got.found)) {
    const auto more = check(got.sheet, known, *scaling::find_practice("international-quarter"));
    got.found.insert(got.found.end(), more.begin(), more.end());
  }
  std::string all;
  for (const Diagnostic& one : got.found)
    all += std::to_string(one.place.line) + ": " + one.what + "; " + one.instead + "\n";
  return all;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

LogLine log_of(const std::string& line, bool metric = false) {
  const ReadSheet got = read_lines(line + "\n", metric);
  REQUIRE_MESSAGE(!has_error(got.found), line);
  return std::get<LogLine>(got.sheet.lines.at(0).fact);
}

std::vector<Length> inches_of(const std::vector<int>& all) {
  std::vector<Length> out;
  for (const int one : all) out.push_back(measure::inches(one));
  return out;
}

}  // namespace

TEST_CASE("a tag that is a number and two readings are not taken for a fraction of an inch, and it is said") {
  struct Written {
    const char* line;
    const char* tag;
    std::vector<int> readings;
    bool doubted;
  };
  for (const Written& one :
       {Written{"log 1 15/16x12", "1", {15, 16}, true}, Written{"in 1 15/16x12", "1", {15, 16}, true},
        Written{"log 12 15/16x12", "12", {15, 16}, true}, Written{"log 3 7/8x12", "3", {7, 8}, true},
        Written{"log 12 13/14x16", "12", {13, 14}, false}, Written{"log 12 16/15x16", "12", {16, 15}, false},
        Written{"log 12 15/15x16", "12", {15, 15}, false}, Written{"log 12: 7/8x12", "12", {7, 8}, false}}) {
    CAPTURE(one.line);
    const LogLine log = log_of(one.line);
    CHECK(log.tags == std::vector<std::string>{one.tag});
    REQUIRE(log.measure.has_value());
    CHECK(log.measure->small == inches_of(one.readings));
    const bool doubted = has(said(std::string(one.line) + "\n"), "two readings of one end");
    CHECK(doubted == one.doubted);
    const std::string again = write_line({log, "", {}});
    CHECK(log_of(again) == log);
    CHECK_FALSE(has(said(again + "\n"), "is taken as"));
  }
}

TEST_CASE("a fraction that cannot be two readings of a log is one, and one that could be is told") {
  CHECK(log_of("log 15 1/2x12").measure->small.at(0).count == 15 * 64 + 32);
  CHECK(log_of("log 12 3/4x12").measure->small.at(0).count == 12 * 64 + 48);
  CHECK(log_of("log 12 5/8x12").measure->small.at(0).count == 12 * 64 + 40);
  CHECK(said("log 15 1/2x12\nlog 12 5/16x12\n").empty());
  CHECK(log_of("log 12 7/8x12").measure->small.at(0).count == 12 * 64 + 56);
  CHECK(has(said("log 12 7/8x12\n"),
            "'12 7/8x12' is taken as a log of 12-7/8 in, without a tag; log 12 with two "
            "readings is written 12: 7/8x12"));
  CHECK(log_of("log T1 12 7/8x12").measure->small.at(0).count == 12 * 64 + 56);  // it has its tag
  CHECK(said("log T1 12 7/8x12\n").empty());
}

TEST_CASE("in a metric book a number before two readings is always the tag") {
  const LogLine log = log_of("log 7 30/32x4.8", true);
  CHECK(log.tags == std::vector<std::string>{"7"});
  CHECK(log.measure->small == std::vector<Length>{measure::centimetres(30), measure::centimetres(32)});
  CHECK(log_of("log 7 15/16x4.8", true).measure->small.size() == 2);
}

TEST_CASE("a log thinner than any that is sawn is doubted: 4 in, in a metric book 10 cm") {
  CHECK(has(said("log 2x12\n"), "'2x12': thinner than logs are sawn, 2 in"));
  CHECK(has(said("log 1.9375x12\n"), "thinner than logs are sawn, 1-15/16 in"));
  CHECK(said("log 4x12\n").empty());
  Known metric;
  metric.metric = true;
  CHECK(has(said("log 4.8x3\n", metric), "thinner than logs are sawn, 48mm"));
  CHECK(said("log 10x3\n", metric).empty());
}

TEST_CASE("a tag with a dash that is no rising range is a tag as written") {
  for (const char* tag : {"08-01", "08-08", "26-1041", "T13-9", "T1-U3", "2026-0412", "Y-7"}) {
    CAPTURE(tag);
    CHECK(spread_tags(tag) == std::vector<std::string>{tag});
    CHECK(log_of(std::string("in ") + tag + " 15x12").tags == std::vector<std::string>{tag});
  }
  CHECK(has(said("log T22-T13\n"), "not a range of tags"));  // its letters twice: meant as a range
  CHECK(has(said("log T1 15-12\n"), "a log's measure is written 15x12"));
}

TEST_CASE("a range that could be one log's tag is said to be taken as a range") {
  CHECK(has(said("log 13-22\n"),
            "'13-22' is taken as a range: 13 to 22, 10 logs; a tag of one log is written without "
            "the dash"));
  CHECK(has(said("log T13-22\n"), "'T13-22' is taken as a range: T13 to T22, 10 logs"));
  CHECK_FALSE(has(said("log T13-T22\n"), "taken as a range"));
}

TEST_CASE(
    "a log that came in for one owner and is sawn for another is doubted, in one sheet and from the deck") {
  CHECK(has(said("job JONES\nin J4 15x12\njob own\nlog J4\n"),
            "5: J4: came in for job JONES, and is sawn under job own; put it under job JONES"));
  CHECK_FALSE(has(said("job JONES\nin J4 15x12\nlog J4\n"), "came in for"));
  Known known;
  known.deck["J4"] = KnownLog{log_of("log 15x12").measure.value(), {}};
  known.deck_jobs["j4"] = "JONES";
  CHECK(has(said("job own\nlog J4\n", known), "J4: came in for job JONES, and is sawn under job own"));
  CHECK(has(said("job SMITH\nlog j4 15x12\n", known), "j4: came in for job JONES"));
  CHECK(has(said("job SMITH\nlog J4 left on the mill\n", known), "J4: came in for job JONES"));
  CHECK_FALSE(has(said("log J4\n", known), "came in for"));  // under no job: that is told otherwise
  CHECK_FALSE(has(said("job jones\nlog J4\njob SMITH\nlog J4 15x12\n", known), "came in for"));
  known.owners = {{"jones", "JON"}, {"jones-barn", "JON"}};
  CHECK_FALSE(
      has(said("job JONES-BARN\nlog J4\n", known), "came in for"));  // another job of the same customer
}

TEST_CASE(
    "stops by their length that do not fit between the sawing times are doubted: they are not taken off") {
  CHECK(has(said("run 7:00-12:00\nstop 1:30 carriage broke\n"),
            "3: stops of 1:30 by their length, and no time between the sawing times; sawing by the hour is "
            "billed as its "
            "times are written"));
  CHECK(has(said("run 7:00-10:00 10:20-12:00\nstop 0:15 belt\nstop 0:30 jam\n"),
            "4: stops of 0:45 by their length, and only 0:20 between the sawing times"));
  CHECK(said("run 7:15-10:20 10:56-12:36\nstop 0:36 metal\n").empty());
  CHECK(said("run 7:15-10:20\nrun 10:56-12:36\nstop 0:36 metal\n").empty());
  CHECK(said("run 8:00-10:00\nstop 7:00-8:00 frost\n").empty());
  CHECK(has(said("run 8:00-10:00 11:00-12:00\nstop 10:00-11:00 jam\nstop 0:10 belt\n"), "no time between"));
  CHECK(said("stop 8:00 weather\n").empty());
}

TEST_CASE(
    "a sale or a fill of fuel at a price nobody would pay is doubted, and one that is only dear is not") {
  CHECK(has(said("sold cash 2x6 6/16 at 105\n"),
            "sold at 105 a board foot: dearer than lumber is; a price alone is for "
            "a board foot; write each after it for a piece"));
  CHECK(said("sold cash 2x6 6/16 at 12.50\nsold cash 8x8 1/16 at 105 each\nsold cash bundle B7 at 2400\n")
            .empty());
  CHECK(has(said("fuel 7.3 gal 3.89\n"),
            "fuel at 0.53 a gallon: cheaper than fuel is; the price on the line is what was "
            "paid for all of it"));
  CHECK(has(said("fuel 7.3 gal 4140\n"), "dearer than fuel is"));
  CHECK(said("fuel 7.3 gal 28.40\nfuel 27.6 l 41.40\nfuel 7 gal\n").empty());
  Known crowns;
  crowns.money_scale = 20;
  CHECK(said("sold cash 2x6 6/16 at 105\n", crowns).empty());
}

TEST_CASE("a species or a grade before the size is no part of a buyer's name without a word") {
  CHECK(has(said("sold cash YP 2x6 6/16 at 1\n"),
            "'cash YP': all of it is read as the buyer's name; the buyer alone is cash; a species has its "
            "line above, as "
            "species YP"));
  Known known;
  known.species = {"DF"};
  known.grades = {"No2"};
  known.buyers = {"Anna Berg"};
  CHECK(has(said("sold Ferrin df 2x6 6/16\n", known), "the buyer alone is Ferrin"));
  CHECK(has(said("sold Ferrin No2 2x6 6/16\n", known), "a grade stands after the size, as 2x6 No2 6/16"));
  CHECK(said("sold Anna Berg 2x6 6/16\nsold cash 2x6 6/16\n", known).empty());
}

TEST_CASE("a new hand, saw, cause, buyer or charge is noted, with the known word it is near") {
  Known known;
  known.hands = {"Quill", "Bess"};
  known.saws = {"head"};
  known.causes = {"waiting", "belt"};
  known.tooth_causes = {"metal"};
  known.buyers = {"Ferrin"};
  known.charges = {"metal-strike"};
  known.setups = {"thin", "2"};
  const std::string all = said(
      "crew Quil 9, Bess 9, Odd 4\nstop 0:10 wating\nstop 0:10 frost\nteeth hed replaced 3 mettal\n"
      "sold Ferin 2x6 1/16\ncharge TER metal-stike 1\nsetup thn\nsetup 3\n",
      known);
  CHECK(has(all, "2: hand 'Quil' is new; did you mean Quill?\n"));
  CHECK(has(all, "2: hand 'Odd' is new; \n"));
  CHECK(has(all, "3: stop cause 'wating' is new; did you mean waiting?\n"));
  CHECK(has(all, "4: stop cause 'frost' is new; \n"));
  CHECK(has(all, "5: saw 'hed' is new; did you mean head?\n"));
  CHECK(has(all, "5: tooth cause 'mettal' is new; did you mean metal?\n"));
  CHECK(has(all, "6: buyer 'Ferin' is new; did you mean Ferrin?\n"));
  CHECK(has(all, "7: charge 'metal-stike' is new; did you mean metal-strike?\n"));
  CHECK(has(all, "8: set-up 'thn' is new; did you mean thin?\n"));
  CHECK_FALSE(has(all, "set-up '3'"));
  CHECK_FALSE(has(said("stop 0:10 hydraulics\nteeth edger replaced 2 grit\n", known),
                  "is new"));  // common to all mills
  CHECK_FALSE(has(all, "'Bess'"));
  CHECK(said("crew Quill 9\nstop 0:10 frost\nsold Anna 2x6 1/16\n")
            .empty());  // nothing known: nothing to hold it to
}

TEST_CASE("more lumber than a mill could saw is refused at the largest line, on one line or on many") {
  const auto first = [](const std::string& lines) {
    const ReadSheet got = read_lines(lines);
    return got.found.empty() ? std::string()
                             : std::to_string(got.found.front().place.line) + ": " + got.found.front().what;
  };
  CHECK(has(first("2x6 1/16\n12x12 9999/20\n"),
            "3: with this line the sheet has more lumber than a sheet holds"));
  CHECK(
      said("12x12 9999/20\n") ==
      "2: with this line the sheet has more lumber than a sheet holds, over 1,000,000 bf; look at its sizes, "
      "lengths and pieces\n");
  CHECK(has(first("12x12 99999lf\n"), "2: with this line"));
  CHECK(has(first("sold cash 12x12 9999/20\n"), "2: with this line"));
  CHECK(first("12x12 3000/16\n").empty());  // 576,000 bf
  CHECK(has(first("12x12 3000/16\n12x12 3000/20\n"), "3: with this line"));
}

TEST_CASE("logs read as inches and feet beside boards in millimetres are doubted, and it is said why") {
  const std::string here = said("log K1 32x4.9\n50x150 6/4.8\n");
  CHECK(has(here, "2: "));
  CHECK(has(here, "is read as inches and feet, and the boards are in millimetres; write 32cmx"));
  CHECK(has(here, "or post a mill file with units = \"metric\""));
  Known before;
  before.sizes = {{measure::millimetres(50), measure::millimetres(150), false}};
  CHECK(has(said("log K1 32x4.9\n", before), "is read as inches and feet"));
  CHECK_FALSE(has(said("log K1 32cmx4.9m\n50x150 6/4.8\n"), "is read as inches"));
  CHECK_FALSE(has(said("log K1 15x16\n2x6 6/16\n"), "is read as inches"));
}

TEST_CASE("items with a comma between them are told to be parted, not to have a decimal comma") {
  CHECK(said("2x6 12/8,14/10\n") == "2: '12/8,14/10': several in one word; write 12/8 14/10\n");
  CHECK(said("5/4 rw 7x8,6x8*3\n") == "2: '7x8,6x8*3': several in one word; write 7x8 6x8*3\n");
  CHECK(has(said("2x6 12/8,5\n"), "write a decimal with a point, as 8.5"));
}

TEST_CASE("more hours than a sheet holds are refused where they stand") {
  std::string hours = "crew H 100";
  for (int i = 0; i < 199; ++i) hours += ", H 100";
  CHECK(has(said(hours + "\n"),
            "2: with this line the sheet has more hours than a sheet holds; look at its times"));
}
