// Own lumber: sawn, come from shares, sold by the piece, by the foot, by the board foot and by the bundle.
#include <SQLiteCpp/SQLiteCpp.h>

#include "book_helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kSaturday = kFriday + 1;

/// A mill with house prices for sawing and for selling, and nothing posted.
const char* const kYard =
    "[mill]\nname = \"Yard\"\n[[customer]]\ncode = \"ORR\"\nname = \"Ann Orr\"\n[[job]]\ncode = "
    "\"HLF\"\ncustomer = \"ORR\"\nowner = \"shares\"\n"
    "[[price]]\nbasis = \"shares\"\n"
    "[[price]]\nown_lumber = true\nbasis = \"bf\"\nrate = 1.00\n"
    "[[price]]\nown_lumber = true\nbasis = \"piece\"\nrate = 9.50\nsize = \"4x4\"\n"
    "[[price]]\nown_lumber = true\nbasis = \"lineal-foot\"\nrate = 0.35\nsize = \"1x3\"\n"
    "[[tax]]\nname = \"Sales tax\"\nrate = 5\non = \"lumber\"\n";

struct OwnYard : DemoBook {
  OwnYard() : DemoBook(kYard, false) {}
  void post(const std::string& lines, const std::string& day = "2026-05-08",
            const std::string& why = "") const {
    book->post_sheet("sheet " + day + "\nsite yard\n" + lines, why);
  }
  [[nodiscard]] std::int64_t number(const std::string& sql) const {
    return book->database().execAndGet("SELECT coalesce(" + sql).getInt64();
  }
  /// Pieces (or the count of length) of a size that moved so.
  [[nodiscard]] std::int64_t moved(const std::string& size, const std::string& movement) const {
    return number("sum(pieces + along), 0) FROM v_stock WHERE owner = 'own' AND size = '" + size +
                  "' AND movement = '" + movement + "'");
  }
  /// Pieces (or the count of length) of a size on hand: as kept by posting, and as all movements give it.
  [[nodiscard]] std::int64_t on_hand(const std::string& size) const {
    const std::int64_t kept =
        number("sum(pieces + along), 0) FROM v_on_hand JOIN v_size z ON z.id = size_id WHERE label = '" +
               size + "'");
    CHECK(kept ==
          number("sum(pieces + along), 0) FROM v_stock WHERE owner = 'own' AND movement <> 'delivered' "
                 "AND size = '" +
                 size + "'"));
    return kept;
  }
};

std::int64_t feet_in(std::int64_t count) {
  return count / measure::feet(1).count;
}

}  // namespace

TEST_CASE("lumber counted by its length is in own stock, and leaves it by the foot") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\n1x3 212lf\n1x3 40lf\nless 1x3 12lf split\nsold cash 1x3 100lf\n");
  CHECK(feet_in(yard.moved("1x3", "cut")) == 240);
  CHECK(feet_in(yard.moved("1x3", "sold")) == -100);
  CHECK(feet_in(yard.on_hand("1x3")) == 140);
  CHECK(yard.number("sum(lumber), 0) FROM v_on_hand") ==
        35 * 64LL * 64 * 64 * 144);  // 140 ft of 1x3 are 35 bf
  const Draft draft = draft_sale(*yard.book, "cash", kSaturday, kSaturday);
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].quantity == Decimal{10000, 2});
  CHECK(draft.lines[0].unit == "lineal ft");
  CHECK(draft.subtotal.minor == 3500);
  yard.whole();
}

