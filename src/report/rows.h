// rows.h -- the rows of one SELECT, run behind the guard. What the columns mean is table.cpp's.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "report/guard.h"

namespace kerfbook::report {

using Parameters = std::map<std::string, Value>;  ///< name without its colon

/// Rows as SQL gave them, cell after cell.
class Raw {
 public:
  Raw(std::vector<std::string> column_names, const std::vector<std::vector<Value>>& rows);
  explicit Raw(std::vector<std::string> column_names) : names(std::move(column_names)) {}

  std::vector<std::string> names;

  [[nodiscard]] std::size_t rows() const { return names.empty() ? 0 : cells_.size() / names.size(); }
  [[nodiscard]] const Value& at(std::size_t row, std::size_t column) const {
    return cells_[row * names.size() + column];
  }
  [[nodiscard]] Value& at(std::size_t row, std::size_t column) { return cells_[row * names.size() + column]; }
  void add(Value cell) { cells_.push_back(std::move(cell)); }

 private:
  std::vector<Value> cells_;
};

/// All rows. Throws SqlFault.
Raw read_rows(Query& query, const Parameters& parameters);

}  // namespace kerfbook::report
