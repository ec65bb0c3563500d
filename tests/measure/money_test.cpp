// money_test.cpp -- sums of money: read, written, priced.
#include "measure/money.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>

namespace {

using namespace kerfbook;
using namespace kerfbook::measure;

TEST_CASE("a price is quantity times rate, rounded once, an exact half up") {
  CHECK(priced(Rational(1911), Rational(48, 100)).minor == 91'728);
  CHECK(priced(Rational(17, 2), Rational(1, 100)).minor == 9);    // 8.5 cents
  CHECK(priced(Rational(-17, 2), Rational(1, 100)).minor == -9);  // a credit is the same sum the other way
  CHECK(priced(Rational(17, 6), Rational(48, 100)).minor == 136);
  CHECK(priced(Rational(1000, 3), Rational(1), 0).minor == 333);
}

TEST_CASE("M is a thousand: money is board feet / 1000 x the price per MBF") {
  CHECK(priced(Rational(1560) / Rational(1000), Rational(480)).minor == 74'880);
}

TEST_CASE("sums are read with and without a sign") {
  for (const char* text : {"1882.31", "$1882.31", "$ 1882.31", "1882.31 kr", "€1882.31", " 1882.31 "}) {
    CAPTURE(text);
    const auto got = read_money(text);
    REQUIRE(got);
    CHECK(got->minor == 188'231);
  }
  CHECK(read_money("$400")->minor == 40'000);
  CHECK(read_money("-5.00")->minor == -500);
  CHECK(read_money("-$5")->minor == -500);
  CHECK(read_money("$-5")->minor == -500);
  CHECK(read_money(".5")->minor == 50);
  CHECK(read_money("500", 0)->minor == 500);
}

TEST_CASE("sums that cannot be read say what would be right") {
  const auto slip = [](const char* text) {
    const auto got = read_money(text);
    REQUIRE(!got);
    return got.slip().what + "; " + got.slip().instead;
  };
  CHECK(slip("1,882.31") == "'1,882.31' is not a sum of money; write it without commas, as 1234.5");
  CHECK(slip("0.485") == "'0.485' has more than 2 decimals; write 0.49");
  CHECK(slip("") == "'' is not a sum of money; write it as 1882.31");
  CHECK(slip("--5") == "'--5' is not a sum of money; write it as 1882.31");
  CHECK(slip("dear") == "'dear' is not a sum of money; write digits, as 12 or 12.5");
}

TEST_CASE("sums are written in the book's currency") {
  const Currency dollars;
  CHECK(write_money({188'231}, dollars) == "$1,882.31");
  CHECK(write_money({-500}, dollars) == "-$5.00");
  CHECK(write_money({0}, dollars) == "$0.00");
  CHECK(write_money({123'456'789}, dollars) == "$1,234,567.89");
  const Currency kroner{"kr", true, 2, ',', '.'};
  CHECK(write_money({188'231}, kroner) == "1.882,31 kr");
  const Currency whole{"¥", false, 0, '.', '\0'};
  CHECK(write_money({188'231}, whole) == "¥188231");
  CHECK(plain_money({188'231}) == "1882.31");
  CHECK(plain_money({-5}) == "-0.05");
  CHECK(plain_money({7}, 0) == "7");
}

TEST_CASE("a sum written plain or with its sign is read back the same") {
  CHECK(rc::check("money", [](std::int32_t minor) {
    RC_ASSERT(read_money(plain_money({minor}))->minor == minor);
    Currency ungrouped;
    ungrouped.thousands = '\0';
    RC_ASSERT(read_money(write_money({minor}, ungrouped))->minor == minor);
  }));
}

}  // namespace
