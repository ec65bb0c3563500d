// post_test.cpp -- posting, correcting and posting again: what is in the book, what is struck, what stays.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

constexpr const char* kMonday =
    "sheet 2026-06-01\nsite yard\njob BRN\nspecies DF\nrun 8:00-12:00\nlog T1 14x12\n2x6 5/12 3/16\n1x4 "
    "10/8\n";

std::string corrected(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST_CASE(
    "the demo week posts to 54 logs, 154 tally lines, 523 pieces, 6,486.75 bf and 6,300 net after its "
    "correction") {
  const Shelf shelf;
  Book book = shelf.demo_week();
  DayTotals week;
  for (const Day day : book.days()) {
    const auto one = *book.day_totals(write_day(day));
    week.lines += one.lines;
    week.pieces += one.pieces;
    week.logs += one.logs;
    week.lumber.count += one.lumber.count;
  }
  CHECK(week.logs == 54);
  CHECK(week.lines == 154);
  CHECK(week.pieces == 523);
  CHECK(plain(shown(measure::board_feet(week.lumber), 2)) == "6486.75");
  CHECK(shelf.number(book, "SELECT sum(net) FROM run") == 6'300'000'000);
  CHECK(shelf.number(book, "SELECT sum(gross) FROM run") == 6'375'000'000);
  CHECK(book.verify().empty());
}

TEST_CASE("the Thursday correction strikes one line, keeps it with its reason, and moves exactly 96 bf") {
  const Shelf shelf;
  Book book = shelf.demo_week_as_first_posted();
  const auto before = book.day_totals("2026-05-07")->lumber.count;
  shelf.correct_thursday(book);
  CHECK(before - book.day_totals("2026-05-07")->lumber.count == 96 * measure::kCountsPerBoardFoot);
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 1);
  CHECK(shelf.number(book, "SELECT pieces FROM struck") == 32);
  CHECK(shelf.text(book, "SELECT why FROM struck") == "bundle count: 23, not 32");
}

TEST_CASE("the same sheet posted twice adds nothing and does not touch the file") {
  const Shelf shelf;
  {
    Book book = shelf.new_book();
    CHECK(book.post_sheet(kMonday, "").outcome == Outcome::posted);
  }
  const std::string before = shelf.bytes();
  {
    Book book = shelf.open();
    CHECK(book.post_sheet(kMonday, "").outcome == Outcome::unchanged);
    CHECK(book.post_sheet(kMonday, "again").outcome == Outcome::unchanged);
  }
  CHECK(shelf.bytes() == before);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}

TEST_CASE("a changed sheet needs a reason, and without one changes nothing") {
  const Shelf shelf;
  {
    Book book = shelf.new_book();
    book.post_sheet(kMonday, "");
  }
  const std::string before = shelf.bytes();
  Book book = shelf.open();
  CHECK_THROWS_AS(book.post_sheet(corrected(kMonday, "5/12", "6/12"), "  "), const Refused&);
  CHECK(shelf.bytes() == before);
  const auto posted = book.post_sheet(corrected(kMonday, "5/12", "6/12"), "one was under the stack");
  CHECK(posted.outcome == Outcome::revised);
  CHECK(posted.revision == 2);
  CHECK(book.revisions("2026-06-01").size() == 2);
  CHECK(book.revisions("2026-06-01").front().body == kMonday);
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 1);
  CHECK(shelf.number(book, "SELECT sum(pieces) FROM tally") == 19);
}

TEST_CASE("a line that only moved on the sheet is not struck") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  book.post_sheet(
      "sheet 2026-06-01\nsite yard\njob BRN\nspecies DF\nrun 8:00-12:00\n1x4 10/8\nlog T1 14x12\n2x6 3/16 "
      "5/12\n",
      "in the order of the day");
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 0);
}

TEST_CASE("a document with an error keeps every other document of the same post out") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const std::string before = shelf.bytes();
  CHECK_THROWS_AS(book.post_all({{"a", kMonday}, {"b", "sheet 2026-06-02\n2x6 24\n"}}, ""),
                  const DocumentRefused&);
  CHECK(shelf.bytes() == before);
  CHECK(book.days().empty());
}

