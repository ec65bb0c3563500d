// The ledger by itself: what pays what, played from papers without a book. Common practice, no source.
#include <doctest/doctest.h>

#include "paper/ledger.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

constexpr Day kDay{20'000};

Paper paper_of(PaperKind kind, std::int64_t number, std::int64_t minor, std::int64_t invoice = 0) {
  Paper paper;
  paper.kind = kind;
  paper.number = number;
  paper.day = kDay + static_cast<int>(number);
  paper.customer = "ORR";
  paper.amount = {minor};
  paper.invoice = invoice;
  paper.called = std::to_string(number);
  return paper;
}

Paper with_job(Paper paper, const std::string& job) {
  paper.job = job;
  return paper;
}

}  // namespace

TEST_CASE("what a customer pays on account pays the oldest invoice first, then the next in part") {
  const Ledger ledger = play({paper_of(PaperKind::invoice, 1, 10000), paper_of(PaperKind::invoice, 2, 5000),
                              paper_of(PaperKind::payment, 1, 12000)});
  CHECK(ledger.invoices.at(1).open().minor == 0);
  CHECK(ledger.invoices.at(2).open().minor == 3000);
  CHECK(ledger.credit_of("ORR").minor == 0);
}

TEST_CASE(
    "an invoice is set against the deposit of its job and the credit on account, and no more than it bills") {
  Ledger ledger =
      play({with_job(paper_of(PaperKind::payment, 1, 2000), "BARN"), paper_of(PaperKind::payment, 2, 5000)});
  CHECK(ledger.deposit_of("BARN").minor == 2000);
  CHECK(ledger.credit_of("ORR").minor == 5000);
  CHECK(settled_at_issue(ledger, "BARN", "ORR", {10000}).minor == 7000);
  CHECK(settled_at_issue(ledger, "BARN", "ORR", {6000}).minor == 6000);
  CHECK(settled_at_issue(ledger, "SHED", "ORR", {6000}).minor == 5000);
  CHECK(settled_at_issue(ledger, "BARN", "ORR", {0}).minor == 0);
  play(ledger, with_job(paper_of(PaperKind::invoice, 1, 6000), "BARN"));
  CHECK(ledger.invoices.at(1).open().minor == 0);
  CHECK(ledger.deposit_of("BARN").minor == 0);  // the deposit goes first
  CHECK(ledger.credit_of("ORR").minor == 1000);
}

TEST_CASE("what was written off an invoice cannot be credited once more") {
  const Ledger ledger =
      play({paper_of(PaperKind::invoice, 1, 10000), paper_of(PaperKind::write_off, 1, 4000, 1)});
  CHECK(why_not(ledger, paper_of(PaperKind::credit, 1, 6000, 1)).empty());
  CHECK(why_not(ledger, paper_of(PaperKind::credit, 1, 6001, 1)) ==
        "the credit is more than invoice 1 bills");
}