TEST_CASE(
    "lumber is sold by the piece, by the board foot and by the lineal foot, at the list's or a spoken "
    "price") {
  const OwnYard yard;
  yard.post(
      "job own\nspecies DF\n2x6 20/16\n4x4 30/8\n1x3 400lf\n"
      "sold cash 2x6 5/16\n"               // 80 bf at 1.00
      "sold cash 2x6 2/16 at 1.25\n"       // 32 bf at 1.25
      "sold cash 4x4 4/8\n"                // 4 at 9.50
      "sold cash 4x4 6/8 at 8.25 each\n"   // 6 at 8.25
      "sold cash 1x3 50lf at 0.40 lf\n"    // 50 ft at 0.40
      "sold cash 1x3 40lf at 1.50\n"       // 40 ft of 1x3 are 10 bf, at 1.50
      "sold cash 2x6 1/16 at 0.75 lf\n");  // 16 ft at 0.75
  const Draft draft = draft_sale(*yard.book, "cash", kSaturday, kSaturday);
  std::vector<std::int64_t> amounts;
  for (const BillLine& line : draft.lines) amounts.push_back(line.amount.minor);
  std::sort(amounts.begin(), amounts.end());
  CHECK(amounts == std::vector<std::int64_t>{1200, 1500, 2000, 3800, 4000, 4950, 8000});
  CHECK(draft.taxes.at(0).base.minor == 25450);
  CHECK(draft.total.minor == 25450 + 1273);  // 5 % of 254.50 is 12.725, half up
  CHECK(yard.on_hand("2x6") == 12);
  CHECK(yard.on_hand("4x4") == 20);
  CHECK(feet_in(yard.on_hand("1x3")) == 310);
  issue_sale(*yard.book, "cash", kSaturday, kSaturday, "cash");
  CHECK(draft_sale(*yard.book, "cash", kSaturday, kSaturday).lines.empty());
  CHECK(waiting(*yard.book, kSaturday, kSaturday).empty());
  yard.whole();
}

TEST_CASE("a bundle sold whole takes all that was tallied under its tag out of the stock") {
  const OwnYard yard;
  yard.post(
      "job own\nspecies DF\nbundle B7\n2x6 No2 40/16 12/12\nless 2x6 No2 1/12 split\nbundle -\n2x6 No2 "
      "3/16\n",
      "2026-05-06");
  yard.post("job own\nspecies DF\nbundle B7\nsold cash 2x6 No2 4/16\n", "2026-05-07");
  yard.post("sold Ann Orr bundle b7 at 240\n");
  const Draft draft = draft_sale(*yard.book, "Ann Orr", kSaturday, kSaturday);
  for (const std::string& problem : draft.problems) FAIL_CHECK(problem);
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.lines[0].description == "Lumber: bundle b7: 11 2x6x12 DF No2, 36 2x6x16 DF No2");
  CHECK(draft.subtotal.minor == 24000);
  CHECK(draft.total.minor == 25200);
  CHECK(yard.on_hand("2x6") == 3);
  CHECK(waiting(*yard.book, kSaturday, kSaturday).size() == 2);
  issue_sale(*yard.book, "Ann Orr", kSaturday, kSaturday, "cash");
  CHECK(waiting(*yard.book, kSaturday, kSaturday).size() == 1);
  yard.whole();
}

TEST_CASE("a bundle without a spoken price goes by the price list, line by line") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\nbundle B8\n2x6 10/16\n4x4 5/8\n1x3 30lf\n", "2026-05-06");
  yard.post("sold cash bundle B8\n");
  const Draft draft = draft_sale(*yard.book, "cash", kSaturday, kSaturday);
  CHECK(draft.subtotal.minor == 16000 + 5 * 950 + 30 * 35);
}

TEST_CASE(
    "a bundle tag used again after the sale is a new bundle; one with nothing in it is not sold in silence") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\nbundle B1\n2x6 10/16\nsold cash bundle B1 at 100\n2x6 7/16\n",
            "2026-05-06");
  yard.post("sold Ann Orr bundle B1 at 80\n", "2026-05-07");
  CHECK(yard.on_hand("2x6") == 0);
  CHECK(stock_warnings(*yard.book, kSaturday).empty());
  yard.post("sold Ann Orr bundle B1 at 80\n");
  const auto warnings = stock_warnings(*yard.book, kSaturday);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0] == "Sold a bundle with nothing in it: B1, 2026-05-08.");
  CHECK(draft_sale(*yard.book, "Ann Orr", kSaturday, kSaturday).problems.size() == 1);
}

TEST_CASE(
    "a corrected tally changes what a bundle held, and a customer's bundle of that name is none of it") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\nbundle B2\n2x6 10/16\njob HLF\n2x6 5/16\n", "2026-05-06");
  yard.post("sold cash bundle B2 at 100\n");
  CHECK(yard.moved("2x6", "sold") == -10);
  yard.post("job own\nspecies DF\nbundle B2\n2x6 9/16\njob HLF\n2x6 5/16\n", "2026-05-06", "nine, not ten");
  CHECK(yard.moved("2x6", "sold") == -9);
  CHECK(yard.on_hand("2x6") == 0);
  yard.whole();
}