TEST_CASE("of several documents with errors all are told, and good ones among them are no trouble") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const std::string before = shelf.bytes();
  std::vector<std::string> told;
  try {
    book.post_all({{"c", "sheet 2026-06-04\n2x6 25\n"},
                   {"a", "sheet 2026-06-02\n2x6 24\n"},
                   {"b", "sheet 2026-06-03\n2x6 24/16\n"}},
                  "");
  } catch (const DocumentRefused& refused) {
    told.push_back(refused.name());
    for (const auto& other : refused.others()) {
      told.push_back(other.name());
      CHECK(other.found().front().place == Place{2, 5});
    }
  }
  CHECK(told == std::vector<std::string>{"a", "c"});
  CHECK(shelf.bytes() == before);
}

TEST_CASE("sheets are not judged beside a mill file with errors: it decides what they mean") {
  const Shelf shelf;
  Book book = shelf.new_book();
  try {
    book.post_all({{"a", "sheet 2026-06-02\n2x6 24\n"}, {"m", "unit = 3\n", EntryKind::mill}}, "");
    FAIL("a mill file with an unknown key was taken");
  } catch (const DocumentRefused& refused) {
    CHECK(refused.name() == "m");
    CHECK(refused.others().empty());
  }
}

TEST_CASE(
    "a log received on Monday and sawn by its tag on Tuesday is scaled, whichever sheet is posted first") {
  const char* const received =
      "sheet 2026-06-01\njob BRN\nspecies DF\nin T1 14x12\nin T2 16x16 defect 15bf rot\n";
  const char* const sawn = "sheet 2026-06-02\njob BRN\nspecies DF\nlog T1-T2\n2x6 20/12\n";
  std::vector<std::int64_t> nets;
  for (const bool in_order : {true, false}) {
    const Shelf shelf;
    Book book = shelf.new_book();
    book.post_sheet(in_order ? received : sawn, "");
    book.post_sheet(in_order ? sawn : received, "");
    nets.push_back(shelf.number(book, "SELECT net FROM run WHERE logs = 2"));
    CHECK(shelf.number(book, "SELECT sum(unscaled_logs) FROM run") == 0);
    CHECK(book.verify().empty());
  }
  CHECK(nets[0] == nets[1]);
  CHECK(nets[0] == (100 + 180 - 15) *
                       1'000'000);  // 14x12 is 100, 16x16 180; source: E. Wengert, Log Volume charts, 2001
}

TEST_CASE(
    "a defect found in sawing comes off the scale given at receipt, and is known with the log from then on") {
  const std::string received =
      "sheet 2026-06-01\njob BRN\nspecies DF\nin T1 14x12\nin T2 16x16 defect 15bf rot\n";
  const std::string sawn =
      "sheet 2026-06-02\njob BRN\nspecies DF\nlog T1 defect 10bf shake left on the mill\nlog T2 defect 25bf "
      "ring\n";
  const std::string finished = "sheet 2026-06-03\njob BRN\nspecies DF\nlog T1 defect 5bf rot\n";
  std::vector<std::string> figures;
  for (const bool in_order : {true, false}) {
    const Shelf shelf;
    Book book = shelf.new_book();
    book.post_sheet(in_order ? received : finished, "");
    book.post_sheet(sawn, "");
    book.post_sheet(in_order ? finished : received, "");
    figures.push_back(Shelf::text(
        book,
        "SELECT group_concat(tag || ' ' || state || ' ' || (gross/1000000) || ' ' || (net/1000000) "
        "|| ' ' || defect, "
        "'; ') FROM (SELECT * FROM log WHERE state <> 'received' ORDER BY day, number)"));
    CHECK(Shelf::text(book, "SELECT spec FROM log WHERE tag = 'T2' AND state = 'sawn'") ==
          "16x16 defect 15bf rot defect 25bf ring");
    CHECK(book.verify().empty());
    const std::string rows = Shelf::dump(book);
    book.rebuild();
    CHECK(Shelf::dump(book) == rows);
  }
  // 14x12 is 100, 16x16 180; source: E. Wengert, Log Volume charts, 2001
  CHECK(figures[0] ==
        "T1 left 100 90 10bf shake; T2 sawn 180 140 15bf rot; 25bf ring; T1 sawn 100 85 10bf shake; 5bf rot");
  CHECK(figures[0] == figures[1]);
}

