// For the bookkeeper: documented columns, income by kind, tax by rate, and who owes what since when.
#include <array>

#include "base/text.h"
#include "book/store.h"
#include "book_helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kJune = *read_day("2026-06-01");

/// The demo's mill file with taxes on everything: one added, one included in the prices of charges.
std::string taxed() {
  return billing::demo("hargan.toml") +
         "\n[[tax]]\nname = \"GST\"\nrate = 5\non = \"sawing\"\n"
         "[[tax]]\nname = \"VAT\"\nrate = 20\non = \"service\"\nincluded = true\n";
}

Money money_in(const render::Cell& cell) {
  return {std::get<render::Figure>(cell).shown().units};
}

Money total_income(const DemoBook& demo, Day from, Day to) {
  const render::Document document = export_document(*demo.book, "income", from, to, to);
  Money sum;
  for (const render::Row& row : document.tables.at(0).rows) sum = sum + money_in(row.cells.at(3));
  if (!document.tables.at(0).rows.empty()) CHECK(money_in(document.tables.at(0).totals.at(3)) == sum);
  return sum;
}

/// Invoices less credit notes, without tax: straight from the tables.
std::int64_t without_tax(const DemoBook& demo, Day from, Day to) {
  book::Store store(demo.book->database());
  const auto sum = [&](const std::string& kind) {
    return store
        .number(
            "SELECT coalesce(sum(p.amount - coalesce((SELECT sum(t.amount) FROM paper_tax t WHERE t.entry = "
            "p.entry AND t.excused = ''), 0)), 0) FROM paper p WHERE p.kind = '" +
                kind + "' AND p.day BETWEEN ? AND ?",
            from, to)
        .value_or(0);
  };
  return sum("invoice") - sum("credit");
}

}  // namespace

TEST_CASE("every export's columns are described, in their order") {
  const DemoBook demo;
  const std::string words = export_header_words();
  for (const std::string& what : export_names()) {
    std::size_t at = words.find("\n" + what + ": ");
    REQUIRE(at != std::string::npos);
    const render::Document document = export_document(*demo.book, what, kFriday, kFriday, kFriday);
    for (const render::Column& column : document.tables.at(0).columns) {
      at = words.find("\n  " + column.name, at);
      CHECK_MESSAGE(at != std::string::npos, what << ": " << column.name);
    }
  }
}

TEST_CASE("income by kind is what was billed without tax, an included tax taken off") {
  const DemoBook demo(taxed());
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  // sawing 1,528.56; services 353.75, of which a sixth is VAT
  const render::Document document = export_document(*demo.book, "income", kFriday, kFriday, kFriday);
  std::int64_t sawing = 0;
  std::int64_t vat = 0;
  for (const render::Row& row : document.tables.at(0).rows) {
    const std::string kind = std::get<std::string>(row.cells[0]);
    if (kind == "sawing") sawing += money_in(row.cells[3]).minor;
    if (kind == "tax") vat += money_in(row.cells[3]).minor;
  }
  CHECK(sawing == 152856);
  CHECK(vat == -5896);  // 353.75 / 6 = 58.958...
  CHECK(total_income(demo, kFriday, kFriday).minor == 152856 + 35375 - 5896);
  CHECK(total_income(demo, kFriday, kFriday).minor == without_tax(demo, kFriday, kFriday));
}

TEST_CASE("credit notes take income and tax back on their own day, in part and as a whole") {
  const DemoBook demo(taxed());
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  const Money may = total_income(demo, kFriday, kFriday);
  credit_invoice(*demo.book, 1, money("50.00"), "short", kJune);
  credit_invoice(*demo.book, 1, std::nullopt, "wrong price", kJune);
  credit_invoice(*demo.book, 2, money("20.00"), "short", kJune);
  CHECK(total_income(demo, kFriday, kFriday) == may);  // May's books stay closed
  CHECK(total_income(demo, kJune, kJune).minor == without_tax(demo, kJune, kJune));
  CHECK(total_income(demo, kFriday, kJune).minor == without_tax(demo, kFriday, kJune));
  // a year in which everything was taken back has no income by any kind
  credit_invoice(*demo.book, 2, std::nullopt, "all of it", kJune);
  CHECK(total_income(demo, kFriday, kJune).minor == 0);
  const render::Document taxes = export_document(*demo.book, "taxes", kFriday, kJune, kJune);
  for (const render::Row& row : taxes.tables.at(0).rows) {
    CHECK(money_in(row.cells.at(3)).minor == 0);
    CHECK(money_in(row.cells.at(4)).minor == 0);
  }
  demo.whole();
}

