// The reckoning's own measures against published figures, so that it is no second guess of the program.
#include <doctest/doctest.h>

#include "measures.h"

using namespace reckoning;

namespace {

Log log_of(const std::string& spec) {
  return read_sheet("sheet 2000-01-01\nlog " + spec + "\n").logs.at(0);
}

Fraction gross(const std::string& spec, const std::string& rule) {
  return scale_of(log_of(spec), rule)->gross;
}

Fraction lumber(const std::string& line) {
  Fraction sum;
  for (const auto& boards : read_sheet("sheet 2000-01-01\n" + line + "\n").boards) sum += lumber_of(boards);
  return sum;
}

bool within(const Fraction& figure, const Fraction& published, const Fraction& most) {
  const Fraction off = figure - published;
  return !(most < off) && !(most < -off);
}

}  // namespace

TEST_CASE("the reckoning's log rules give the figures that are printed of them") {
  // E. Wengert, Log Volume charts, 2001
  CHECK(gross("6x16", "international-quarter") == Fraction(20));
  CHECK(gross("12x12", "international-quarter") == Fraction(70));
  CHECK(gross("23x6", "international-quarter") == Fraction(140));
  CHECK(gross("26x16", "international-quarter") == Fraction(500));
  // D. R. Larsen, Forest Functions, University of Missouri, 2017
  CHECK(gross("10x16", "doyle") == Fraction(36));
  CHECK(within(gross("10x16", "scribner-formula"), 55, Fraction(1, 20)));
  CHECK(within(gross("28x16", "scribner-formula"), Fraction(5594, 10), Fraction(1, 20)));
  CHECK(within(content_of(*log_of("10-12x16").measure, 0), Fraction(10647, 1000), Fraction(1, 1000)));
  // E. A. Chase, Timber Cruising Manual and Record, Chicago, 1913, p. 11
  CHECK(within(gross("9x36", "doyle"), 56, Fraction(1, 2)));
  CHECK(within(gross("17x20", "doyle"), 211, Fraction(1, 2)));
}

TEST_CASE("the reckoning's board measure is the standard's, in inches and in millimetres") {
  // a board foot: 1 ft long, 12 in wide, 1 in thick; American Softwood Lumber Standard, Voluntary Product Standard PS 20
  CHECK(lumber("1x12 1/1") == Fraction(1));
  CHECK(lumber("2x6 3/16 1/8") == Fraction(56));
  CHECK(lumber("5/4x4 6/10") == Fraction(25));
  CHECK(lumber("1x3 212lf\nless 1x3 12lf") == Fraction(50));
  // 25.4 x 304.8 x 304.8 mm is one board foot, at 25.4 mm an inch (yard and pound agreement, 1959)
  CHECK(within(lumber("254x3048 1/3.048m"), 1000, Fraction(1, 1000)));
}

TEST_CASE("fractions are exact, and round an exact half away from zero") {
  CHECK(Fraction(1, 3) + Fraction(1, 6) == Fraction(1, 2));
  CHECK(Fraction(5, 2).nearest(1) == Fraction(3));
  CHECK(Fraction(-5, 2).nearest(1) == Fraction(-3));
  CHECK(Fraction(2, 3).text() == "0.666667");
  CHECK(Fraction(-1, 4).text() == "-0.25");
  CHECK(fraction_of("1-5/8") == Fraction(13, 8));
  CHECK(fraction_of("-0.75") == Fraction(-3, 4));
}
