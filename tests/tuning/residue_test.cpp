// What slabs and dust hold of a log's wood.
#include <doctest/doctest.h>

#include "tuning/residue.h"

using namespace kerfbook;
using namespace kerfbook::tuning;

TEST_CASE(
    "a cord of slabs holds 75 ft3, and 2.5 ft3 of loose sawdust 1 (Canada Forestry Branch, Prince George, "
    "about 1951)") {
  CHECK(heap_feet3(1, Heap::cord) * *solid_share("slabs") == Rational(75));
  CHECK(heap_feet3(Rational(5, 2), Heap::cubic_foot) * *solid_share("sawdust") == Rational(1));
  CHECK_FALSE(solid_share("gravel").has_value());
}

TEST_CASE("a cubic yard is 27 ft3, and a cubic metre 35.3147 (NIST SP 811, from memory)") {
  CHECK(heap_feet3(2, Heap::cubic_yard) == Rational(54));
  CHECK(heap_feet3(1, Heap::cubic_metre).rounded(4) == 353'147);
}

TEST_CASE(
    "slabs, edgings, trim and the chips made of them are of the rest; bark and shavings of no log's volume") {
  for (const char* kind : {"slabs", "edgings", "trim", "chips"}) CHECK(out_of(kind) == OutOf::rest);
  CHECK(out_of("sawdust") == OutOf::sawdust);
  for (const char* kind : {"bark", "shavings"}) CHECK(out_of(kind) == OutOf::none);
}
