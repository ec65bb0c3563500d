// named_test.cpp -- nothing untested stands: every text the program says, every kind of line, every key of a mill file, every
// report and every exit code is named by some test. (Commands and their options: tests/command/manual_test.cpp.) What no
// test names yet stands in unnamed.txt, and that list can only get shorter.
#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "rules/literals.h"
#include "sheet/kinds.h"

namespace fs = std::filesystem;

namespace {

using kerfbook::rules::in_one_line;
using kerfbook::rules::literals;
using kerfbook::rules::said_in;
using kerfbook::rules::slurp;

const fs::path kRoot = KERFBOOK_ROOT;

/// Rooms whose every text must be named. What SQL says to the store is no text for people.
const std::vector<std::string> kRooms{"base", "measure", "scaling", "sheet", "mill",   "tuning", "price",
                                      "book", "render",  "report",  "paper", "office", "command"};

bool is_code(const fs::path& file) {
  return file.extension() == ".cpp" || file.extension() == ".h";
}

/// Everything the tests say or expect, in one line: the texts of their sources, and their sheets, goldens and tables whole.
/// README and VIEWS are among them, because tests hold them to what the program prints. This room says nothing of its own.
const std::string& all_tests() {
  static const std::string all = [] {
    std::string text;
    const auto take = [&](const fs::path& file) {
      const std::string inside = slurp(file);
      text += in_one_line(is_code(file) ? said_in(inside) : inside) + "\n";
    };
    for (const auto& entry : fs::recursive_directory_iterator(kRoot / "tests")) {
      const std::string room = fs::relative(entry.path(), kRoot / "tests").begin()->string();
      constexpr std::uintmax_t kMost = 3'000'000;
      if (room == "rules" || room == "bench" || room == "fuzz" || !entry.is_regular_file()) continue;
      if (entry.file_size() < kMost) take(entry.path());
    }
    take(kRoot / "README.md");
    take(kRoot / "VIEWS.md");
    return text;
  }();
  return all;
}

bool has_word(const std::string& text, const std::string& word) {
  const auto in_word = [&](std::size_t at) {
    return at < text.size() && (text[at] == '_' || std::isalnum(static_cast<unsigned char>(text[at])) != 0);
  };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
    if ((at == 0 || !in_word(at - 1)) && !in_word(at + word.size())) return true;
  return false;
}

bool is_sql(const std::string& text) {
  static const std::vector<std::string> kWords{
      "SELECT",   "INSERT",   "DELETE",  "UPDATE", "CREATE",    "DROP",     "PRAGMA", "JOIN",   "WHERE",
      "ORDER BY", "GROUP BY", "IS NULL", "UNION",  "SAVEPOINT", "ROLLBACK", "COMMIT", "VALUES", "BEGIN"};
  const auto has = [&](const std::string& word) { return has_word(text, word); };
  const auto calls = [&](const char* function) { return text.find(function) != std::string::npos; };
  return std::any_of(kWords.begin(), kWords.end(), has) || calls("coalesce(") || calls("sum(") ||
         calls("sum (");
}

/// The longest part of a text between the places where something is put in; empty if that is no words.
std::string spoken_part(const std::string& text) {
  std::string longest;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t open = std::min(text.find('{', at), text.size());
    std::string part = in_one_line(text.substr(at, open - at));
    if (part.starts_with(' ')) part.erase(0, 1);
    if (part.size() > longest.size()) longest = part;
    at = open == text.size() ? text.size() + 1 : std::min(text.find('}', open), text.size() - 1) + 1;
  }
  constexpr std::size_t kWords = 10;
  return longest.size() < kWords || longest.find(' ') == std::string::npos ? "" : longest;
}

std::set<std::string> find_unnamed() {
  std::set<std::string> found;
  for (const std::string& room : kRooms) {
    for (const auto& entry : fs::directory_iterator(kRoot / "src" / room)) {
      if (!is_code(entry.path())) continue;
      for (const std::string& text : literals(slurp(entry.path()))) {
        const std::string part = is_sql(text) ? "" : spoken_part(text);
        if (!part.empty() && all_tests().find(part) == std::string::npos) found.insert(room + "," + part);
      }
    }
  }
  return found;
}

