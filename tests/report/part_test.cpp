// part_test.cpp -- what several reports share is put in where they say, each word in curly brackets as they give it.
#include "report/part.h"

#include <doctest/doctest.h>

#include <stdexcept>

namespace {

std::string_view by_step(std::string_view name) {
  return name == "by" ? "-- A remark.\n\n-- shows: {step} day\nSELECT {of_day} AS {step};\n" : "";
}

std::string put_in(std::string_view text) {
  return kerfbook::report::with_parts(text, by_step);
}

}  // namespace

TEST_CASE("a part is put in with its words, and what stands around it stays") {
  CHECK(put_in("-- report: x\n-- part:    by\n--   step = week\n--   of_day = day - 1 = 2\n-- foot: y\n") ==
        "-- report: x\n-- shows: week day\nSELECT day - 1 = 2 AS week;\n-- foot: y\n");
  CHECK(put_in("-- report: x\n--   step = week\n") == "-- report: x\n--   step = week\n");
}

TEST_CASE("a part nobody has, a word not given and a word of no use are told") {
  CHECK_THROWS_AS(put_in("-- part: none\n"), std::logic_error);
  CHECK_THROWS_AS(put_in("-- part: by\n--   step = week\n"), std::logic_error);
  CHECK_THROWS_AS(put_in("-- part: by\n--   step = week\n--   of_day = 1\n--   more = 2\n"),
                  std::logic_error);
}
