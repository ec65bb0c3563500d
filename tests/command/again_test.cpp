// again_test.cpp -- money is not posted twice by a slip of the hand.
#include <doctest/doctest.h>

#include "command/desk.h"

using namespace kerfbook::tests;

namespace {

constexpr int kDone = 0;
constexpr int kRefused = 1;

struct Till {
  Scratch scratch;
  std::string book = book_with_an_invoice(scratch);

  Ran at(const std::string& time, std::vector<std::string> words,
         const std::string& day = "2026-06-02") const {
    words.insert(words.begin(), {"-b", book});
    return run_at(day, time, words);
  }
};

}  // namespace

TEST_CASE(
    "the same payment within a minute is refused with the receipt it repeats; --again lets it through") {
  const Till till;
  const std::vector<std::string> pay{"pay", "5", "--invoice", "1", "--note", "coins"};
  CHECK(till.at("20:14:07", pay).code == kDone);
  const std::string before = slurp(till.book);
  const Ran twice = till.at("20:15:06", pay);
  CHECK(twice.code == kRefused);
  CHECK(twice.out.empty());
  CHECK(twice.err ==
        "kerfbook: receipt 1, posted at 20:14:07, less than a minute ago, is the same; nothing was changed. "
        "If this is one more, add --again\n");
  CHECK(slurp(till.book) == before);
  auto meant = pay;
  meant.emplace_back("--again");
  CHECK(till.at("20:15:06", meant).err.starts_with("receipt 2 posted"));
  CHECK(till.at("20:16:05", pay).err.find("receipt 2, posted at 20:15:06") != std::string::npos);
  CHECK(till.at("20:16:06", pay).code == kDone);  // a minute after the last
}

TEST_CASE("another sum, target, way, note or day is another payment") {
  const Till till;
  CHECK(till.at("20:14:07", {"pay", "5", "--invoice", "1"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "6", "--invoice", "1"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--customer", "BRN"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--job", "BRN"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--invoice", "1", "--by", "check 7"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--invoice", "1", "--note", "the second"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--invoice", "1", "--day", "2026-06-01"}).code == kDone);
  CHECK(till.at("20:14:08", {"pay", "5", "--invoice", "1", "--by", "cash"}).code ==
        kRefused);  // cash goes unsaid
}

TEST_CASE("a minute is a minute when midnight lies in it, and a clock that was put back refuses nothing") {
  const Till till;
  const std::vector<std::string> pay{"pay", "5", "--invoice", "1"};
  CHECK(till.at("23:59:40", pay).code == kDone);
  CHECK(till.at("00:00:20", pay, "2026-06-03").code == kRefused);
  CHECK(till.at("00:00:40", pay, "2026-06-03").code == kDone);
  CHECK(till.at("23:00:00", pay).code == kDone);
}

TEST_CASE("a refund, a credit note and a write-off are guarded alike") {
  const Till till;
  CHECK(till.at("20:00:00", {"pay", "20", "--job", "BRN"}).code == kDone);
  const std::vector<std::vector<std::string>> deeds{{"pay", "4", "--refund", "--job", "BRN"},
                                                    {"credit", "1", "3", "--why", "a short board"},
                                                    {"write-off", "1", "2", "--why", "small rest"}};
  const std::vector<std::string> names{"refund 1", "credit note 1", "write-off 1"};
  for (std::size_t i = 0; i < deeds.size(); ++i) {
    CAPTURE(names[i]);
    auto again = deeds[i];
    again.emplace_back("--again");
    CHECK(till.at("20:01:00", deeds[i]).code == kDone);
    const Ran twice = till.at("20:01:30", deeds[i]);
    CHECK(twice.code == kRefused);
    CHECK(twice.err.find(names[i] + ", posted at 20:01:00, less than a minute ago, is the same") !=
          std::string::npos);
    CHECK(till.at("20:01:30", again).code == kDone);
    CHECK(till.at("20:03:00", deeds[i]).code == kDone);
  }
}

TEST_CASE("what can be done but once needs no guard: a yard sale, an invoice, a load, a cancelled invoice") {
  const Till till;
  const std::vector<std::vector<std::string>> deeds{{"issue", "--sale", "cash", "--paid", "cash"},
                                                    {"load", "BRN"},
                                                    {"credit", "1", "--why", "billed twice"},
                                                    {"issue", "BRN"}};
  for (const auto& deed : deeds) {
    CAPTURE(deed.front());
    CHECK(till.at("20:01:00", deed).code == kDone);
    CHECK(till.at("20:01:01", deed).code == kRefused);
    CHECK(till.at("20:09:00", deed).code == kRefused);
  }
}

TEST_CASE("of eight programs that post the same payment at once one does, and seven name its receipt") {
  const Till till;
  std::vector<pid_t> children;
  for (int i = 0; i < 8; ++i)
    children.push_back(start({"-b", till.book, "pay", "5", "--invoice", "1"},
                             till.scratch / (std::to_string(i) + ".out"),
                             till.scratch / (std::to_string(i) + ".err")));
  int done = 0;
  int named = 0;
  for (std::size_t i = 0; i < children.size(); ++i) {
    done += wait_for(children[i]) == kDone ? 1 : 0;
    named +=
        slurp(till.scratch / (std::to_string(i) + ".err")).find("receipt 1, posted at") != std::string::npos;
  }
  CHECK(done == 1);
  CHECK(named == 7);
}
