// check_test.cpp -- what a sheet is doubted for, and above all what it is not: a tired person must not drown in doubts.
#include <doctest/doctest.h>

#include "sheet/check.h"
#include "sheet/read.h"
#include "sheet/support.h"

using namespace kerfbook;
using namespace kerfbook::sheet;
using measure::feet;

namespace {

/// What is said of a sheet that has nothing wrong in its language.
std::vector<Diagnostic> doubts(const std::string& lines, const Known& known = {},
                               const char* rule = "international-quarter") {
  const std::string text = "sheet 2026-05-05\n" + lines;
  const ReadSheet got = read(text, {known.metric, 2});
  REQUIRE_MESSAGE(got.found.empty(), show_all(got.found, "sheet", text));
  const auto found = check(got.sheet, known, *scaling::find_practice(rule));
  for (const Diagnostic& one : found) CHECK(one.severity != Severity::error);
  return found;
}

/// The one doubt, as "line: what".
std::string doubt(const std::string& lines, const Known& known = {}) {
  const auto found = doubts(lines, known);
  CHECK(found.size() == 1);
  return found.empty() ? "" : std::to_string(found[0].place.line) + ": " + found[0].what;
}

Known known_lengths() {
  Known known;
  for (const int length : {8, 10, 12, 14, 16}) known.lengths.push_back(feet(length));
  return known;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the demo week as corrected is doubted in nothing") {
  for (const char* file : {"2026-05-04.sheet", "2026-05-05.sheet", "2026-05-06.sheet",
                           "corrections/2026-05-07.sheet", "2026-05-08.sheet"}) {
    const std::string text = read_file(std::string("demo_data/") + file);
    const auto found =
        check(read(text).sheet, known_lengths(), *scaling::find_practice("international-quarter"));
    CHECK_MESSAGE(found.empty(), show_all(found, file, text));
  }
}

TEST_CASE("32 typed for 23 on Thursday is doubted on its line, with what 23 would make it") {
  const std::string text = read_file("demo_data/2026-05-07.sheet");
  const auto found =
      check(read(text).sheet, known_lengths(), *scaling::find_practice("international-quarter"));
  REQUIRE(found.size() == 1);
  CHECK(found[0].place == Place{18, 1});
  CHECK(has(found[0].what, "989 bf on 645 bf of log scale"));
  CHECK(found[0].instead == "look again at 2x4 32/16; 23 pieces would be 893 bf");
}

TEST_CASE("a run is weighed against the wood in its logs, so no log rule makes honest sawing doubtful") {
  // 12 logs 10x16 hold 127.7 ft3 (Smalian, 1/8 in taper a foot: 10 and 12 in ends); Doyle scales them 12 x 36 = 432 bf.
  // 60 boards 2x6x16 are 960 bf: 122 % over Doyle, and 7.5 bf a cubic foot. 75 are 1,200 bf: 9.4.
  std::string measured;
  for (int i = 0; i < 12; ++i) measured += "log 10x16\n";
  CHECK(doubts("job A\nspecies DF\n" + measured + "2x6 60/16\n", {}, "doyle").empty());
  CHECK(doubts("job A\nspecies DF\n" + measured + "2x6 75/16\n", {}, "doyle").size() == 1);
}

TEST_CASE("a mill that is known to do better than others is believed") {
  const std::string thursday = read_file("demo_data/2026-05-07.sheet");
  Known known;
  known.best_lrf_hundredths = 950;
  CHECK(check(read(thursday).sheet, known, *scaling::find_practice("international-quarter")).empty());
}

TEST_CASE("no opinion on a run whose logs were not all measured, or that has none") {
  CHECK(doubts("job A\n2x6 400/16\n").empty());
  Known known;
  known.deck["T2"] = std::nullopt;
  CHECK(doubts("job A\nlog T1 10x16\nlog T2\n2x6 400/16\n", known).empty());
}

TEST_CASE(
    "a quarter of what the logs hold asks for the sheet's other side, but not when a log is half-sawn") {
  const std::string logs = "log 16x16\nlog 16x16\nlog 16x16\n";
  CHECK(has(doubt(logs + "2x6 5/16\n"), "only 1.1 bf for each cubic foot"));
  CHECK(doubts(logs + "log T9 16x16 left on the mill\n2x6 5/16\n").empty());
  CHECK(doubts(logs).empty());
}

TEST_CASE("what is taken back off the tally is not weighed") {
  CHECK(doubts("log 10x16\n4x6 4/16\nresaw 4x6 4/16\n1x6 8/16\n").empty());
  CHECK(doubts("log 10x16\n4x6 4/16\n1x6 8/16\n").size() == 1);
}

TEST_CASE("a log larger than usual is doubted where the mill file says nothing, and told what to set") {
  const auto thick = doubts("log T1 61x16\n");
  REQUIRE(thick.size() == 1);
  CHECK(thick[0].what == "'61x16': larger than usual, 60 in");
  CHECK(thick[0].instead ==
        "diameter comes first, then length; if that is usual here, set [capacity] largest_log in the mill "
        "file");
  CHECK(has(doubt("log T1 15x120\n"), "longer than usual, 30 ft"));
  CHECK(doubts("log T1 60x30\n").empty());
  Known metric;
  metric.metric = true;
  CHECK(has(doubt("log T1 151cmx4.8m\n", metric), "larger than usual, 150"));
  CHECK(has(doubt("log T1 40cmx9.3m\n", metric), "longer than usual, 9 m"));
}

TEST_CASE("what the mill file says it takes is the mill's, and is called so") {
  // source: common practice, no source. A large portable mill takes logs to 96 in across and 27.5 ft long, boards of 10 x 12
  // in one pass
  Known large;
  large.largest_log = measure::inches(96);
  large.longest_log = *measure::read_feet("27.5");
  large.thickest_board = measure::inches(10);
  large.widest_board = measure::inches(12);
  large.most_bf_a_day = 10'000;
  CHECK(doubts("log T1 96x27'6\"\n10x12 1/16\n12x10 1/16\n", large).empty());
  const auto thick = doubts("log T1 100x16\n", large);
  REQUIRE(thick.size() == 1);
  CHECK(thick[0].what == "'100x16': larger than the mill takes, 96 in");
  CHECK(thick[0].instead == "diameter comes first, then length");
  CHECK(has(doubt("log T1 15x28\n", large), "longer than the mill takes, 27 ft 6 in"));
  CHECK(has(doubt("12x12 1/16 2/12\n12x12 3/10\n", large), "larger than the mill cuts in one pass, 10x12"));
  CHECK(doubts("2x12 310/16\n", large).empty());
  CHECK(has(doubt("2x6 10/16\n2x12 320/16\n", large),
            "3: the day tallies 10,400 bf, more than the mill saws in a day, 10,000 bf"));
}

TEST_CASE("a board larger than usual is doubted, whichever way it is written, once a size") {
  CHECK(has(doubt("14x14 1/16 2/12\n14x14 3/10\n"), "larger than usual, 12x24"));
  CHECK(doubts("14x14 1/16 2/12\n14x14 3/10\n").size() == 1);
  CHECK(doubts("12x24 1/16\n24x12 1/16\n").empty());
}

TEST_CASE("a kerf wider than usual is doubted, 0.4 in or in a metric book 10 mm") {
  CHECK(has(doubt("setup 1 kerf 0.5\n"), "2: a kerf of 0.500: wider than usual, 0.400"));
  CHECK(doubts("setup 1 kerf 0.313\n")
            .empty());  // 5/16 in, of inserted teeth; source: common practice, no source
  Known metric;
  metric.metric = true;
  CHECK(doubts("setup 1 kerf 7.1\n", metric).empty());
  CHECK(has(doubt("setup 1 kerf 10.5\n", metric), "wider than usual, 10.00"));
}

TEST_CASE("a day that tallies more than usual is doubted at its largest item") {
  CHECK(doubts("2x12 240/16\n").empty());
  CHECK(has(doubt("2x6 10/16\n2x12 320/16\n"), "3: the day tallies 10,400 bf, more than usual, 8,000 bf"));
}

TEST_CASE("a board longer than any log of its run is doubted, and turned round when that makes sense") {
  const auto found = doubts("log T1 20x16\nlog T2 20x16\n2x6 16/24 3/16 10/12\n");
  REQUIRE(found.size() == 1);
  CHECK(has(found[0].what, "'16/24': longer than any log of this run, 16 ft"));
  CHECK(found[0].instead == "pieces come first; were 24 pieces of 16 ft meant, write 24/16");
  CHECK(doubts("log T1 16x18\n2x6 2/18\n").empty());
}

TEST_CASE("an unusual length never cut before is doubted once a sheet, and only when lengths are known") {
  CHECK(doubts("2x6 3/18 1/6\n50x150 2/4.8\n", known_lengths()).size() ==
        1);  // the two systems, and no length
  CHECK(doubts("2x6 3/16'6\"\n", known_lengths()).size() == 1);
  CHECK(has(doubt("2x6 3/11 5/16\n2x8 1/11\n", known_lengths()),
            "2: '3/11': no board of 11 ft was tallied before"));
  CHECK(doubts("2x6 3/11\n").empty());
}

TEST_CASE("inches and millimetres within a job are doubted, in two jobs they are not") {
  CHECK(has(doubt("job A\n2x6 3/16\n50x150 3/4.8\n"),
            "'50x150' is read as millimetres, the sizes before it as inches"));
  CHECK(doubts("job A\n2x6 3/16\njob B\n50x150 3/4.8\n").empty());
}

TEST_CASE("a line that stands twice in a run is doubted when it has more than one item") {
  CHECK(has(doubt("2x6 3/16 4/12\n2x8 1/16\n2x6 3/16 4/12\n"), "4: the same line stands above"));
  CHECK(doubts("2x6 3/16\n2x6 3/16\n").empty());
  CHECK(doubts("job A\n2x6 3/16 4/12\njob B\n2x6 3/16 4/12\n").empty());
}

TEST_CASE("a caliper far from the board's size is doubted once a line") {
  CHECK(has(doubt("thick 2x6 2.02 20.1 20.2\n"), "20.100: far from the thickness of 2x6"));
  CHECK(doubts("thick 2x6 1.62 1.61\n").empty());
  CHECK(doubts("thick 50x150 51.2 50.8\n").empty());
}

TEST_CASE("a log is sawn once, in the sheet and in the year before it") {
  Known known;
  known.sawn_tags = {"T1"};
  CHECK(has(doubt("log T1 15x12\n", known), "T1: sawn already"));
  CHECK(has(doubt("log T2 15x12\nlog t2 15x12\n"), "3: t2: sawn already"));
  CHECK(has(doubt("log T1\n", known), "T1: sawn already"));
  CHECK(doubts("log T3 15x12 left on the mill\nlog T3\n").empty());
}

TEST_CASE("a tag that nothing has measured is said to have no scale, once a line") {
  CHECK(has(doubt("log T1-T7\n"), "T1, T2, T3, T4, T5 and 2 more: no measure of these logs is known"));
  CHECK(doubts("in T1 15x12\nlog T1\n").empty());
  Known known;
  known.deck["T1"] = std::nullopt;
  CHECK(doubts("log T1\n", known).empty());
}

TEST_CASE("a defect written down when the log was received and again when it was sawn is doubted") {
  const std::string again = "'defect 15bf rot': written down of T1 before, and now comes off twice";
  CHECK(has(doubt("in T1 15x12 defect 15bf rot\nlog T1 defect 15bf rot\n"), "3: " + again));
  Known known;
  const Sheet received = read("sheet 2026-05-04\nin T1 15x12 defect 15bf rot\n").sheet;
  const auto& log = std::get<LogLine>(received.lines[0].fact);
  known.deck["T1"] = KnownLog{*log.measure, log.defects};
  CHECK(has(doubt("log T1 defect 15bf rot\n", known), "2: " + again));
  CHECK(doubts("log T1 defect 15bf sweep\n", known).empty());
  CHECK(doubts("log T1 defect 20bf rot\n", known).empty());
  CHECK(doubts("log T2 15x12 defect 15bf rot\nlog T3 15x12 defect 15bf rot\n", known).empty());
}

TEST_CASE("a defect found in sawing is in the scale a run is held against") {
  // 15x12 is 115 bf by International 1/4; 115 - 15 - 20 = 80
  const auto found = doubts("in T1 15x12 defect 15bf rot\nlog T1 defect 20bf shake\n2x6 20/12\n");
  REQUIRE(found.size() == 1);
  CHECK(has(found[0].what, "on 80 bf of log scale"));
}

TEST_CASE("a board's length in tenths of a foot is read, and doubted: it may have been feet and inches") {
  const auto found = doubts("2x6 5/16.4 2/16.5 3/12.25\n2x8 1/16.4\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0].what == "'5/16'4-51/64\"': a length finer than boards are cut to");
  CHECK(found[0].instead == "if feet and inches were meant, write 5/16'4\"");
  CHECK(doubts("2x6 5/16.11\n")[0].instead == "if feet and inches were meant, write 5/16'11\"");
  CHECK(doubts("2x6 5/16.33\n")[0].instead.empty());
  CHECK(doubts("log 15x16.4\n1x3 212.4lf\n").empty());
}

TEST_CASE("a board longer than logs usually are is doubted without a log too: metres read for feet") {
  CHECK(has(doubt("50x150 24/16\n"), "'24/16m': longer than usual, 30 ft"));
  CHECK(doubts("job A\n50x150 24/4.8\njob B\n1x3 212lf\n").empty());
}

TEST_CASE("a stop that speaks of charging and is not marked so is doubted: it would not be billed") {
  const std::string not_charged = " is read as part of the text, and the stop is not charged";
  CHECK(has(doubt("stop 0:45 waiting charge\n"), "'charge'" + not_charged));
  CHECK(has(doubt("stop 0:45 waiting, charged\n"), "'charged'" + not_charged));
  CHECK(has(doubt("stop 0:45 waiting ; charge him\n"), "'charge'" + not_charged));
  CHECK(doubts("job TER\nstop 0:45 waiting, charge ; charge as agreed\n").empty());
  CHECK(doubts("stop 0:45 waiting ; no charge\nstop 0:10 belt not charged\n").empty());
}

TEST_CASE("a day still to come is doubted, and one that fits in with the others but for its year") {
  Known known;
  known.today = make_day(2026, 5, 4);
  const auto future = doubts("job A\n", known);
  REQUIRE(future.size() == 1);
  CHECK(future[0].what == "2026-05-05: a day still to come, today is 2026-05-04");
  known.today = make_day(2027, 5, 8);
  known.newest_day = make_day(2027, 5, 4);
  const auto year = doubts("job A\n", known);
  REQUIRE(year.size() == 1);
  CHECK(year[0].instead == "was 2027-05-05 meant?");
  known.has_neighbours = true;
  CHECK(doubts("job A\n", known).empty());
  known.has_neighbours = false;
  known.newest_day = make_day(2027, 8, 4);
  const auto far = doubts("job A\n", known);
  REQUIRE(far.size() == 1);
  CHECK(far[0].what == "2026-05-05: far from every other sheet of the book and from today");
  known.today = make_day(2026, 9, 1);
  CHECK(doubts("job A\n", known).empty());
  known.newest_day = make_day(2026, 1, 5);
  CHECK(doubts("job A\n", known).empty());
}

TEST_CASE("nobody works more than 24 hours in a day") {
  CHECK(has(doubt("crew Quill 90, Bess 9\n"), "Quill has 90:00 hours on one day"));
  CHECK(has(doubt("crew Quill 20\ncrew quill 5 office\n"), "3: quill has 25:00"));
  CHECK(doubts("crew Quill 12\ncrew Quill 5 office\n").empty());
}

TEST_CASE("sawing times that overlap, or stand before those above by a clock of twelve hours, are doubted") {
  CHECK(has(doubt("run 7:00-9:00 8:30-10:00\n"), "'8:30-10:00' overlaps 7:00-9:00"));
  CHECK(has(doubt("run 7:00-9:00\nrun 8:30-10:00\n"), "3: "));
  const auto found = doubts("run 7:15-11:50 1:00-3:30\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0].instead == "the afternoon is written 13:00-15:30");
  CHECK(doubts("run 22:00-23:30 0:15-3:00\n").empty());
  CHECK(doubts("run 7:00-9:00 9:00-10:00\n").empty());
}

TEST_CASE("more sawing than anyone's hours is doubted, with the longest stretch") {
  CHECK(has(doubt("crew Quill 9, Bess 8\nrun 7:15-12:00 12:50-2:05\n"),
            "sawing adds up to 18:00, more than anyone's hours, 9:00"));
  CHECK(doubts("crew Quill 9\nrun 7:00-16:00\n").empty());
}

TEST_CASE("a stop inside a sawing time is doubted, and stops that do not fit in a day") {
  CHECK(has(doubt("run 12:50-15:10\nstop 14:05-14:35 belt\n"),
            "the stop 14:05-14:35 lies within the sawing time 12:50-15:10"));
  CHECK(doubts("run 12:50-14:05 14:35-15:10\nstop 14:05-14:35 belt\n").empty());
  CHECK(
      has(doubt("stop 20:00 engine\nstop 5:00 waiting\n"), "3: stops and sawing add up to more than a day"));
}

TEST_CASE("a meter that runs back, or a whole day on, is doubted") {
  CHECK(has(doubt("meter 1854.6\nmeter 1848.4\n"), "the meter reads 1848.4 after 1854.6"));
  CHECK(doubts("meter 1842.6\nmeter 1849.4\n").empty());
  CHECK(doubts("meter 1842.6\nmeter 1894.4\n").size() == 1);
}

TEST_CASE("a word near a known one is noted once, a word that is merely new is not") {
  Known known;
  known.species = {"DF", "WH"};
  known.grades = {"No2", "Sel"};
  known.jobs = {"TER"};
  known.sites = {"Tervane farm"};
  known.saws = {"head", "edger"};
  CHECK(has(doubt("species DG\nspecies WH\nspecies DG\n", known), "2: species 'DG' is new"));
  CHECK(doubts("species RC\nspecies df\n", known).empty());
  CHECK(doubts("job TER\n2x6 No3 1/16\n", known).empty());
  CHECK(has(doubt("job TER\n2x6 Sle 1/16\n2x6 sle 2/16\n", known), "3: grade 'Sle' is new"));
  CHECK(has(doubt("job TRE\n", known), "job 'TRE' is new"));
  CHECK(has(doubt("job TERR\n", known), "job 'TERR' is new"));
  CHECK(doubts("job own\n", known).empty());
  CHECK(has(doubt("site Tervan farm\n", known), "site 'Tervan farm'"));
  CHECK(has(doubt("teeth hed touched-up\n", known), "saw 'hed'"));
}

TEST_CASE("a size turned round is noted when only the other way is known") {
  Known known;
  known.sizes = {{measure::inches(2), measure::inches(6), false}};
  const auto found = doubts("6x2 1/16\n", known);
  REQUIRE(found.size() == 1);
  CHECK(found[0].instead == "did you mean 2x6? Thickness comes first");
  CHECK(doubts("2x8 1/16\n", known).empty());
}

TEST_CASE("teeth changed for a log that is not of the sheet are noted") {
  CHECK(has(doubt("log T17 15x12\nteeth head replaced 3 metal T71\n"), "no log of this sheet is 'T71'"));
  CHECK(doubts("teeth head replaced 3 metal T71\n").empty());
}
