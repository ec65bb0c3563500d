// crash_test.cpp -- the program killed without warning while it posts: the book is as before or as after, never
// between. Several programs at once: see writers_test.cpp.
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <random>
#include <thread>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

constexpr int kKills = 220;

std::string sheet_text(int number) {
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  std::string text = "sheet 2026-" + two(1 + number / 28) + "-" + two(1 + number % 28) +
                     "\nsite yard\njob BRN\nspecies DF\nrun 8:00-12:00\n";
  for (int i = 0; i < 12; ++i) text += "log L" + std::to_string(100 * number + i) + " 14x12\n";
  for (int i = 0; i < 30; ++i)
    text += "2x" + std::to_string(4 + 2 * (i % 4)) + " " + std::to_string(1 + i) + "/12 2/16\n";
  return text;
}

/// How many entries the book's journal has, as the program itself says; -1 when it cannot be read.
int entries(const std::string& book, const Scratch& scratch) {
  const Ran ran = run({"-b", book, "journal", "--as", "csv"}, scratch.path());
  CHECK_MESSAGE(ran.code == 0, ran.err);
  if (ran.code != 0) return -1;
  return static_cast<int>(std::count(ran.out.begin(), ran.out.end(), '\n')) - 1;
}

}  // namespace

TEST_CASE("kill -9 at any moment of a post leaves the book as before or as after") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  const std::string sheet = (scratch / "a.sheet").string();
  REQUIRE(run({"new", book}, scratch.path()).code == 0);
  std::mt19937 random(20260505);  // the same moments every run, as far as a machine has the same moments

  spill(sheet, sheet_text(0));
  const auto began = std::chrono::steady_clock::now();
  REQUIRE(run({"-b", book, "post", sheet}, scratch.path()).code == 0);
  const auto whole =
      std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - began);

  int posted = 1;
  int killed_before = 0;
  int killed_after = 0;
  for (int i = 1; i <= kKills; ++i) {
    spill(sheet, sheet_text(posted));
    std::uniform_int_distribution<std::int64_t> moment(0, whole.count() * 11 / 10);
    const pid_t child = start({"-b", book, "post", sheet}, scratch / ".out", scratch / ".err");
    std::this_thread::sleep_for(std::chrono::microseconds(moment(random)));
    ::kill(child, SIGKILL);
    wait_for(child);
    const int now = entries(book, scratch);
    REQUIRE_MESSAGE((now == posted || now == posted + 1), "after kill " << i << ": " << now << " entries");
    (now == posted ? killed_before : killed_after) += 1;
    posted = now;
    if (i % 20 == 0) {
      const Ran whole_book = run({"-b", book, "verify"}, scratch.path());
      REQUIRE_MESSAGE(whole_book.code == 0, whole_book.err);
    }
  }
  MESSAGE("killed before the post was kept: " << killed_before << ", after: " << killed_after);
  CHECK(killed_before > 20);  // else the moments were too late to prove anything
  CHECK(killed_after > 5);
  CHECK(run({"-b", book, "verify"}, scratch.path()).code == 0);
  spill(sheet, sheet_text(posted));
  CHECK(run({"-b", book, "post", sheet}, scratch.path()).code ==
        0);  // the next post clears what a killed one left
  fs::remove(scratch / ".out");
  fs::remove(scratch / ".err");
  CHECK(scratch.names() == std::vector<std::string>{"a.sheet", "mill.book"});
}
