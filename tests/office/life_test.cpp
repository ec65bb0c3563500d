// A real book through random weeks: sheets, corrections, invoices, divisions, payments, credits, refunds, write-offs,
// waivers and new price lists, all through the office's own deeds; and what must hold after each.
#include <map>
#include <random>

#include "base/text.h"
#include "book/stock_held.h"
#include "book/store.h"
#include "book_helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const std::vector<std::string> kJobs{"TER", "QHH", "MUM"};

/// One life of a book. Each deed may be refused; then nothing may have changed.
class Life {
 public:
  explicit Life(unsigned seed) : random_(seed) { mill_ = billing::demo("hargan.toml"); }

  void step() {
    ++steps_;
    const std::size_t papers = bodies_.size();
    try {
      deed(pick(14));
    } catch (const Refused&) {
      CHECK(all_bodies().size() == papers);
    }
    check();
  }

  /// How many papers of each kind there came to be.
  const std::map<std::string, std::int64_t>& finish() const {
    demo_.whole();
    return numbers_;
  }

 private:
  int pick(int past) { return static_cast<int>(random_() % static_cast<unsigned>(past)); }
  std::string job() { return kJobs[static_cast<std::size_t>(pick(3))]; }
  std::int64_t invoice() { return 1 + pick(std::max(1, static_cast<int>(numbers_["invoice"]))); }

