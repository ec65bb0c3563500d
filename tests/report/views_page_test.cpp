// VIEWS.md is the schema's: a view, a column or a unit that comes or goes shows there. KERFBOOK_GOLDEN=update makes it anew.
#include <doctest/doctest.h>

#include <cstdlib>
#include <map>

#include "base/text.h"
#include "demo.h"
#include "report/views.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::string_view kHead =
    "# What a report of your own may read\n\n"
    "Made from the schema by the tests of reports; `kerfbook report --views` says the same of a book at "
    "hand. How a "
    "report is\nwritten stands in README, \"Reports of your own\".\n\n"
    "## Units\n\n"
    "A column of these names holds whole numbers in this unit, in whatever view it stands; in brackets the "
    "kind of "
    "column that\nshows it. Any other column holds words, a count, or a number another column goes by.\n\n"
    "| column | unit |\n| --- | --- |\n";

/// One paragraph broken to the width of the page, what follows its first line indented by two.
std::string broken(const std::string& words) {
  constexpr std::size_t kWide = 118;
  std::string out;
  std::string line;
  for (const auto& word : split_words(words)) {
    if (line.size() + word.size() >= kWide) {
      out += line + "\n";
      line = " ";
    }
    line += (line.empty() ? "" : " ") + std::string(word);
  }
  return out + line + "\n";
}

std::string page() {
  const auto book = empty_book();
  std::map<std::string, std::string> units;
  std::string views;
  for (const auto& table : views_document(book, {}, kToday).tables) {
    std::string words = "- `" + table.name + "`" + table.title.substr(table.name.size()) + " --";
    for (const auto& row : table.rows) {
      const auto& column = std::get<std::string>(row.cells.front());
      words += (&row == &table.rows.front() ? " " : ", ") + column;
      if (const auto* unit = std::get_if<std::string>(&row.cells.back())) units.emplace(column, *unit);
    }
    views += broken(words);
  }
  std::string out(kHead);
  for (const auto& [column, unit] : units) out += "| `" + column + "` | " + unit + " |\n";
  return out + "\n## Views\n\n" + views;
}

}  // namespace

TEST_CASE("VIEWS.md lists every view and column a report may read, with units, as the schema has them") {
  const std::string path = std::string(KERFBOOK_ROOT) + "/VIEWS.md";
  const std::string made = page();
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "update") std::ofstream(path, std::ios::binary) << made;
  CHECK(file_text(path) == made);
}
