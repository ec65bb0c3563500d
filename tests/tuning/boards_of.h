// boards_of.h -- readings of a table beside the tests, board by board.
#pragma once

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "measure/csv_rows.h"

namespace kerfbook::test {

/// Each line `board,reading`; boards in the order of their numbers.
inline std::vector<std::vector<double>> boards_of(const std::string& file_in_tests) {
  std::map<int, std::vector<double>> by_number;
  for (const auto& row : rows_of(file_in_tests))
    by_number[std::stoi(row.at(0))].push_back(std::stod(row.at(1)));
  std::vector<std::vector<double>> boards;
  boards.reserve(by_number.size());
  for (auto& [number, readings] : by_number) boards.push_back(std::move(readings));
  return boards;
}

/// Rounded to so many places, as print has it.
inline double to(double number, int places) {
  const double by = std::pow(10.0, places);
  return std::round(number * by) / by;
}

}  // namespace kerfbook::test
