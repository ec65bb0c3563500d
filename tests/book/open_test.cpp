// open_test.cpp -- what is no book, or no longer whole, is refused with a sentence and left as it was.
#include <doctest/doctest.h>
#include <sqlite3.h>

#include <chrono>
#include <thread>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

void spill(const std::filesystem::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

/// Opens, which must fail; what was said and with which exit code. Nothing may have changed.
struct Answer {
  std::string said;
  Exit code = Exit::done;
};

Answer opened(const Shelf& shelf, bool read_only) {
  const auto names = shelf.names();
  const std::string before = shelf.bytes();
  Answer answer;
  try {
    static_cast<void>(shelf.open(read_only));
  } catch (const Error& error) {
    answer = {error.what(), error.code()};
  }
  CHECK(shelf.names() == names);
  CHECK(shelf.bytes() == before);
  return answer;
}

void make_book(const Shelf& shelf) {
  Book book = shelf.new_book();
  for (int day = 1; day <= 9; ++day) {
    book.post_sheet("sheet 2026-06-0" + std::to_string(day) + "\njob BRN\nspecies DF\nlog T" +
                        std::to_string(day) + " 14x12\n2x6 5/12 3/16\n",
                    "");
  }
}

}  // namespace

TEST_CASE("a missing book, a folder, an empty file, a text and another database are each refused by name") {
  const Shelf shelf;
  for (const bool read_only : {true, false}) {
    CHECK(opened(shelf, read_only).said.find("there is no such book") != std::string::npos);
    spill(shelf.file(), "");
    CHECK(opened(shelf, read_only).said.find("empty file") != std::string::npos);
    spill(shelf.file(), std::string(5000, 'x'));
    CHECK(opened(shelf, read_only).said.find("is not a book") != std::string::npos);
    std::filesystem::remove(shelf.file());
    {
      SQLite::Database other(shelf.file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
      other.exec("CREATE TABLE t (x)");
    }
    const auto answer = opened(shelf, read_only);
    CHECK(answer.said.find("another program's database") != std::string::npos);
    CHECK(answer.said.find(shelf.file().string()) != std::string::npos);
    CHECK(answer.code == Exit::refused);
    std::filesystem::remove(shelf.file());
  }
  std::filesystem::create_directory(shelf.file());
  CHECK_THROWS_AS(static_cast<void>(shelf.open()), const Refused&);
}

TEST_CASE("a book of a newer edition is refused and left as it was") {
  const Shelf shelf;
  make_book(shelf);
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
    database.exec("PRAGMA user_version = 999");
  }
  CHECK(opened(shelf, false).said.find("newer kerfbook") != std::string::npos);
  CHECK(opened(shelf, true).said.find("newer kerfbook") != std::string::npos);
}

TEST_CASE("a book cut short is told damaged, and left as it was") {
  const Shelf shelf;
  make_book(shelf);
  const std::string whole = shelf.bytes();
  int told = 0;
  for (const std::size_t keep :
       {whole.size() / 2, whole.size() - 4096, std::size_t{4096}, std::size_t{150}}) {
    spill(shelf.file(), whole.substr(0, keep));
    const auto answer = opened(shelf, true);
    if (answer.code == Exit::failed) ++told;
    // What opening does not notice, because it reads little, verify must.
    if (answer.code == Exit::done) CHECK_FALSE(shelf.open(true).verify().empty());
  }
  CHECK(told >= 1);
}

TEST_CASE("bytes changed in the middle of a book are found by verify, unless they held nothing") {
  const Shelf shelf;
  make_book(shelf);
  const std::string whole = shelf.bytes();
  const std::string rows = Shelf::dump(shelf.open(true));
  int found = 0;
  for (std::size_t at = 4200; at + 16 < whole.size(); at += 1499) {
    std::string hurt = whole;
    for (std::size_t i = at; i < at + 16; ++i) hurt[i] = static_cast<char>(hurt[i] ^ 0x5A);
    spill(shelf.file(), hurt);
    bool told = false;
    try {
      const Book book = shelf.open(true);
      told = !book.verify().empty();
      if (!told) CHECK(Shelf::dump(book) == rows);  // unused room of a page
    } catch (const Error&) {
      told = true;
    }
    found += told ? 1 : 0;
  }
  CHECK(found >= 5);
}

