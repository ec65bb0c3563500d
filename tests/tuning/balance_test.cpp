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
  CHECK(sawdust(2, 6, 96, kTwoSaws) == Rational(1'921'875, 1'000'000) * 96);
  CHECK(sawdust(2, 6, 96, {Rational(1, 4), 0, 0}) == 6 * Rational(1, 4) * Rational(96));
  // a third saw of 3/16 beside the edger: (2 + 1/4) x 3/16 more
  CHECK(sawdust(2, 6, 96, {Rational(1, 4), Rational(3, 16), Rational(3, 16)}) ==
        (Rational(1'921'875, 1'000'000) + Rational(27, 64)) * 96);
}

TEST_CASE("boards taken off again take their dust off, and no kerf makes none") {
  CHECK(sawdust(2, 6, 96, kTwoSaws) + sawdust(2, 6, -96, kTwoSaws) == Rational(0));
  CHECK(sawdust(2, 6, 96, {}).is_zero());
}

TEST_CASE("board and dust together are what the saws took out of the log, whatever the sizes") {
  rc::check([] {
    const auto any = [] { return Rational(*rc::gen::inRange<std::int64_t>(1, 1000), 64); };
    const Rational thickness = any(), width = any(), length = any();
    const Kerfs kerfs{any(), any(), 0};
    RC_ASSERT(sawdust(thickness, width, length, kerfs) + thickness * width * length ==
              (thickness + kerfs.head) * (width + kerfs.edger) * length);
    RC_ASSERT(sawdust(thickness, width, length, kerfs) > Rational(0));
  });
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