TEST_CASE("lineal feet on halves are divided to the foot, and the mill's part can be sold by the foot") {
  const OwnYard yard;
  yard.post("job HLF\nspecies RC\n1x6 4/12\n1x3 213lf\n1x2 10'6lf\n");
  const Paper settled = divide_lumber(*yard.book, "HLF", kSaturday, kSaturday);
  const Split& split = *settled.split;
  CHECK(split.customer_pieces == 2);
  CHECK(split.mill_pieces == 2);
  std::int64_t customer = 0;
  std::int64_t mill = 0;
  for (const ShareLine& line : split.lines) {
    CHECK(line.to_customer + line.to_mill == line.pieces);
    if (!line.lineal()) continue;
    customer += line.to_customer;
    mill += line.to_mill;
  }
  // 106 and 106 ft of 1x3, the odd foot to the customer (both even), 5 and 5 ft of 1x2, its odd half foot to the
  // mill, which is behind: 1/4 bf carried, less 1/12 bf, halved
  CHECK(customer == measure::feet(112).count);
  CHECK(mill == measure::feet(111).count + measure::feet(1).count / 2);
  CHECK(split.carried == Rational(-1, 12));
  CHECK(split.customer_bf + split.mill_bf == Rational(24) + Rational(213, 4) + Rational(21, 12));
  const std::string text = text_of(settled.document);
  CHECK(text.find("Counted in lineal feet") != std::string::npos);
  CHECK(text.find("107.00") != std::string::npos);
  CHECK(feet_in(yard.moved("1x3", "share")) == 106);
  yard.post("species RC\nsold cash 1x3 50lf\n", "2026-05-09");
  CHECK(feet_in(yard.on_hand("1x3")) == 56);
  yard.whole();
}

TEST_CASE("a corrected length of battens is shared by its difference") {
  const OwnYard yard;
  yard.post("job HLF\nspecies RC\n1x3 200lf\n");
  divide_lumber(*yard.book, "HLF", kSaturday, kSaturday);
  yard.post("job HLF\nspecies RC\n1x3 180lf\n", "2026-05-08", "measured again");
  const Paper second = divide_lumber(*yard.book, "HLF", kSaturday, kSaturday);
  REQUIRE(second.split->lines.size() == 1);
  CHECK(feet_in(second.split->lines[0].pieces) == -20);
  CHECK(feet_in(yard.moved("1x3", "share")) == 90);
  yard.whole();
}

TEST_CASE("more battens sold than there are is a warning that says how many feet") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\n1x3 100lf\nsold cash 1x3 120lf\n");
  const auto warnings = stock_warnings(*yard.book, kSaturday);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0] == "Sold more than is there: 1x3 DF, 20 lf too many.");
}

TEST_CASE("of several sheets each is told what it sold that was not there then, whatever came after") {
  const OwnYard yard;
  yard.post("job own\nspecies DF\n2x6 10/16\nsold cash 2x6 12/16\n", "2026-05-04");
  yard.post("job own\nspecies DF\n2x6 10/16\nsold Ann Orr 2x6 3/16\n", "2026-05-05");
  yard.post("job own\nspecies DF\n2x6 5/12\n", "2026-05-06");
  yard.post("job own\nspecies DF\nsold cash 2x6 6/16 6/12\n", "2026-05-07");
  const auto on = [](const char* day) { return SheetKey{*read_day(day), 1}; };
  const auto all =
      stock_warnings(*yard.book, {on("2026-05-06"), on("2026-05-04"), on("2026-05-07"), on("2026-05-05")});
  REQUIRE(all.size() == 3);  // nothing was sold on the 6th
  CHECK(all.at(on("2026-05-04")) ==
        std::vector<std::string>{"Sold more than is there: 2x6x16 DF, 2 too many."});
  CHECK(all.at(on("2026-05-05")).empty());
  CHECK(all.at(on("2026-05-07")) ==
        std::vector<std::string>{"Sold more than is there: 2x6x12 DF, 1 too many.",
                                 "Sold more than is there: 2x6x16 DF, 1 too many."});
  for (const auto& [sheet, words] : all) CHECK(stock_warnings(*yard.book, {sheet}).at(sheet) == words);
}
