// read_test.cpp -- what each line of a day sheet is read as, and how freely it may be typed.
#include <doctest/doctest.h>

#include <set>

#include "sheet/facts.h"
#include "sheet/read.h"
#include "sheet/support.h"
#include "sheet/write.h"

using namespace kerfbook;
using namespace kerfbook::sheet;
using measure::feet;
using measure::inches;

namespace {

Sheet sheet_of(const std::string& lines, const ReadOptions& options = {}) {
  const std::string text = "sheet 2026-05-05\n" + lines;
  const ReadSheet got = read(text, options);
  CHECK_MESSAGE(got.found.empty(), show_all(got.found, "sheet", text));
  return got.sheet;
}

/// The one fact of a one-line sheet.
template <class T>
T fact_of(const std::string& line, const ReadOptions& options = {}) {
  const Sheet sheet = sheet_of(line + "\n", options);
  REQUIRE(sheet.lines.size() == 1);
  REQUIRE(std::holds_alternative<T>(sheet.lines[0].fact));
  return std::get<T>(sheet.lines[0].fact);
}

Size size(int thickness, int width) {
  return {inches(thickness), inches(width), false};
}
Length half(int whole) {
  return {whole * measure::kPerInch + measure::kPerInch / 2, measure::System::inch};
}

}  // namespace

TEST_CASE("the sheet of the design reads whole and prints aligned") {
  const std::string text = read_file("tests/sheet/sample.sheet");
  const ReadSheet got = read(text);
  CHECK(show_all(got.found, "sample.sheet", text).empty());
  CHECK(write(got.sheet) == read_file("tests/sheet/sample.written"));
  CHECK(read(write(got.sheet)).sheet == got.sheet);
}

TEST_CASE("pieces stand before the length: 24/16 is 24 pieces of 16 ft") {
  const auto tally = fact_of<Tally>("2x6 sel 24/16 1/12");
  CHECK(tally.size == size(2, 6));
  CHECK(tally.grade == "sel");
  CHECK(tally.items == std::vector<Tally::Item>{{24, feet(16)}, {1, feet(12)}});
}

TEST_CASE("a size with a length takes pieces alone") {
  CHECK(fact_of<Tally>("2x8x16 4") == fact_of<Tally>("2x8 4/16"));
  CHECK(fact_of<Tally>("2x8x16'6\" No2 4") == fact_of<Tally>("2x8 No2 4/16'6\""));
}

TEST_CASE("a hardwood grade may begin with a digit, and a length with a unit is no grade") {
  CHECK(fact_of<Tally>("5/4x6 2A 3/8").grade == "2A");
  CHECK(fact_of<Tally>("5/4x6 1F 3/8").grade == "1F");
  CHECK(has_error(read("sheet 2026-05-05\n2x6 16ft\n").found));
}

TEST_CASE("random widths count a piece each unless a star says more") {
  const auto tally = fact_of<RandomTally>("5/4 rw fas 7-1/2x8 9x10 6x8*3");
  CHECK(tally.quarters);
  CHECK(tally.thickness.count == 80);
  CHECK(tally.boards == std::vector<RandomTally::Board>{
                            {half(7), feet(8), 1}, {inches(9), feet(10), 1}, {inches(6), feet(8), 3}});
}

