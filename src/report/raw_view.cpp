#include "report/raw_view.h"

#include <fmt/format.h>

#include <algorithm>

namespace kerfbook::report {

RawView::RawView(const TableSpec& spec, const Raw& raw) : spec_(spec), raw_(raw) {
  for (const auto& column : spec.columns) {
    const auto found = std::find(raw.names.begin(), raw.names.end(), column.name);
    source_.push_back(static_cast<std::size_t>(found - raw.names.begin()));
  }
}

std::size_t RawView::column_of(const std::string& name) const {
  const auto found = std::find_if(spec_.columns.begin(), spec_.columns.end(),
                                  [&](const ColumnSpec& c) { return c.name == name; });
  return static_cast<std::size_t>(found - spec_.columns.begin());
}

const Value& RawView::value(std::size_t row, std::size_t column) const {
  return raw_.at(row, source_[column]);
}

std::optional<std::int64_t> RawView::number(std::size_t row, std::size_t column) const {
  const Value& given = value(row, column);
  if (std::holds_alternative<std::monostate>(given)) return std::nullopt;
  if (const auto* whole = std::get_if<std::int64_t>(&given)) return *whole;
  const ColumnSpec& spec = spec_.columns[column];
  throw SqlFault(
      fmt::format("column {} gives the text '{}'; a {} column needs {}", spec.name,
                  std::get<std::string>(given), row_of(spec.kind).word, row_of(spec.kind).what_sql_gives),
      -1);
}

std::string RawView::text(std::size_t row, const std::string& column) const {
  const auto* given = std::get_if<std::string>(&value(row, column_of(column)));
  return given == nullptr ? "" : *given;
}

bool RawView::flag(std::size_t row, const std::string& column) const {
  if (column.empty()) return false;
  const auto* given = std::get_if<std::int64_t>(&value(row, column_of(column)));
  return given != nullptr && *given != 0;
}

}  // namespace kerfbook::report
