// readme_test.cpp -- README as a reader follows it: its sheet is posted, every command of it runs as it stands there, and
// what is shown below a command is what it prints. The page of the day sheet in it is made by `kerfbook help sheet`.
#include <doctest/doctest.h>

#include <sstream>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

constexpr const char* kIndent = "    ";
constexpr const char* kBegin = "by the tests of commands, KERFBOOK_GOLDEN=update -->\n";
constexpr const char* kEnd = "<!-- end of sheet -->";
const fs::path kReadme = kRoot / "README.md";

/// The indented blocks of the README, their indent taken off; a blank line inside a block is kept.
std::vector<std::string> blocks() {
  std::vector<std::string> found;
  std::istringstream readme(slurp(kReadme));
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

struct Shown {
  std::string command;  ///< without its `$ `
  std::string answer;   ///< as far as README shows it; empty = not at all
};

/// What is not a command and not below one is a text for a file: a sheet, a report.
struct Block {
  std::string text;
  std::vector<Shown> commands;
};

Block parted(const std::string& block) {
  Block out;
  std::istringstream lines(block);
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("$ "))
      out.commands.push_back({line.substr(2), ""});
    else
      (out.commands.empty() ? out.text : out.commands.back().answer) += line + "\n";
  }
  for (Shown& shown : out.commands) {  // a blank line between two commands is no answer
    while (shown.answer.starts_with("\n")) shown.answer.erase(0, 1);
    while (shown.answer.ends_with("\n\n")) shown.answer.pop_back();
  }
  while (out.text.ends_with("\n\n")) out.text.pop_back();
  return out;
}

/// The reader's shell: what was exported stays.
class Shell {
 public:
  explicit Shell(const Scratch& scratch) : scratch_(scratch) {
    fs::create_directories(scratch / "bin");
    spill(scratch / "bin/kerfbook", "#!/bin/sh\nexec '" + kProgram + "' --today 2026-05-08 \"$@\"\n");
    fs::permissions(scratch / "bin/kerfbook", fs::perms::owner_all);
    fs::copy(kRoot / "demo_data", scratch / "demo_data", fs::copy_options::recursive);
    fs::create_directories(scratch / "mine");
  }

  /// Output and errors together; `code` is the exit code.
  std::string run(const std::string& command, int& code) {
    if (command.starts_with("export ")) exported_ += command + "; ";
    const std::string line = "cd '" + scratch_.path().string() + "' && export PATH=\"$PWD/bin:$PATH\"; " +
                             exported_ + "( " + command + "\n) 2>&1 </dev/null";
    FILE* pipe = ::popen(line.c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::string out;
    char buffer[4096];
    for (std::size_t n = 0; (n = ::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
    const int status = ::pclose(pipe);
    code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
    return out;
  }

 private:
  const Scratch& scratch_;
  std::string exported_;
};

/// What the reader does with an editor before a correction: the bundle's 5 pieces for 4.
void correct(const fs::path& sheet) {
  std::string text = slurp(sheet);
  const auto at = text.find("2x8x16  4");
  REQUIRE(at != std::string::npos);
  spill(sheet, text.replace(at, 9, "2x8x16  5"));
}

}  // namespace

TEST_CASE("every command of README runs as it stands there, and prints what README shows") {
  const Scratch scratch;
  Shell shell(scratch);
  int ran = 0;
  int held = 0;
  for (const std::string& text : blocks()) {
    const Block block = parted(text);
    if (block.text.starts_with("sheet ")) spill(scratch / "2026-05-05.sheet", block.text);
    if (block.text.starts_with("-- report:  wide")) spill(scratch / "mine/wide.sql", block.text);
    for (const Shown& shown : block.commands) {
      if (shown.command.find("--why") != std::string::npos) correct(scratch / "2026-05-05.sheet");
      int code = 0;
      const std::string got = shell.run(shown.command, code);
      CHECK_MESSAGE(code == 0, shown.command << "\n" << got);
      ++ran;
      if (shown.answer.empty()) continue;
      CHECK_MESSAGE(got.starts_with(shown.answer), got << "--- README shows\n" << shown.answer);
      ++held;
    }
  }
  CHECK(ran >= 25);
  CHECK(held >= 3);  // new, post, report day
}

TEST_CASE("README has the page of the day sheet as help prints it") {
  std::string readme = slurp(kReadme);
  const auto begin = readme.find(kBegin) + std::string(kBegin).size();
  const auto end = readme.find(kEnd);
  REQUIRE(end != std::string::npos);
  const Scratch scratch;
  const std::string made = "\n```text\n" + run({"help", "sheet"}, scratch.path()).out + "```\n\n";
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "update")
    spill(kReadme, readme.replace(begin, end - begin, made));
  else
    CHECK(readme.substr(begin, end - begin) == made);
}
