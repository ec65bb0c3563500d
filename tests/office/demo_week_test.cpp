// The invented demo week's three papers, to the cent. Expected sums were worked out by hand with the week.
#include "helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {
const Day kFriday = *read_day("2026-05-08");
}

TEST_CASE("Tervane's barn comes to 1,882.31 and every line can be checked by hand") {
  const Draft draft = make_draft(demo_terms(), job_terms("TER"), job_facts(ter_week()), {}, {}, kFriday);
  for (const auto& p : draft.problems) FAIL_CHECK(p);
  REQUIRE(draft.lines.size() == 7);
  const BillLine& boards = line_called(draft, "Sawing");
  CHECK(boards.quantity == Decimal{1911, 0});
  CHECK(boards.pieces == 159);
  CHECK(boards.amount.minor == 91728);
  const BillLine& timbers = line_called(draft, "Sawing, 4 in and thicker");
  CHECK(timbers.quantity == Decimal{1132, 0});
  CHECK(timbers.pieces == 49);
  CHECK(timbers.amount.minor == 61128);
  CHECK(line_called(draft, "Set-up and take-down").amount.minor == 15000);
  const BillLine& travel = line_called(draft, "Travel: Tervane farm to yard and back");
  CHECK(travel.quantity == Decimal{4600, 2});
  CHECK(travel.amount.minor == 8050);
  CHECK(travel.day == *read_day("2026-05-06"));
  const BillLine& strike = line_called(draft, "Metal strike: fence staple in T17");
  CHECK(strike.amount.minor == 4000);
  const BillLine& bits = line_called(draft, "Metal strike: log T17");
  CHECK(bits.quantity == Decimal{300, 2});
  CHECK(bits.unit == "teeth");
  CHECK(bits.amount.minor == 2700);
  const BillLine& waiting = line_called(draft, "Waiting: customer's tractor");
  CHECK(waiting.quantity == Decimal{45, 0});
  CHECK(waiting.amount.minor == 5625);
  CHECK(draft.subtotal.minor == 188231);
  CHECK(draft.taxes.empty());
  CHECK(draft.total.minor == 188231);
  CHECK(draft.counted.size() == 1);
}

TEST_CASE("the hall's framing comes to 554.36, its minimum not reached") {
  const Draft draft = make_draft(demo_terms(), job_terms("QHH"), job_facts(qhh_week(true)), {}, {}, kFriday);
  for (const auto& p : draft.problems) FAIL_CHECK(p);
  REQUIRE(draft.lines.size() == 2);
  CHECK(line_called(draft, "Sawing").quantity == Decimal{893, 0});
  CHECK(line_called(draft, "Sawing").amount.minor == 46436);
  CHECK(line_called(draft, "Bundling").amount.minor == 9000);
  CHECK(draft.total.minor == 55436);
}

TEST_CASE("Thursday's correction moves exactly -96 bf and -49.92 before the invoice is issued") {
  const Terms terms = demo_terms();
  const Draft wrong = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false)), {}, {}, kFriday);
  const Draft right = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(true, 2)), {}, {}, kFriday);
  CHECK(line_called(wrong, "Sawing").quantity.units - line_called(right, "Sawing").quantity.units == 96);
  CHECK(wrong.total.minor - right.total.minor == 4992);
  CHECK(line_called(wrong, "Sawing").pieces - line_called(right, "Sawing").pieces == 9);
}

TEST_CASE("after issue the correction is a line on the next draft that names the sheet and the reason") {
  const Terms terms = demo_terms();
  const Draft issued = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false)), {}, {}, kFriday);
  const std::vector<Billed> before{billed(issued, "invoice 1")};
  CHECK(make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false)), before, {}, kFriday).lines.empty());
  const Draft next = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(true, 2)), before, {}, kFriday);
  REQUIRE(next.lines.size() == 1);
  CHECK(next.lines[0].kind == LineKind::adjustment);
  CHECK(next.lines[0].description ==
        "Correction of the sheet of 2026-05-07 (bundle count): Sawing: 2x4x16 -9");
  CHECK(next.lines[0].quantity == Decimal{-96, 0});
  CHECK(next.total.minor == -4992);
  CHECK(issued.total.minor == 60428);
}