TEST_CASE(
    "a correction of what was found in sawing strikes the line, and of what was received works the sawing "
    "out anew") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet("sheet 2026-06-01\njob BRN\nin T1 14x12 defect 10bf rot\n", "");
  book.post_sheet("sheet 2026-06-02\njob BRN\nlog T1 defect 20bf shake\n", "");
  const auto net = [&] {
    return Shelf::number(book, "SELECT net FROM log WHERE state = 'sawn'") / 1'000'000;
  };
  CHECK(net() == 70);
  book.post_sheet("sheet 2026-06-01\njob BRN\nin T1 14x12\n", "sound after all");
  CHECK(net() == 80);
  book.post_sheet("sheet 2026-06-02\njob BRN\nlog T1\n", "the shake was in T2");
  CHECK(net() == 100);
  CHECK(Shelf::text(book, "SELECT text FROM struck WHERE why = 'the shake was in T2'") ==
        "log     T1 defect 20bf shake");
  CHECK(book.verify().empty());
}

TEST_CASE(
    "a defect of a log that nothing has measured is kept, and scales with the log once it is measured") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet("sheet 2026-06-02\njob BRN\nlog T1 defect 20bf shake\n", "");
  CHECK(Shelf::text(book, "SELECT defect FROM log") == "20bf shake");
  CHECK(Shelf::number(book, "SELECT unscaled_logs FROM run") == 1);
  book.post_sheet("sheet 2026-06-01\njob BRN\nin T1 14x12\n", "");
  CHECK(Shelf::number(book, "SELECT net FROM log WHERE state = 'sawn'") == 80'000'000);
}

TEST_CASE("a log left half-sawn counts on the day it is finished") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet("sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12 left on the mill\n2x6 3/12\n", "");
  CHECK(book.day_totals("2026-06-01")->logs == 0);
  book.post_sheet("sheet 2026-06-02\njob BRN\nspecies DF\nlog T1\n2x6 4/12\n", "");
  CHECK(book.day_totals("2026-06-02")->logs == 1);
  CHECK(shelf.number(book, "SELECT sum(net) FROM run") == 100'000'000);
}

TEST_CASE("the posted scale of a log stays when the mill takes up another rule") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  const auto before = shelf.number(book, "SELECT sum(net) FROM run");
  book.post_mill("[scale]\nrule = \"doyle\"\n", "");
  CHECK(shelf.number(book, "SELECT sum(net) FROM run") == before);
  book.post_sheet("sheet 2026-06-02\njob BRN\nspecies DF\nlog T2 14x12\n", "");
  CHECK(shelf.number(book, "SELECT net FROM run WHERE day = (SELECT max(day) FROM run)") ==
        75'000'000);  // ((14-4)/4)^2 x 12
  CHECK(book.verify().empty());
}

TEST_CASE(
    "a job dropped from the mill file keeps the sizes its boards were cut to, old days and corrected ones") {
  const Shelf shelf;
  Book book = shelf.demo_week_as_first_posted();
  const std::string wood = "SELECT sum(wood) FROM v_tally WHERE job = 'QHH'";
  const std::int64_t corrected = [&] {
    const Shelf other;
    const Book with_job = other.demo_week();
    return Shelf::number(with_job, wood);
  }();
  std::string mill = Shelf::slurp(std::filesystem::path(KERFBOOK_ROOT) / "demo_data" / "hargan.toml");
  const std::size_t from = mill.find("[[job]]\ncode     = \"QHH\"");
  const std::size_t to = mill.find("[[job]]\ncode     = \"MUM\"");
  REQUIRE(from < to);
  mill.erase(from, to - from);
  const std::int64_t before = Shelf::number(book, wood);
  book.post_mill(mill, "the hall is done");
  CHECK(Shelf::number(book, wood) == before);
  Shelf::correct_thursday(book);
  CHECK(Shelf::number(book, wood) == corrected);
  CHECK(book.verify().empty());
}

TEST_CASE("rebuilding changes no row and no entry of the journal") {
  const Shelf shelf;
  Book book = shelf.demo_week();
  const std::string before = shelf.dump(book);
  const std::string last = book.journal().back().digest;
  book.rebuild();
  CHECK(shelf.dump(book) == before);
  CHECK(book.journal().size() == 7);  // the mill file, five sheets, one correction
  CHECK(book.journal().back().digest == last);
}

