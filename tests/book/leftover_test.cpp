// leftover_test.cpp -- a journal left by a killed writer is played into the book it was begun on, and into no other
// (SQLite Database File Format, sections 1.3 and 3).
#include <doctest/doctest.h>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

namespace fs = std::filesystem;

std::string sheet_of(int day) {
  return "sheet 2026-06-0" + std::to_string(day) + "\njob BRN\nspecies DF\nlog T" + std::to_string(day) +
         " 14x12\n2x6 5/12 3/16\nnote " + std::string(1900, 'n') + "\n";
}

void post_days(const Shelf& shelf, int from, int to) {
  Book book = shelf.open();
  for (int day = from; day <= to; ++day) book.post_sheet(sheet_of(day), "");
}

fs::path journal_of(const Shelf& shelf) {
  return shelf.file().string() + "-journal";
}

/// The book and its journal as a killed writer leaves them: half of the change is in the file.
void kill_a_writer(const Shelf& shelf) {
  const fs::path book = shelf.folder() / "killed.book";
  const fs::path journal = shelf.folder() / "killed.book-journal";
  {
    SQLite::Database writer(shelf.file().string(), SQLite::OPEN_READWRITE);
    writer.exec("PRAGMA cache_size = 1; PRAGMA cache_spill = 1; BEGIN IMMEDIATE");
    writer.exec("UPDATE journal SET body = body || 'half'");
    writer.exec("CREATE TABLE half_done (x); INSERT INTO half_done VALUES (zeroblob(200000))");
    fs::copy_file(shelf.file(), book);
    fs::copy_file(journal_of(shelf), journal);
    writer.exec("ROLLBACK");
  }
  fs::rename(book, shelf.file());
  fs::rename(journal, journal_of(shelf));
}

std::string said_on_opening(const Shelf& shelf, bool read_only) {
  try {
    static_cast<void>(shelf.open(read_only));
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

}  // namespace

TEST_CASE("what a killed writer left half done is undone in the book it was killed on, also through a link") {
  for (const bool by_link : {false, true}) {
    CAPTURE(by_link);
    const Shelf shelf;
    static_cast<void>(shelf.new_book());
    post_days(shelf, 1, 5);
    const std::string rows = Shelf::dump(shelf.open(true));
    kill_a_writer(shelf);
    const fs::path link = shelf.folder() / "link.book";
    fs::create_symlink("mill.book", link);
    const Book book = Book::open(by_link ? link : shelf.file(), Shelf::options(true));
    CHECK(Shelf::dump(book) == rows);
    CHECK(!fs::exists(journal_of(shelf)));
  }
}

TEST_CASE("an older copy put back beside the journal of a later one is not mixed with it") {
  const Shelf shelf;
  static_cast<void>(shelf.new_book());
  post_days(shelf, 1, 3);
  const std::string copy = shelf.bytes();
  post_days(shelf, 4, 7);
  kill_a_writer(shelf);
  std::ofstream(shelf.file(), std::ios::binary) << copy;
  const std::string journal = Shelf::slurp(journal_of(shelf));
  for (const bool read_only : {true, false}) {
    const std::string said = said_on_opening(shelf, read_only);
    CHECK(
        said.starts_with(journal_of(shelf).string() + ": was left by a writer of another copy of this book"));
    CHECK(shelf.bytes() == copy);
    CHECK(Shelf::slurp(journal_of(shelf)) == journal);
  }
  fs::remove(journal_of(shelf));
  CHECK(said_on_opening(shelf, true).empty());
}

TEST_CASE("a journal that was never begun in earnest is no reason to refuse a book") {
  const Shelf shelf;
  static_cast<void>(shelf.new_book());
  post_days(shelf, 1, 2);
  const std::string rows = Shelf::dump(shelf.open(true));
  for (const std::string& journal : {std::string(), std::string(512, '\0'), std::string("\xd9\xd5\x05")}) {
    std::ofstream(journal_of(shelf), std::ios::binary) << journal;
    CHECK(Shelf::dump(shelf.open(true)) == rows);
    CHECK(!fs::exists(journal_of(shelf)));
  }
}
