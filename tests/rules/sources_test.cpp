// sources_test.cpp -- where the figures of the trade come from: every log rule and every table of published figures beside
// the tests names publications of the list in allowed_sources.csv, and no file names a site, a package or a magazine.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "base/text.h"
#include "measure/csv_rows.h"
#include "scaling/rules.h"

namespace fs = std::filesystem;
using kerfbook::test::fields_of;
using kerfbook::test::rows_of;

namespace {

const fs::path kRoot = KERFBOOK_ROOT;
const std::set<std::string> kKinds{"statute",  "standard",    "agency", "university", "journal",
                                   "handbook", "association", "author", "none"};

std::vector<std::string> parts_of(std::string source) {
  std::vector<std::string> parts;
  for (std::size_t end = source.find("; "); end != std::string::npos; end = source.find("; ")) {
    parts.push_back(source.substr(0, end));
    source.erase(0, end + 2);
  }
  parts.push_back(source);
  return parts;
}

/// The part of a source that begins as no publication of the list; empty when each does.
std::string not_allowed(const std::string& source) {
  static const auto list = rows_of("rules/allowed_sources.csv");
  for (const auto& part : parts_of(source)) {
    const bool allowed =
        std::any_of(list.begin(), list.end(), [&](const auto& row) { return part.starts_with(row.at(0)); });
    if (!allowed) return part.empty() ? "(nothing)" : part;
  }
  return "";
}

std::vector<std::string> lines_of(const fs::path& file) {
  std::ifstream stream(file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// What a table names: its lines `# source: ...` and `# source W: ...`, and its column `publication`, if that is words.
std::vector<std::string> sources_in(const fs::path& table) {
  static const std::regex kSource(R"(^# source( [A-Z])?: (.*)$)");
  std::vector<std::string> found;
  const auto lines = lines_of(table);
  for (const auto& line : lines) {
    std::smatch match;
    if (std::regex_match(line, match, kSource)) found.push_back(match[2]);
  }
  if (!found.empty()) return found;
  std::size_t column = std::string::npos;
  for (const auto& line : lines) {
    if (line.starts_with('#')) continue;
    const auto fields = fields_of(line);
    if (column == std::string::npos) {
      const auto at = std::find(fields.begin(), fields.end(), "publication");
      if (at == fields.end()) return found;
      column = static_cast<std::size_t>(at - fields.begin());
    } else {
      found.push_back(fields.at(column));
    }
  }
  return found;
}

bool is_of_our_own(const fs::path& table) {
  const auto lines = lines_of(table);
  return !lines.empty() && lines.front().find("(invented)") != std::string::npos;
}

/// What stands in quotes and in the remark of a line of code; elsewhere a point may be a member's.
std::string words_in(const std::string& line) {
  std::string words;
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (!quoted && line.compare(i, 2, "//") == 0) return words + line.substr(i);
    if (line[i] == '"' && (i == 0 || line[i - 1] != '\\')) quoted = !quoted;
    if (quoted) words += line[i];
    if (!quoted && !words.empty() && words.back() != ' ') words += ' ';
  }
  return words;
}

bool holds_any(const std::string& text, const std::vector<std::string>& parts) {
  return std::any_of(parts.begin(), parts.end(),
                     [&](const std::string& part) { return text.find(part) != std::string::npos; });
}

/// Every text that people or developers read, but for files written by the program itself.
template <class Visit>
void each_text(Visit visit) {
  static const std::set<std::string> kTexts{".cpp",   ".h",    ".csv", ".sql",  ".md",
                                            ".sheet", ".toml", ".txt", ".html", ".cmake"};
  const auto look = [&](const fs::path& file) {
    if (file.filename() != "sources_test.cpp") visit(file);
  };
  for (const char* folder : {"src", "tests", "reports", "schema", "demo_data", "cmake"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
      if (entry.is_regular_file() && kTexts.contains(entry.path().extension().string())) look(entry.path());
    }
  }
  for (const char* file : {"README.md", "DEVELOPERS.md"}) look(kRoot / file);
}

}  // namespace

TEST_CASE("the list of allowed sources holds only kinds that may be named") {
  for (const auto& row : rows_of("rules/allowed_sources.csv")) {
    CHECK_MESSAGE(kKinds.contains(row.at(1)), row.at(0));
    CHECK_MESSAGE(row.at(0).size() > 6, "'" << row.at(0) << "' would allow anything");
  }
  CHECK(not_allowed("from memory; a page on the web") == "a page on the web");
  CHECK(not_allowed("9 V.S.A. s. 2693") == "");
  CHECK(not_allowed("") == "(nothing)");
}

TEST_CASE("every log rule names publications of the list, or says that it has none") {
  for (const auto& rule : kerfbook::scaling::rules()) {
    CHECK_MESSAGE(not_allowed(std::string(rule.source)) == "", rule.name);
  }
}

TEST_CASE("every table of check values names publications of the list for each of its figures") {
  int tables = 0;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "tests")) {
    const fs::path& file = entry.path();
    if (file.extension() != ".csv" || file.parent_path().filename() == "golden" || is_of_our_own(file))
      continue;
    if (file.filename() == "allowed_sources.csv") continue;
    const auto sources = sources_in(file);
    CHECK_MESSAGE(!sources.empty(), file.string() << " names no source");
    for (const auto& source : sources)
      CHECK_MESSAGE(not_allowed(source) == "", file.string() << ": " << source);
    ++tables;
  }
  CHECK(tables >= 9);
}

