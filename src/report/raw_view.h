// raw_view.h -- the rows SQL gave, looked up by the columns of the header.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "report/table.h"

namespace kerfbook::report {

class RawView {
 public:
  RawView(const TableSpec& spec, Raw raw);

  [[nodiscard]] std::size_t rows() const { return raw_.rows(); }
  [[nodiscard]] std::size_t column_of(const std::string& name) const;  ///< of the header
  [[nodiscard]] View value(std::size_t row, std::size_t column) const {
    return raw_.at(row, source_[column]);
  }
  /// nullopt for nothing; throws SqlFault for a text.
  [[nodiscard]] std::optional<std::int64_t> number(std::size_t row, std::size_t column) const {
    const View given = value(row, column);
    if (const auto* whole = std::get_if<std::int64_t>(&given)) return *whole;
    if (const auto* text = std::get_if<std::string_view>(&given)) refuse_text(*text, column);
    return std::nullopt;
  }
  [[nodiscard]] std::string_view text(std::size_t row, std::size_t column) const;  ///< "" for anything else
  /// Row by row, 1 for a number that is not 0.
  [[nodiscard]] std::vector<char> flags(const std::string& column) const;

 private:
  [[noreturn]] void refuse_text(std::string_view given, std::size_t column) const;

  const TableSpec& spec_;
  Raw raw_;
  std::vector<std::size_t> source_;  ///< column of the header -> column of the SELECT
};

}  // namespace kerfbook::report
