// writers_test.cpp -- several programs at one book at once: every post comes through, one after the other.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "book/book.h"
#include "command/desk.h"

using namespace kerfbook::tests;
namespace book_room = kerfbook::book;

namespace {

std::string sheet_text(int number) {
  const std::string day = (number < 9 ? "0" : "") + std::to_string(number + 1);
  std::string text = "sheet 2026-06-" + day + "\nsite yard\njob J" + std::to_string(number % 3) +
                     "\nspecies DF\nrun 8:00-12:00\n";
  for (int i = 0; i < 10; ++i) text += "log L" + std::to_string(100 * number + i) + " 14x12\n";
  for (int i = 0; i < 20; ++i) text += "2x6 " + std::to_string(1 + number + i) + "/12\n";
  return text;
}

/// Posts sheet `number` of a folder without waiting for the end.
pid_t start_post(const Scratch& scratch, const std::string& book, int number, const std::string& writer) {
  const fs::path sheet = scratch / (writer + ".sheet");
  spill(sheet, sheet_text(number));
  return start({"-b", book, "post", sheet.string()}, scratch / (writer + ".out"),
               scratch / (writer + ".err"));
}

std::string new_book(const Scratch& scratch) {
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}, scratch.path()).code == 0);
  return book;
}

void check_all_there(const std::string& file, int sheets) {
  const auto book = book_room::Book::open(file, {.read_only = true, .now = {}, .papers = {}});
  CHECK(book.journal().size() == static_cast<std::size_t>(sheets));
  std::set<std::string> bodies;
  for (const auto& entry : book.journal()) bodies.insert(entry.body);
  for (int i = 0; i < sheets; ++i) CHECK_MESSAGE(bodies.count(sheet_text(i)) == 1, "sheet " << i);
  CHECK(book.verify().empty());
}

}  // namespace

TEST_CASE("programs posting different days at once all succeed in turn, and every day is there") {
  for (const int writers : {2, 8}) {
    CAPTURE(writers);
    const Scratch scratch;
    const std::string book = new_book(scratch);
    std::vector<pid_t> children;
    for (int i = 0; i < writers; ++i)
      children.push_back(start_post(scratch, book, i, "w" + std::to_string(i)));
    for (int i = 0; i < writers; ++i) {
      CHECK_MESSAGE(wait_for(children[static_cast<std::size_t>(i)]) == 0,
                    slurp(scratch / ("w" + std::to_string(i) + ".err")));
    }
    check_all_there(book, writers);
    const auto names = scratch.names();
    CHECK(std::none_of(names.begin(), names.end(), [](const std::string& name) {
      return name.starts_with("mill.book") && name != "mill.book";
    }));
  }
}

TEST_CASE("of eight programs posting the same day at once one posts it and seven add nothing") {
  const Scratch scratch;
  const std::string book = new_book(scratch);
  std::vector<pid_t> children;
  for (int i = 0; i < 8; ++i) children.push_back(start_post(scratch, book, 0, "w" + std::to_string(i)));
  for (const pid_t child : children) CHECK(wait_for(child) == 0);
  int posted = 0;
  int unchanged = 0;
  for (int i = 0; i < 8; ++i) {
    const std::string out = slurp(scratch / ("w" + std::to_string(i) + ".out"));
    posted += out.find(": posted;") != std::string::npos ? 1 : 0;
    unchanged += out.find("already in the book, nothing added") != std::string::npos ? 1 : 0;
  }
  CHECK(posted == 1);
  CHECK(unchanged == 7);
  check_all_there(book, 1);
}

TEST_CASE("a book that is read over and over lets the writers through, and each reader sees whole days") {
  const Scratch scratch;
  const std::string book = new_book(scratch);
  std::vector<pid_t> children;
  for (int i = 0; i < 4; ++i) children.push_back(start_post(scratch, book, i, "w" + std::to_string(i)));
  std::size_t seen = 0;
  for (int i = 0; i < 20; ++i) {
    const Ran ran = run({"-b", book, "journal", "--as", "csv"}, scratch.path());
    CHECK_MESSAGE(ran.code == 0, ran.err);
    const auto entries = static_cast<std::size_t>(std::count(ran.out.begin(), ran.out.end(), '\n'));
    CHECK(entries >= seen);
    seen = entries;
  }
  for (std::size_t i = 0; i < children.size(); ++i) {
    CHECK_MESSAGE(wait_for(children[i]) == 0, slurp(scratch / ("w" + std::to_string(i) + ".err")));
  }
  check_all_there(book, 4);
}