TEST_CASE("every publication that a test names beside its figures stands in the list") {
  static const std::regex kSource(R"(//.*\bsource: (.*)$)");
  int named = 0;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "tests")) {
    const fs::path& file = entry.path();
    if (file.extension() != ".cpp" || file.filename() == "sources_test.cpp") continue;
    for (const auto& line : lines_of(file)) {
      std::smatch match;
      if (!std::regex_search(line, match, kSource)) continue;
      ++named;
      const std::string source = match[1];
      CHECK_MESSAGE(not_allowed(source.substr(0, source.find("; "))) == "", file.string() << ": " << line);
    }
  }
  CHECK(named > 40);
}

TEST_CASE("no text names a site, a package's home or a magazine as what a figure comes from") {
  static const std::regex kSite(R"(\b[a-z0-9-]{2,}\.(com|org|net|info|asia|co\.uk|jl|io)\b(?!\(|\w))",
                                std::regex::icase);
  static const std::regex kNamed(
      R"(wood ?web|wikipedia|toolbox|github|forestbiometrics|volumelibrary|woodworker|\bfdmc\b|\bblog)",
      std::regex::icase);
  // A pattern is slow: it is tried on what holds a part of one of its words.
  static const std::vector<std::string> kNamedParts{"web", "wiki", "tool", "hub", "bio",
                                                    "vol", "work", "dmc",  "blog"};
  static const std::vector<std::string> kSiteParts{".com",  ".org",   ".net", ".info",
                                                   ".asia", ".co.uk", ".jl",  ".io"};
  static const std::regex kOurs(
      R"(https?://(example\.invalid|x\b)|openoffice\.org/2001|www\.w3\.org|schemas\.)");
  int texts = 0;
  each_text([&](const fs::path& file) {
    ++texts;
    const bool code = file.extension() == ".cpp" || file.extension() == ".h";
    for (const auto& line : lines_of(file)) {
      const std::string low = kerfbook::lower(line);
      const bool maybe_named = holds_any(low, kNamedParts);
      const bool maybe_site = holds_any(low, kSiteParts);
      if ((!maybe_named && !maybe_site) || std::regex_search(line, kOurs)) continue;
      if (maybe_named) CHECK_MESSAGE(!std::regex_search(line, kNamed), file.string() << ": " << line);
      if (maybe_site)
        CHECK_MESSAGE(!std::regex_search(code ? words_in(line) : line, kSite), file.string() << ": " << line);
    }
  });
  CHECK(texts > 300);
}

TEST_CASE("the demo's set-up change is the demo's own: its kerfs and its words stand in no publication") {
  static const std::regex kOthers(R"(9/32|\b0?\.28\d?\b|rails|levelled|lead reset|set-?works)",
                                  std::regex::icase);
  int setups = 0;
  for (const auto& entry : fs::directory_iterator(kRoot / "demo_data")) {
    if (!entry.is_regular_file()) continue;
    for (const auto& line : lines_of(entry.path())) {
      if (line.starts_with("setup")) ++setups;
      CHECK_MESSAGE(!std::regex_search(line, kOthers), entry.path().string() << ": " << line);
    }
  }
  CHECK(setups == 2);
}
