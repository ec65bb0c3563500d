// raw_view.h -- the rows SQL gave, looked up by the columns of the header.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/table.h"

namespace kerfbook::report {

class RawView {
 public:
  RawView(const TableSpec& spec, const Raw& raw);

  [[nodiscard]] std::size_t rows() const { return raw_.rows(); }
  [[nodiscard]] std::size_t column_of(const std::string& name) const;  ///< of the header
  [[nodiscard]] const Value& value(std::size_t row, std::size_t column) const;
  /// nullopt for nothing; throws SqlFault for a text.
  [[nodiscard]] std::optional<std::int64_t> number(std::size_t row, std::size_t column) const;
  [[nodiscard]] std::string text(std::size_t row, const std::string& column) const;  ///< "" for anything else
  [[nodiscard]] bool flag(std::size_t row, const std::string& column) const;  ///< a number that is not 0

 private:
  const TableSpec& spec_;
  const Raw& raw_;
  std::vector<std::size_t> source_;  ///< column of the header -> column of the SELECT
};

}  // namespace kerfbook::report
