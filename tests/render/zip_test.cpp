// zip_test.cpp -- the reader of workbooks' parts refuses what is damaged, so that a workbook it has read is whole.
#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

const std::string& workbook() {
  static const std::string made = render_xlsx(production_week());
  return made;
}

}  // namespace

TEST_CASE("every part of a workbook is read whole") {
  const auto parts = zip_parts(workbook());
  CHECK(parts.size() > 5);
  CHECK(part_of(parts, "xl/workbook.xml").ends_with("</workbook>"));
  CHECK(part_of(workbook(), "no/such.part") == "");
}

TEST_CASE("a part stored as it is, by hand, is read") {
  using namespace std::string_literals;
  const std::string told =
      "\0\0\0\0\0\0\0\0"s + "\x86\xa6\x10\x36" + "\5\0\0\0\5\0\0\0\1\0\0\0"s;  // CRC-32 of hello
  const std::string part = "PK\3\4\x14\0"s + told + "ahello";
  const std::string entry = "PK\1\2\x14\0\x14\0"s + told + std::string(14, '\0') + "a";
  const std::string end = "PK\5\6\0\0\0\0\1\0\1\0\x2f\0\0\0\x24\0\0\0\0\0"s;
  REQUIRE(part.size() == 0x24);
  REQUIRE(entry.size() == 0x2f);
  CHECK(part_of(part + entry + end, "a") == "hello");
  CHECK_THROWS_AS(zip_parts(part.substr(0, 35) + "a" + entry + end), std::runtime_error);  // hella
}

TEST_CASE("a workbook cut short, or with one byte of a part, a head or the directory changed, is refused") {
  for (const std::size_t left :
       {std::size_t{0}, std::size_t{21}, workbook().size() / 2, workbook().size() - 1})
    CHECK_THROWS_AS(zip_parts(workbook().substr(0, left)), std::runtime_error);
  std::size_t tried = 0;
  const std::size_t directory = workbook().find("PK\1\2");
  for (const std::size_t at :
       {std::size_t{14}, std::size_t{18}, std::size_t{22}, std::size_t{30}, std::size_t{60}, directory / 2,
        directory + 16, directory + 46, workbook().size() - 12}) {
    std::string damaged = workbook();
    damaged[at] = static_cast<char>(damaged[at] ^ 1);
    CAPTURE(at);
    CHECK_THROWS_AS(zip_parts(damaged), std::runtime_error);
    ++tried;
  }
  CHECK(tried == 9);
}

}  // namespace kerfbook::render
