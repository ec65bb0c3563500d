// A job keeps the price it was agreed at: after the mill file's prices change, and after the job is dropped from it.
#include "base/text.h"
#include "book_helpers.h"
#include "office/agreed_terms.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, from);
  return text.replace(at, from.size(), to);
}

/// Dearer in place: other rates, feet counted to hundredths, travel one way.
std::string dearer(std::string mill) {
  mill = replaced(mill, "rate  = 0.48", "rate  = 0.60");
  mill = replaced(mill, "rate           = 0.54", "rate           = 0.75");
  mill = replaced(mill, "rate        = 0.52", "rate        = 0.66");
  mill = replaced(mill, "flat  = 150.00", "flat  = 200.00");
  mill = replaced(mill, "round_trip = true", "round_trip = false");
  return replaced(mill, "\"total-whole\"", "\"total-hundredths\"");
}

/// Without every table that speaks of the job or the customer.
std::string without(const std::string& mill, const std::string& name) {
  std::string left;
  std::size_t at = 0;
  while (at < mill.size()) {
    const std::size_t next = std::min(mill.find("\n[", at + 1), mill.size());
    const std::string block = mill.substr(at, next - at);
    if (block.find("\"" + name + "\"") == std::string::npos) left += block;
    at = next;
  }
  return left;
}

constexpr const char* kWithMore = "4x6     2/10 4/12 6/16\n2x12    3/16\n4x8     2/12\n";

/// Tuesday with boards that were overlooked: 3 of 2x12x16 (96 bf) and 2 of 4x8x12 (64 bf).
void find_more(const DemoBook& demo) {
  demo.book->post_sheet(replaced(billing::demo("2026-05-05.sheet"), "4x6     2/10 4/12 6/16\n", kWithMore),
                        "found behind the shed");
}

}  // namespace

TEST_CASE("a job agreed in April keeps April's prices, charges and counting when the list changes in May") {
  DemoBook demo;
  demo.book->post_mill(dearer(billing::demo("hargan.toml")), "new prices from May");
  CHECK(demo.draft("TER").total.minor == 188231);
  // QHH has no agreement: 989.33 bf at 0.66 and 90.00 for bundling, by the list as it is
  CHECK(demo.draft("QHH").total.minor == 65296 + 9000);
}

TEST_CASE("agreed anew is agreed at the new prices") {
  DemoBook demo;
  const std::string mill =
      replaced(dearer(billing::demo("hargan.toml")), "agreed  = 2026-04-20", "agreed  = 2026-05-03");
  demo.book->post_mill(mill, "agreed anew with Oda Tervane");
  // 1,911.33 bf at 0.60, 1,132.00 bf at 0.75, 200.00, 23 mi at 1.75, 67.00, 56.25
  CHECK(demo.draft("TER").total.minor == 114680 + 84900 + 20000 + 4025 + 6700 + 5625);
}

TEST_CASE("a slip mended the evening it was made counts, one mended in May does not") {
  const std::string right = billing::demo("hargan.toml");
  const std::string slip = replaced(right, "rate  = 0.48", "rate  = 0.84");
  DemoBook mended(slip);
  *mended.clock = "2026-04-20 19:20:00";
  mended.book->post_mill(right, "0.48, not 0.84");
  *mended.clock = "2026-05-01 08:00:00";
  mended.book->post_mill(dearer(right), "new prices from May");
  CHECK(mended.draft("TER").total.minor == 188231);
  DemoBook late(slip);
  late.book->post_mill(right, "0.48, not 0.84");
  CHECK(late.draft("TER").total.minor == 188231 + 191100 * 36 / 100);
}

TEST_CASE("an agreement dated before it was typed holds from the mill file that first had it") {
  const std::string mill = billing::demo("hargan.toml");
  DemoBook demo(replaced(mill, "[[agreement]]\njob     = \"TER\"", "[[agreement]]\njob     = \"QHH\""), true,
                "2026-04-01 10:00:00");
  *demo.clock = "2026-04-22 20:00:00";
  demo.book->post_mill(mill, "agreed with Oda Tervane on Monday");
  *demo.clock = "2026-05-01 08:00:00";
  demo.book->post_mill(dearer(mill), "new prices");
  CHECK(demo.draft("TER").total.minor == 188231);
}

TEST_CASE("a job dropped from the mill file is billed as it was agreed, to its customer's address") {
  DemoBook demo;
  const std::string mill = without(billing::demo("hargan.toml"), "TER");
  REQUIRE(mill.find("Tervane\"") == std::string::npos);
  demo.book->post_mill(dearer(billing::demo("hargan.toml")), "new prices");
  demo.book->post_mill(mill, "the barn is done");
  CHECK(demo.draft("TER").total.minor == 188231);
  const Paper invoice = issue_invoice(*demo.book, "TER", kFriday, kFriday);
  CHECK(text_of(invoice.document).find("Oda Tervane") != std::string::npos);
  demo.whole();
}