TEST_CASE("a correction taken back after it was billed is a line the other way, and a third draft is empty") {
  const Terms terms = demo_terms();
  const Draft first = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false)), {}, {}, kFriday);
  std::vector<Billed> before{billed(first, "invoice 1")};
  const Draft second = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(true, 2)), before, {}, kFriday);
  before.push_back(billed(second, "invoice 2"));
  const Draft third = make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false, 3)), before, {}, kFriday);
  CHECK(third.total.minor == 4992);
  before.push_back(billed(third, "invoice 3"));
  CHECK(
      make_draft(terms, job_terms("QHH"), job_facts(qhh_week(false, 3)), before, {}, kFriday).lines.empty());
}

TEST_CASE("Mumbrey's cedar on halves: 66 pieces 478.00 bf and 67 pieces 480.42 bf, 1.21 bf carried") {
  const Draft draft =
      make_draft(demo_terms(), job_terms("MUM"), job_facts(mum_week()), {}, {}, kFriday, true);
  CHECK(draft.lines.empty());
  REQUIRE(draft.items.size() == 19);
  std::vector<ShareLine> lines;
  for (const Item& item : draft.items)
    lines.push_back(
        {"", "RC", "", item.fact->size, item.fact->length, item.count, item.quantity / Rational(item.count)});
  const Split split = divide(lines, ShareRule::by_size_line, 50, 0);
  CHECK(split.customer_pieces == 66);
  CHECK(split.mill_pieces == 67);
  CHECK(plain(shown(split.customer_bf, 2)) == "478.00");
  CHECK(plain(shown(split.mill_bf, 2)) == "480.42");
  CHECK(plain(shown(split.carried, 2)) == "1.21");
  const Draft money = make_draft(demo_terms(), job_terms("MUM"), job_facts(mum_week()), {}, {}, kFriday);
  CHECK(money.lines.empty());
}

TEST_CASE("the same week is billed by the foot, by log scale and by the hour with one change of basis each") {
  std::vector<Fact> facts = ter_week();
  append(facts, ter_logs());
  for (const char* day : {"2026-05-04", "2026-05-05", "2026-05-06"})
    facts.push_back(sawing(sheet_of(day), 200));
  const auto total = [&](const std::string& price) {
    const Draft draft =
        make_draft(terms_of("[[price]]\n" + price), job_terms("TER"), job_facts(facts), {}, {}, kFriday);
    REQUIRE(draft.lines.size() >= 1);
    return std::pair(draft.lines[0].quantity, draft.sawing.minor);
  };
  CHECK(total("basis = \"bf\"\nrate = 0.50") == std::pair(Decimal{3043, 0}, std::int64_t{152150}));
  CHECK(total("basis = \"mbf\"\nrate = 500") == std::pair(Decimal{3043, 3}, std::int64_t{152150}));
  CHECK(total("basis = \"piece\"\nrate = 6.00") == std::pair(Decimal{208, 0}, std::int64_t{124800}));
  CHECK(total("basis = \"hour\"\nrate = 90.00") == std::pair(Decimal{600, 0}, std::int64_t{90000}));
  CHECK(total("basis = \"day\"\nrate = 800.00") == std::pair(Decimal{300, 2}, std::int64_t{240000}));
  CHECK(total("basis = \"log\"\nrate = 40.00") == std::pair(Decimal{26, 0}, std::int64_t{104000}));
  // the demo's house scale: International 1/4 to the nearest 5 bf, net 3,155 for the 26 logs
  JobTerms job = job_terms("TER");
  job.practice.result = scaling::ResultRounding::nearest_5;
  const Draft scale = make_draft(terms_of("[[price]]\nbasis = \"log-scale\"\nrate = 0.45\n"), job,
                                 job_facts(facts), {}, {}, kFriday);
  CHECK(scale.lines.at(0).quantity == Decimal{3155, 0});
  CHECK(scale.sawing.minor == 141975);
  const Draft halves = make_draft(terms_of("[[price]]\nbasis = \"shares\"\n"), job_terms("TER"),
                                  job_facts(facts), {}, {}, kFriday, true);
  CHECK(halves.sawing.minor == 0);
  CHECK(halves.items.size() == 71);
}
