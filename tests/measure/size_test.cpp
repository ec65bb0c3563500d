// size_test.cpp -- sections and volumes: read, written, exact.
#include "measure/size.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace kerfbook;
using namespace kerfbook::measure;

constexpr Length counts(std::int64_t count) {
  return {count, System::inch};
}

Size size_read(const std::string& text, bool metric_book = false) {
  CAPTURE(text);
  const auto got = read_size(text, metric_book);
  REQUIRE_MESSAGE(got, got.slip().what);
  return *got;
}

void check_slip(const std::string& text, bool metric_book, const std::string& what,
                const std::string& instead, int at) {
  CAPTURE(text);
  const auto got = read_size(text, metric_book);
  REQUIRE(!got);
  CHECK(got.slip().what == what);
  CHECK(got.slip().instead == instead);
  CHECK(got.slip().at == at);
}

TEST_CASE("a section is read in every way the trade writes it") {
  const Size two_by_six{inches(2), inches(6)};
  for (const char* text : {"2x6", "2X6", "2×6", "2 x 6", "2\"x6\"", "2″ × 6″", "2x6in", " 2x6 ", "2.0x6"}) {
    CHECK(size_read(text) == two_by_six);
  }
  CHECK(size_read("1-1/8x4") == Size{counts(72), inches(4)});
  CHECK(size_read("1⅛x4") == Size{counts(72), inches(4)});
  CHECK(size_read("1-5/8x3-5/8") == Size{counts(104), counts(3 * 64 + 40)});
  CHECK(size_read("1 5/8 x 3 5/8") == Size{counts(104), counts(3 * 64 + 40)});
}

TEST_CASE("quarters stay quarters: 5/4x6 is not written 1-1/4x6") {
  CHECK(size_read("5/4x6") == Size{counts(80), inches(6), true});
  CHECK(size_read("1-1/4x6") == Size{counts(80), inches(6), false});
  CHECK(write_size(size_read("5/4x6")) == "5/4x6");
  CHECK(write_size(size_read("8/4x6")) == "8/4x6");
  CHECK(write_size(size_read("4/4x6")) == "4/4x6");
  CHECK(write_size(size_read("1-1/4x6")) == "1-1/4x6");
  CHECK(write_size(size_read("3/4x6")) == "3/4x6");
  CHECK_FALSE(size_read("3/4x6").quarters);
}

TEST_CASE("plain numbers are what the book is kept in, a written unit wins") {
  const Size metric{millimetres(50), millimetres(150)};
  CHECK(size_read("50x150") == metric);  // no board is 16 in thick
  CHECK(size_read("50x150", true) == metric);
  CHECK(size_read("50mmx150mm") == metric);
  CHECK(size_read("50x150mm") == metric);
  CHECK(size_read("5x15cm") == metric);
  CHECK(size_read("22x100", true) == Size{millimetres(22), millimetres(100)});
  CHECK(size_read("47.5x150", true) == Size{{475, System::metric}, millimetres(150)});
  CHECK(size_read("12x12") == Size{inches(12), inches(12)});
  CHECK(size_read("16x16\"") == Size{inches(16), inches(16)});
  CHECK(size_read("2\"x6\"", true) == Size{inches(2), inches(6)});
}

TEST_CASE("sizes that cannot be read say what would be right") {
  check_slip("2", false, "'2' has no width", "write thickness x width, as 2x6", 1);
  check_slip("2x6x16", false, "'2x6x16' has a length too", "write only the size here, as 2x6", 3);
  check_slip("2x", false, "the width is missing", "write a size as 2x6", 2);
  check_slip("x6", false, "the thickness is missing", "write a size as 2x6", 0);
  check_slip("2xwide", false, "'wide' is not a number", "write a size as 2x6, 1-1/8x4 or 5/4x6", 2);
  check_slip("2x6k", false, "'6k' is no width", "write a size as 2x6", 3);
  check_slip("0x6", false, "a thickness of zero", "write a size as 2x6", 0);
  check_slip("2'x6", false, "'2'' is in feet", "write a size in inches, as 2x6", 0);
  check_slip("2x600", false, "'600' is wider than any log", "write a size as 2x6", 2);
  check_slip("50mmx6\"", false, "inches and millimetres in one size", "write both in one of them", 5);
  check_slip("2x6", true, "'2x6' would be millimetres in this book", "write 50x150, or 2x6\" for inches", 0);
  check_slip("5/4x100", true, "'5/4x100' would be millimetres in this book",
             "write 50x150, or 5/4x100\" for inches", 0);
  check_slip("1.1x6", false, "'1.1' is no whole 64th of an inch", "write 1-3/32 or 1-7/64", 0);
  check_slip("½×1.1", false, "'1.1' is no whole 64th of an inch", "write 1-3/32 or 1-7/64", 2);
}

