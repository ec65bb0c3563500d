// What heaps are measured in.
#include <doctest/doctest.h>

#include "measure/heap.h"

using namespace kerfbook;
using namespace kerfbook::measure;

TEST_CASE("a cubic yard is 27 ft3, a cord 128, and a cubic metre 35.3147 (NIST SP 811, from memory)") {
  CHECK(heap_feet3(Rational(3, 2), HeapUnit::cubic_foot) == Rational(3, 2));
  CHECK(heap_feet3(2, HeapUnit::cubic_yard) == Rational(54));
  CHECK(heap_feet3(1, HeapUnit::cord) == Rational(128));
  CHECK(heap_feet3(1, HeapUnit::cubic_metre).rounded(4) == 353'147);
}

TEST_CASE("each unit of heaps is known by its word, and by the other words it goes by") {
  for (const auto unit : {HeapUnit::cubic_foot, HeapUnit::cubic_yard, HeapUnit::cubic_metre, HeapUnit::cord})
    CHECK(heap_unit(word_of(unit)) == unit);
  CHECK(heap_unit("Cuft") == HeapUnit::cubic_foot);
  for (const char* yards : {"cuyd", "yard", "yards"}) CHECK(heap_unit(yards) == HeapUnit::cubic_yard);
  CHECK(heap_unit("cords") == HeapUnit::cord);
  CHECK_FALSE(heap_unit("load").has_value());
}
