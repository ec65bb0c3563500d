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
  CHECK(nets[0] ==
        (100 + 180 - 15) * 1'000'000);  // International 1/4: 14x12 prints 100, 16x16 180 (Wengert chart)
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

TEST_CASE("rebuilding changes no row") {
  const Shelf shelf;
  Book book = shelf.demo_week();
  const std::string before = shelf.dump(book);
  book.rebuild();
  CHECK(shelf.dump(book) == before);
}

TEST_CASE("a volume no mill could saw is refused, and the book stays as it was") {
  const Shelf shelf;
  Book book = shelf.new_book();
  CHECK_THROWS_AS(book.post_sheet("sheet 2026-06-01\n12x12 999999999/40 999999999/40\n", ""), const Refused&);
  CHECK(book.days().empty());
}