TEST_CASE("a piece is a size and a length of the size's own system") {
  const auto piece = [](const char* text, bool metric = false) {
    const auto got = read_piece(text, metric);
    REQUIRE_MESSAGE(got, got.slip().what);
    return *got;
  };
  CHECK(piece("2x6x16") == Piece{{inches(2), inches(6)}, feet(16)});
  CHECK(piece("2x6x16'6\"") == Piece{{inches(2), inches(6)}, counts(16 * 768 + 384)});
  CHECK(piece("2x6x16-6") == Piece{{inches(2), inches(6)}, counts(16 * 768 + 384)});
  CHECK(piece("50x150x4.8") == Piece{{millimetres(50), millimetres(150)}, centimetres(480)});
  CHECK(piece("50x150x4.8", true) == Piece{{millimetres(50), millimetres(150)}, centimetres(480)});
  CHECK(write_piece(piece("5/4x6x8")) == "5/4x6x8");
  CHECK(write_piece(piece("50x150x4.8")) == "50x150x4.8m");
  const auto no_length = read_piece("2x6");
  REQUIRE(!no_length);
  CHECK(no_length.slip().what == "'2x6' has no length");
  CHECK(no_length.slip().instead == "write it as 2x6x16");
  const auto bad_length = read_piece("2×6×7-1/2");
  REQUIRE(!bad_length);
  CHECK(bad_length.slip().at == 4);
}

TEST_CASE("three lines of 2 5/6 board feet are 8 1/2 exactly, and 8.49 only if each is rounded first") {
  const Volume line = volume(*read_size("1x4"), *read_feet("8'6\""), 1);
  CHECK(board_feet(line) == Rational(17, 6));
  const Volume all{3 * line.count, System::inch};
  CHECK(board_feet(all) == Rational(17, 2));
  CHECK(plain(shown(board_feet(all), 2)) == "8.50");
}

TEST_CASE("the wood in boards cut over nominal is more than the nominal volume by exactly that") {
  const Size size = *read_size("2x6");
  CHECK(volume_over(size, feet(16), 1, 0) == volume(size, feet(16), 1));
  // 2.125 x 6.125 x 192 in = 2499 in3
  CHECK(board_feet(volume_over(size, feet(16), 1, 125)) == Rational(2499, 144));
  CHECK(board_feet(volume_over(size, feet(16), 3, 125)) == Rational(3 * 2499, 144));
  // 0.12 in over: 2.12 x 6.12 x 192 / 144 = 17.2992 bf, within half a count of volume
  const Volume over = volume_over(size, feet(16), 1, 120);
  CHECK(board_feet(over).rounded(6) == 17'299'200);
  // scant: 1.875 x 5.875
  CHECK(board_feet(volume_over(size, feet(16), 1, -125)) == Rational(1875 * 5875 * 192, 144'000'000));
  // metric: 50.5 mm x 150.5 mm x 1 m
  const Volume metric = volume_over({millimetres(50), millimetres(150)}, centimetres(100), 1, 50);
  CHECK(cubic_metres(metric) == Rational(505 * 1505, 100'000'000));
}

