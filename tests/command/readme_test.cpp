// readme_test.cpp -- what README shows is what the program prints: its sheet is posted, and every block below a
// `$ kerfbook` line is held against the run.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

constexpr const char* kIndent = "    ";

/// The indented blocks of the README, their indent taken off; a blank line inside a block is kept.
std::vector<std::string> blocks() {
  std::vector<std::string> found;
  std::istringstream readme(slurp(kRoot / "README.md"));
  std::string block;
  std::string blanks;
  for (std::string line; std::getline(readme, line);) {
    if (line.starts_with(kIndent)) {
      block += (block.empty() ? "" : blanks) + line.substr(4) + "\n";
      blanks.clear();
    } else if (line.empty()) {
      blanks += "\n";
    } else {
      if (!block.empty()) found.push_back(std::move(block));
      block.clear();
      blanks.clear();
    }
  }
  if (!block.empty()) found.push_back(std::move(block));
  return found;
}

std::string shell(const Scratch& scratch, const std::string& command) {
  const std::string line = "cd '" + scratch.path().string() + "' && PATH=\"$PWD:$PATH\" " + command + " 2>&1";
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  for (std::size_t n = 0; (n = ::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  ::pclose(pipe);
  return out;
}

}  // namespace

TEST_CASE("README's first day prints what README shows") {
  const Scratch scratch;
  fs::create_symlink(kProgram, scratch / "kerfbook");
  int held = 0;
  for (const auto& block : blocks()) {
    if (block.starts_with("sheet ")) spill(scratch / "2026-05-05.sheet", block);
    if (!block.starts_with("$ kerfbook ")) continue;
    const auto end = block.find('\n');
    const std::string expected = block.substr(end + 1);
    if (expected.empty()) continue;  // a command shown without its answer
    const std::string got = shell(scratch, block.substr(2, end - 2));
    CHECK_MESSAGE(got.starts_with(expected), got << "--- README shows\n" << expected);
    ++held;
  }
  CHECK(held == 3);  // new, post, report day
}