TEST_CASE("an adjustment of a dropped job prices boards found later as agreed") {
  DemoBook demo;
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  demo.book->post_mill(without(dearer(billing::demo("hargan.toml")), "TER"), "the barn is done");
  find_more(demo);
  const Draft next = demo.draft("TER");
  for (const std::string& problem : next.problems) FAIL_CHECK(problem);
  REQUIRE(next.lines.size() == 2);
  CHECK(next.total.minor == 96 * 48 + 64 * 54);  // 2x12 at 0.48, 4x8 at 0.54
  CHECK(next.lines[0].description ==
        "Correction of the sheet of 2026-05-05 (found behind the shed): Sawing: 2x12x16 +3");
}

TEST_CASE("a job without an agreement that is dropped keeps the last prices that knew it") {
  DemoBook demo;
  demo.book->post_mill(without(billing::demo("hargan.toml"), "QHH"), "the hall is done");
  CHECK(demo.draft("QHH").total.minor == 55436 + 4992);
  const Deal deal = deal_of(*demo.book, "QHH");
  CHECK(!deal.newest);
  CHECK(deal.revision == 1);
  CHECK(deal.posted == "2026-04-20");
}

TEST_CASE("an agreed share and its rule hold when the house changes its shares") {
  const std::string mill =
      billing::demo("hargan.toml") + "[[agreement]]\njob = \"MUM\"\nagreed = 2026-04-20\n";
  DemoBook demo(mill);
  demo.book->post_mill(replaced(mill, "percent = 50", "percent = 40"), "two fifths from now on");
  const Paper settled = divide_lumber(*demo.book, "MUM", kFriday, kFriday);
  CHECK(settled.split->customer_pieces == 66);
  CHECK(plain(shown(settled.split->carried, 2)) == "1.21");
}

TEST_CASE("taxes are those of the day of the invoice, whatever was agreed") {
  DemoBook demo;
  demo.book->post_mill(replaced(billing::demo("hargan.toml"), "on   = [\"lumber\"]", "on = [\"sawing\"]"),
                       "custom sawing is taxed from May");
  const Draft draft = demo.draft("TER");
  REQUIRE(draft.taxes.size() == 1);
  CHECK(draft.taxes[0].base.minor == 91728 + 61128);
}

TEST_CASE(
    "a sheet billed before the prices changed is corrected at the prices it was billed by, agreed or not") {
  const DemoBook demo;
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);  // 989 bf at 0.52
  demo.book->post_mill(dearer(billing::demo("hargan.toml")), "new prices from May");
  demo.book->post_sheet(replaced(billing::demo("corrections/2026-05-07.sheet"), "2x6     1/12 6/14 10/16\n",
                                 "2x6     1/12 6/14 10/16\n2x10    3/12\n"),
                        "bundle count");
  const Draft next = demo.draft("QHH");
  REQUIRE(next.lines.size() == 1);
  // -96 bf of 2x4 and 60 bf of 2x10 found: -36 bf at 0.52, to the whole foot as then
  CHECK(next.lines[0].quantity == Decimal{-36, 0});
  CHECK(next.total.minor == -1872);
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  CHECK(demo.draft("QHH").lines.empty());
  demo.whole();
}

TEST_CASE(
    "new work of a job without an agreement is billed by the new list, beside a correction by the old") {
  const DemoBook demo;
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  demo.book->post_mill(dearer(billing::demo("hargan.toml")), "new prices from May");
  demo.correct();
  demo.book->post_sheet("sheet 2026-05-09\nsite yard\njob QHH\nspecies WH\nlog Q20 14x12\n2x12 5/12\n", "");
  const Draft next = draft_job(*demo.book, "QHH", kFriday + 1, kFriday + 1);
  CHECK(next.total.minor == 120 * 66 - 4992);
}

TEST_CASE("an invoice cancelled for its wrong price is billed anew at the right one, adjustments and all") {
  const DemoBook demo(replaced(billing::demo("hargan.toml"), "rate        = 0.52", "rate        = 0.25"));
  issue_invoice(*demo.book, "QHH", kFriday,
                kFriday);  // 989 bf at 0.25 and a minimum of 250.00; 90.00 bundling
  demo.correct();
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);  // the correction, 96 bf less
  demo.book->post_mill(billing::demo("hargan.toml"), "0.52, as agreed with the hall");
  credit_invoice(*demo.book, 1, std::nullopt, "wrong price", kFriday);
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  CHECK(play(papers_of(*demo.book)).balance("QHH").minor == 55436);
  CHECK(demo.draft("QHH").lines.empty());
  demo.whole();
}

TEST_CASE("an agreement and a tally printed later say what was agreed, and of a dropped job whose it is") {
  const DemoBook demo;
  demo.book->post_mill(without(dearer(billing::demo("hargan.toml")), "TER"), "the barn is done");
  const Deal deal = deal_of(*demo.book, "TER");
  const std::string agreement = text_of(agreement_document(deal, kFriday));
  CHECK(agreement.find("$0.48 a board foot") != std::string::npos);
  CHECK(agreement.find("only the total is rounded, to the whole board foot") != std::string::npos);
  CHECK(agreement.find("Oda Tervane") != std::string::npos);
  const std::string tally = text_of(tally_paper(*demo.book, deal, kFriday - 4, kFriday, kFriday));
  CHECK(tally.find("Oda Tervane") != std::string::npos);
  CHECK(tally.find("3,043.33") != std::string::npos);
}
