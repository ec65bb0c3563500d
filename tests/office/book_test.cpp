// The office on a real book: the demo week posted, invoices issued and frozen, a correction after issue, money in
// and out, the tables rebuilt from the journal alone.
#include <SQLiteCpp/SQLiteCpp.h>

#include "book_helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

TEST_CASE("the demo week's invoices come out of the book to the cent") {
  DemoBook demo;
  const Draft ter = draft_job(*demo.book, "TER", kFriday, kFriday);
  for (const auto& problem : ter.problems) FAIL_CHECK(problem);
  CHECK(ter.total.minor == 188231);
  CHECK(draft_job(*demo.book, "QHH", kFriday, kFriday).total.minor == 55436 + 4992);
  demo.correct();
  CHECK(draft_job(*demo.book, "QHH", kFriday, kFriday).total.minor == 55436);
  const Draft sale = draft_sale(*demo.book, "cash", kFriday, kFriday);
  CHECK(sale.subtotal.minor == 10080);
  CHECK(sale.total.minor == 10584);
  CHECK(waiting(*demo.book, kFriday, kFriday).size() == 4);
}

TEST_CASE("the barn's invoice takes up the deposit: 1,882.31 less 400.00 is 1,482.31 due") {
  DemoBook demo;
  take_payment(*demo.book, {"", "TER", 0, money("400.00"), "check 88", ""}, *read_day("2026-04-21"));
  const Paper invoice = issue_invoice(*demo.book, "TER", kFriday, kFriday);
  CHECK(invoice.number == 1);
  CHECK(invoice.amount.minor == 188231);
  CHECK(invoice.settled.minor == 40000);
  CHECK(invoice.due == *read_day("2026-05-22"));
  const std::string text = text_of(invoice.document);
  CHECK(text.find("1,482.31") != std::string::npos);
  CHECK(text.find("T17") != std::string::npos);
  const Ledger ledger = play(papers_of(*demo.book));
  CHECK(ledger.balance("TER").minor == 148231);
  CHECK_THROWS_AS(issue_invoice(*demo.book, "TER", kFriday, kFriday), Refused);
  take_payment(*demo.book, {"", "", 1, money("1482.31"), "cash", ""}, kFriday);
  CHECK(play(papers_of(*demo.book)).balance("TER").minor == 0);
  demo.whole();
}

TEST_CASE("an issued invoice never changes; the corrected sheet is a line on the next draft") {
  DemoBook demo;
  const Paper issued = issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  CHECK(issued.amount.minor == 60428);
  const std::string before = demo.book->current("invoice 1")->body;
  demo.correct();
  CHECK(demo.book->current("invoice 1")->body == before);
  const Draft next = draft_job(*demo.book, "QHH", kFriday, kFriday);
  REQUIRE(next.lines.size() == 1);
  CHECK(next.total.minor == -4992);
  CHECK(next.lines[0].description.find("2026-05-07 (bundle count: 23, not 32)") != std::string::npos);
  CHECK(next.lines[0].quantity == Decimal{-96, 0});
  const Paper adjustment = issue_invoice(*demo.book, "QHH", kFriday, kFriday + 7);
  CHECK(adjustment.number == 2);
  const Ledger ledger = play(papers_of(*demo.book));
  CHECK(ledger.balance("QHH").minor == 55436);
  CHECK(ledger.invoices.at(1).open().minor == 55436);  // the money to come is set against it
  CHECK(read_paper(before).amount.minor == 60428);
  demo.whole();
}

TEST_CASE("a cancelled invoice keeps its number, and its work is billed anew under the next") {
  DemoBook demo;
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  const Paper credit =
      credit_invoice(*demo.book, 1, std::nullopt, "billed before the bundle was counted", kFriday);
  CHECK(credit.amount.minor == 60428);
  CHECK(play(papers_of(*demo.book)).balance("QHH").minor == 0);
  demo.correct();
  const Paper anew = issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  CHECK(anew.number == 2);
  CHECK(anew.amount.minor == 55436);
  CHECK_THROWS_AS(credit_invoice(*demo.book, 1, std::nullopt, "again", kFriday), Refused);
  demo.whole();
}

TEST_CASE("Mumbrey's halves are settled once, and the mill's part is own stock") {
  DemoBook demo;
  const Paper settled = divide_lumber(*demo.book, "MUM", kFriday, kFriday);
  REQUIRE(settled.split);
  CHECK(settled.split->customer_pieces == 66);
  CHECK(settled.split->mill_pieces == 67);
  CHECK(plain(shown(settled.split->carried, 2)) == "1.21");
  CHECK_THROWS_AS(divide_lumber(*demo.book, "MUM", kFriday, kFriday), Refused);
  // 1,591.666 + 480.416 - 96 bf of 1728 / 12 cubic inches; the week's table adds two rounded sums
  const std::int64_t lumber =
      demo.book->database().execAndGet("SELECT sum(lumber) FROM v_on_hand").getInt64();
  CHECK(plain(shown(Rational(lumber, 64LL * 64 * 64 * 144), 2)) == "1976.08");
  CHECK(stock_warnings(*demo.book, kFriday).empty());
  demo.whole();
}

