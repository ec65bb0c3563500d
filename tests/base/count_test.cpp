#include "base/count.h"

#include <doctest/doctest.h>

using kerfbook::counted;

TEST_CASE("a count stands with its noun in the right number") {
  CHECK(counted(1, "log") == "1 log");
  CHECK(counted(0, "log") == "0 logs");
  CHECK(counted(1560, "piece") == "1,560 pieces");
  CHECK(counted(1, "tooth", "teeth") == "1 tooth");
  CHECK(counted(22, "tooth", "teeth") == "22 teeth");
}
