// rows.h -- the rows of one SELECT, run behind the guard. What the columns mean is table.cpp's.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "report/guard.h"

namespace kerfbook::report {

using Parameters = std::map<std::string, Value>;  ///< name without its colon

/// Rows as SQL gave them, cell after cell, packed: an answer over many years has a million of them.
class Raw {
 public:
  explicit Raw(std::vector<std::string> column_names) : names(std::move(column_names)) {}
  Raw(std::vector<std::string> column_names, const std::vector<std::vector<Value>>& rows);

  std::vector<std::string> names;

  [[nodiscard]] std::size_t rows() const { return names.empty() ? 0 : cells_.size() / names.size(); }
  /// Good until a cell is added.
  [[nodiscard]] View at(std::size_t row, std::size_t column) const;
  void add(const View& cell);
  [[nodiscard]] std::size_t bytes() const { return cells_.size() * sizeof(Packed) + texts_.size(); }

 private:
  enum class Is : std::uint8_t { nothing, number, text };
  struct Packed {
    std::int64_t number = 0;   ///< of a text: where it begins in texts_
    std::uint32_t length = 0;  ///< of a text
    Is is = Is::nothing;
  };

  std::vector<Packed> cells_;
  std::string texts_;
};

inline View Raw::at(std::size_t row, std::size_t column) const {
  const Packed& cell = cells_[row * names.size() + column];
  switch (cell.is) {
    case Is::number:
      return cell.number;
    case Is::text:
      return std::string_view(texts_).substr(static_cast<std::size_t>(cell.number), cell.length);
    case Is::nothing:
      break;
  }
  return std::monostate{};
}

constexpr std::size_t kMostOfRows = 256 << 20;  ///< bytes of one table's rows

/// All rows. Throws SqlFault, also for more than kMostOfRows.
Raw read_rows(Query& query, const Parameters& parameters);

}  // namespace kerfbook::report
