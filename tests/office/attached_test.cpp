// The tally attached to an invoice covers just what the invoice bills, and says of logs what their measures say.
#include "base/text.h"
#include "book_helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

std::string mill(const std::string& prices) {
  return "[mill]\nname = \"Yard\"\n[recovery]\ntrim = \"4\"\n[[customer]]\ncode = \"ORR\"\n[[job]]\ncode = "
         "\"ORR\"\ncustomer = \"ORR\"\n" +
         prices;
}
const char* const kByFoot = "[[price]]\nbasis = \"bf\"\nrate = 0.50\n";

struct Week : DemoBook {
  explicit Week(const std::string& prices) : DemoBook(mill(prices), false) {}
  void post(const std::string& day, const std::string& lines, const std::string& why = "") const {
    book->post_sheet("sheet " + day + "\nsite yard\njob ORR\nspecies DF\n" + lines, why);
  }
  [[nodiscard]] render::Document bill() const { return draft_paper(*book, "ORR", kFriday, kFriday); }
  [[nodiscard]] std::string text() const { return join(split_words(text_of(bill())), " "); }
};

const render::Table* table_in(const render::Document& document, const std::string& name) {
  for (const render::Table& one : document.tables)
    if (one.name == name) return &one;
  return nullptr;
}

std::string total_in(const render::Document& document, const std::string& table, std::size_t column) {
  const render::Table* one = table_in(document, table);
  if (one == nullptr) return "no such table";
  return render::shown_cell(one->totals.at(column), one->columns.at(column), document.style);
}

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "a price by the cubic metre of log bills the measured ends and length, without the trim allowance") {
  // Smalian: ends of 12 and 14 in, 16 ft: pi / 4 x (144 + 196) / 2 / 144 x 16 = 14.8353 ft3, x 0.0283168 = 0.420 m3
  const Week week("[[price]]\nbasis = \"m3-log\"\nrate = 100\n");
  week.post("2026-05-04", "log T1 12-14x16\n");
  const Draft draft = week.draft("ORR");
  REQUIRE(draft.lines.size() == 1);
  CHECK(plain(draft.lines[0].quantity) == "0.420");
  CHECK(draft.total.minor == 4200);
  CHECK(says(week.text(), "volume of the logs sawn, inside bark, by their measured ends and lengths"));
}

TEST_CASE(
    "the tally on an invoice after a correction is of the days it bills; the correction stands by itself") {
  const Week week(kByFoot);
  week.post("2026-05-04", "2x6 100/16\nlog T1 16x16\n");  // 1,600 bf
  week.post("2026-05-05", "2x6 10/12\nlog T2 12x16\n");   // 120 bf
  issue_invoice(*week.book, "ORR", kFriday - 3, kFriday);
  week.post("2026-05-06", "2x8 6/12\nlog T3 14x16\n");  // 96 bf
  week.post("2026-05-04", "2x6 97/16\nlog T1 16x16\n", "three went back");
  const render::Document draft = week.bill();
  CHECK(total_in(draft, "tally", 4) == "96.00");
  CHECK(total_in(draft, "days", 3) == "96.00");
  CHECK(total_in(draft, "corrections", 2) == "-3");
  CHECK(total_in(draft, "corrections", 3) == "-48.00");
  const std::string text = join(split_words(text_of(draft)), " ");
  CHECK(says(text, "T3"));
  CHECK_FALSE(says(text, "T1"));
  CHECK_FALSE(says(text, "T2"));
  CHECK(says(text, "2x6 100/16"));                  // struck since it was billed
  CHECK(week.draft("ORR").subtotal.minor == 2400);  // 96 less 48 bf at 0.50
}

TEST_CASE("lines struck before a day was billed stand with that bill, not with later ones") {
  const Week week(kByFoot);
  week.post("2026-05-04", "2x6 30/16\n");
  week.post("2026-05-04", "2x6 20/16\n", "written for another day");
  CHECK(says(week.text(), "2x6 30/16"));
  issue_invoice(*week.book, "ORR", kFriday, kFriday);
  week.post("2026-05-04", "2x6 19/16\n", "one was split");
  CHECK_FALSE(says(week.text(), "2x6 30/16"));
  CHECK(says(week.text(), "2x6 20/16"));
}

TEST_CASE(
    "overrun on a tally is of the work of which every log has a scale, as the report of overrun counts it") {
  const Week week(kByFoot);
  week.post("2026-05-04", "log T1 16x16\n2x6 14/16\n");  // 180 bf by International 1/4-inch; 224 bf of lumber
  week.post("2026-05-05", "2x6 10/16\n");                // no logs
  week.post("2026-05-06", "log T2 16x16\nlog T3\n2x6 9/16\n");  // one was not measured
  // 224 over 180, less 1, is 24.4 %; with the 304 bf of the other days it would be 193.3 %
  CHECK(says(week.text(),
             "3 logs, net scale 360 bf by International 1/4-inch (1 not measured); tally 528.00 bf; overrun "
             "24.4 % (224.00 bf from 180 bf: only work of which every log was measured counts)"));
  const Week whole(kByFoot);
  whole.post("2026-05-04", "log T1 16x16\n2x6 14/16\n");
  CHECK(says(whole.text(), "tally 224.00 bf; overrun 24.4 % Log scale"));
}
