// README's list of views is the schema's: a column that comes or goes shows here.
#include <doctest/doctest.h>

#include <cstdlib>

#include "base/text.h"
#include "demo.h"
#include "report/views.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::string_view kBegin = "KERFBOOK_GOLDEN=update -->\n";
constexpr std::string_view kEnd = "<!-- end of views -->";

/// A view a line: its name, what a row of it is, its columns; broken like the text around it.
std::string list_of_views() {
  constexpr std::size_t kWide = 118;
  const auto book = empty_book();
  std::string out;
  for (const auto& table : views_document(book, {}, kToday).tables) {
    std::string words = "- `" + table.name + "`" + table.title.substr(table.name.size()) + " --";
    for (const auto& row : table.rows) {
      words += (&row == &table.rows.front() ? " " : ", ") + std::get<std::string>(row.cells.front());
    }
    std::string line;
    for (const auto& word : split_words(words)) {
      if (line.size() + word.size() >= kWide) {
        out += line + "\n";
        line = " ";
      }
      line += (line.empty() ? "" : " ") + std::string(word);
    }
    out += line + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("README lists every view and column a report may read, as the schema has them") {
  const std::string path = std::string(KERFBOOK_ROOT) + "/README.md";
  std::string readme = file_text(path);
  const std::size_t begin = readme.find(kBegin) + kBegin.size();
  const std::size_t end = readme.find(kEnd, begin);
  REQUIRE(end != std::string::npos);
  const std::string made = list_of_views();
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "update") {
    readme.replace(begin, end - begin, made);
    std::ofstream(path, std::ios::binary) << readme;
    return;
  }
  CHECK(readme.substr(begin, end - begin) == made);
}
