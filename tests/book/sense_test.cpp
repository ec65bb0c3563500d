// sense_test.cpp -- what the book tells the checker of a sheet: whose the logs on the deck are, and which words it met.
#include <doctest/doctest.h>

#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

const std::string kMill =
    "[[customer]]\ncode = \"JON\"\nname = \"Ada Jones\"\n[[job]]\ncode = \"JONES\"\ncustomer = \"JON\"\n"
    "[[job]]\ncode = \"JONES-BARN\"\ncustomer = \"JON\"\n[[charge]]\nname = \"metal-strike\"\nflat = 40\n";

std::string said(const std::vector<Diagnostic>& found) {
  std::string all;
  for (const auto& one : found) all += one.what + "; " + one.instead + "\n";
  return all;
}

/// What check says, which must be what posting says.
std::string told(Book& book, const std::string& sheet, const std::string& why = "") {
  const std::string checked = said(book.check_sheet(sheet));
  CHECK(said(book.post_sheet(sheet, why).found) == checked);
  return checked;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "a log received for one customer and sawn on another day for somebody else is doubted by check and "
    "post") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kMill, "");
  book.post_sheet("sheet 2026-05-04\njob JONES\nin J1 15x12\nin J2 15x12\nin J3 15x12\n", "");
  CHECK(has(told(book, "sheet 2026-05-05\njob own\nlog J1\n"),
            "J1: came in for job JONES, and is sawn under job own; put it under job JONES"));
  CHECK_FALSE(has(told(book, "sheet 2026-05-06\njob JONES-BARN\nlog J2\n"), "came in for"));
  CHECK(has(told(book, "sheet 2026-05-07\njob SMITH\nlog j3\n"), "came in for job JONES"));
  CHECK_FALSE(
      has(told(book, "sheet 2026-05-08\njob SMITH\nlog J1 12x12\n"), "came in for"));  // gone from the deck
}

TEST_CASE(
    "a word of a line that the book never met is noted with the nearest, on a first post and on a "
    "correction") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kMill, "");
  const std::string first =
      "sheet 2026-05-04\ncrew Quill 9\nstop 0:30 waiting\njob JONES\nteeth head replaced 3 metal\nspecies "
      "DF\n"
      "sold Ferrin 2x6 1/16\n";
  CHECK(told(book, first) == "buyer 'Ferrin' is new; \n");  // of the others nothing was known
  const std::string second =
      "sheet 2026-05-05\ncrew Quil 9\nstop 0:30 wating\njob JONES\nteeth hed replaced 3 mettal\n"
      "charge JONES metal-stike\nsold Ferin 2x6 1/16\n";
  const std::string words = told(book, second);
  for (const char* one :
       {"hand 'Quil' is new; did you mean Quill?", "stop cause 'wating' is new; did you mean waiting?",
        "saw 'hed' is new; did you mean head?", "tooth cause 'mettal' is new; did you mean metal?",
        "charge 'metal-stike' is new; did you mean metal-strike?",
        "buyer 'Ferin' is new; did you mean Ferrin?"}) {
    CAPTURE(one);
    CHECK(has(words, one));
  }
  CHECK(told(book, second + "note once more\n", "a note").empty());  // met by now
  const std::string corrected =
      "sheet 2026-05-04\ncrew Quill 9\nstop 0:30 waitin\njob JONES\nteeth head replaced 3 metal\nspecies DF\n"
      "sold Ferrin 2x6 1/16\n";
  CHECK(has(told(book, corrected, "a slip"), "stop cause 'waitin' is new; did you mean waiting?"));
  CHECK(has(told(book, "sheet 2026-05-06\nsold Ada Jones 2x6 1/16\nsold jon 2x6 1/16\ncrew Bess 4\n"),
            "hand 'Bess' is new; \n"));
}

TEST_CASE("a word met long ago is no new word") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_sheet("sheet 2021-05-04\ncrew Odd 9\n", "");
  book.post_sheet("sheet 2026-05-04\ncrew Quill 9\n", "");
  CHECK(told(book, "sheet 2026-05-05\ncrew odd 9\n").empty());
}

TEST_CASE(
    "money turned into millionths is refused when it is too large for them, never made into another sum") {
  const Shelf shelf;
  Book book = shelf.new_book();
  CHECK(Shelf::number(book, "SELECT money_micro(123456)") == 1'234'560'000);
  CHECK(Shelf::number(book, "SELECT money_micro(922337203685477)") == 9'223'372'036'854'770'000);
  CHECK_THROWS_AS(Shelf::number(book, "SELECT money_micro(922337203685478)"), const SQLite::Exception&);
  CHECK_THROWS_AS(Shelf::number(book, "SELECT money_micro(-9223372036854775807)"), const SQLite::Exception&);
  CHECK_THROWS_AS(Shelf::number(book, "SELECT lumber_of(9000000000, 9000000000, 9000000000, 0)"),
                  const SQLite::Exception&);
  CHECK_THROWS_AS(Shelf::number(book, "SELECT times_over(9223372036854775807, 9223372036854775807, 1)"),
                  const SQLite::Exception&);
}

TEST_CASE(
    "a blank between thousands is taken as it is written, and a mark that cannot be is told by its own key") {
  const auto marks = [](const std::string& written) {
    return read_mill("[mill]\ncurrency = { sign = \"kr\", " + written + " }\n");
  };
  for (const char* blank : {"\" \"", "\"blank\"", "\"\u00A0\"", "\"\u202F\""}) {
    CAPTURE(blank);
    const auto read = marks(std::string("mark = \",\", thousands = ") + blank);
    CHECK(read.found.empty());
    CHECK(read.mill.currency.thousands == ' ');
  }
  const auto left_out = marks("mark = \".\", thousands = \"\"");
  CHECK(left_out.found.empty());
  CHECK(left_out.mill.currency.thousands == ',');
  const auto same = marks("thousands = \".\"");
  REQUIRE(same.found.size() == 1);
  CHECK(same.found[0].what == "the mark before the decimals is the one between thousands");
  CHECK(same.found[0].place.column > 20);
}
