// Where the wood of a log went: what a cut takes is worked by hand, the parts make up the log, and a fault shows.
#include <doctest/doctest.h>

#include <rapidcheck.h>

#include "tuning/balance.h"

using namespace kerfbook;
using namespace kerfbook::tuning;

namespace {

const Kerfs kTwoSaws{Rational(1, 4), Rational(3, 16), 0};

}  // namespace

TEST_CASE("a board costs one cut of each saw and the corner where they meet (by hand, in inches)") {
  // 2 x 6 x 96: 6 x 1/4 + 2 x 3/16 + 1/4 x 3/16 = 1.921875 in2
  CHECK(sawdust({2, 6}, 96, kTwoSaws) == Rational(1'921'875, 1'000'000) * 96);
  CHECK(sawdust({2, 6}, 96, {Rational(1, 4), 0, 0}) == 6 * Rational(1, 4) * Rational(96));
  // a third saw of 3/16 beside the edger: (2 + 1/4) x 3/16 more
  CHECK(sawdust({2, 6}, 96, {Rational(1, 4), Rational(3, 16), Rational(3, 16)}) ==
        (Rational(1'921'875, 1'000'000) + Rational(27, 64)) * 96);
}

TEST_CASE("boards taken off again take their dust off, and no kerf makes none") {
  CHECK(sawdust({2, 6}, 96, kTwoSaws) + sawdust({2, 6}, -96, kTwoSaws) == Rational(0));
  CHECK(sawdust({2, 6}, 96, {}).is_zero());
}

TEST_CASE("board and dust together are what the saws took out of the log, whatever the sizes") {
  rc::check([] {
    const auto any = [] { return Rational(*rc::gen::inRange<std::int64_t>(1, 1000), 64); };
    const Rational thickness = any(), width = any(), length = any();
    const Kerfs kerfs{any(), any(), 0};
    RC_ASSERT(sawdust({thickness, width}, length, kerfs) + thickness * width * length ==
              (thickness + kerfs.head) * (width + kerfs.edger) * length);
    RC_ASSERT(sawdust({thickness, width}, length, kerfs) > Rational(0));
  });
}

TEST_CASE(
    "a board was cut to the target that has its area, and without one to nominal and as much over both "
    "ways") {
  const Rational mil(1, 1000);
  const Section finish{Rational(13, 8), Rational(45, 8)};  // 1-5/8 x 5-5/8
  const Section bold{Rational(17, 8), Rational(49, 8)};    // 2-1/8 x 6-1/8
  CHECK(section_cut({2, 6}, finish.area(), {bold, finish}, mil) == finish);
  CHECK(section_cut({2, 6}, bold.area() * Rational(100'009, 100'000), {bold, finish}, mil) == bold);
  // by hand: (2 + 0.12) x (6 + 0.12) = 12.9744, of which neither target has the area
  CHECK(section_cut({2, 6}, Rational(129'744, 10'000), {bold, finish}, mil) ==
        Section{Rational(212, 100), Rational(612, 100)});
  const Section uneven{Rational(17, 8), 6};
  CHECK(section_cut({2, 6}, uneven.area() * Rational(100'009, 100'000), {uneven}, mil) == uneven);
  CHECK(section_cut({2, 6}, uneven.area() * Rational(10'002, 10'000), {uneven}, mil).width >
        Rational(6));  // 2 in 10,000 away
  CHECK(section_cut({2, 6}, Rational(12), {}, mil) == Section{2, 6});
  CHECK(section_cut({2, 6}, Rational(19 * 59, 100), {}, mil) == Section{Rational(19, 10), Rational(59, 10)});
}

TEST_CASE("overrun is what is counted over the scale, below 0 an underrun, and of no scale none") {
  CHECK(overrun_percent(1'560, 1'200) == Rational(30));
  CHECK(overrun_percent(900, 1'200) == Rational(-25));
  CHECK_FALSE(overrun_percent(900, 0).has_value());
}

TEST_CASE("lumber, dust and rest are the whole log, in percent too; sums of runs are the runs' sums") {
  Balance one{1000, 550, 180};
  CHECK(one.rest() == Rational(270));
  CHECK(*percent_of_logs(one.lumber, one) + *percent_of_logs(one.sawdust, one) +
            *percent_of_logs(one.rest(), one) ==
        Rational(100));
  one += Balance{500, 200, 100};
  CHECK(one.rest() == Rational(470));
  CHECK_FALSE(percent_of_logs(one.lumber, Balance{}).has_value());
}

TEST_CASE("more wood out than went in is a fault of measuring, and to the last bit none is not") {
  CHECK(Balance{1000, 800, 201}.is_fault());
  CHECK_FALSE(Balance{1000, 800, 200}.is_fault());
}