/// Each text of the rooms that no test names, as `room,text`.
const std::set<std::string>& unnamed() {
  static const std::set<std::string> found = find_unnamed();
  return found;
}

/// Whether a mill file among these texts writes the key or the table: `key = ...`, `[key]` or `[key.`. By hand, because a
/// pattern takes seconds for all tests.
bool is_written(const std::string& tests, const std::string& key) {
  for (std::size_t at = tests.find(key); at != std::string::npos; at = tests.find(key, at + 1)) {
    const char before = at == 0 ? '\n' : tests[at - 1];
    const std::size_t end = at + key.size();
    const char after = end < tests.size() ? tests[end] : '\n';
    if (before == '[' && (after == '.' || after == ']')) return true;
    if (before == '_' || std::isalpha(static_cast<unsigned char>(before)) != 0) continue;
    const std::size_t mark = std::min(tests.find_first_not_of(' ', end), tests.size());
    if (tests.compare(mark, 1, "=") == 0 && tests.find_first_not_of(' ', mark + 1) != std::string::npos)
      return true;
  }
  return false;
}

/// The texts of all files of a test room whose name ends so.
std::string texts_of(const fs::path& folder, const std::string& ending) {
  std::string all;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder))
    if (entry.is_regular_file() && entry.path().string().ends_with(ending)) all += slurp(entry.path()) + "\n";
  return all;
}

}  // namespace

TEST_CASE("every text the program says is named by a test, or stands in the list of those that are not yet") {
  const fs::path file = kRoot / "tests/rules/unnamed.txt";
  const std::set<std::string> found = unnamed();
  std::set<std::string> listed;
  {
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) listed.insert(line);
  }
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "update") {  // only what is named now is taken out
    std::erase_if(listed, [&](const std::string& one) { return found.count(one) == 0; });
    std::ofstream out(file, std::ios::binary);
    for (const std::string& one : listed) out << one << "\n";
  }
  for (const std::string& one : found)
    CHECK_MESSAGE(listed.count(one) == 1, "no test names " << one << "; write one that has these words");
  for (const std::string& one : listed)
    CHECK_MESSAGE(found.count(one) == 1, "unnamed.txt has "
                                             << one
                                             << ", which a test names now; KERFBOOK_GOLDEN=update "
                                                "takes it out");
}

TEST_CASE("the rooms in which every text is named stay so") {
  for (const std::string& one : unnamed())
    for (const char* room : {"sheet,", "measure,", "scaling,", "mill,", "price,"})
      CHECK_MESSAGE(!one.starts_with(room), "no test names " << one);
}

TEST_CASE("every kind of sheet line stands in a good sheet and in a malformed or doubtful one") {
  const std::string good = "\n" + texts_of("demo_data", ".sheet") +
                           slurp(kRoot / "tests/sheet/sample.sheet") +
                           said_in(slurp(kRoot / "tests/sheet/read_test.cpp")) +
                           said_in(slurp(kRoot / "tests/sheet/facts_test.cpp"));
  const std::string bad = "\n" + texts_of("tests/sheet/malformed", ".sheet");
  int kinds = 0;
  for (const kerfbook::sheet::LineKind& kind : kerfbook::sheet::line_kinds()) {
    if (kind.word.empty()) continue;
    ++kinds;
    const std::regex line("\n" + std::string(kind.word) + "( |\t|\n)");
    CHECK_MESSAGE(std::regex_search(good, line), "no good sheet has a line of " << kind.word);
    CHECK_MESSAGE(std::regex_search(bad, line), "no malformed sheet has a line of " << kind.word);
  }
  CHECK(kinds > 15);
}

