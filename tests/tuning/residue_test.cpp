// What slabs and dust hold of a log's wood.
#include <doctest/doctest.h>

#include "measure/heap.h"
#include "sheet/write.h"
#include "tuning/residue.h"

using namespace kerfbook;
using namespace kerfbook::tuning;
using measure::heap_feet3;
using measure::HeapUnit;

TEST_CASE(
    "a cord of slabs holds 75 ft3, and 2.5 ft3 of loose sawdust 1 (Canada Forestry Branch, Prince George, "
    "about 1951)") {
  CHECK(heap_feet3(1, HeapUnit::cord) * *solid_share("slabs") == Rational(75));
  CHECK(heap_feet3(Rational(5, 2), HeapUnit::cubic_foot) * *solid_share("sawdust") == Rational(1));
  CHECK_FALSE(solid_share("gravel").has_value());
}

TEST_CASE("every kind of residue that a sheet takes has a solid share") {
  for (const auto kind : sheet::residue_kinds())
    CHECK_MESSAGE(solid_share(kind).has_value(), std::string(kind));
}

TEST_CASE(
    "slabs, edgings, trim and the chips made of them are of the rest; bark and shavings of no log's volume") {
  for (const char* kind : {"slabs", "edgings", "trim", "chips"}) CHECK(out_of(kind) == OutOf::rest);
  CHECK(out_of("sawdust") == OutOf::sawdust);
  for (const char* kind : {"bark", "shavings"}) CHECK(out_of(kind) == OutOf::none);
}