TEST_CASE("each day of the demo week has the footing of its paper sheet") {
  struct Footing {
    const char* day;
    std::int64_t logs, lines, pieces;
    const char* board_feet;
  };
  const Shelf shelf;
  const Book book = shelf.demo_week();
  for (const Footing& paper : {Footing{"2026-05-04", 12, 32, 109, "1560.67"},
                               {"2026-05-05", 10, 21, 74, "1109.33"},
                               {"2026-05-06", 8, 37, 59, "814.67"},
                               {"2026-05-07", 13, 27, 114, "1562.00"},
                               {"2026-05-08", 11, 37, 167, "1440.08"}}) {
    CAPTURE(paper.day);
    const auto totals = book.day_totals(paper.day);
    REQUIRE(totals);
    CHECK(totals->logs == paper.logs);
    CHECK(totals->lines == paper.lines);
    CHECK(totals->pieces == paper.pieces);
    CHECK(plain(shown(measure::board_feet(totals->lumber), 2)) == paper.board_feet);
  }
}

TEST_CASE("a day without a sheet, and the mill file, have no totals") {
  const Shelf shelf;
  const Book book = shelf.demo_week();
  CHECK_FALSE(book.day_totals("2026-05-09"));
  CHECK_FALSE(book.day_totals("2026-05-04 shift 2"));
  CHECK_FALSE(book.day_totals("mill"));
  CHECK_FALSE(book.day_totals("yesterday"));
}

TEST_CASE("going back to an earlier text is a revision of its own and needs its own reason") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  book.post_sheet(corrected(kMonday, "5/12", "6/12"), "one was under the stack");
  CHECK_THROWS_AS(book.post_sheet(kMonday, ""), const Refused&);
  const auto posted = book.post_sheet(kMonday, "no, it was Tuesday's");
  CHECK(posted.outcome == Outcome::revised);
  CHECK(posted.revision == 3);
  CHECK(book.day_totals("2026-06-01")->pieces == 18);
  // The 5 of the first and the 6 of the second text were each struck once, each with the reason of its striking.
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 2);
  CHECK(shelf.text(book, "SELECT why FROM struck WHERE pieces = 5 AND revision = 1") ==
        "one was under the stack");
  CHECK(shelf.text(book, "SELECT why FROM struck WHERE pieces = 6 AND revision = 2") ==
        "no, it was Tuesday's");
  CHECK(book.verify().empty());
}

TEST_CASE("of two like lines one is struck when the correction has only one of them") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet("sheet 2026-06-01\njob BRN\nspecies DF\n2x6 4/12 4/12 4/12\n", "");
  book.post_sheet("sheet 2026-06-01\njob BRN\nspecies DF\n2x6 4/12 4/12\n", "counted twice");
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 1);
  CHECK(book.day_totals("2026-06-01")->pieces == 8);
}

TEST_CASE("a changed remark, blank or note is a revision that strikes nothing") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  const auto totals = book.day_totals("2026-06-01")->lumber.count;
  book.post_sheet(std::string(kMonday) + "note rain after three ; said Bess\n", "forgot the rain");
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 0);
  CHECK(book.day_totals("2026-06-01")->lumber.count == totals);
  CHECK(book.revisions("2026-06-01").size() == 2);
}

TEST_CASE("a line moved to another job is struck under the job it had") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  book.post_sheet(corrected(kMonday, "1x4", "job TER\n1x4"), "the last were Tervane's");
  CHECK(shelf.number(book, "SELECT count(*) FROM struck") == 1);
  CHECK(shelf.text(book, "SELECT j.code FROM struck s JOIN job j ON j.id = s.job") == "BRN");
  CHECK(book.verify().empty());
}

TEST_CASE("two shifts of a day are two sheets, each corrected by itself") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  const std::string evening = corrected(kMonday, "2026-06-01", "2026-06-01 shift 2");
  CHECK(book.post_sheet(evening, "").subject == "2026-06-01 shift 2");
  book.post_sheet(corrected(evening, "5/12", "7/12"), "two more");
  CHECK(book.day_totals("2026-06-01")->pieces == 18);
  CHECK(book.day_totals("2026-06-01 shift 2")->pieces == 20);
  CHECK(book.revisions("2026-06-01").size() == 1);
  CHECK(book.days().size() == 1);
  CHECK(book.verify().empty());
}

TEST_CASE("a second sheet of a day that is taken for a correction is told how to begin") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kMonday, "");
  const std::string other = corrected(kMonday, "job BRN", "job MILL");
  const auto refusal = [&] {
    try {
      book.post_sheet(other, "");
    } catch (const Refused& no) {
      return std::string(no.what());
    }
    return std::string("posted");
  };
  CHECK(refusal().ends_with("if it is one more sheet of that day, begin it 'sheet 2026-06-01 shift 2'"));
  book.post_sheet(corrected(kMonday, "2026-06-01", "2026-06-01 shift 2"), "");
  CHECK(refusal().ends_with("begin it 'sheet 2026-06-01 shift 3'"));
}