  void deed(int what) {
    book::Book& book = *demo_.book;
    switch (what) {
      case 0:
        return sheet("");
      case 1:
        return sheet("counted again");
      case 2:
      case 3: {
        const std::string of = job();
        issue_invoice(book, of, last_, last_);
        const Draft next = draft_job(book, of, last_, last_);
        CHECK(next.lines.empty());  // nothing is billed twice
        return;
      }
      case 4:
        divide_lumber(book, "MUM", last_, last_);
        return;
      case 5:
        take_payment(book, {"", "", invoice(), Money{1 + pick(90'000)}, "cash", ""}, last_);
        return;
      case 6:
        take_payment(book, {job(), "", 0, Money{1 + pick(50'000)}, "cash", ""}, last_);
        return;
      case 7:
        take_payment(book, {"", job(), 0, Money{1 + pick(40'000)}, "check", ""}, last_);
        return;
      case 8:
        refund(book, {pick(2) == 0 ? job() : "", job(), 0, Money{1 + pick(20'000)}, "cash", ""}, last_);
        return;
      case 9:
        credit_invoice(book, invoice(), pick(3) == 0 ? std::nullopt : std::optional(Money{1 + pick(9'000)}),
                       "as agreed", last_);
        return;
      case 10:
        write_off(book, invoice(), pick(3) == 0 ? std::nullopt : std::optional(Money{1 + pick(3'000)}),
                  "rest", last_);
        return;
      case 11:
        load(book, {job(), {}, "", "", ""}, last_);
        return;
      case 12:
        return ownership();
      default:
        return prices();
    }
  }

  void sheet(const std::string& why) {
    Day day = last_ + 1;
    if (!why.empty()) {
      if (sheets_ == 0) return;
      day = kFriday + 1 + pick(sheets_);
    }
    const std::string of = job();
    std::string text = "sheet " + write_day(day) + "\nsite yard\njob " + of + "\nspecies DF\nlog X" +
                       std::to_string(++tags_) + " " + std::to_string(10 + pick(9)) + "x12\n";
    for (const char* size : {"1x4", "2x6", "4x6"})
      if (pick(3) != 0)
        text += std::string(size) + " " + std::to_string(1 + pick(20)) + "/" +
                std::to_string(8 + 2 * pick(5)) + "\n";
    if (pick(4) == 0) text += "1x3 " + std::to_string(20 + pick(300)) + "lf\n";
    if (pick(3) == 0) text += "stop 0:30 waiting tractor, charge\n";
    if (pick(3) == 0) text += "teeth head replaced 2 metal X" + std::to_string(tags_) + "\n";
    if (pick(4) == 0) text += "sold cash 2x6 No2 1/14\n";
    if (pick(4) == 0) text += "job own\nbundle B1\n2x6 " + std::to_string(1 + pick(9)) + "/14\n";
    if (pick(6) == 0) text += "bundle -\nsold cash bundle b1 at 60\n";
    demo_.book->post_sheet(text, why.empty() ? "-" : why + " " + std::to_string(steps_));
    if (!why.empty()) return;
    last_ = day;
    ++sheets_;
  }

  /// Quill's own wood is cut as a customer's, and the other way.
  void ownership() {
    static const std::string kOwner = "\ncode     = \"QHH\"\n";
    REQUIRE(mill_.find(kOwner) != std::string::npos);
    std::string mill = mill_;
    if (pick(2) == 0) mill.insert(mill.find(kOwner) + 1, "owner = \"own\"\n");
    demo_.book->post_mill(mill, "owner " + std::to_string(steps_));
  }

  /// Another rate for one of the prices.
  void prices() {
    static const std::vector<std::string> kRates{"rate  = 0.48", "rate        = 0.52",
                                                 "rate           = 0.54"};
    const std::string& old = kRates[static_cast<std::size_t>(pick(3))];
    std::string mill = mill_;
    mill.replace(mill.find(old), old.size(), old.substr(0, old.size() - 2) + std::to_string(10 + pick(89)));
    demo_.book->post_mill(mill, "new list " + std::to_string(steps_));
  }

  [[nodiscard]] std::map<std::string, std::string> all_bodies() const {
    std::map<std::string, std::string> all;
    for (const book::Entry& entry : demo_.book->journal())
      if (entry.kind == book::EntryKind::paper) all[entry.subject] = entry.body;
    return all;
  }

  void check() {
    const auto now = all_bodies();
    for (const auto& paper : bodies_)
      CHECK_MESSAGE(now.at(paper.first) == paper.second, paper.first << " has changed");
    bodies_ = now;
    numbers_.clear();
    std::map<std::string, std::int64_t> balances;
    book::Store store(demo_.book->database());
    store.each("SELECT kind, number, customer, amount FROM paper ORDER BY entry", [&](const book::Row& row) {
      const std::string kind = row.text(0);
      CHECK(row.number(1) == ++numbers_[kind]);  // no gap
      const bool adds = kind == "invoice" || kind == "refund";
      const bool moves = adds || kind == "payment" || kind == "credit" || kind == "write-off";
      if (moves) balances[row.text(2)] += adds ? row.number(3) : -row.number(3);
    });
    const Ledger ledger = play(papers_of(*demo_.book));
    for (const auto& [customer, balance] : balances) {
      CHECK(ledger.balance(customer).minor == balance);
      CHECK(ledger.credit_of(customer).minor >= 0);
    }
    for (const auto& [number, one] : ledger.invoices) CHECK(one.open().minor >= 0);
    CHECK(store.number("SELECT " + tests::stock_wrongly_kept()) == 0);
    check_shares();
  }

  /// What the divisions gave to both sides, and the draft of the next, are the lumber of the job as it stands.
  void check_shares() {
    std::map<std::string, std::int64_t> given;
    Rational owed;
    Rational carried;
    for (const Paper& paper : papers_about(*demo_.book, "MUM", "MUM")) {
      if (paper.kind != PaperKind::division) continue;
      for (const ShareLine& line : paper.split->lines) {
        given[write_size(line.size) + "/" + std::to_string(line.length.count) + line.species] +=
            line.to_customer + line.to_mill;
        CHECK(line.to_customer + line.to_mill == line.pieces);
      }
      owed = owed + (paper.split->customer_bf + paper.split->mill_bf) * Rational(1, 2) -
             paper.split->customer_bf;
      carried = paper.split->carried;
      CHECK(carried == owed);
      CHECK((carried < Rational(40) && Rational(-40) < carried));  // never more than a board or two
    }
    if (given.empty() || settled_ == numbers_["division"]) return;
    settled_ = numbers_["division"];
    for (const Fact& fact : job_facts(*demo_.book, "MUM", last_).facts)
      if (fact.kind == FactKind::pieces || fact.kind == FactKind::lineal)
        given[write_size(fact.size) + "/" + std::to_string(fact.length.count) + fact.species] -= fact.count;
    for (const auto& rest : given) CHECK_MESSAGE(rest.second == 0, rest.first);
  }

  std::mt19937 random_;
  DemoBook demo_;
  std::string mill_;
  Day last_ = kFriday;
  int sheets_ = 0;
  int steps_ = 0;
  int tags_ = 0;
  std::int64_t settled_ = 0;
  std::map<std::string, std::string> bodies_;
  std::map<std::string, std::int64_t> numbers_;
};

}  // namespace

TEST_CASE(
    "whatever is done with a book, balances are billed less paid less credited, numbers have no gap, and no "
    "paper "
    "changes") {
  std::map<std::string, std::int64_t> papers;
  for (unsigned seed = 1; seed <= 6; ++seed) {
    CAPTURE(seed);
    Life life(seed);
    for (int i = 0; i < 45; ++i) life.step();
    for (const auto& [kind, many] : life.finish()) papers[kind] += many;
  }
  for (const std::string kind : {"invoice", "division", "payment", "refund", "credit", "write-off"})
    CHECK_MESSAGE(papers[kind] >= 3, kind << ": too few to tell, " << papers[kind]);
}