TEST_CASE("lineal feet may be written with a blank, and lineal metres say so") {
  CHECK(fact_of<LinealTally>("1x3 212 lf").total == feet(212));
  CHECK(fact_of<LinealTally>("1x3 warped 212LF").grade == "warped");
  CHECK(fact_of<LinealTally>("25x75 64.5lm").total == Length{645'000, measure::System::metric});
}

TEST_CASE("less and resaw take any form of tally, and less a reason") {
  CHECK(fact_of<Tally>("less 2x6 1/16 split").reason == "split");
  CHECK(fact_of<Tally>("less 2x6 1/16").sense == Sense::less);
  CHECK(fact_of<Tally>("resaw 4x6x12 2").sense == Sense::resaw);
  CHECK(fact_of<LinealTally>("less 1x3 12lf broken in stacking").reason == "broken in stacking");
  CHECK(fact_of<RandomTally>("less 4/4 rw 6x8*2 wane on both").reason == "wane on both");
}

TEST_CASE("a yard sale holds its buyer, its pieces and its price") {
  const auto sold = fact_of<Sold>("sold Ann Orr 2x6 No2 6/16 1/12 at $1.05");
  CHECK(sold.buyer == "Ann Orr");
  CHECK(sold.grade == "No2");
  CHECK(sold.items.size() == 2);
  CHECK(sold.price == Rational(105, 100));
  CHECK(!fact_of<Sold>("sold cash 2x6x16 6").price);
  CHECK(sold.by == SoldBy::board_foot);
}

TEST_CASE("a yard sale may be by the piece, of a length not counted, or of a whole bundle") {
  const auto each = fact_of<Sold>("sold cash 4x4x8 12 at 9.50 each");
  CHECK(each.by == SoldBy::piece);
  CHECK(each.price == Rational(19, 2));
  const auto battens = fact_of<Sold>("sold Ann Orr 1x3 No2 212 lf at 0.35 lf");
  CHECK(battens.lineal == feet(212));
  CHECK(battens.items.empty());
  CHECK(battens.by == SoldBy::lineal_foot);
  const auto bundle = fact_of<Sold>("sold Ann Orr bundle B7 at 240");
  CHECK(bundle.buyer == "Ann Orr");
  CHECK(bundle.bundle == "B7");
  CHECK(bundle.price == Rational(240));
  CHECK(!fact_of<Sold>("sold cash bundle B7").price);
}

TEST_CASE("a log is a small end by a length, with all that may follow") {
  const auto log = fact_of<LogLine>(
      "log T20 12/13-15x16'6\" mid 13.5 girth 44 segments 12, 14 defect 15bf rot at the butt defect 10%");
  CHECK(log.tags == std::vector<std::string>{"T20"});
  CHECK(log.measure->small == std::vector<Length>{inches(12), inches(13)});
  CHECK(log.measure->large == std::vector<Length>{inches(15)});
  CHECK(log.measure->length == Length{16 * 768 + 384, measure::System::inch});
  CHECK(log.measure->mid == std::vector<Length>{half(13)});
  CHECK(log.measure->girth == inches(44));
  CHECK(log.measure->segments == std::vector<Length>{inches(12), inches(14)});
  REQUIRE(log.defects.size() == 2);
  CHECK(log.defects[0].reason == "rot at the butt");
  CHECK(log.defects[1].kind == scaling::DefectKind::percent);
}

TEST_CASE("a log needs no tag, and a received one may say where it is from") {
  CHECK(fact_of<LogLine>("log 15x12").tags.empty());
  const auto in = fact_of<LogLine>("in A7 15x12 defect 5% from the creek lot");
  CHECK(in.received);
  CHECK(in.origin == "the creek lot");
  CHECK(in.defects[0].reason.empty());
}

TEST_CASE("known logs are sawn by tag or range, and a half-sawn one is left on the mill") {
  CHECK(fact_of<LogLine>("log T13-T22 T30").tags == std::vector<std::string>{"T13-T22", "T30"});
  CHECK(fact_of<LogLine>("log 13 14 15").tags.size() == 3);
  const auto left = fact_of<LogLine>("log T22 left on the mill");
  CHECK(left.left_on_mill);
  CHECK(left.tags == std::vector<std::string>{"T22"});
  CHECK(fact_of<LogLine>("log T22 15x12 defect 10% left side left on mill").defects[0].reason == "left side");
}

TEST_CASE("of a log received earlier a defect found in sawing is written beside its tag") {
  const auto log = fact_of<LogLine>("log T13 defect 15bf rot defect 2' left on the mill");
  CHECK(log.tags == std::vector<std::string>{"T13"});
  CHECK_FALSE(log.measure);
  REQUIRE(log.defects.size() == 2);
  CHECK(log.defects[0].reason == "rot");
  CHECK(log.defects[1].length == feet(2));
  CHECK(log.left_on_mill);
  CHECK(write_line({log, "", {}}) == "log     T13 defect 15bf rot defect 2' left on the mill");
  CHECK(fact_of<LogLine>("log 13 defect 10%").tags == std::vector<std::string>{"13"});
}

TEST_CASE("lengths are read in tenths of a foot, to the nearest 1/64 in") {
  CHECK(fact_of<LogLine>("log 15x16.4").measure->length == Length{16 * 768 + 307, measure::System::inch});
  CHECK(fact_of<Tally>("2x6 5/16.5").items[0].length == fact_of<Tally>("2x6 5/16'6").items[0].length);
  CHECK(fact_of<LinealTally>("1x3 212.4lf").total == Length{212 * 768 + 307, measure::System::inch});
  CHECK(write_line({fact_of<LogLine>("log T1 15x16.4 defect 2.4' rot"), "", {}}) ==
        "log     T1 15x16.4 defect 2.4' rot");
}

TEST_CASE("crew hours are hours, clock hours or spans, with an activity") {
  const auto crew = fact_of<Crew>("crew Quill 9.5, Bess 8:30 stacking, Ann Lee 7:00-12:00, 13:00-16:30");
  REQUIRE(crew.hands.size() == 3);
  CHECK(crew.hands[0].minutes == 570);
  CHECK(crew.hands[1].activity == "stacking");
  CHECK(crew.hands[2].name == "Ann Lee");
  CHECK(crew.hands[2].minutes == 510);
}

TEST_CASE("a shift may cross midnight") {
  CHECK(fact_of<Sawing>("run 22:00-1:30").spans[0].minutes() == 210);
}

TEST_CASE("a stop has a time or a span, a cause, and may be charged to the job or another") {
  const auto stop = fact_of<Stop>("stop 0:36 metal staple in T17, 3 teeth, charge QHH");
  CHECK(stop.minutes == 36);
  CHECK(stop.cause == "metal");
  CHECK(stop.text == "staple in T17, 3 teeth");
  CHECK(stop.charge);
  CHECK(stop.job == "QHH");
  CHECK(fact_of<Stop>("stop 14:05-14:35 belt").minutes == 30);
  CHECK(fact_of<Stop>("stop 45min waiting, charge").cause == "waiting");
  CHECK(fact_of<Stop>("stop 1.5 weather hail").minutes == 90);
}

TEST_CASE(
    "a line of sawing, a stop, teeth, a blade and a move may name their own job at the end, after a comma") {
  CHECK(fact_of<Sawing>("sawing 7:00-9:00 10:00-11:00, job QHH").job == "QHH");
  CHECK(fact_of<Sawing>("sawing 7:00-9:00 ,job QHH").job == "QHH");
  CHECK(fact_of<Sawing>("sawing 7:00-9:00, 10:00-11:00 job Own").job == "own");
  CHECK(fact_of<Move>("move farm to yard 46 mi 3:45, job TER").job == "TER");
  CHECK(fact_of<Move>("move farm to yard 46 mi, job TER").minutes == 0);
  const auto teeth = fact_of<Teeth>("teeth head replaced 3 metal T17, job TER");
  CHECK(teeth.log == "T17");
  CHECK(teeth.job == "TER");
  CHECK(fact_of<Teeth>("blade head changed, job TER").job == "TER");
  const auto stop = fact_of<Stop>("stop 0:36 metal staple, charge, job QHH");
  CHECK(stop.charge);
  CHECK(stop.text == "staple");
  CHECK(stop == fact_of<Stop>("stop 0:36 metal staple, charge QHH"));
  CHECK(stop == fact_of<Stop>("stop 0:36 metal staple, job QHH, charge"));
  CHECK(fact_of<Stop>("stop 0:36 metal, job QHH").charge == false);
  CHECK(fact_of<Stop>("stop 0:36 metal,,, staple, charge").cause == "metal");  // commas too many
  CHECK(fact_of<Stop>("stop 0:36 metal, staple, job QHH,, charge").job == "QHH");
}

TEST_CASE("the word job within a text is part of the text") {
  CHECK(fact_of<Stop>("stop 1:00 waiting for the next job TER").job.empty());
  CHECK(fact_of<Stop>("stop 1:00 waiting, job was not ready").text == "job was not ready");
  CHECK(fact_of<Teeth>("teeth head replaced 3 metal T17 found on the job").job.empty());
}

TEST_CASE("times are read as people write them: 0715, 7h15, 1h30, 36 min, 9 hours") {
  const std::vector<Span> morning{{435, 620}};
  CHECK(fact_of<Sawing>("run 0715-1020").spans == morning);
  CHECK(fact_of<Sawing>("run 7h15-10h20").spans == morning);
  CHECK(fact_of<Sawing>("run 7:15 – 10:20").spans == morning);
  CHECK(fact_of<Stop>("stop 1h30 belt").minutes == 90);
  const auto stop = fact_of<Stop>("stop 36 min metal staple, charge");
  CHECK(stop.minutes == 36);
  CHECK(stop.cause == "metal");
  CHECK(stop.charge);
  const auto crew = fact_of<Crew>("crew Quill 9 hours, Bess 8h30 stacking");
  CHECK(crew.hands[0].minutes == 540);
  CHECK(crew.hands[0].activity.empty());
  CHECK(crew.hands[1].minutes == 510);
  CHECK(fact_of<Move>("move farm to yard 46 miles 3h45").minutes == 225);
}

TEST_CASE(
    "commas and colons between a size, its grade and its pieces say nothing, but a reason keeps its own") {
  const auto plain = fact_of<Tally>("2x6 No2 24/16 3/12");
  CHECK(fact_of<Tally>("2x6: No2, 24/16, 3/12") == plain);
  CHECK(fact_of<Tally>("2x6, No2 24/16, 3/12,") == plain);
  CHECK(fact_of<Tally>("2x6 No2 24/16 ft 3/12 ft") == plain);
  CHECK(fact_of<Tally>("less 2x6 1/16 split, end to end").reason == "split, end to end");
  CHECK(fact_of<Tally>("less 2x6 sel, 1/16, 2/12 split by 3, 4 T17, 5 left").reason ==
        "split by 3, 4 T17, 5 left");
  CHECK(fact_of<RandomTally>("less 4/4 rw sel, 1x4, 2x5 oak 3\" T17, 3\"").reason == "oak 3\" T17, 3\"");
  CHECK(fact_of<Thick>("thick 2x6 2.02, 2.00, 1.98") == fact_of<Thick>("thick 2x6 2.02 2.00 1.98"));
  CHECK(fact_of<LogLine>("log T1, T2, T3").tags == std::vector<std::string>{"T1", "T2", "T3"});
  CHECK(fact_of<LogLine>("log T1: 15x12").tags == std::vector<std::string>{"T1"});
  CHECK(fact_of<LogLine>("log T1 15x12 segments 12, 14").measure->segments.size() == 2);
}

TEST_CASE("feet and inches may be written apart, and calipers in fractions") {
  CHECK(fact_of<Tally>("2x6 24/16' 6\" 3/12") == fact_of<Tally>("2x6 24/16'6\" 3/12"));
  CHECK(fact_of<LogLine>("log T1 15x16' 6\"") == fact_of<LogLine>("log T1 15x16'6\""));
  CHECK(fact_of<Tally>("2x6 24/16' 3/12'").items.size() == 2);
  CHECK(fact_of<Thick>("thick 2x6 2-1/16 2-1/32").readings == std::vector<std::int64_t>{2063, 2031});
}

TEST_CASE("8.30 is hours and hundredths, and doubted, for half past may have been meant") {
  const ReadSheet got =
      read("sheet 2026-05-05\ncrew Quill 8.30, Bess 8.5, Ann 8.25\nstop 0.36 metal\nstop .33 belt\n");
  REQUIRE(got.found.size() == 2);
  CHECK(got.found[0].severity == Severity::warning);
  CHECK(got.found[0].what == "'8.30' is read as hours and hundredths, 8:18");
  CHECK(got.found[0].instead == "if minutes were meant, write 8:30");
  CHECK(got.found[1].instead == "if minutes were meant, write 0:36");
}

TEST_CASE("work on teeth names the saw, what was done, how many, why and in which log") {
  const auto teeth = fact_of<Teeth>("teeth head replaced 3 metal T17 a fence staple");
  CHECK(teeth.action == ToothAction::replaced);
  CHECK(teeth.count == 3);
  CHECK(teeth.cause == "metal");
  CHECK(teeth.log == "T17");
  CHECK(teeth.text == "a fence staple");
  CHECK(fact_of<Teeth>("teeth edger full set 22").action == ToothAction::full_set);
  CHECK(fact_of<Teeth>("teeth head touched up").action == ToothAction::touched_up);
  CHECK(fact_of<Teeth>("teeth head replaced 1 - - 2 more are loose").text == "2 more are loose");
}

TEST_CASE("teeth sharpened or filed are touched up") {
  CHECK(fact_of<Teeth>("teeth head sharpened") == fact_of<Teeth>("teeth head touched-up"));
  CHECK(fact_of<Teeth>("teeth edger filed 4") == fact_of<Teeth>("teeth edger touched-up 4"));
}

TEST_CASE("a blade changed whole has a line of its own and counts no teeth") {
  const auto blade = fact_of<Teeth>("blade head changed metal T17 bent by a fence post");
  CHECK(blade.action == ToothAction::changed);
  CHECK_FALSE(blade.count);
  CHECK(blade.cause == "metal");
  CHECK(blade.log == "T17");
  CHECK(blade.text == "bent by a fence post");
  CHECK(fact_of<Teeth>("blade edger hammered").action == ToothAction::tensioned);
  CHECK(write_line(sheet_of("blade head replaced dull\n").lines[0]) == "blade   head changed dull");
  const ReadSheet old = read("sheet 2026-05-05\nteeth head swapped 22 wear\n");  // as it was once written
  REQUIRE(old.found.size() == 1);
  CHECK(old.found[0].what == "'22': the blade has no number of teeth, and it is left out");
  CHECK(old.found[0].severity == Severity::warning);
  CHECK(write_line(old.sheet.lines[0]) == "blade   head changed wear");
}

TEST_CASE("sawing time is also read by the word it once had, and written by its own") {
  CHECK(fact_of<Sawing>("run 7:15-10:20") == fact_of<Sawing>("sawing 7:15-10:20"));
  CHECK(write_line(sheet_of("RUN 7:15-10:20\n").lines[0]) == "sawing  7:15-10:20");
}

TEST_CASE("set-up, thickness, charge, meter, fuel and move keep their figures exactly") {
  const auto setup = fact_of<Setup>("setup 2 kerf 0.266 over 0.05 blade squared");
  CHECK(setup.kerf_mils == 266);
  CHECK(setup.over_mils == 50);
  CHECK(setup.text == "blade squared");
  CHECK(fact_of<Setup>("setup 2 kerf 7/32 over 1/16").kerf_mils == 219);
  const auto all = fact_of<Setup>(
      "setup 3 edger 0.24 lead 1/16 kerf 1/4 third 0.2 feed 55.5 zero -1/32 tooth chrome lead checked twice");
  CHECK(all.kerf_mils == 250);
  CHECK(all.edger_mils == 240);
  CHECK(all.third_mils == 200);
  CHECK(all.lead_mils == 63);
  CHECK(all.zero_mils == -31);
  CHECK(all.feed == Rational(111, 2));
  CHECK(all.tooth == "chrome");
  CHECK(all.text == "lead checked twice");
  CHECK(fact_of<Setup>("setup 3 edger squared to the bed").text == "edger squared to the bed");
  CHECK(fact_of<Residue>("residue dust 2.5yd3 to the dairy") ==
        Residue{"sawdust", Rational(5, 2), measure::HeapUnit::cubic_yard, "to the dairy"});
  const auto metric_faults =
      read("sheet 2026-05-05\nsetup 2 feed 0\nsetup 2 zero 1ft\nsetup 2 kerf 700\nsetup 2 lead x\n",
           {.metric = true})
          .found;
  std::string said;
  for (const auto& one : metric_faults) said += one.what + "; " + one.instead + "\n";
  CHECK(said.find("'0': not a feed in metres a minute; write it as feed 17") != std::string::npos);
  CHECK(said.find("write zero 0.8 or -0.8") != std::string::npos);
  CHECK(said.find("'700': not a measure in millimetres for kerf; write kerf 7.1") != std::string::npos);
  CHECK(fact_of<Residue>("residue slabs 1 cord").unit == measure::HeapUnit::cord);
  CHECK(fact_of<Residue>("residue Chips 3 m3").unit == measure::HeapUnit::cubic_metre);
  CHECK(fact_of<Residue>("residue bark 40 ft3").kind == "bark");
  CHECK(fact_of<Thick>("thick 2x6 2.02 2.005").readings == std::vector<std::int64_t>{2020, 2005});
  const auto charge = fact_of<Charge>("charge QHH bundling 2.5 stacked and banded");
  CHECK(charge.quantity == Rational(5, 2));
  CHECK(charge.text == "stacked and banded");
  CHECK(fact_of<Charge>("charge TER metal-strike").quantity == Rational(1));
  CHECK(fact_of<Meter>("meter 1854.6").tenths == 18'546);
  CHECK(fact_of<Fuel>("fuel 27.6l 41.40").price_minor == 4140);
  CHECK(fact_of<Fuel>("fuel 7.3 gallons").quantity == Rational(73, 10));
  const auto move = fact_of<Move>("move Tervane farm to the yard 46 mi 3:45");
  CHECK(move.from == "Tervane farm");
  CHECK(move.to == "the yard");
  CHECK(move.distance == Rational(46));
  CHECK(move.minutes == 225);
  CHECK(fact_of<Move>("move yard to mill 12.5km").unit == DistanceUnit::kilometre);
}

TEST_CASE("case, blanks and tabs, CRLF and a byte-order mark make no difference") {
  const Sheet plain =
      read("sheet 2026-05-05\njob own\n2x6 sel 24/16\nstop 0:36 metal staple, charge\n").sheet;
  CHECK(read("\xEF\xBB\xBFSHEET\t2026-05-05\r\nJob   OWN\r\n2X6\tsel  24/16  \r\nStop 0:36 metal  staple , "
             "CHARGE\r\n")
            .sheet == plain);
  CHECK(read("sheet 2026-05-05\njob own\n2x6 sel 24/16\nstop 0:36 metal staple, charge").sheet == plain);
}

TEST_CASE("typographic marks are read as they are meant") {
  CHECK(fact_of<Tally>("2×6 24/16′ 3/12′6″") == fact_of<Tally>("2x6 24/16' 3/12'6\""));
  CHECK(fact_of<RandomTally>("5/4 rw 7½x8 6¼×10") == fact_of<RandomTally>("5/4 rw 7-1/2x8 6-1/4x10"));
  CHECK(fact_of<Tally>("1⅛x4 2/16½").items[0].length == Length{16 * 768 + 384, measure::System::inch});
  CHECK(fact_of<LogLine>("log 12½–15½x16") == fact_of<LogLine>("log 12.5-15.5x16"));
  CHECK(fact_of<Sawing>("run 7:15–10:20") == fact_of<Sawing>("run 7:15-10:20"));
  CHECK(fact_of<Site>("site O’Brien’s – 3″ lot").name == "O’Brien’s – 3″ lot");
}

TEST_CASE("sizes, pieces and spans may be written with blanks in them") {
  CHECK(fact_of<Tally>("2 x 6 24 / 16 3 /12") == fact_of<Tally>("2x6 24/16 3/12"));
  CHECK(fact_of<Tally>("1 1/8 x 4 2/16") == fact_of<Tally>("1-1/8x4 2/16"));
  CHECK(fact_of<RandomTally>("5/4 rw 6 x 8 * 3") == fact_of<RandomTally>("5/4 rw 6x8*3"));
  CHECK(fact_of<LogLine>("log T1 15 x 12 defect 15 bf rot") ==
        fact_of<LogLine>("log T1 15x12 defect 15bf rot"));
  CHECK(fact_of<Sawing>("run 7:15 - 10:20, 10:56 -13:30").spans.size() == 2);
}

TEST_CASE("a metric book reads plain numbers as millimetres, metres and centimetres") {
  const ReadOptions metric{true, 2};
  const auto tally = fact_of<Tally>("50x150 24/4.8", metric);
  CHECK(tally.size == Size{measure::millimetres(50), measure::millimetres(150), false});
  CHECK(tally.items[0].length == Length{48'000, measure::System::metric});
  CHECK(fact_of<LogLine>("log 30/32-36x4.8 mid 33", metric).measure->mid[0] == measure::centimetres(33));
  CHECK(fact_of<Setup>("setup 1 kerf 7.1", metric).kerf_mils == 710);
  CHECK(fact_of<Tally>("2\"x6\" 4/16'", metric) == fact_of<Tally>("2x6 4/16"));
}

TEST_CASE("an inch book reads a millimetre size with its lengths in metres") {
  CHECK(fact_of<Tally>("50x150 24/4.8") == fact_of<Tally>("50x150 24/4.8", {true, 2}));
}

TEST_CASE("remarks and empty lines keep their place, and so do the lines they stand on") {
  const Sheet sheet = sheet_of("; first\n\n2x6 1/16 ; two ; halves\n");
  REQUIRE(sheet.lines.size() == 3);
  CHECK(sheet.lines[0].remark == "first");
  CHECK(sheet.lines[2].remark == "two ; halves");
  CHECK(sheet.lines[2].place == Place{4, 1});
  CHECK(write(sheet) ==
        "sheet   2026-05-05\n; first\n\n2x6     1/16                                      ; two ; halves\n");
}

TEST_CASE("the day of a sheet is known without reading it whole") {
  CHECK(peek_day("; x\n\nSheet 2026-05-05 shift 2\nnonsense\n") == make_day(2026, 5, 5));
  CHECK(!peek_day("note 2026-05-05\n"));
  CHECK(!peek_day(""));
  CHECK(read("sheet 2026-05-05 shift 2\n").sheet.shift == 2);
}

TEST_CASE(
    "every example of the language's own help is read without a complaint, and every kind of fact has one") {
  std::set<std::size_t> shown{Fact(Remark{}).index()};  // which has no word
  for (const KindOfLine& kind : kinds_of_line()) {
    for (const LineForm& form : kind.forms) {
      CAPTURE(form.example);
      if (kind.word == "sheet") continue;
      CHECK(form.example.starts_with(kind.word));
      const Sheet sheet = sheet_of(std::string(form.example) + "\n");
      REQUIRE(sheet.lines.size() == 1);
      shown.insert(sheet.lines[0].fact.index());
    }
  }
  CHECK(shown.size() == std::variant_size_v<Fact>);
}
