// outputs_second.cpp -- every workbook the tests made, opened by a reader that shares nothing with ours nor with the
// writer: openpyxl (package python3-openpyxl), all of them in one run at the end.
#include <doctest/doctest.h>

#include <functional>
#include <nlohmann/json.hpp>
#include <set>

#include "render/outputs.h"

namespace kerfbook::render {
namespace {

struct Kept {
  Folder folder;
  std::set<std::size_t> met;
};

Kept& kept() {
  static Kept all;
  return all;
}

/// A cell as the second reader tells it, against ours.
bool same(const nlohmann::json& told, const SheetCell& ours) {
  const auto& value = told.at(3);
  if (told.at(2) != told.at(3) && told.at(2) != "=" + ours.formula) return false;
  if (value.is_number())
    return !ours.text &&
           near(number_of(number_in_sheet(value.dump())), number_of(number_in_sheet(ours.value)));
  return ours.text && value == ours.value;
}

void check_sheet(const std::string& where, const nlohmann::json& told, const Sheet& ours) {
  CHECK_MESSAGE(told.at("name") == ours.name, where << ": a worksheet of another name");
  std::size_t found = 0;
  for (const auto& cell : told.at("cells")) {
    const int row = cell.at(0);
    const int column = cell.at(1);
    ++found;
    CHECK_MESSAGE(same(cell, ours.at(row, column)), where << ", " << ours.name << ", row " << row + 1
                                                          << ", column " << column + 1 << ": " << cell.dump()
                                                          << " instead of " << ours.at(row, column).value);
  }
  std::size_t meant = 0;
  for (const auto& [place, cell] : ours.cells)
    if (!cell.value.empty()) ++meant;
  CHECK_MESSAGE(found == meant, where << ", " << ours.name << ": other cells");
}

}  // namespace

void keep_for_second_reader(const std::string& bytes) {
  const std::size_t mark = std::hash<std::string>()(bytes);
  if (!kept().met.insert(mark).second) return;
  write_file(kept().folder / ("book" + std::to_string(kept().met.size()) + ".xlsx"), bytes);
}

void check_second_reader() {
  REQUIRE_MESSAGE(output_of("/usr/bin/python3 -c 'import openpyxl; print(1)' 2>&1") == "1\n",
                  "openpyxl (package python3-openpyxl) is not installed; ./bootstrap installs it");
  REQUIRE_MESSAGE(!kept().met.empty(), "no workbook was made");
  const std::string told =
      output_of("/usr/bin/python3 " KERFBOOK_TESTS "/render/second_reader.py '" + (kept().folder / "") + "'");
  const auto read = nlohmann::json::parse(told, nullptr, false);
  REQUIRE_MESSAGE(read.is_object(), "the second reader says: " << told.substr(0, 2000));
  CHECK(read.size() == kept().met.size());
  for (const auto& [name, book] : read.items()) {
    if (book.contains("fault")) {
      FAIL_CHECK(name << ": " << book.at("fault").dump());
      continue;
    }
    const auto ours = read_any_workbook(read_file(kept().folder / name));
    REQUIRE(book.at("sheets").size() == ours.size());
    for (std::size_t i = 0; i < ours.size(); ++i) check_sheet(name, book.at("sheets").at(i), ours[i]);
  }
}

}  // namespace kerfbook::render
