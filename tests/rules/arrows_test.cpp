// arrows_test.cpp -- the rooms' order (DEVELOPERS.md): a folder includes only from folders above it.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "slurp.h"

namespace fs = std::filesystem;

namespace {

const fs::path kRoot = KERFBOOK_ROOT;

/// What each room may include, besides itself.
const std::map<std::string, std::set<std::string>> kMay{
    {"base", {}},
    {"measure", {"base"}},
    {"scaling", {"base", "measure"}},
    {"sheet", {"base", "measure", "scaling"}},
    {"mill", {"base", "measure", "scaling", "sheet"}},
    {"tuning", {"base", "measure", "scaling", "sheet", "mill"}},
    {"price", {"base", "measure", "scaling", "sheet", "mill"}},
    {"book", {"base", "measure", "scaling", "sheet", "mill"}},
    {"render", {"base", "measure"}},
    {"report", {"base", "measure", "scaling", "sheet", "mill", "tuning", "book", "render"}},
    {"paper", {"base", "measure", "scaling", "sheet", "mill", "price", "book", "render"}},
    {"office", {"base", "measure", "scaling", "sheet", "mill", "price", "book", "render", "paper"}},
    {"command",
     {"base", "measure", "scaling", "sheet", "mill", "tuning", "price", "book", "render", "report", "paper",
      "office"}},
};
const std::set<std::string> kWithoutStore{"base", "measure", "scaling", "sheet",
                                          "mill", "tuning",  "price",   "render"};

std::vector<std::string> includes_of(const fs::path& file) {
  static const std::regex kInclude(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  std::vector<std::string> found;
  std::ifstream stream(file);
  for (std::string line; std::getline(stream, line);) {
    std::smatch match;
    if (std::regex_search(line, match, kInclude)) found.push_back(match[1]);
  }
  return found;
}

template <class Visit>
void each_source(Visit visit) {
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "src")) {
    const auto suffix = entry.path().extension();
    if (suffix != ".cpp" && suffix != ".h") continue;
    visit(entry.path(), entry.path().parent_path().filename().string());
  }
}

}  // namespace

TEST_CASE("a room includes only rooms that stand above it") {
  int seen = 0;
  each_source([&](const fs::path& file, const std::string& room) {
    if (room == "src") return;
    REQUIRE_MESSAGE(kMay.contains(room), room);
    for (const auto& name : includes_of(file)) {
      const std::string first = name.substr(0, name.find('/'));
      if (!kMay.contains(first) || name.find('/') == std::string::npos || first == room) continue;
      ++seen;
      CHECK_MESSAGE(kMay.at(room).contains(first), file.string() << " includes " << name);
    }
  });
  CHECK(seen > 50);
}

TEST_CASE("the arithmetic, the sheet and the renderers know no store") {
  each_source([&](const fs::path& file, const std::string& room) {
    if (!kWithoutStore.contains(room)) return;
    for (const auto& name : includes_of(file)) {
      CHECK_MESSAGE(name.find("SQLite") == std::string::npos, file.string() << " includes " << name);
      CHECK_MESSAGE(name.find("sqlite") == std::string::npos, file.string() << " includes " << name);
    }
  });
}

TEST_CASE("only main knows the clock and the environment") {
  static const std::regex kWorld(R"(\b(getenv|localtime|gmtime|system_clock|std::time)\b)");
  each_source([&](const fs::path& file, const std::string& room) {
    if (room == "src") return;
    std::ifstream stream(file);
    for (std::string line; std::getline(stream, line);) {
      if (line.find("//") != std::string::npos) line.erase(line.find("//"));
      if (line.find("time") == std::string::npos && line.find("getenv") == std::string::npos &&
          line.find("_clock") == std::string::npos)
        continue;  // a pattern is slow
      CHECK_MESSAGE(!std::regex_search(line, kWorld), file.string() << ": " << line);
    }
  });
}

TEST_CASE("no file of the program has grown past 450 lines") {
  each_source([&](const fs::path& file, const std::string&) {
    const std::string text = kerfbook::tests::slurp(file);
    const auto lines = std::count(text.begin(), text.end(), '\n');
    CHECK_MESSAGE(lines <= 450, file.string());
  });
}

TEST_CASE("no message shows what was typed in any but straight single quotes") {
  each_source([&](const fs::path& file, const std::string&) {
    std::ifstream stream(file);
    for (std::string line; std::getline(stream, line);) {
      if (line.find("//") != std::string::npos) line.erase(line.find("//"));
      CHECK_MESSAGE(line.find('`') == std::string::npos, file.string() << ": " << line);
    }
  });
}

TEST_CASE("one file knows the library that reads the command line") {
  int known = 0;
  each_source([&](const fs::path& file, const std::string&) {
    for (const auto& name : includes_of(file)) {
      if (!name.starts_with("CLI/")) continue;
      ++known;
      CHECK_MESSAGE(file.filename() == "command_line.cpp", file.string() << " includes " << name);
    }
  });
  CHECK(known == 1);
}

TEST_CASE(
    "cases stand in files that end in _test.cpp, and every such file has some: by these names they are run") {
  int files = 0;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "tests")) {
    const std::string name = entry.path().filename().string();
    if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
    std::ifstream stream(entry.path());
    bool has_case = false;
    for (std::string line; std::getline(stream, line);) has_case = has_case || line.starts_with("TEST_CASE");
    CHECK_MESSAGE(has_case == name.ends_with("_test.cpp"), entry.path().string());
    files += has_case ? 1 : 0;
  }
  CHECK(files > 100);
}
