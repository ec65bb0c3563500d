// exact_test.cpp -- exact numbers and the one rounding rule.
#include "base/exact.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <limits>
#include <stdexcept>
#include <string>

namespace {

using namespace kerfbook;

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();

TEST_CASE("an exact half is rounded away from zero, on a bill and on a credit alike") {
  CHECK(round_half_up(5, 2) == 3);
  CHECK(round_half_up(-5, 2) == -3);
  CHECK(round_half_up(1, 2) == 1);
  CHECK(round_half_up(-1, 2) == -1);
  CHECK(round_half_up(4, 3) == 1);
  CHECK(round_half_up(5, 3) == 2);
  CHECK(round_half_up(-4, 3) == -1);
  CHECK(round_half_up(0, 7) == 0);
  CHECK(round_half_up(7, 1) == 7);
}

TEST_CASE("rounding works to the end of 63 bits and refuses past it") {
  CHECK(round_half_up(Wide{kMost} * 3, 3) == kMost);
  CHECK_THROWS_AS(round_half_up(Wide{kMost} + 1, 1), std::overflow_error);
  CHECK_THROWS_AS(round_half_up(Wide{kMost} * 2 + 1, 2), std::overflow_error);  // kMost + 1/2 goes up
  CHECK(round_half_up(Wide{kMost} * 4 + 1, 4) == kMost);
}

TEST_CASE("a fraction is kept in lowest terms with its sign above the stroke") {
  CHECK(Rational(6, 8) == Rational(3, 4));
  CHECK(Rational(6, -8) == Rational(-3, 4));
  CHECK(Rational(6, -8).num() == -3);
  CHECK(Rational(6, -8).den() == 4);
  CHECK(Rational(0, 5) == Rational(0));
  CHECK(Rational(0, -5).den() == 1);
  CHECK_THROWS_AS(Rational(1, 0), std::domain_error);
}

TEST_CASE("fractions add, subtract, multiply, divide and compare exactly") {
  CHECK(Rational(17, 6) + Rational(17, 6) + Rational(17, 6) == Rational(17, 2));
  CHECK(Rational(1, 3) - Rational(1, 2) == Rational(-1, 6));
  CHECK(Rational(2, 3) * Rational(3, 4) == Rational(1, 2));
  CHECK(Rational(2, 3) / Rational(4, 9) == Rational(3, 2));
  CHECK(-Rational(2, 3) == Rational(-2, 3));
  CHECK(Rational(1, 3) < Rational(34, 100));
  CHECK(Rational(-1, 3) > Rational(-34, 100));
  CHECK(Rational(2, 4) <= Rational(1, 2));
  CHECK(Rational(-1, 3).is_negative());
  CHECK_FALSE(Rational(0).is_negative());
  CHECK_THROWS_AS(Rational(1) / Rational(0), std::domain_error);
}

TEST_CASE("a fraction is shown with the places asked for") {
  CHECK(shown(Rational(17, 6), 2) == Decimal{283, 2});
  CHECK(shown(Rational(17, 2), 0) == Decimal{9, 0});
  CHECK(shown(Rational(-1, 200), 2) == Decimal{-1, 2});
  CHECK(Rational(2, 3).rounded(6) == 666'667);
}

TEST_CASE("decimals are read as exact fractions") {
  CHECK(*read_decimal("12") == Rational(12));
  CHECK(*read_decimal("-12.5") == Rational(-25, 2));
  CHECK(*read_decimal(".5") == Rational(1, 2));
  CHECK(*read_decimal("5.") == Rational(5));
  CHECK(*read_decimal("0.000000001") == Rational(1, 1'000'000'000));
  CHECK(*read_decimal("0.10") == Rational(1, 10));
}

TEST_CASE("what is no decimal says what would be right") {
  const auto instead = [](const char* text, int places = 9) {
    const auto got = read_decimal(text, places);
    REQUIRE(!got);
    CHECK(got.slip().what == "'" + std::string(text) + "' is not a number");
    return got.slip().instead;
  };
  CHECK(instead("1,234.50") == "write it without commas, as 1234.5");
  CHECK(instead("12a") == "write digits, as 12 or 12.5");
  CHECK(instead("1.2.3") == "write digits, as 12 or 12.5");
  CHECK(instead("") == "write digits, as 12 or 12.5");
  CHECK(instead(".") == "write digits, as 12 or 12.5");
  CHECK(instead("-") == "write digits, as 12 or 12.5");
  CHECK(instead("1.234", 2) == "at most 2 decimals");
  CHECK(instead("1234567890123456789") == "that is more digits than a mill needs; at most 18");
}

TEST_CASE("decimals are written plain and as a person reads them") {
  CHECK(plain({156'067, 2}) == "1560.67");
  CHECK(plain({-50, 2}) == "-0.50");
  CHECK(plain({5, 3}) == "0.005");
  CHECK(plain({0, 0}) == "0");
  CHECK(plain({-7, 0}) == "-7");
  CHECK(grouped({156'067, 2}) == "1,560.67");
  CHECK(grouped({-123'456'789, 2}) == "-1,234,567.89");
  CHECK(grouped({999, 0}) == "999");
  CHECK(grouped({-999, 0}) == "-999");
  CHECK(grouped({1'000, 0}) == "1,000");
  CHECK(grouped({156'067, 2}, '.', ',') == "1.560,67");
}

TEST_CASE("the laws of fractions hold for any fractions") {
  CHECK(rc::check("addition", [](std::int32_t a, std::int32_t b, std::uint16_t c, std::uint16_t d) {
    const Rational x(a, c + 1);
    const Rational y(b, d + 1);
    RC_ASSERT(x + y == y + x);
    RC_ASSERT((x + y) - y == x);
    RC_ASSERT(x * y == y * x);
    if (!y.is_zero()) RC_ASSERT(x / y * y == x);
    RC_ASSERT((x < y) == (x - y < Rational(0)));
  }));
}

TEST_CASE("rounding is never off by more than half a step, and only an exact half goes away from zero") {
  CHECK(rc::check("round_half_up", [](std::int32_t num, std::uint16_t den) {
    const Rational exact(num, den + 1);
    const Rational off = Rational(round_half_up(num, den + 1)) - exact;
    RC_ASSERT(off <= Rational(1, 2));
    RC_ASSERT(off >= Rational(-1, 2));
    if (off == Rational(1, 2)) RC_ASSERT(!exact.is_negative());
    if (off == Rational(-1, 2)) RC_ASSERT(exact.is_negative());
  }));
}

TEST_CASE("a decimal that is written plain is read back the same") {
  CHECK(rc::check("decimals", [](std::int64_t any, std::uint8_t some_places) {
    const int places = some_places % 10;
    const std::int64_t units = any % 1'000'000'000'000'000'000;
    std::int64_t step = 1;
    for (int i = 0; i < places; ++i) step *= 10;
    RC_ASSERT(*read_decimal(plain({units, places})) == Rational(units, step));
  }));
}

}  // namespace
