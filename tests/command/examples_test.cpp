// examples_test.cpp -- the example that `report --help` shows of every report runs as it stands.
#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "base/text.h"
#include "command/program.h"

using namespace kerfbook;
using namespace kerfbook::tests;

namespace {

std::string shell(const fs::path& folder, const std::string& command) {
  const std::string line = "cd '" + folder.string() + "' && " + command + " 2>&1; echo \"exit $?\"";
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  for (std::size_t n = 0; (n = ::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  ::pclose(pipe);
  return out;
}

}  // namespace

TEST_CASE("help has an example of every report, and each runs") {
  const Scratch scratch;
  const std::string run = "'" + kProgram + "' --today 2026-05-08 -b mill.book ";
  const std::string demo = "'" + (kRoot / "demo_data").string() + "'";
  REQUIRE(shell(scratch.path(), run + "new mill.book --mill " + demo + "/hargan.toml").ends_with("exit 0\n"));
  REQUIRE(shell(scratch.path(), run + "post " + demo + "/*.sheet").ends_with("exit 0\n"));
  std::set<std::string> shown;
  std::istringstream help(shell(scratch.path(), run + "report --help"));
  for (std::string line; std::getline(help, line);) {
    const std::string program = "  kerfbook ";
    if (!line.starts_with(program + "report ")) continue;
    const std::string got = shell(scratch.path(), run + line.substr(program.size()));
    CHECK_MESSAGE(got.ends_with("exit 0\n"), line << "\n" << got);
    shown.insert(std::string(split_words(line).at(2)));
  }
  std::istringstream list(shell(scratch.path(), run + "report"));
  for (std::string line; std::getline(list, line);) {
    if (line.starts_with("exit ")) continue;
    CHECK_MESSAGE(shown.contains(std::string(split_words(line).at(0))), line);
  }
}
