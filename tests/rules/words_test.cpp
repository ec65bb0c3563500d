// words_test.cpp -- wordings that were found wanting, and what is written in their place: none of them comes back, in what
// the program says, in the reports, in the schema's remarks, in README and VIEWS, or in what whole runs print.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "rules/literals.h"

namespace fs = std::filesystem;

namespace {

using kerfbook::rules::said_in;
using kerfbook::rules::slurp;

const fs::path kRoot = KERFBOOK_ROOT;

struct Banned {
  const char* words;
  const char* instead;
};

const std::vector<Banned> kBanned{
    {"no line begins so", "not a kind of line"},
    {"is called so", "not a kind of work"},
    {"is no kind of", "not a kind of"},
    {"of nothing;", "of zero"},
    {"a length of nothing", "a length of zero"},
    {"below nothing", "a minus"},
    {"never nothing", "not zero"},
    {"the mill frees", "cuts in one pass"},
    {"thicker than the mill", "larger"},
    {"logs get thicker", "larger"},
    {"The four numbers", "The day in figures"},
    {"whole days' and stay out", "kept by day; blank when filtered by job"},
    {"By hand", "By person"},
    {"Whose lumber", "Lumber by owner"},
    {"Lumber made", "Lumber sawn"},
    {"What the jobs bring", "Earnings per hour, by job"},
    {"Lumber a day", "per day"},
    {"Lumber a week", "per week"},
    {"Lumber a month", "per month"},
    {"a sawing hour", "per sawing hour"},
    {"Board feet an hour", "per hour"},
    {"Engine meter", "Hour meter"},
    {"Last touched\"", "Last touched up"},
    {"Lumber since touched\"", "Lumber since touched up"},
    {"the book is whole", "no damage found"},
    {"chain unbroken", "no damage found"},
    {"'run' line", "'sawing' line"},
    {"'run' without", "'sawing' without"},
    {"write run ", "write sawing"},
    {"-- filters:", "-- takes:"},
    {"-- column:", "-- shows:"},
    {"-- chart:", "-- picture:"},
    {"Log content", "Log volume"},
    {"asks more conditions", "more conditions match"},
    {"comes unasked", "comes by itself"},
    {"unasked = ", "automatic = "},
    {"To your credit in all", "Credit on account"},
    {"You owe in all", "Balance due"},
    {"Not issued: worked out", "Draft; changes with the day sheets"},
    {"Money given back", "Refund"},
    {"exact to the total, which", "only the total is rounded"},
    {" 1 teeth", "1 tooth"},
    {" 1 logs", "1 log"},
    {" 1 pieces", "1 piece"},
    {" 1 entries", "1 entry"},
    {" 1 tally lines", "1 tally line"},
    {" 1 days after", "1 day after"},
    {"Positionals", "a heading of our own"},
    {"REQUIRED", "a word of our own"},
    {"SUBCOMMAND", "COMMAND"},
    {"Print this help", "show this page"},
    {"is required", "is missing"},
    {"arguments were not expected", "one word too many"},
};

/// Every file that people read what it says: by its name, the text that is shown.
std::vector<std::pair<std::string, std::string>> all_texts() {
  std::vector<std::pair<std::string, std::string>> found;
  const auto take = [&](const fs::path& file) {
    const std::string text = slurp(file);
    const bool code = file.extension() == ".cpp" || file.extension() == ".h";
    found.emplace_back(fs::relative(file, kRoot).string(), code ? said_in(text) : text);
  };
  for (const char* folder : {"src", "reports", "schema", "demo_data", "tests/golden", "tests/report/golden",
                             "tests/sheet/malformed"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
      const std::string ending = entry.path().extension().string();
      const bool shown = ending != ".html" && ending != ".cells";  // as their .txt and .words say
      if (entry.is_regular_file() && shown) take(entry.path());
    }
  }
  take(kRoot / "README.md");
  take(kRoot / "VIEWS.md");
  return found;
}

}  // namespace

TEST_CASE("no wording that was found wanting is shown anywhere") {
  const auto texts = all_texts();
  REQUIRE(texts.size() > 400);
  for (const auto& one_text : texts) {
    const std::string& file = one_text.first;
    const std::string& text = one_text.second;
    for (const Banned& one : kBanned) {
      const auto at = text.find(one.words);
      const std::size_t from = text.rfind('\n', at) == std::string::npos ? 0 : text.rfind('\n', at) + 1;
      CHECK_MESSAGE(at == std::string::npos, file << ": '" << one.words << "'; say: " << one.instead << "\n"
                                                  << text.substr(from, text.find('\n', at) - from));
    }
  }
}

TEST_CASE("what a program says is found in its texts and not in its remarks") {
  CHECK(said_in("f(\"one \"\n  \"two\"); // \"three\"\nchar c = '\"'; g(\"a\\\"b\");") == "one two\na\"b\n");
}
