// The same week under every basis: one change in the mill file each, held against hand arithmetic on the invented
// demo week. The hall's framing (QHH, Thursday, corrected): 9 logs, net 645 bf by International 1/4 to the nearest 5,
// 68 pieces, 893 1/3 bf, 1,020 lineal feet, sawn 7:30-9:40 and 10:10-11:00, bundling 2 h at 45.00.
#include "book_helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

constexpr const char* kBasis = "basis       = \"bf\"\nrate        = 0.52\n";
constexpr std::int64_t kBundling = 9000;

/// The demo week under a mill file in which only the hall's basis (and its rate) is another.
struct Week : DemoBook {
  explicit Week(const std::string& basis) : DemoBook(changed_mill(kBasis, basis)) { correct(); }
};

struct Charged {
  Decimal quantity;
  std::string unit;
  std::int64_t sawing = 0;
  bool operator==(const Charged&) const = default;
};

doctest::String toString(const Charged& charged) {
  return (plain(charged.quantity) + " " + charged.unit + " = " + std::to_string(charged.sawing)).c_str();
}

/// The line for sawing; the rest of the paper must add up to it and the bundling.
Charged charged(const std::string& basis) {
  const Week week(basis);
  const Draft draft = week.draft("QHH");
  for (const std::string& problem : draft.problems) FAIL_CHECK(problem);
  for (const std::string& remark : draft.remarks) FAIL_CHECK(remark);
  REQUIRE(draft.lines.size() == 2);
  CHECK(draft.total.minor == draft.lines[0].amount.minor + kBundling);
  // another customer's invoice is as it was
  CHECK(week.draft("TER").total.minor == 188231);
  const Paper invoice = issue_invoice(*week.book, "QHH", kFriday, kFriday);
  CHECK(invoice.amount == draft.total);
  week.whole();
  return {draft.lines[0].quantity, draft.lines[0].unit, draft.sawing.minor};
}

}  // namespace

TEST_CASE("by the board foot and by the thousand: 893 bf at 0.52, .893 MBF at 520") {
  CHECK(charged("basis = \"bf\"\nrate = 0.52\n") == Charged{{893, 0}, "bf", 46436});
  CHECK(charged("basis = \"mbf\"\nrate = 520\n") == Charged{{893, 3}, "MBF", 46436});
}

TEST_CASE("by net log scale: 645 bf at 0.52 whatever comes out, and .645 MBF at 520") {
  CHECK(charged("basis = \"log-scale\"\nrate = 0.52\n") == Charged{{645, 0}, "bf scale", 33540});
  CHECK(charged("basis = \"log-mbf\"\nrate = 520\n") == Charged{{645, 3}, "MBF scale", 33540});
}

TEST_CASE("by another log rule named in the price: Doyle, the total to the whole foot") {
  // ((D - 4) / 4)^2 L: 36 36 42.875 64 64 21.875 49 56 27: 396.75
  CHECK(charged("basis = \"log-scale\"\nrule = \"doyle\"\nrate = 1.00\n") ==
        Charged{{397, 0}, "bf scale", 39700});
}

TEST_CASE("the list of logs attached goes by the rule the logs are billed by, and adds up to the line") {
  const Week week("basis = \"log-scale\"\nrule = \"doyle\"\nrate = 1.00\n");
  const std::string text = text_of(draft_paper(*week.book, "QHH", kFriday, kFriday));
  CHECK(text.find("9 logs, net scale 396.75 bf by Doyle") != std::string::npos);
  const std::string house = text_of(draft_paper(*week.book, "TER", kFriday, kFriday));
  CHECK(house.find("26 logs, net scale 3,155 bf by International 1/4-inch") != std::string::npos);
}

TEST_CASE("by the log, the piece, the lineal foot and the lineal metre") {
  CHECK(charged("basis = \"log\"\nrate = 45\n") == Charged{{9, 0}, "logs", 40500});
  CHECK(charged("basis = \"piece\"\nrate = 7.00\n") == Charged{{68, 0}, "pc", 47600});
  // 2x4: 36 + 168 + 368; 2x6: 12 + 84 + 160; 2x8: 24 + 56 + 112
  CHECK(charged("basis = \"lineal-foot\"\nrate = 0.35\n") == Charged{{1020, 0}, "lineal ft", 35700});
  // 310.896 m, to the whole metre as the house rounds
  CHECK(charged("basis = \"lineal-metre\"\nrate = 1.00\n") == Charged{{311, 0}, "lineal m", 31100});
}

TEST_CASE("by the hour and the day: 3.00 h at 95.00, one day at 700.00") {
  CHECK(charged("basis = \"hour\"\nrate = 95\n") == Charged{{180, 0}, "h", 28500});
  CHECK(charged("basis = \"day\"\nrate = 700\n") == Charged{{100, 2}, "days", 70000});
}

TEST_CASE("by the cubic metre of log and of lumber") {
  // Smalian, 1/8 in a foot of taper, the lengths as measured: 102.264 ft3 = 2.896 m3
  CHECK(charged("basis = \"m3-log\"\nrate = 100\n") == Charged{{2896, 3}, "m3", 28960});
  // 893 1/3 bf x 0.002359737216 m3 = 2.108 m3
  CHECK(charged("basis = \"m3-sawn\"\nrate = 220\n") == Charged{{2108, 3}, "m3", 46376});
}

TEST_CASE(
    "on halves: 34 pieces 450.00 bf to the hall, 34 pieces 443.33 bf to the mill, 3.33 bf owed to the mill") {
  const Week week("basis = \"shares\"\n");
  // what is not paid in lumber is still paid in money
  CHECK(week.draft("QHH").total.minor == kBundling);
  const Paper settled = divide_lumber(*week.book, "QHH", kFriday, kFriday);
  CHECK(settled.split->customer_pieces == 34);
  CHECK(settled.split->mill_pieces == 34);
  CHECK(settled.split->customer_bf == Rational(450));
  CHECK(settled.split->mill_bf == Rational(1330, 3));
  CHECK(settled.split->carried == Rational(-10, 3));
  week.whole();
}

TEST_CASE("the job's minimum raises what a basis gives too little of") {
  const Week week("basis = \"hour\"\nrate = 52\n");  // 3 h at 52.00 are 156.00; 250.00 at least
  const Draft draft = week.draft("QHH");
  REQUIRE(draft.lines.size() == 3);
  CHECK(draft.minimum.minor == 25000 - 15600);
  CHECK(draft.total.minor == 25000 + kBundling);
}

TEST_CASE("an issued invoice keeps its basis when the next mill file has another") {
  const DemoBook demo;
  issue_invoice(*demo.book, "QHH", kFriday, kFriday);
  demo.book->post_mill(changed_mill(kBasis, "basis = \"hour\"\nrate = 95\n"), "by the hour from now on");
  CHECK(demo.draft("QHH").lines.empty());
  demo.correct();
  CHECK(demo.draft("QHH").total.minor == -4992);
}