TEST_CASE("tax is collected by rate, and what a certificate excuses stands by itself") {
  const std::string mill = taxed();
  DemoBook demo(mill);
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  std::string excused = mill;
  const std::size_t at = excused.find("name    = \"Quarrel Hill Hall Committee\"");
  excused.insert(at, "certificate = \"EX-12\"\n");
  demo.book->post_mill(excused, "the hall's certificate");
  const Paper hall = issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  CHECK(hall.amount.minor == 51428 + 9000 - 1500);  // no GST; the VAT in 90.00 is taken off
  const render::Document taxes = export_document(*demo.book, "taxes", kFriday, kFriday, kFriday);
  REQUIRE(taxes.tables.at(0).rows.size() == 4);
  std::map<std::string, std::int64_t> collected;
  for (const render::Row& row : taxes.tables.at(0).rows)
    collected[std::get<std::string>(row.cells[0]) + " " + std::get<std::string>(row.cells[2])] =
        money_in(row.cells.at(4)).minor;
  CHECK(collected.at("GST ") == 7643);  // 5 % of 1,528.56
  CHECK(collected.at("VAT ") == 5896);
  CHECK(collected.at("GST EX-12") == 0);
  CHECK(collected.at("VAT EX-12") == 0);
}

TEST_CASE("who owes what, since when, by age") {
  DemoBook demo;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  issue_invoice(*demo.book, "QHH", kFriday, kJune);
  take_payment(*demo.book, {"", "", 1, money("882.31"), "cash", ""}, kJune);
  const Day july = *read_day("2026-07-10");
  const render::Document owed = receivables_document(demo.book->mill(), play(papers_of(*demo.book)), july);
  const auto& rows = owed.tables.at(0).rows;
  REQUIRE(rows.size() == 2);
  CHECK(std::get<std::string>(rows[0].cells[0]) == "TER");
  CHECK(std::get<Day>(rows[0].cells[2]) == kFriday);
  CHECK(money_in(rows[0].cells[5]).minor == 100000);  // 63 days old
  CHECK(std::get<Day>(rows[1].cells[2]) == kJune);
  CHECK(money_in(rows[1].cells[4]).minor == 60428);  // 39 days old
  CHECK(money_in(owed.tables.at(0).totals.at(7)).minor == 160428);
}

TEST_CASE("money is taken only for a customer, a buyer, a job or an invoice that is there") {
  const DemoBook demo;
  const auto pay = [&](const PaymentAsk& ask) { return take_payment(*demo.book, ask, kFriday); };
  CHECK(pay({"oda tervane", "", 0, money("10.00"), "cash", ""}).customer == "TER");
  CHECK(pay({"cash", "", 0, money("10.00"), "cash", ""}).customer == "cash");
  CHECK_THROWS_AS(pay({"TERR", "", 0, money("10.00"), "cash", ""}), Refused);
  CHECK_THROWS_AS(pay({"", "", 9, money("10.00"), "cash", ""}), Refused);
  CHECK_THROWS_AS(pay({"", "", 0, money("10.00"), "cash", ""}), WrongUsage);
  CHECK_THROWS_AS(pay({"TER", "", 0, money("0.00"), "cash", ""}), Refused);
}

TEST_CASE("an invoice is named by its number or as it is printed") {
  std::string mill = billing::demo("hargan.toml");
  mill.insert(mill.find("first    = 1"), "prefix = \"K-\"\n");
  mill.replace(mill.find("first    = 1"), 12, "first = 120 ");
  const DemoBook demo(mill);
  CHECK(issue_invoice(*demo.book, "TER", kFriday, kFriday).called == "K-120");
  CHECK(invoice_called(*demo.book, "k-120") == 120);
  CHECK(invoice_called(*demo.book, "120") == 120);
  CHECK_THROWS_AS(invoice_called(*demo.book, "K-121"), Refused);
}
