// crash_test.cpp -- the program killed without warning while it posts, corrects, takes up a mill file or rebuilds:
// the book is as before or as after, never between. Several programs at once: see writers_test.cpp.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <random>
#include <thread>

#include "book/book.h"
#include "command/program.h"

using namespace kerfbook::tests;
using kerfbook::book::Book;
using Clock = std::chrono::steady_clock;
using Micros = std::chrono::microseconds;

namespace {

constexpr int kKills = 200;
constexpr int kMostTries = 3 * kKills;  // a kill that comes after the program has ended is none
constexpr unsigned kSeed = 20260505;  // the same moments every run, as far as a machine has the same moments

/// What the book ought to hold, kept by the test beside it.
struct Expected {
  std::vector<std::string> bodies;  ///< of the journal, in order
  std::int64_t pieces = 0;          ///< on all sheets in force
  int sheets = 0;
  int mill_files = 0;
};

/// One command to be killed, and what the book holds once it is through.
struct Act {
  std::vector<std::string> words;
  Expected after;
};

std::string two(int n) {
  return (n < 10 ? "0" : "") + std::to_string(n);
}

/// 12 logs, 60 tally lines, 525 pieces and `more`.
std::string sheet_text(int number, int more) {
  std::string text = "sheet 2026-" + two(1 + number / 28) + "-" + two(1 + number % 28) +
                     "\nsite yard\njob BRN\nspecies DF\nrun 8:00-12:00\n";
  for (int i = 0; i < 12; ++i) text += "log L" + std::to_string(100 * number + i) + " 14x12\n";
  for (int i = 0; i < 30; ++i)
    text += "2x" + std::to_string(4 + 2 * (i % 4)) + " " + std::to_string(1 + i) + "/12 2/16\n";
  if (more > 0) text += "1x4 " + std::to_string(more) + "/8\n";
  return text;
}
constexpr int kPieces = 30 * 31 / 2 + 2 * 30;

class Bench {
 public:
  Bench() : book_((scratch_ / "mill.book").string()) {
    REQUIRE(run({"new", book_}, scratch_.path()).code == 0);
  }

  /// The acts take turns: a day, three days at once, a correction, a mill file, a rebuild.
  static constexpr int kKinds = 5;
  Act act(int kind) {
    Act act{{"-b", book_}, expected_};
    switch (kind) {
      case 0:
        return post_days(act, 1);
      case 1:
        return post_days(act, 3);
      case 2:
        return correct_last_day(act);
      case 3:
        return post_mill(act);
      default:
        act.words.push_back("rebuild");
        return act;
    }
  }

  /// Lets it come through; how long that took.
  Micros finish(const Act& act) {
    const auto began = Clock::now();
    const Ran ran = run(act.words, scratch_.path());
    const auto took = std::chrono::duration_cast<Micros>(Clock::now() - began);
    REQUIRE_MESSAGE(ran.code == 0, ran.err);
    expected_ = act.after;
    return took;
  }

  /// Kills it after `moment`, counted from its start or, when `aimed`, from when it began to change the file.
  void kill(const Act& act, Micros moment, bool aimed) {
    const pid_t child = start(act.words, scratch_ / ".out", scratch_ / ".err");
    while (aimed && !fs::exists(journal_file()) && runs(child)) {
    }
    const auto until = Clock::now() + moment;
    while (Clock::now() < until) {
      if (until - Clock::now() > std::chrono::milliseconds(1)) std::this_thread::sleep_for(Micros(200));
    }
    ::kill(child, SIGKILL);
    killed_ += wait_for(child) == 128 + SIGKILL ? 1 : 0;
    half_done_ += fs::exists(journal_file()) ? 1 : 0;
    fs::remove(scratch_ / ".out");
    fs::remove(scratch_ / ".err");
  }

  /// The next command clears up; then all is as before, byte for byte, or as after.
  void check_before_or_after(const Act& act, const std::string& before) {
    const Ran ran = run({"-b", book_, "journal", "--as", "csv"}, scratch_.path());
    REQUIRE_MESSAGE(ran.code == 0, ran.err);
    REQUIRE(book_files() == std::vector<std::string>{"mill.book"});
    const Book book = open();
    std::vector<std::string> bodies;
    for (const auto& entry : book.journal()) bodies.push_back(entry.body);
    const bool done = bodies == act.after.bodies;
    REQUIRE((done || bodies == expected_.bodies));
    if (!done) CHECK(slurp(book_) == before);
    (done ? after_ : before_) += 1;
    if (done) expected_ = act.after;
    for (const char* table : {"tally", "run"}) {
      CHECK(number(book, std::string("SELECT coalesce(sum(pieces), 0) FROM ") + table) == expected_.pieces);
    }
    CHECK(number(book, "SELECT coalesce(sum(logs), 0) FROM run") == 12 * expected_.sheets);
  }

  void check_whole() {
    const Ran ran = run({"-b", book_, "verify"}, scratch_.path());
    REQUIRE_MESSAGE(ran.code == 0, ran.err);
  }

  [[nodiscard]] std::string bytes() const { return slurp(book_); }
  [[nodiscard]] int killed() const { return killed_; }
  [[nodiscard]] int half_done() const { return half_done_; }  ///< kills while the file was being changed
  [[nodiscard]] int before() const { return before_; }
  [[nodiscard]] int after() const { return after_; }

