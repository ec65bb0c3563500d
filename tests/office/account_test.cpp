// Who owes what: a statement and the list of debts are made of one ledger and age a debt alike.
#include "book_helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

/// The open sums by age that a document's table of that name shows in its first row.
std::vector<std::string> ages_in(const render::Document& document, const std::string& table) {
  std::vector<std::string> ages;
  for (const render::Table& one : document.tables) {
    if (one.name != table) continue;
    for (std::size_t i = 0; i < one.columns.size(); ++i)
      if (one.columns[i].name.starts_with("age_"))
        ages.push_back(render::shown_cell(one.rows.at(0).cells[i], one.columns[i], document.style));
  }
  return ages;
}

}  // namespace

TEST_CASE(
    "a debt is aged from the date of its invoice, by one rule on the statement and in the list of debts") {
  const DemoBook demo;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  const std::string all = "$1,882.31";
  const std::string none = "$0.00";
  const std::vector<std::vector<std::string>> ages{
      {all, none, none, none}, {none, all, none, none}, {none, none, all, none}, {none, none, none, all}};
  for (const auto& [days, age] : std::vector<std::pair<int, std::size_t>>{
           {0, 0}, {29, 0}, {30, 0}, {31, 1}, {59, 1}, {60, 1}, {61, 2}, {89, 2}, {90, 2}, {91, 3}}) {
    const Day today = kFriday + days;
    CAPTURE(today.number);
    const Ledger ledger = ledger_on(*demo.book, today);
    const render::Document statement = statement_document(demo.book->mill(), ledger, "TER", kFriday, today);
    const render::Document owed = receivables_document(demo.book->mill(), ledger, today);
    CHECK(ages_in(statement, "ageing") == ages[age]);
    CHECK(ages_in(owed, "receivables") == ages[age]);
    for (const render::Document* paper : {&statement, &owed})
      CHECK(text_of(*paper).find("Age is counted in days from the date of the invoice.") !=
            std::string::npos);
  }
}

TEST_CASE("what is dated after a day does not count on that day") {
  const DemoBook demo;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  take_payment(*demo.book, {"", "", 1, money("1000.00"), "cash", ""}, kFriday + 10);
  CHECK(ledger_on(*demo.book, kFriday - 1).balance("TER").minor == 0);
  CHECK(ledger_on(*demo.book, kFriday + 9).balance("TER").minor == 188231);
  CHECK(ledger_on(*demo.book, kFriday + 10).balance("TER").minor == 88231);
}

TEST_CASE("a statement is for a customer there is") {
  const DemoBook demo;
  CHECK(known_customer(*demo.book, "oda tervane") == "TER");
  CHECK_THROWS_WITH_AS(known_customer(*demo.book, "TRE"),
                       "no customer and no buyer is called 'TRE'; did you mean 'TER'?", Refused);
}

namespace {

/// Two customers' boards on one sheet, billed, and then one correction after another.
struct Shared : DemoBook {
  Shared()
      : DemoBook(
            "[mill]\nname = \"Yard\"\n[[customer]]\ncode = \"ORR\"\n[[customer]]\ncode = \"LOW\"\n"
            "[[job]]\ncode = \"ORR\"\ncustomer = \"ORR\"\n[[job]]\ncode = \"LOW\"\ncustomer = \"LOW\"\n"
            "[[price]]\nbasis = \"bf\"\nrate = 0.50\n[[price]]\nown_lumber = true\nbasis = \"bf\"\nrate = "
            "1.00\n",
            false) {
    post(10, 10, 4, "");
  }
  void post(int orr, int low, int sold, const std::string& why) const {
    book->post_sheet("sheet 2026-05-08\nsite yard\nspecies DF\njob ORR\n2x6 " + std::to_string(orr) +
                         "/16\njob LOW\n2x6 " + std::to_string(low) +
                         "/16\njob own\n2x8 20/12\nsold Ferrin 2x8 " + std::to_string(sold) + "/12\n",
                     why);
  }
  [[nodiscard]] std::string paper(const std::string& job) const {
    return text_of(draft_paper(*book, job, kFriday, kFriday));
  }
};

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "a correction's reason and struck lines stand on the papers of the job it concerns, and on no other's") {
  const Shared yard;
  issue_invoice(*yard.book, "ORR", kFriday, kFriday);
  issue_invoice(*yard.book, "LOW", kFriday, kFriday);
  issue_sale(*yard.book, "Ferrin", kFriday, kFriday, "");
  yard.post(9, 10, 4, "Orr miscounted");
  yard.post(9, 8, 4, "Low took two");
  yard.post(9, 8, 3, "Ferrin sent one back");
  const std::string orr = yard.paper("ORR");
  const std::string low = yard.paper("LOW");
  const std::string sale = text_of(draft_ticket(*yard.book, "Ferrin", kFriday, kFriday));
  CHECK(says(orr, "(Orr miscounted)"));
  CHECK(says(low, "(Low took two)"));
  CHECK(says(sale, "(Ferrin sent one back)"));
  CHECK(says(orr, "2x6 10/16"));
  CHECK(says(low, "2x6 10/16"));
  for (const std::string& text : {low, sale}) CHECK_FALSE(says(text, "Orr miscounted"));
  for (const std::string& text : {orr, sale}) CHECK_FALSE(says(text, "Low took two"));
  for (const std::string& text : {orr, low}) CHECK_FALSE(says(text, "Ferrin sent one back"));
  CHECK_FALSE(says(sale, "10/16"));
  yard.whole();
}

TEST_CASE("of several corrections since a job was billed all that concern it are given") {
  const Shared yard;
  yard.post(11, 10, 4, "before it was billed");
  issue_invoice(*yard.book, "ORR", kFriday, kFriday);
  yard.post(9, 10, 4, "counted again");
  yard.post(9, 7, 4, "Low took three");
  yard.post(8, 7, 4, "one was split");
  CHECK(says(yard.paper("ORR"), "(counted again; one was split)"));
}