TEST_CASE("a sale at the yard gate is a ticket paid on the spot, with the tax on lumber") {
  DemoBook demo;
  const Paper ticket = issue_sale(*demo.book, "cash", kFriday, kFriday, "cash");
  CHECK(ticket.amount.minor == 10584);
  REQUIRE(ticket.taxes.size() == 1);
  CHECK(ticket.taxes[0].amount.minor == 504);
  CHECK(play(papers_of(*demo.book)).balance("cash").minor == 0);
  const render::Document taxes = export_document(*demo.book, "taxes", kFriday, kFriday, kFriday);
  CHECK(taxes.tables[0].rows[0].cells[4] == render::Cell(Decimal{504, 2}));
  demo.whole();
}

TEST_CASE("a sale of what is not there is a warning") {
  DemoBook demo;
  demo.book->post_sheet("sheet 2026-05-09\nspecies DF\njob own\nsold cash 2x12 No2 9/16\n", "");
  const auto warnings = stock_warnings(*demo.book, kFriday + 1);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0] == "Sold more than is there: 2x12x16 DF No2, 7 too many.");
}

TEST_CASE("waiting is waived with a note: a line of nothing that says why") {
  DemoBook demo;
  waive(*demo.book, "TER", {*read_day("2026-05-05"), 1, "waiting", "rain had made the lane soft"}, kFriday);
  const Draft draft = draft_job(*demo.book, "TER", kFriday, kFriday);
  CHECK(draft.total.minor == 188231 - 5625);
  bool said = false;
  for (const BillLine& line : draft.lines)
    said = said || line.description.find("(waived: rain had made the lane soft)") != std::string::npos;
  CHECK(said);
  CHECK_THROWS_AS(waive(*demo.book, "TER", {*read_day("2026-05-04"), 1, "waiting", "no such"}, kFriday),
                  Refused);
  demo.whole();
}

TEST_CASE("money in parts, too much, back, and written off keeps the balance") {
  DemoBook demo;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  take_payment(*demo.book, {"TER", "", 0, money("1000.00"), "cash", ""}, kFriday);
  CHECK(play(papers_of(*demo.book)).invoices.at(1).open().minor == 88231);
  take_payment(*demo.book, {"", "", 1, money("900.00"), "check", ""}, kFriday);
  CHECK(play(papers_of(*demo.book)).credit_of("TER").minor == 1769);
  CHECK_THROWS_AS(refund(*demo.book, {"TER", "", 0, money("20.00"), "cash", ""}, kFriday), Refused);
  refund(*demo.book, {"TER", "", 0, money("17.69"), "cash", ""}, kFriday);
  CHECK(play(papers_of(*demo.book)).balance("TER").minor == 0);
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  write_off(*demo.book, 2, money("4.28"), "small rest", kFriday);
  CHECK(play(papers_of(*demo.book)).balance("QHH").minor == 60000);
  CHECK_THROWS_AS(write_off(*demo.book, 2, money("600.01"), "too much", kFriday), Refused);
  demo.whole();
}

TEST_CASE("a rebuilt book has the same papers, and frozen text reads back as it was written") {
  DemoBook demo;
  take_payment(*demo.book, {"", "TER", 0, money("400.00"), "check 88", ""}, kFriday - 17);
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  divide_lumber(*demo.book, "MUM", kFriday, kFriday);
  load(*demo.book, {"QHH", {}, "Quarrel Hill", "flat-bed", "Bess"}, kFriday);
  demo.book->rebuild();
  demo.whole();
  for (const Paper& paper : papers_of(*demo.book)) {
    const std::string body = demo.book->current(subject_of(paper))->body;
    CHECK(write_paper(read_paper(body)) == body);
  }
}

TEST_CASE("a paper that was made before another one was issued is refused, so numbers have no gap") {
  DemoBook demo;
  Paper late;
  late.kind = PaperKind::invoice;
  late.number = 3;
  late.after = 0;
  late.day = kFriday;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  late.after = 1;
  CHECK_THROWS_AS(demo.book->post_paper(subject_of(late), write_paper(late), ""), Refused);
  late.after = 0;
  late.number = 2;  // the right number, but made when there was no paper
  CHECK_THROWS_AS(demo.book->post_paper(subject_of(late), write_paper(late), ""), Refused);
  CHECK(papers_of(*demo.book).size() == 1);
  demo.whole();
}

TEST_CASE("a mill file with a wrong price is refused with its line and column") {
  DemoBook demo;
  const std::string wrong = billing::demo("hargan.toml") + "\n[[price]]\nbasis = \"bff\"\nrate = 0.5\n";
  try {
    demo.book->post_mill(wrong, "new price");
    FAIL_CHECK("was posted");
  } catch (const book::DocumentRefused& refused) {
    REQUIRE(refused.found().size() == 1);
    CHECK(refused.found()[0].what == "'bff' is not known");
    CHECK(refused.found()[0].instead == "did you mean bf?");
    CHECK(refused.found()[0].place.column == 10);
  }
}
