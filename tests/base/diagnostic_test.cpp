// diagnostic_test.cpp -- what was found in a text is shown with its place, the line and a caret.
#include "base/diagnostic.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace {

using namespace kerfbook;

TEST_CASE("a diagnostic shows file, line, column, the line itself and a caret under the trouble") {
  const Diagnostic found{Severity::error, {2, 5}, "'24': pieces without a length", "write 24/16"};
  CHECK(show(found, "tue.sheet", "job TER\n2x6 24\n") ==
        "tue.sheet:2:5: error: '24': pieces without a length; write 24/16\n"
        "    2x6 24\n"
        "        ^\n");
}

TEST_CASE("the caret stands under the right character after tabs and letters of several bytes") {
  const Diagnostic found{Severity::warning, {1, 4}, "new", ""};
  CHECK(show(found, "a", "½\t×24") == "a:1:4: warning: new\n    ½ ×24\n       ^\n");
}

TEST_CASE("the caret stands under the right character after wide ones") {
  const Diagnostic found{Severity::warning, {1, 3}, "new", ""};
  CHECK(show(found, "a", "木材x") == "a:1:3: warning: new\n    木材x\n        ^\n");
}

TEST_CASE("a diagnostic of a whole line has no caret, one of the whole text no line") {
  CHECK(show({Severity::note, {1, 0}, "odd", ""}, "a", "2x6") == "a:1: note: odd\n    2x6\n");
  CHECK(show({Severity::error, {0, 0}, "empty", ""}, "a", "") == "a: error: empty\n");
  CHECK(show({Severity::error, {9, 1}, "past the end", ""}, "a", "2x6") == "a:9:1: error: past the end\n");
}

TEST_CASE("diagnostics stand in the order of the text, the gravest first at one place") {
  std::vector<Diagnostic> found{{Severity::warning, {3, 1}, "c", ""},
                                {Severity::note, {1, 2}, "b2", ""},
                                {Severity::error, {1, 2}, "b1", ""},
                                {Severity::error, {1, 1}, "a", ""}};
  sort_by_place(found);
  std::string order;
  for (const auto& one : found) order += one.what;
  CHECK(order == "ab1b2c");
  CHECK(has_error(found));
  CHECK_FALSE(has_error({{Severity::warning, {1, 1}, "w", ""}, {Severity::note, {1, 1}, "n", ""}}));
  CHECK(show_all({{Severity::note, {2, 0}, "y", ""}, {Severity::note, {1, 0}, "x", ""}}, "f", "1\n2") ==
        "f:1: note: x\n    1\nf:2: note: y\n    2\n");
}

TEST_CASE("of very many findings a hundred are shown, errors first, and how many more there are") {
  std::vector<Diagnostic> found;
  std::string text;
  for (int line = 1; line <= 300; ++line) {
    found.push_back({line <= 150 ? Severity::warning : Severity::error, {line, 0}, "odd", ""});
    text += "x\n";
  }
  const std::string shown = show_all(found, "a", text);
  CHECK(shown.starts_with("a:151: error: odd\n"));
  CHECK(shown.find("warning") == std::string::npos);
  CHECK(shown.ends_with("a:250: error: odd\n    x\na: and 200 more; mend these first\n"));
}

TEST_CASE("a line too long to be read on a screen is not repeated under what is wrong with it") {
  CHECK(show({Severity::error, {1, 1}, "long", ""}, "a", std::string(5000, 'x')) == "a:1:1: error: long\n");
}

}  // namespace
