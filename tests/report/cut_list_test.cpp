// Cut lists: each board counts once, on the line that a sawyer would tick it off on.
#include <doctest/doctest.h>

#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

render::Document cut_list(const std::string& list, const std::string& tally) {
  return answer(small_book("[[job]]\ncode = \"TER\"\ncut_list = [" + list + "]\n",
                           {"sheet 2026-05-04\njob TER\n" + tally + "\n"}),
                "cut-list");
}

}  // namespace

TEST_CASE("a board that fits two lines of a cut list counts on one of them, in the order of the list") {
  const auto twelve = cut_list(R"("2x6x16 20", "2x8x12 5", "2x6x16 12")", "2x6 12/16");
  CHECK(shown_rows(twelve) ==
        "|TER|2x6|16|-|20|12|8|0|60|\n"
        "|TER|2x8|12|-|5|0|5|0|0|\n"
        "|TER|2x6|16|-|12|0|12|0|0|\n"
        "|||||37|12|25|0|32|\n");
  const auto many = cut_list(R"("2x6x16 20", "2x6x16 12")", "2x6 35/16");
  CHECK(shown_rows(many) ==
        "|TER|2x6|16|-|20|20|0|0|100|\n"
        "|TER|2x6|16|-|12|15|0|3|100|\n"
        "|||||32|35|0|3|100|\n");
}

TEST_CASE(
    "the line that names a grade takes its boards first, and what it leaves goes to lines of any grade") {
  const auto ten = cut_list(R"("2x6x16 10", "2x6x16 Sel 4")", "2x6 Sel 10/16");
  CHECK(shown_rows(ten) ==
        "|TER|2x6|16|-|10|6|4|0|60|\n"
        "|TER|2x6|16|Sel|4|4|0|0|100|\n"
        "|||||14|10|4|0|71|\n");
  CHECK(total_of(cut_list(R"("2x6x16 10", "2x6x16 Sel 4")", "2x6 10/16"), "cut") == "10");
  const auto over = cut_list(R"("2x6x16 Sel 4", "2x6x16 5")", "2x6 Sel 9/16\n2x6 No2 3/16");
  CHECK(column_of(over, "cut") == "4 8");
  CHECK(column_of(over, "over") == "0 3");
}

TEST_CASE("boards of a grade that no line takes are on no list; beyond a line of their grade they are over") {
  const auto document =
      cut_list(R"("2x6x16 Sel 4", "2x6x16 Sel 2")", "2x6 Sel 5/16\n2x6 No2 3/16\n1x3 40lf\nless 1x3 10lf");
  CHECK(column_of(document, "cut") == "4 1");
  CHECK(shown_rows(document, 1) ==
        "|TER|1x3|-|-|-|30|7.50|\n"
        "|TER|2x6|16|No2|3|-|48.00|\n"
        "|||||3|30|55.50|\n");
  CHECK(column_of(cut_list(R"("2x6x16 Sel 4", "2x6x16 Sel 2")", "2x6 Sel 9/16"), "over") == "0 3");
  CHECK(column_of(cut_list(R"("2x6x16 Sel 4", "2x6x16 Sel 6")", "2x6 Sel 2/16"), "cut") == "2 0");
}

TEST_CASE("what is cut on all lines of a list and beside them is what was tallied, whatever is taken off") {
  const auto document =
      cut_list(R"("2x6x16 4", "2x6x16 Sel 3", "2x6x16 2")", "2x6 Sel 2/16\n2x6 5/16\nless 2x6 No2 1/16");
  CHECK(column_of(document, "cut") == "4 2 0");
  const auto below = cut_list(R"("2x6x16 4", "2x6x16 2")", "2x6 Sel 2/16\nless 2x6 3/16");
  CHECK(total_of(below, "cut") == "-1");
  CHECK(total_of(below, "short") == "7");
}
