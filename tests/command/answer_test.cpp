// answer_test.cpp -- money is not posted for a paper that cannot be written, and what was posted is said first.
#include <doctest/doctest.h>

#include "command/desk.h"

using namespace kerfbook::tests;

namespace {

constexpr int kRefused = 1;
constexpr int kWrongUsage = 2;
constexpr int kFailed = 3;

Ran pay(const Scratch& scratch, const std::string& book, std::vector<std::string> more) {
  std::vector<std::string> words{"-b", book, "pay", "40", "--invoice", "1", "--today", "2026-06-02"};
  words.insert(words.end(), more.begin(), more.end());
  return run(words, scratch.path());
}

}  // namespace

TEST_CASE("a payment whose receipt cannot be written is not posted") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  const std::string before = slurp(book);
  const Ran missing = pay(scratch, book, {"-o", (scratch / "missing/x.html").string()});
  CHECK(missing.code == kRefused);
  CHECK(missing.err.find("there is no folder") != std::string::npos);
  CHECK(pay(scratch, book, {"-o", book}).code == kRefused);
  CHECK(pay(scratch, book, {"-o", scratch.path().string()}).code == kRefused);
  CHECK(pay(scratch, book, {"--as", "papyrus"}).code == kWrongUsage);
  CHECK(slurp(book) == before);
}

TEST_CASE(
    "a receipt that could not be written after all says that the payment is posted and how to print it") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  const Ran full = pay(scratch, book, {"-o", "/dev/full"});
  CHECK(full.code == kFailed);
  CHECK(full.err.starts_with("receipt 1 posted; print it again with: paper payment 1\n"));
  CHECK(full.err.find(
            "receipt 1 posted all the same, so do not post it again; print it with: paper payment 1") !=
        std::string::npos);
  CHECK(run({"-b", book, "paper", "payment", "1"}, scratch.path()).code == 0);
}

TEST_CASE("a failure before anything is posted says so") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  const std::string before = slurp(book);
  // A name longer than the file system takes: the folder is there, and no file of that name can be.
  const Ran ran = pay(scratch, book, {"-o", (scratch / (std::string(300, 'x') + ".txt")).string()});
  CHECK(ran.code == kFailed);
  CHECK_MESSAGE(ran.err.find("; nothing was changed\n") != std::string::npos, ran.err);
  CHECK(slurp(book) == before);
}

TEST_CASE("a report never goes over the book it is of") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  const std::string before = slurp(book);
  const Ran ran = run({"-b", book, "report", "production", "-o", book}, scratch.path());
  CHECK(ran.code == kRefused);
  CHECK(ran.err.find("is a book, and stays one") != std::string::npos);
  CHECK(slurp(book) == before);
}
