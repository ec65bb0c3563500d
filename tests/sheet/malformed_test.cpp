// malformed_test.cpp -- a corpus of mistakes: each malformed/NAME.sheet gives exactly what malformed/NAME.expected
// says, line and column and what would be right. To look at what has changed, and only then to accept it, run the
// test program with KERFBOOK_GOLDEN=update in the environment and read the difference.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "sheet/read.h"
#include "sheet/support.h"

using namespace kerfbook;
namespace fs = std::filesystem;

namespace {

const fs::path kCorpus = fs::path(KERFBOOK_ROOT) / "tests/sheet/malformed";

std::vector<fs::path> files(const char* suffix) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(kCorpus)) {
    if (entry.path().extension() == suffix) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::string in_tree(const fs::path& file) {
  return "tests/sheet/malformed/" + file.filename().string();
}

}  // namespace

TEST_CASE("every kind of mistake is told with its line, its column and what would be right") {
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  const bool accept = mode != nullptr && std::string(mode) == "update";
  for (const fs::path& file : files(".sheet")) {
    CAPTURE(file.filename().string());
    const std::string text = read_file(in_tree(file));
    const auto got = sheet::read(text);
    const std::string shown = show_all(got.found, file.filename().string(), text);
    fs::path expected = file;
    expected.replace_extension(".expected");
    if (accept) std::ofstream(expected, std::ios::binary) << shown;
    CHECK(has_error(got.found));
    CHECK(shown == read_file(in_tree(expected)));
  }
}

TEST_CASE("the corpus of mistakes holds over a hundred kinds, each with its expected answer") {
  CHECK(files(".sheet").size() >= 100);
  CHECK(files(".sheet").size() == files(".expected").size());
}

TEST_CASE("every complaint but one about the whole text says a line and a column") {
  for (const fs::path& file : files(".sheet")) {
    CAPTURE(file.filename().string());
    const auto got = sheet::read(read_file(in_tree(file)));
    for (const Diagnostic& one : got.found) {
      const bool whole = one.place == Place{};
      CHECK((whole || (one.place.line > 0 && one.place.column > 0)));
      CHECK_FALSE(one.what.empty());
      CHECK_FALSE(one.instead.empty());
      if (whole) CHECK(got.found.size() == 1);
    }
  }
}