TEST_CASE("a writer killed among others harms none of them") {
  const Scratch scratch;
  const std::string book = new_book(scratch);
  const pid_t doomed = start_post(scratch, book, 4, "doomed");
  std::vector<pid_t> children;
  for (int i = 0; i < 4; ++i) children.push_back(start_post(scratch, book, i, "w" + std::to_string(i)));
  ::kill(doomed, SIGKILL);
  wait_for(doomed);
  for (std::size_t i = 0; i < children.size(); ++i) {
    CHECK_MESSAGE(wait_for(children[i]) == 0, slurp(scratch / ("w" + std::to_string(i) + ".err")));
  }
  REQUIRE(run({"-b", book, "post", (scratch / "doomed.sheet").string()}, scratch.path()).code == 0);
  check_all_there(book, 5);
}

TEST_CASE("24 programs that take payments at once all do, in turn, and the account adds up") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  constexpr int kPayments = 24;
  std::vector<pid_t> children;
  for (int i = 1; i <= kPayments; ++i) {
    const std::string name = std::to_string(i);
    children.push_back(start({"-b", book, "--today", "2026-06-02", "pay", name + ".25", "--customer", "BRN"},
                             scratch / (name + ".out"), scratch / (name + ".err")));
  }
  for (int i = 1; i <= kPayments; ++i)
    CHECK_MESSAGE(wait_for(children[static_cast<std::size_t>(i - 1)]) == 0,
                  slurp(scratch / (std::to_string(i) + ".err")));
  // 1.25 + 2.25 + ... + 24.25 = 306.00 against an invoice of 100.00
  const Ran owed = run({"-b", book, "--today", "2026-06-02", "owed", "--as", "csv"}, scratch.path());
  CHECK_MESSAGE(owed.out.find(",0.00,206.00,-206.00\r\n") != std::string::npos, owed.out);
  CHECK(run({"-b", book, "verify"}, scratch.path()).code == 0);
}

TEST_CASE(
    "payments, an invoice, a sale, a load and a post at once all come through, or say that there is nothing "
    "left") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  spill(scratch / "next.sheet", "sheet 2026-06-02\njob BRN\nspecies DF\nsawing 8:00-9:00\n2x6 5/12\n");
  std::vector<std::vector<std::string>> deeds{{"issue", "--sale", "cash", "--paid", "cash"},
                                              {"load", "BRN"},
                                              {"post", (scratch / "next.sheet").string()},
                                              {"credit", "1", "7", "--why", "a short board"},
                                              {"write-off", "1", "2", "--why", "small rest"}};
  for (int i = 1; i <= 19; ++i) deeds.push_back({"pay", std::to_string(i), "--job", "BRN"});
  std::vector<pid_t> children;
  for (std::size_t i = 0; i < deeds.size(); ++i) {
    deeds[i].insert(deeds[i].begin(), {"-b", book, "--today", "2026-06-02"});
    children.push_back(
        start(deeds[i], scratch / (std::to_string(i) + ".out"), scratch / (std::to_string(i) + ".err")));
  }
  for (std::size_t i = 0; i < children.size(); ++i)
    CHECK_MESSAGE(wait_for(children[i]) == 0, slurp(scratch / (std::to_string(i) + ".err")));
  // Of the invoice 100 - 7 - 2 are open; 1 + 2 + ... + 19 = 190 are held for the job.
  const Ran owed = run({"-b", book, "--today", "2026-06-02", "owed", "--as", "csv"}, scratch.path());
  CHECK_MESSAGE(owed.out.find(",91.00,190.00,-99.00\r\n") != std::string::npos, owed.out);
  CHECK(run({"-b", book, "verify"}, scratch.path()).code == 0);
}

TEST_CASE("who waits for more than a second is told what for, and then does his deed") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  pid_t child = 0;
  {
    auto held = book_room::Book::open(book, {.read_only = false, .now = {}, .papers = {}});
    const book_room::Turn turn(held);
    child = start({"-b", book, "pay", "5", "--invoice", "1"}, scratch / "out", scratch / "err");
    const std::string told = "waiting for another program that has " + book + " in use\n";
    for (int i = 0; i < 200 && slurp(scratch / "err") != told; ++i) ::usleep(50'000);
    CHECK(slurp(scratch / "err") == told);
  }
  CHECK(wait_for(child) == 0);
  CHECK(slurp(scratch / "err").find("receipt 1 posted") != std::string::npos);
}
