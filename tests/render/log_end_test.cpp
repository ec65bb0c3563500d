// log_end_test.cpp -- boards on a log's end as a drawing that can be read, printed in grey and read out.
#include "render/log_end.h"

#include <doctest/doctest.h>

#include <string>

using namespace kerfbook::render;

namespace {

LogEnd some_end() {
  LogEnd end;
  end.title = "12 x 16 ft & \"small\"";
  end.small_end = 12;
  end.large_end = 14;
  end.boards = {{-4, -2, 8, 2, "2x8", "2x8, 16 ft", false},
                {-4, 0.25, 8, 2, "2x8", "2x8, 16 ft", false},
                {-6, -2, 1, 4, "1x4", "1x4, 12 ft", true}};
  return end;
}
std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

}  // namespace

TEST_CASE("every board is drawn where it lies, to the scale of the larger end") {
  const std::string svg = log_end_svg(some_end());
  CHECK(svg.find("r=\"171.43\"") != std::string::npos);  // 12 of 14 parts of 200
  CHECK(svg.find("r=\"200.00\"") != std::string::npos);
  CHECK(svg.find("x=\"91.71\" y=\"148.86\" width=\"228.57\" height=\"57.14\"") != std::string::npos);
  CHECK(count(svg, "<rect class=\"board\"") == 2);
  CHECK(count(svg, "<rect class=\"short-board\"") == 1);
}

TEST_CASE(
    "who cannot see it is told what boards there are, alike ones together; what is typed is no markup") {
  const std::string svg = log_end_svg(some_end());
  CHECK(
      svg.find(
          "<title>12 x 16 ft &amp; &quot;small&quot;</title><desc>2 of 2x8, 16 ft; 1 of 1x4, 12 ft</desc>") !=
      std::string::npos);
  CHECK(svg.find("role=\"img\"") != std::string::npos);
  CHECK(svg.find("script") == std::string::npos);
}

TEST_CASE(
    "it can be read without its colours: a shorter board has a broken line, an upright one's words are "
    "turned") {
  const std::string svg = log_end_svg(some_end());
  CHECK(count(svg, "stroke-dasharray=\"5 3\"") == 1);
  CHECK(svg.find("broken outline: shorter board, out of the taper") != std::string::npos);
  CHECK(count(svg, "rotate(-90") == 1);
  CHECK(count(svg, "var(--ink,#222)") >= 2);  // and it stands alone, without a page
}

TEST_CASE(
    "a cylinder has one circle, whole boards no word on short ones; words that could not be read are left "
    "out") {
  LogEnd end = some_end();
  end.large_end = 12;
  end.boards = {{0, 0, 0.1, 0.1, "2x8", "2x8, 16 ft", false}};
  const std::string svg = log_end_svg(end);
  CHECK(count(svg, "<circle") == 1);
  CHECK(svg.find("broken") == std::string::npos);
  CHECK(count(svg, "class=\"on-board\"") == 0);
  end.boards.clear();
  CHECK(log_end_svg(end).find("<desc>no boards</desc>") != std::string::npos);
  CHECK(log_end_svg({}).empty());
}
