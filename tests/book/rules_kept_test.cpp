// rules_kept_test.cpp -- a sheet keeps the log rules it was posted under when it is corrected, unless it is asked to be
// scaled anew.
#include <doctest/doctest.h>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

const std::string kDay = "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 5/12\n";
const std::string kCorrected = "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 6/12\n";
const std::string kDoyle = "[scale]\nrule = \"doyle\"\n";

constexpr std::int64_t kByQuarter = 100'000'000;  ///< 14x12 by International 1/4: 100 bf
constexpr std::int64_t kByDoyle = 75'000'000;     ///< ((14 - 4) / 4)^2 x 12 = 75 bf

std::int64_t net(const Book& book) {
  return Shelf::number(book, "SELECT sum(net) FROM run");
}

std::string said(const std::vector<Diagnostic>& found) {
  std::string all;
  for (const auto& one : found) all += one.what + "; " + one.instead + "\n";
  return all;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// As good as it was after all its entries were worked in again.
void stays_when_rebuilt(const Shelf& shelf, Book& book) {
  for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
  const std::string before = shelf.dump(book);
  book.rebuild();
  CHECK(shelf.dump(book) == before);
}

}  // namespace

TEST_CASE(
    "a corrected sheet keeps the rule it was posted under, whatever rule the mill took up since, and says "
    "so") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kDay, "");
  REQUIRE(net(book) == kByQuarter);
  book.post_mill(kDoyle, "the buyers want Doyle");
  const std::string words =
      "logs of job BRN: they keep the log rule they were posted under, Int. 1/4; the mill file "
      "now has "
      "Doyle; post with --rescale if they are to be scaled anew";
  CHECK(has(said(book.check_sheet(kCorrected)), words));
  const auto posted = book.post_sheet(kCorrected, "one board more");
  CHECK(has(said(posted.found), words));
  CHECK(net(book) == kByQuarter);
  CHECK(book.journal().back().keeps_rules);
  stays_when_rebuilt(shelf, book);
  CHECK(net(book) == kByQuarter);
}

TEST_CASE(
    "a sheet keeps its rule through any number of corrections and mill files, and a new day has the new "
    "one") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kDay, "");
  book.post_mill(kDoyle, "Doyle");
  book.post_sheet(kCorrected, "one more");
  book.post_mill("[scale]\nrule = \"scribner-c\"\n", "Scribner");
  book.post_sheet(kDay, "it was five");
  CHECK(net(book) == kByQuarter);
  book.post_sheet("sheet 2026-06-02\njob BRN\nspecies DF\nlog T2 14x12\n", "");
  CHECK(Shelf::text(book, "SELECT group_concat(practice) FROM run") == "international-quarter,scribner-c");
  stays_when_rebuilt(shelf, book);
}

TEST_CASE("asked to, a sheet is scaled anew by the mill file in force, also when none of its words changed") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kDay, "");
  book.post_mill(kDoyle, "Doyle");
  CHECK_THROWS_AS(book.post_all({{"day", kDay}}, "", true), const Refused&);
  CHECK(net(book) == kByQuarter);
  const auto posted = book.post_all({{"day", kDay}}, "agreed with the customer", true).front();
  CHECK(posted.outcome == Outcome::revised);
  CHECK(has(said(posted.found), "logs of job BRN: scaled anew by Doyle, before by Int. 1/4"));
  CHECK(net(book) == kByDoyle);
  CHECK(book.post_all({{"day", kDay}}, "again", true).front().outcome == Outcome::unchanged);
  book.post_mill("[scale]\nrule = \"scribner-c\"\n", "Scribner");
  book.post_sheet(kCorrected, "one more");  // keeps what it was last asked to be scaled by
  CHECK(net(book) == kByDoyle);
  stays_when_rebuilt(shelf, book);
}

TEST_CASE("a job's own rule, and a convention of the house, are kept as the house rule is") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kDay, "");
  book.post_mill(
      "[[customer]]\ncode = \"BRN\"\n[[job]]\ncode = \"BRN\"\ncustomer = \"BRN\"\nrule = \"doyle\"\n", "");
  CHECK(has(said(book.post_sheet(kCorrected, "one more").found), "the mill file now has Doyle"));
  CHECK(net(book) == kByQuarter);
  const Shelf other;
  Book with_house = other.new_book();
  with_house.post_mill(kDoyle + "name = \"ours\"\n", "");
  with_house.post_sheet(kDay, "");
  with_house.post_mill(kDoyle + "name = \"ours\"\nround_to = 10\n", "tens");
  CHECK(has(said(with_house.post_sheet(kCorrected, "one more").found),
            "they keep the log rule they were posted under, ours as it was; the mill file now has ours"));
  CHECK(net(with_house) == kByDoyle);
  stays_when_rebuilt(other, with_house);
}

TEST_CASE("a mill file that changes no rule is nothing to speak of") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet(kDay, "");
  book.post_mill("[mill]\nname = \"The mill\"\n", "");
  CHECK(book.post_sheet(kCorrected, "one more").found.empty());
  CHECK(net(book) == kByQuarter);
  stays_when_rebuilt(shelf, book);
}

TEST_CASE("a changed mark of kept rules breaks the chain like any other field of an entry") {
  const Shelf shelf;
  {
    Book book = shelf.new_book();
    book.post_sheet(kDay, "");
    book.post_mill(kDoyle, "Doyle");
    book.post_sheet(kCorrected, "one more");
  }
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
    database.exec("UPDATE journal SET keeps_rules = 1 - keeps_rules WHERE entry = 3");
  }
  const auto findings = shelf.open(true).verify();
  REQUIRE_FALSE(findings.empty());
  CHECK(has(findings.front().what, "journal entry 3"));
}
