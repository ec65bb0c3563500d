// limits_test.cpp -- a text that is no day's record costs little and is told so in a sentence.
#include <doctest/doctest.h>

#include <string>

#include "sheet/read.h"

using namespace kerfbook;

namespace {

sheet::ReadSheet read_lines(const std::string& line, int many) {
  std::string text = "sheet 2026-05-05\n";
  for (int i = 0; i < many; ++i) text += line + "\n";
  return sheet::read(text);
}

}  // namespace

TEST_CASE("a line past the limit is told once with its length, and the lines after it are read") {
  const auto got = sheet::read("sheet 2026-05-05\nnote " + std::string(3000, ' ') + "x\njob TER\n");
  REQUIRE(got.found.size() == 1);
  CHECK(got.found[0].place == Place{2, 0});
  CHECK(got.found[0].what == "a line of 3006 bytes, where 2000 is the most");
  CHECK(got.found[0].instead == "write it on several lines");
  CHECK(got.sheet.lines.size() == 1);
}

TEST_CASE("a line of 2000 bytes is read") {
  CHECK(sheet::read("sheet 2026-05-05\nnote " + std::string(1995, 'x') + "\n").found.empty());
}

TEST_CASE("past two hundred errors the rest is not read, and the last one says so") {
  const auto got = read_lines("zzzz 1", 19'000);
  CHECK(got.found.size() == sheet::kMostErrors + 1);
  CHECK(got.found.back().place == Place{202, 0});
  CHECK(got.found.back().what == "too many errors; from here on the sheet was not read");
  CHECK(got.found.back().instead == "mend the first ones and check it again");
}

TEST_CASE("warnings do not end the reading of a sheet") {
  const auto got = read_lines("crew Quill 8.30", 300);  // 8 hours and 30 hundredths: a warning each
  CHECK(got.found.size() == 300);
  CHECK(!has_error(got.found));
}

TEST_CASE("a text longer than a day's record can be is not read at all") {
  const auto got = sheet::read(std::string(sheet::kSheetLimit.most + 1, '\n'));
  REQUIRE(got.found.size() == 1);
  CHECK(got.found[0].what == "longer than a day sheet may be, 1 MiB");
}

TEST_CASE("a sheet has at most so many lines, blank ones among them") {
  const auto got = sheet::read(std::string(sheet::kMostLines + 1, '\n'));
  REQUIRE(got.found.size() == 1);
  CHECK(got.found[0].what == "more lines than a day sheet may have, 20,000");
  CHECK(sheet::read("sheet 2026-05-05" + std::string(sheet::kMostLines, '\n')).found.empty());
}

TEST_CASE("marks that turn the writing round are told like any character that cannot be printed") {
  const auto got = sheet::read(
      "sheet 2026-05-05\nsite a\xE2\x80\xAE"
      "b\nnote \xE2\x81\xA6x\n");
  REQUIRE(got.found.size() == 2);
  CHECK(got.found[0].place == Place{2, 7});
  CHECK(got.found[0].what == "a character that cannot be printed");
  CHECK(got.found[1].place == Place{3, 6});
}