TEST_CASE("every key and table that a mill file is asked for is written in some test's mill file") {
  static const std::regex kAsked(
      R"re((?:text|words|flag|whole|number|day|table|tables|money|read(?:_list)?<[^;()]*>)\(\s*(?:\*?\w+,\s*)?"(\w+)")re");
  static const std::regex kEither(R"re(either_flag\(\w+, "(\w+)", "(\w+)"\))re");
  const std::string tests = texts_of("demo_data", ".toml") + all_tests();
  std::map<std::string, std::string> keys;  // by key, a file that asks for it
  for (const char* room : {"mill", "price"}) {
    for (const auto& entry : fs::directory_iterator(kRoot / "src" / room)) {
      if (entry.path().extension() != ".cpp") continue;
      const std::string code = slurp(entry.path());
      for (std::sregex_iterator at(code.begin(), code.end(), kAsked), end; at != end; ++at)
        keys.emplace((*at)[1], entry.path().filename().string());
      for (std::sregex_iterator at(code.begin(), code.end(), kEither), end; at != end; ++at) {
        keys.emplace((*at)[1], entry.path().filename().string());
        keys.emplace((*at)[2], entry.path().filename().string());
      }
    }
  }
  CHECK(keys.size() > 90);
  for (const auto& one : keys) {
    CHECK_MESSAGE(is_written(tests, one.first),
                  one.second << " reads " << one.first << ", and no test writes it");
  }
}

TEST_CASE("a key of a mill file is written where it is given something, or is a table") {
  CHECK(is_written("rule = 1", "rule"));
  CHECK(is_written("{rule=\"x\"", "rule"));
  CHECK(is_written("a [rule.more]", "rule"));
  CHECK(is_written("my rules; [rule]", "rule"));
  CHECK_FALSE(is_written("my_rule = 1", "rule"));
  CHECK_FALSE(is_written("rules = 1", "rule"));
  CHECK_FALSE(is_written("rule =  ", "rule"));
  CHECK_FALSE(is_written("a rule", "rule"));
}

TEST_CASE("every report is asked for its figures by a test, beside its golden") {
  const std::string tests = texts_of("tests/report", "_test.cpp") + texts_of("tests/season", ".cpp") +
                            texts_of("tests/command", "_test.cpp");
  int reports = 0;
  for (const auto& entry : fs::directory_iterator(kRoot / "reports")) {
    if (entry.path().extension() != ".sql") continue;
    ++reports;
    const std::string name = entry.path().stem().string();
    const bool alone = tests.find("\"" + name + "\"") != std::string::npos;
    const bool asked = tests.find("report " + name) != std::string::npos;
    CHECK_MESSAGE((alone || asked), "no test asks report " << name << " for its figures");
  }
  CHECK(reports > 20);
}

TEST_CASE("every exit code is expected by a test of the commands") {
  const std::string errors = slurp(kRoot / "src/base/error.h");
  const std::size_t from = errors.find("enum class Exit");
  const std::string list = errors.substr(from, errors.find("};", from) - from);
  const std::string tests = texts_of("tests/command", "_test.cpp");
  static const std::regex kCode(R"(\n  (\w+) = (\d+),)");
  int codes = 0;
  for (std::sregex_iterator at(list.begin(), list.end(), kCode), end; at != end; ++at) {
    ++codes;
    const std::regex expected("code\\)? == (" + (*at)[2].str() + "\\b|.*Exit::" + (*at)[1].str() + "\\b)");
    CHECK_MESSAGE(std::regex_search(tests, expected), (*at)[1].str());
  }
  CHECK(codes == 4);
}

TEST_CASE("what is spoken of a text is its longest part between the places filled in, and SQL is no text") {
  CHECK(spoken_part("a {} longer part of it {}") == "longer part of it");
  CHECK(spoken_part("{}") == "");
  CHECK(spoken_part("single-word-without-blank") == "");
  CHECK(is_sql("SELECT 1"));
  CHECK_FALSE(is_sql("select a size"));
  CHECK_FALSE(is_sql("SELECTED"));
  CHECK(is_sql("0 + sum (x)"));
  CHECK(literals("f(R\"(one \"two\")\" \"three\", \"a\\nb\") // \"no\"") ==
        std::vector<std::string>{"one \"two\"three", "a\nb"});
}
