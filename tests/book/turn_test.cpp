// turn_test.cpp -- a deed's turn: what it reads is what it writes upon, and all of it is kept or none.
#include <doctest/doctest.h>

#include <stdexcept>

#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::tests;

namespace {

constexpr const char* kMonday = "sheet 2026-06-01\nspecies DF\n2x6 5/12\n";
constexpr const char* kTuesday = "sheet 2026-06-02\nspecies WH\n2x6 5/12\n";

}  // namespace

TEST_CASE("what is posted in a turn is kept by its commit, all of it") {
  const Shelf shelf;
  auto book = shelf.new_book();
  book::Turn turn(book);
  book.post_sheet(kMonday, "");
  book.post_sheet(kTuesday, "");
  CHECK(shelf.open(true).journal().empty());
  turn.commit();
  CHECK(shelf.open(true).journal().size() == 2);
  CHECK(book.verify().empty());
}

TEST_CASE("a turn that is not committed leaves nothing, and the book can be posted into after it") {
  const Shelf shelf;
  auto book = shelf.new_book();
  {
    const book::Turn turn(book);
    book.post_sheet(kMonday, "");
    CHECK(book.journal().size() == 1);
  }
  CHECK(book.journal().empty());
  CHECK(book.post_sheet(kTuesday, "").outcome == book::Outcome::posted);
  CHECK(shelf.open(true).journal().size() == 1);
  CHECK(book.verify().empty());
}

TEST_CASE("a turn of which a part was refused cannot be committed") {
  const Shelf shelf;
  auto book = shelf.new_book();
  {
    book::Turn turn(book);
    book.post_sheet(kMonday, "");
    CHECK_THROWS_AS(book.post_sheet("sheet 2026-06-02\nno such line\n", ""), book::DocumentRefused);
    CHECK_THROWS_AS(turn.commit(), std::logic_error);
  }
  CHECK(shelf.open(true).journal().empty());
}

TEST_CASE("one turn may stand inside another; the outer one keeps both") {
  const Shelf shelf;
  auto book = shelf.new_book();
  {
    book::Turn outer(book);
    {
      book::Turn inner(book);
      book.post_sheet(kMonday, "");
      inner.commit();
    }
    CHECK(shelf.open(true).journal().empty());
    outer.commit();
  }
  CHECK(shelf.open(true).journal().size() == 1);
}
