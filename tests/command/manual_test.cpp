// manual_test.cpp -- the manual page and the completion of the shell, both made from the forms of the commands, and that
// every command and option is asked for by some test.
#include <doctest/doctest.h>

#include <regex>
#include <sstream>

#include "base/text.h"
#include "command/command.h"
#include "command/program.h"

using namespace kerfbook;
using namespace kerfbook::tests;
using command::commands;
using command::Form;
using command::Row;

namespace {

std::string shell(const std::string& script) {
  FILE* pipe =
      ::popen(("bash -c '" + std::regex_replace(script, std::regex("'"), "'\\''") + "' 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  for (std::size_t n = 0; (n = ::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  ::pclose(pipe);
  return out;
}

std::string page(const std::string& topic, const Scratch& scratch) {
  const Ran ran = run({"help", topic}, scratch.path());
  REQUIRE(ran.code == 0);
  CHECK(ran.err.empty());
  return ran.out;
}

/// What bash offers for the last of these words, one a line.
std::string offered(const Scratch& scratch, const std::vector<std::string>& words) {
  std::string typed;
  for (const auto& word : words) typed += " \"" + word + "\"";
  return shell("cd '" + scratch.path().string() + "'; source ./kerfbook.bash; COMP_WORDS=(" + typed +
               "); COMP_CWORD=" + std::to_string(words.size() - 1) +
               "; _kerfbook; printf \"%s\\n\" \"${COMPREPLY[@]}\"");
}

std::vector<std::string> options_of(const Form& form) {
  std::vector<std::string> options;
  for (const Row& row : form.rows) {
    if (!is_option(row)) continue;
    for (const auto& name : names_of(row)) options.push_back(name);
  }
  return options;
}

/// The word stands there by itself, not as a part of another.
bool has_word(const std::string& text, const std::string& word) {
  const auto part = [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_';
  };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !part(text[at - 1])) && (end == text.size() || !part(text[end]))) return true;
  }
  return false;
}

/// Each command that some test gives: lines of the golden runs, and statements of the test files.
std::vector<std::string> all_that_is_typed() {
  std::vector<std::string> typed;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "tests")) {
    const bool golden = entry.path().extension() == ".golden";
    if (!golden && entry.path().extension() != ".cpp") continue;
    std::istringstream text(slurp(entry.path()));
    for (std::string one; std::getline(text, one, golden ? '\n' : ';');) {
      if (!golden || one.starts_with("$ ")) typed.push_back(one);
    }
  }
  return typed;
}

}  // namespace

TEST_CASE("the manual page names every command and option, and the typesetter finds nothing to say") {
  const Scratch scratch;
  const std::string manual = page("man", scratch);
  CHECK(manual.starts_with(".TH KERFBOOK 1"));
  for (const auto& command : commands()) {
    CHECK(manual.find("\n.SS kerfbook " + std::regex_replace(std::string(command.name), std::regex("-"),
                                                             "\\-")) != std::string::npos);
    for (const auto& option : options_of(command.form()))
      CHECK_MESSAGE(has_word(manual, std::regex_replace(option, std::regex("-"), "\\-")), option);
  }
  for (const auto line : split_lines(manual)) {
    const bool asks = line.starts_with(".") &&
                      !std::regex_match(std::string(line), std::regex(R"(\.(TH|SH|SS|TP|PP|B|nf|fi)\b.*)"));
    CHECK_MESSAGE(!asks, line);
    CHECK_FALSE(line.starts_with("'"));
  }
  spill(scratch / "kerfbook.1", manual);
  const std::string file = "'" + (scratch / "kerfbook.1").string() + "'";
  if (!shell("command -v groff").empty())
    CHECK(shell("groff -Kutf8 -Tutf8 -man -wall -rLL=200n " + file + " 2>&1 >/dev/null").empty());
}

TEST_CASE("bash finishes commands, options, what an option can be, and files") {
  const Scratch scratch;
  spill(scratch / "kerfbook.bash", page("completion", scratch));
  spill(scratch / "2026-05-05.sheet", "sheet 2026-05-05\n");
  CHECK(offered(scratch, {"kerfbook", "re"}) == "rebuild\nrestore\nreport\n");
  CHECK(offered(scratch, {"kerfbook", "-b", "mill.book", "wr"}) == "write-off\n");
  CHECK(offered(scratch, {"kerfbook", "report", "production-m"}) == "production-month\n");
  CHECK(offered(scratch, {"kerfbook", "report", "day", "--as", "h"}) == "html\n");
  CHECK(offered(scratch, {"kerfbook", "report", "day", "--as", "=", "x"}) == "xlsx\n");
  CHECK(offered(scratch, {"kerfbook", "paper", "sta"}) == "statement\n");
  CHECK(offered(scratch, {"kerfbook", "paper", "statement", "sta"}) == "\n");
  CHECK(offered(scratch, {"kerfbook", "export", "tax"}) == "taxes\n");
  CHECK(offered(scratch, {"kerfbook", "help", "she"}) == "sheet\n");
  CHECK(offered(scratch, {"kerfbook", "post", "2026"}) == "2026-05-05.sheet\n");
  CHECK(offered(scratch, {"kerfbook", "report", "-o", "2026"}) == "2026-05-05.sheet\n");
  CHECK(offered(scratch, {"kerfbook", "pay", "5", "--invoice", ""}) == "\n");
  for (const auto& command : commands()) {
    const std::string told = offered(scratch, {"kerfbook", std::string(command.name), "-"});
    const auto all = split_lines(told);
    for (const auto& option : options_of(command.form())) {
      CAPTURE(command.name);
      CHECK_MESSAGE(std::count(all.begin(), all.end(), option) == 1, option);
    }
  }
}

TEST_CASE("every command, and every option of every command, is asked for by a test") {
  const auto typed = all_that_is_typed();
  for (const auto& command : commands()) {
    const std::string name(command.name);
    std::vector<std::string> of_it;
    std::copy_if(typed.begin(), typed.end(), std::back_inserter(of_it), [&](const std::string& one) {
      return has_word(one, name) &&
             (one.starts_with("$ ") || one.find('"' + name + '"') != std::string::npos ||
              one.find(' ' + name + ' ') != std::string::npos);
    });
    CHECK_MESSAGE(!of_it.empty(), name);
    for (const Row& row : command.form().rows) {
      if (!is_option(row)) continue;
      const auto names = names_of(row);
      const bool asked = std::any_of(of_it.begin(), of_it.end(), [&](const std::string& one) {
        return std::any_of(names.begin(), names.end(), [&](const auto& word) { return has_word(one, word); });
      });
      CHECK_MESSAGE(asked, name << " " << row.written << " is asked for by no test");
    }
  }
}