TEST_CASE("a changed word in the journal breaks the chain and is named by its entry") {
  const Shelf shelf;
  make_book(shelf);
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
    database.exec("UPDATE journal SET body = replace(body, '5/12', '6/12') WHERE entry = 4");
  }
  const auto findings = shelf.open(true).verify();
  REQUIRE_FALSE(findings.empty());
  CHECK(findings.front().what.find("journal entry 4") != std::string::npos);
}

TEST_CASE("a sheet posted while a book is being verified waits its turn, and is not told as damage") {
  const Shelf shelf;
  make_book(shelf);
  std::thread poster;
  bool verifying = false;
  auto options = Shelf::options();
  options.papers = [&](SQLite::Database&,
                       const Entry&) {  // called midway: between the journal and the tables
    if (!verifying) return;
    poster = std::thread([&] { shelf.open().post_sheet("sheet 2026-06-20\nspecies DF\n2x6 5/12\n", ""); });
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
  };
  Book book = Book::open(shelf.file(), options);
  book.post_paper("a paper", "its text", "");
  verifying = true;
  const auto findings = book.verify();
  REQUIRE(poster.joinable());
  poster.join();
  CHECK_MESSAGE(findings.empty(), (findings.empty() ? "" : findings.front().what));
  CHECK(book.days().size() == 10);
}

TEST_CASE("a changed figure in a worked-out table is found, and rebuild mends it") {
  const Shelf shelf;
  make_book(shelf);
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
    database.exec("UPDATE tally SET pieces = 50 WHERE day = (SELECT max(day) FROM tally)");
  }
  Book book = shelf.open();
  const auto findings = book.verify();
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().what.find("table tally") != std::string::npos);
  book.rebuild();
  CHECK(book.verify().empty());
}

TEST_CASE(
    "a book with views of another program version answers read-only and is renewed when opened for writing") {
  const Shelf shelf;
  make_book(shelf);
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
    database.exec("DROP VIEW v_run; CREATE VIEW v_run AS SELECT 1 AS old");
  }
  const std::string before = shelf.bytes();
  {
    const Book book = shelf.open(true);
    CHECK(Shelf::number(book, "SELECT count(*) FROM v_run WHERE logs = 1") == 9);
  }
  CHECK(shelf.bytes() == before);
  { const Book book = shelf.open(); }
  SQLite::Database database(shelf.file().string(), SQLite::OPEN_READONLY);
  CHECK(database.execAndGet("SELECT count(*) FROM v_run WHERE logs = 1").getInt() == 9);
}

TEST_CASE("an idle book is one file") {
  const Shelf shelf;
  make_book(shelf);
  { const Book book = shelf.open(true); }
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}

TEST_CASE("what a killed writer left beside the book and is of no use is gone after the next look at it") {
  for (const bool read_only : {true, false}) {
    const Shelf shelf;
    make_book(shelf);
    const std::string before = shelf.bytes();
    // SQLite writes a rollback journal's first bytes last (SQLite Database File Format, section 3).
    spill(shelf.folder() / "mill.book-journal", std::string(8192, '\0'));
    { const Book book = shelf.open(read_only); }
    CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
    CHECK(shelf.bytes() == before);
  }
}

TEST_CASE("a new book is not made where the rollback journal of a lost one would be played back into it") {
  const Shelf shelf;
  spill(shelf.folder() / "mill.book-journal", "left");
  try {
    static_cast<void>(shelf.new_book());
    FAIL("made");
  } catch (const Refused& refused) {
    CHECK(std::string(refused.what()).find("mill.book-journal: is left of another book") !=
          std::string::npos);
  }
  CHECK(shelf.names() == std::vector<std::string>{"mill.book-journal"});
}

TEST_CASE("what another program puts into a book while it is open is found before the next post") {
  const Shelf shelf;
  make_book(shelf);
  Book book = shelf.open();
  Book second = shelf.open();
  second.rebuild();  // a change of the schema that is our own
  book.post_sheet("sheet 2026-06-20\nspecies DF\n2x6 5/12\n", "");
  SQLite::Database(shelf.file().string(), SQLite::OPEN_READWRITE)
      .exec("CREATE TRIGGER t AFTER INSERT ON journal BEGIN DELETE FROM log; END");
  const std::string before = shelf.bytes();
  try {
    book.post_sheet("sheet 2026-06-21\nspecies DF\n2x6 5/12\n", "");
    FAIL("posted");
  } catch (const Refused& refused) {
    CHECK(std::string(refused.what()).find("trigger 't' is no part of a book") != std::string::npos);
  }
  CHECK(shelf.bytes() == before);
}
