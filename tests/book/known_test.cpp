// known_test.cpp -- what the book's own history makes of a new sheet: how much lumber a run is believed to give.
#include <doctest/doctest.h>

#include <string>

#include "book/shelf.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

/// Twelve logs 10x16, which hold 127.7 ft3 (Smalian, 1/8 in taper a foot), and so many boards 2x6x16 of 16 bf:
/// 60 are 7.5 bf for each cubic foot, 72 are 9.0, 78 are 9.8, 90 are 11.3.
std::string day(const std::string& date, int boards, const std::string& more = "") {
  std::string text = "sheet " + date + "\njob HALL\nspecies WH\n";
  for (int i = 0; i < 12; ++i) text += "log 10x16\n";
  return text + more + "2x6 " + std::to_string(boards) + "/16\n";
}

bool doubted(const Book& book, const std::string& text) {
  for (const auto& found : book.check_sheet(text)) {
    if (found.what.find("bf for each cubic foot of its logs") != std::string::npos) return true;
  }
  return false;
}

TEST_CASE("a book without a history believes 8 bf a cubic foot and a tenth more") {
  const Shelf shelf;
  const Book book = shelf.new_book();
  CHECK_FALSE(doubted(book, day("2026-05-04", 60)));
  CHECK(doubted(book, day("2026-05-04", 72)));
}

TEST_CASE(
    "a log is held to what the mill file says the mill takes, and without a word of it to what is usual") {
  const Shelf shelf;
  Book book = shelf.new_book();
  const auto said = [&book] {
    const auto found = book.check_sheet("sheet 2026-05-04\njob own\nlog T1 40x16\nlog T2 70x16\n");
    std::string text;
    for (const auto& one : found) {
      if (one.what.find("larger than") != std::string::npos) text += one.what + "\n";
    }
    return text;
  };
  CHECK(said() == "'70x16': larger than usual, 60 in\n");
  book.post_mill("[capacity]\nlargest_log = 36\n", "");
  CHECK(said() == "'40x16': larger than the mill takes, 36 in\n'70x16': larger than the mill takes, 36 in\n");
  book.post_mill("[capacity]\nlargest_log = 80\n", "a larger carriage");
  CHECK(said().empty());
}

TEST_CASE("what was posted on three days is believed of the fourth; on two it may still be a slip") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(day("2026-05-04", 72), "");
  book.post_sheet(day("2026-05-05", 72), "");
  CHECK(doubted(book, day("2026-05-07", 72)));
  book.post_sheet(day("2026-05-06", 72), "");
  CHECK_FALSE(doubted(book, day("2026-05-07", 72)));
  CHECK_FALSE(doubted(book, day("2026-05-07", 78)));  // within a tenth of 9.0
  CHECK(doubted(book, day("2026-05-07", 90)));
}

TEST_CASE("slips that were never corrected do not hide the next one") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(day("2026-05-04", 90), "");
  book.post_sheet(day("2026-05-05", 90), "");
  for (const char* date : {"2026-05-06", "2026-05-07", "2026-05-08"}) book.post_sheet(day(date, 60), "");
  CHECK(doubted(book, day("2026-05-09", 72)));
}

TEST_CASE("several runs of one day are one day's word, and shifts of it too") {
  const Shelf shelf;
  Book book = shelf.new_book();
  for (const int shift : {1, 2, 3}) {
    book.post_sheet(day("2026-05-04 shift " + std::to_string(shift), 72), "");
  }
  CHECK(doubted(book, day("2026-05-05", 72)));
}

TEST_CASE("only days before the sheet count, and of the last two years") {
  const Shelf shelf;
  Book book = shelf.new_book();
  for (const char* date : {"2026-05-04", "2026-05-05", "2026-05-06"}) book.post_sheet(day(date, 72), "");
  CHECK(doubted(book, day("2026-05-03", 72)));
  CHECK(doubted(book, day("2026-05-06", 72)));  // itself is no witness
  CHECK_FALSE(doubted(book, day("2028-05-03", 72)));
  CHECK(doubted(book, day("2028-05-04", 72)));
}

TEST_CASE("a run with a log half-sawn is no witness: its boards came before their log is counted") {
  const Shelf shelf;
  Book book = shelf.new_book();
  for (const char* date : {"2026-05-04", "2026-05-05", "2026-05-06"}) {
    book.post_sheet(day(date, 72, "log L" + std::string(date).substr(8) + " 10x16 left on the mill\n"), "");
  }
  CHECK(doubted(book, day("2026-05-07", 72)));
}

TEST_CASE("a metric book's runs are witnesses as well") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill("[mill]\nunits = \"metric\"\n[scale]\nrule = \"smalian\"\n", "");
  // twelve logs 25x4.8 with ends of 25 and 30 cm hold 3.45 m3 = 121.8 ft3; 72 boards 50x150x4.8 are 2.59 m3 = 1,098 bf: 9.0
  const auto metric = [](const std::string& date) {
    std::string text = "sheet " + date + "\njob HALL\nspecies WH\n";
    for (int i = 0; i < 12; ++i) text += "log 25-30x4.8\n";
    return text + "50x150 72/4.8\n";
  };
  CHECK(doubted(book, metric("2026-05-07")));
  for (const char* date : {"2026-05-04", "2026-05-05", "2026-05-06"}) book.post_sheet(metric(date), "");
  CHECK_FALSE(doubted(book, metric("2026-05-07")));
}

TEST_CASE("a sheet is held against today and against the days the book has") {
  const Shelf shelf;  // where it is 2026-06-01
  Book book = shelf.new_book();
  const auto said = [&](const std::string& date) {
    const auto found = book.check_sheet("sheet " + date + "\njob A\n");
    return found.empty() ? std::string() : found.front().what + "; " + found.front().instead;
  };
  CHECK(said("2026-06-02") == "2026-06-02: a day still to come, today is 2026-06-01; look at the day again");
  CHECK(said("2025-05-05") ==
        "2025-05-05: far from today, 2026-06-01, and the first sheet of the book; look at its year again");
  CHECK(said("2026-04-05").empty());
  book.post_sheet("sheet 2026-05-04\njob A\n", "");
  CHECK(said("2025-05-05") == "2025-05-05: far from every other sheet of the book; was 2026-05-05 meant?");
  CHECK(said("2026-05-05").empty());
  CHECK(said("2024-11-05") ==
        "2024-11-05: far from every other sheet of the book and from today; look at its year again");
  book.post_sheet("sheet 2025-05-05\njob A\n", "");
  CHECK(said("2025-05-06").empty());  // last year's sheets are being entered
}

}  // namespace
