// csv_rows.h -- the rows of a small table beside the tests. A field may be quoted; a line that begins with #
// is not a row.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <string>
#include <vector>

namespace kerfbook::test {

inline std::vector<std::string> fields_of(const std::string& line) {
  std::vector<std::string> fields(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      fields.emplace_back();
    } else {
      fields.back() += c;
    }
  }
  return fields;
}

/// Without the line of column names. Fails the test when the file is not there or has no row.
inline std::vector<std::vector<std::string>> rows_of(const std::string& file_in_tests) {
  std::ifstream file(std::string(KERFBOOK_ROOT) + "/tests/" + file_in_tests);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  bool names = true;
  while (std::getline(file, line)) {
    if (line.starts_with('#')) continue;
    if (!names) rows.push_back(fields_of(line));
    names = false;
  }
  REQUIRE_MESSAGE(!rows.empty(), "no rows in " << file_in_tests);
  return rows;
}

}  // namespace kerfbook::test
