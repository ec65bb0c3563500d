// Runs after every other test of the room, by its name.
#include <doctest/doctest.h>

#include "render/outputs.h"

TEST_CASE("every workbook these tests made is opened by a second reader, which finds the same figures") {
  kerfbook::render::check_second_reader();
}
