// damaged_test.cpp -- what the program says of a book that is none, or is no longer whole: one sentence with the
// file's name, the right exit code, and the file left as it was with nothing beside it.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <algorithm>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

constexpr int kRefused = 1;
constexpr int kFailed = 3;

/// The commands a user could meet such a file with.
std::vector<std::vector<std::string>> commands(const Scratch& scratch) {
  spill(scratch / "day.sheet", "sheet 2026-07-01\njob BRN\nspecies DF\n2x6 5/12\n");
  return {{"verify"},
          {"journal"},
          {"report", "production"},
          {"rebuild"},
          {"post", (scratch / "day.sheet").string()}};
}

std::string made_book(const Scratch& scratch) {
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}, scratch.path()).code == 0);
  for (int day = 1; day <= 9; ++day) {
    spill(scratch / "day.sheet", "sheet 2026-06-0" + std::to_string(day) + "\njob BRN\nspecies DF\nlog T" +
                                     std::to_string(day) + " 14x12\n2x6 5/12 3/16\nnote " +
                                     std::string(1900, 'n') + "\n");
    REQUIRE(run({"-b", book, "post", (scratch / "day.sheet").string()}, scratch.path()).code == 0);
  }
  return book;
}

/// Every command answers so, and changes nothing.
void check_every_command(const Scratch& scratch, const std::string& book, int code,
                         const std::string& saying) {
  const auto all = commands(scratch);
  const bool is_file = fs::is_regular_file(book);
  const std::string before = is_file ? slurp(book) : "";
  const auto names = scratch.names();
  for (const auto& command : all) {
    CAPTURE(command.front());
    std::vector<std::string> words{"-b", book};
    words.insert(words.end(), command.begin(), command.end());
    const Ran ran = run(words, scratch.path());
    CHECK(ran.code == code);
    CHECK(ran.out.empty());
    CHECK(ran.err.starts_with("kerfbook: " + book + ": "));
    CHECK(ran.err.find(saying) != std::string::npos);
    CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
    if (is_file) CHECK(slurp(book) == before);
    CHECK(scratch.names() == names);
  }
}

}  // namespace

TEST_CASE("what is no book is refused by every command, by its name, and left as it was") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  check_every_command(scratch, book, kRefused, "there is no such book");
  spill(book, "");
  check_every_command(scratch, book, kRefused, "empty file");
  spill(book, "sheet 2026-06-01\n2x6 5/12\n");
  check_every_command(scratch, book, kRefused, "is not a book");
  spill(book, std::string("SQLite format 3\0", 16));
  check_every_command(scratch, book, kRefused, "is not a book");
  fs::remove(book);
  fs::create_directory(book);
  check_every_command(scratch, book, kRefused, "is a folder");
  fs::remove(book);
  REQUIRE(::mkfifo(book.c_str(), 0600) == 0);  // reading one would wait for ever
  check_every_command(scratch, book, kRefused, "no plain file");
}

TEST_CASE("another program's database and a newer book are refused by every command") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  SQLite::Database(book, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec("CREATE TABLE journal (x)");
  check_every_command(scratch, book, kRefused, "another program's database");
  fs::remove(book);
  made_book(scratch);
  SQLite::Database(book, SQLite::OPEN_READWRITE).exec("PRAGMA user_version = 999");
  check_every_command(scratch, book, kRefused, "newer kerfbook (book edition 999");
}

TEST_CASE("a book cut short in its first half is told damaged by every command, with exit code 3") {
  const Scratch scratch;
  const std::string book = made_book(scratch);
  const std::string whole = slurp(book);
  for (const std::size_t keep : {whole.size() / 2, std::size_t{4096}, std::size_t{150}}) {
    CAPTURE(keep);
    spill(book, whole.substr(0, keep));
    check_every_command(scratch, book, kFailed, "damaged");
  }
}

TEST_CASE("a header with an edition no book ever had is told damaged") {
  const Scratch scratch;
  const std::string book = made_book(scratch);
  std::string hurt = slurp(book);
  std::fill(hurt.begin() + 60, hurt.begin() + 64, '\0');  // user_version, SQLite Database File Format 1.3
  spill(book, hurt);
  check_every_command(scratch, book, kFailed, "damaged");
}

TEST_CASE("verify answers damage anywhere in a book with exit code 3 and leaves the book as it was") {
  const Scratch scratch;
  const std::string book = made_book(scratch);
  const std::string whole = slurp(book);
  const auto answer = [&](std::vector<std::string> words) {
    words.insert(words.begin(), {"-b", book});
    return run(words, scratch.path()).out;
  };
  const std::string journal = answer({"journal"});
  const std::string production =
      answer({"report", "production", "--from", "2026-06-01", "--to", "2026-06-30"});
  REQUIRE(production.find("2026-06-09") != std::string::npos);
  int told = 0;
  for (std::size_t at = 100; at + 64 < whole.size(); at += whole.size() / 60) {
    CAPTURE(at);
    std::string hurt = whole;
    for (std::size_t i = at; i < at + 64; ++i) hurt[i] = static_cast<char>(hurt[i] ^ 0x5A);
    spill(book, hurt);
    const Ran ran = run({"-b", book, "verify"}, scratch.path());
    if (ran.code == 0) {  // unused room of a page was hit: then nothing is amiss
      CHECK(answer({"journal"}) == journal);
      CHECK(answer({"report", "production", "--from", "2026-06-01", "--to", "2026-06-30"}) == production);
    } else {
      ++told;
      CHECK(ran.code == kFailed);
      CHECK(ran.err.find(book + ": ") != std::string::npos);
    }
    CHECK(slurp(book) == hurt);
    CHECK(scratch.names() == std::vector<std::string>{"day.sheet", "mill.book"});
  }
  CHECK(told >= 10);
}

TEST_CASE("a text changed behind the book's back makes verify name its entry, with exit code 3") {
  const Scratch scratch;
  const std::string book = made_book(scratch);
  SQLite::Database(book, SQLite::OPEN_READWRITE)
      .exec("UPDATE journal SET body = replace(body, '5/12', '6/12') WHERE entry = 4");
  const std::string before = slurp(book);
  const Ran ran = run({"-b", book, "verify"}, scratch.path());
  CHECK(ran.code == kFailed);
  CHECK(ran.err.find(book + ": journal entry 4 (2026-06-04, revision 1)") != std::string::npos);
  CHECK(ran.err.find("the book is damaged") != std::string::npos);
  CHECK(slurp(book) == before);
}