TEST_CASE("a volume past 63 bits is refused, not wrapped") {
  CHECK_THROWS_AS(volume({inches(100), inches(100)}, feet(1000), 1'000'000'000), std::overflow_error);
  CHECK_THROWS_AS(volume_over({inches(100), inches(100)}, feet(1000), 1'000'000'000, 5), std::overflow_error);
}

/// Any size that a reader could have given.
Size any_size(std::uint32_t thickness, std::uint32_t width, bool metric, bool quarters) {
  const System system = metric ? System::metric : System::inch;
  const std::int64_t most = metric ? 30'480 : 120 * kPerInch;
  Size size{{1 + thickness % most, system}, {1 + width % most, system}, false};
  if (quarters && !metric) size = {{16 * (4 + thickness % 60), system}, size.width, true};
  return size;
}

TEST_CASE("every size is written so that it is read back the same, in a book of either system") {
  CHECK(rc::check("sizes",
                  [](std::uint32_t thickness, std::uint32_t width, bool metric, bool quarters, bool book) {
                    const Size size = any_size(thickness, width, metric, quarters);
                    const std::string text = write_size(size, book);
                    const auto back = read_size(text, book);
                    RC_ASSERT(static_cast<bool>(back));
                    RC_ASSERT(*back == size);
                  }));
  CHECK(rc::check("sizes of whole inches and millimetres", [](std::uint8_t thickness, std::uint8_t width,
                                                              bool metric, bool book) {
    const std::int64_t one = metric ? kPerMillimetre : kPerInch;
    const System system = metric ? System::metric : System::inch;
    const Size size{{one * (1 + thickness % 100), system}, {one * (1 + width % 100), system}, false};
    RC_ASSERT(*read_size(write_size(size, book), book) == size);
  }));
  CHECK(rc::check("pieces", [](std::uint32_t thickness, std::uint32_t width, std::uint32_t length,
                               bool metric, bool book) {
    const Size size = any_size(thickness, width, metric, false);
    const Piece piece{size, {length % 10'000'000, size.thickness.system}};
    RC_ASSERT(*read_piece(write_piece(piece, book), book) == piece);
  }));
}

TEST_CASE("volumes add up: so many pieces are the sum of the pieces, a long board the sum of its halves") {
  CHECK(rc::check("pieces", [](std::uint16_t thickness, std::uint16_t width, std::uint16_t some,
                               std::uint16_t more, bool metric) {
    const Size size = any_size(thickness, width, metric, false);
    const Length length{12'288, size.thickness.system};
    const std::int64_t together = volume(size, length, some + more).count;
    RC_ASSERT(together == volume(size, length, some).count + volume(size, length, more).count);
  }));
  CHECK(rc::check("lengths", [](std::uint16_t thickness, std::uint16_t width, std::uint16_t some,
                                std::uint16_t more, bool metric) {
    const Size size = any_size(thickness, width, metric, false);
    const System system = size.thickness.system;
    const Rational whole = board_feet(volume(size, {some + more, system}, 3));
    RC_ASSERT(whole ==
              board_feet(volume(size, {some, system}, 3)) + board_feet(volume(size, {more, system}, 3)));
  }));
}

TEST_CASE("a volume converted and back is itself within a count, and within 0.00000002 bf of the truth") {
  CHECK(rc::check("metric is finer, so inches come back exactly", [](const std::uint32_t any) {
    const Volume volume{std::int64_t{any} * 1000, System::inch};
    RC_ASSERT(converted(converted(volume, System::metric), System::inch) == volume);
  }));
  CHECK(rc::check("metric comes back within half a count of the inch", [](const std::uint32_t any) {
    const Volume volume{std::int64_t{any} * 1000, System::metric};
    const Volume inch = converted(volume, System::inch);
    const Rational off = board_feet(inch) - board_feet(volume);
    RC_ASSERT(off <= Rational(2, 100'000'000));
    RC_ASSERT(off >= Rational(-2, 100'000'000));
    const std::int64_t back = converted(inch, System::metric).count - volume.count;
    RC_ASSERT(back <= 32);  // half of 254^3 / 64^3 = 62.5
    RC_ASSERT(back >= -32);
  }));
}

TEST_CASE("no bytes make a size reader throw") {
  CHECK(rc::check("any arrangement of the marks that matter", [](bool metric_book) {
    const auto text =
        *rc::gen::container<std::string>(rc::gen::elementOf(std::string("0123456789-/. '\"xxxxmincft½×")));
    const auto size = read_size(text, metric_book);
    if (size) RC_ASSERT(*read_size(write_size(*size, metric_book), metric_book) == *size);
    const auto piece = read_piece(text, metric_book);
    if (piece) RC_ASSERT(*read_piece(write_piece(*piece, metric_book), metric_book) == *piece);
  }));
}

}  // namespace