TEST_CASE(
    "a correction concerns the jobs and buyers whose lines it changed, wherever they stand, and no others") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const std::string two =
      "sheet 2026-06-01\nsite yard\njob BRN\nspecies DF\n2x6 5/12\njob FEN\n2x6 4/12\nstop 0:30 waiting, "
      "charge\n"
      "job own\n2x8 9/12\nsold Ferrin 2x8 2/12\nfuel 3 gal\n";
  book.post_sheet(two, "");
  book.post_sheet(corrected(two, "4/12", "3/12"), "Fen counted again");
  book.post_sheet(corrected(corrected(two, "4/12", "3/12"), "2/12", "1/12"), "Ferrin took one");
  book.post_sheet(corrected(corrected(corrected(two, "4/12", "3/12"), "2/12", "1/12"), "3 gal", "4 gal"),
                  "the can");
  const auto said = [&](const std::string& who, int sale) {
    return shelf.text(
        book, "SELECT coalesce(group_concat(revision || ' ' || why), '') FROM corrected WHERE who = '" + who +
                  "' AND sale = " + std::to_string(sale));
  };
  CHECK(said("FEN", 0) == "2 Fen counted again");
  CHECK(said("Ferrin", 1) == "3 Ferrin took one");
  CHECK(said("BRN", 0).empty());
  CHECK(shelf.number(book, "SELECT count(*) FROM corrected") == 2);
  CHECK(book.verify().empty());
}

TEST_CASE("the same mill file twice adds nothing, and a changed one needs a reason") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill("[mill]\nname = \"Yard\"\n", "");
  const std::string before = shelf.bytes();
  CHECK(book.post_mill("[mill]\nname = \"Yard\"\n", "").outcome == Outcome::unchanged);
  CHECK_THROWS_AS(book.post_mill("[mill]\nname = \"Yards\"\n", ""), const Refused&);
  CHECK(shelf.bytes() == before);
  CHECK(book.post_mill("[mill]\nname = \"Yards\"\n", "a second yard").revision == 2);
  CHECK(book.mill().name == "Yards");
}

TEST_CASE("a book goes on being of use after a post was refused half way") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const std::string before = shelf.bytes();
  CHECK_THROWS_AS(book.post_all({{"m", "[mill]\nname = \"Undone\"\n", EntryKind::mill},
                                 {"a", kMonday},
                                 {"b", "sheet 2026-06-02\n2x6 24\n"}},
                                ""),
                  const DocumentRefused&);
  CHECK(shelf.bytes() == before);
  CHECK(book.mill().name == Mill{}.name);
  CHECK_FALSE(has_error(book.check_sheet(kMonday)));
  CHECK(book.post_sheet(kMonday, "").outcome == Outcome::posted);
  CHECK(book.day_totals("2026-06-01")->pieces == 18);
  CHECK(book.verify().empty());
}

TEST_CASE("a week given in any order is posted by day, and answered in the order given") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const auto posted = book.post_all({{"c", "sheet 2026-06-03\n2x6 1/12\n"},
                                     {"a", "sheet 2026-06-01\n2x6 1/12\n"},
                                     {"m", "[mill]\nname = \"Yard\"\n", EntryKind::mill},
                                     {"b", "sheet 2026-06-02\n2x6 1/12\n"}},
                                    "");
  std::vector<std::string> answered;
  for (const auto& one : posted) answered.push_back(one.subject);
  std::vector<std::string> entered;
  for (const auto& entry : book.journal()) entered.push_back(entry.subject);
  CHECK(answered == std::vector<std::string>{"2026-06-03", "2026-06-01", "mill", "2026-06-02"});
  CHECK(entered == std::vector<std::string>{"mill", "2026-06-01", "2026-06-02", "2026-06-03"});
}

TEST_CASE("a volume no mill could saw is refused, and the book stays as it was") {
  const Shelf shelf;
  Book book = shelf.new_book();
  CHECK_THROWS_AS(book.post_sheet("sheet 2026-06-01\n12x12 999999999/40 999999999/40\n", ""), const Refused&);
  CHECK(book.days().empty());
}