 private:
  std::string spilled(const std::string& name, const std::string& text) {
    spill(scratch_ / name, text);
    return (scratch_ / name).string();
  }
  Act post_days(Act act, int days) {
    act.words.push_back("post");
    for (int i = 0; i < days; ++i) {
      const std::string text = sheet_text(act.after.sheets++, 0);
      act.words.push_back(spilled("day" + std::to_string(i) + ".sheet", text));
      act.after.bodies.push_back(text);
      act.after.pieces += kPieces;
    }
    return act;
  }
  Act correct_last_day(Act act) {
    const int more = ++corrections_;
    const std::string text = sheet_text(expected_.sheets - 1, more);
    act.words.insert(act.words.end(), {"post", spilled("again.sheet", text), "--why", "counted again"});
    // The day may have been corrected before: then its pieces had that correction's in them.
    const std::string& now = last_text_of_last_day();
    act.after.pieces += more - more_of(now);
    act.after.bodies.push_back(text);
    return act;
  }
  Act post_mill(Act act) {
    const std::string text = "[recovery]\ntaper = \"1/" + std::to_string(8 + act.after.mill_files++) + "\"\n";
    act.words.insert(act.words.end(), {"post", spilled("mill.toml", text), "--why", "measured again"});
    act.after.bodies.push_back(text);
    return act;
  }
  [[nodiscard]] const std::string& last_text_of_last_day() const {
    const std::string head = sheet_text(expected_.sheets - 1, 0).substr(0, 16);
    return *std::find_if(expected_.bodies.rbegin(), expected_.bodies.rend(),
                         [&](const std::string& body) { return body.starts_with(head); });
  }
  static int more_of(const std::string& text) {
    const auto at = text.find("1x4 ");
    return at == std::string::npos ? 0 : std::stoi(text.substr(at + 4));
  }
  static bool runs(pid_t child) {
    siginfo_t info{};
    ::waitid(P_PID, static_cast<id_t>(child), &info, WEXITED | WNOHANG | WNOWAIT);
    return info.si_pid == 0;
  }
  [[nodiscard]] fs::path journal_file() const { return book_ + "-journal"; }
  [[nodiscard]] std::vector<std::string> book_files() const {
    auto names = scratch_.names();
    std::erase_if(names, [](const std::string& name) { return name.find("mill.book") == std::string::npos; });
    return names;
  }
  [[nodiscard]] Book open() const { return Book::open(book_, {.read_only = true, .now = {}, .papers = {}}); }
  static std::int64_t number(const Book& book, const std::string& sql) {
    return book.database().execAndGet(sql).getInt64();
  }

  Scratch scratch_;
  std::string book_;
  Expected expected_;
  int corrections_ = 0;
  int killed_ = 0;
  int half_done_ = 0;
  int before_ = 0;
  int after_ = 0;
};

}  // namespace

TEST_CASE(
    "kill -9 at any moment of a post, a correction or a rebuild leaves the book as before or as after") {
  Bench bench;
  std::mt19937 random(kSeed);
  std::vector<Micros> whole;
  for (int kind = 0; kind < Bench::kKinds; ++kind) whole.push_back(bench.finish(bench.act(kind)));
  for (int i = 0; bench.killed() < kKills && i < kMostTries; ++i) {
    CAPTURE(i);
    const int kind = i % Bench::kKinds;
    const bool aimed = i / Bench::kKinds % 2 == 1;
    // Half the kills fall anywhere in the life of the program, half while it changes the file.
    const auto longest = whole[static_cast<std::size_t>(kind)].count() * (aimed ? 4 : 11) / 10;
    std::uniform_int_distribution<std::int64_t> moment(0, longest);
    const Act act = bench.act(kind);
    const std::string before = bench.bytes();
    bench.kill(act, Micros(moment(random)), aimed);
    bench.check_before_or_after(act, before);
    if (i % 20 == 19) bench.check_whole();
  }
  MESSAGE("killed " << bench.killed() << ", of them half done " << bench.half_done()
                    << "; the book as before " << bench.before() << ", as after " << bench.after());
  CHECK(bench.killed() == kKills);
  CHECK(bench.half_done() >= 20);  // else none fell where it matters
  CHECK(bench.after() >= 10);
  bench.check_whole();
  bench.finish(bench.act(0));  // and the book goes on
  bench.check_whole();
}

TEST_CASE("kill -9 at any moment of making a book leaves no half-made book under its name") {
  const Scratch scratch;
  std::mt19937 random(kSeed);
  const auto began = Clock::now();
  REQUIRE(run({"new", (scratch / "first.book").string()}, scratch.path()).code == 0);
  const auto whole = std::chrono::duration_cast<Micros>(Clock::now() - began);
  std::uniform_int_distribution<std::int64_t> moment(0, whole.count() * 11 / 10);
  int made = 0;
  for (int i = 0; i < 40; ++i) {
    const std::string book = (scratch / ("b" + std::to_string(i))).string();
    const pid_t child = start({"new", book}, scratch / ".out", scratch / ".err");
    std::this_thread::sleep_for(Micros(moment(random)));
    ::kill(child, SIGKILL);
    wait_for(child);
    if (!fs::exists(book)) {
      CHECK(run({"new", book}, scratch.path()).code == 0);
    } else {
      ++made;
    }
    CHECK(run({"-b", book, "verify"}, scratch.path()).code == 0);
  }
  CHECK(made < 40);
}
