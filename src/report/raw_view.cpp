#include "report/raw_view.h"

#include <fmt/format.h>

#include <algorithm>

namespace kerfbook::report {

RawView::RawView(const TableSpec& spec, Raw raw) : spec_(spec), raw_(std::move(raw)) {
  for (const auto& column : spec.columns) {
    const auto found = std::find(raw_.names.begin(), raw_.names.end(), column.name);
    source_.push_back(static_cast<std::size_t>(found - raw_.names.begin()));
  }
}

std::size_t RawView::column_of(const std::string& name) const {
  const auto found = std::find_if(spec_.columns.begin(), spec_.columns.end(),
                                  [&](const ColumnSpec& c) { return c.name == name; });
  return static_cast<std::size_t>(found - spec_.columns.begin());
}

void RawView::refuse_text(std::string_view given, std::size_t column) const {
  const ColumnSpec& spec = spec_.columns[column];
  throw SqlFault(fmt::format("column {} gives the text '{}'; a {} column needs {}", spec.name, given,
                             row_of(spec.kind).word, row_of(spec.kind).what_sql_gives),
                 -1);
}

std::string_view RawView::text(std::size_t row, std::size_t column) const {
  const View given = value(row, column);
  const auto* text = std::get_if<std::string_view>(&given);
  return text == nullptr ? std::string_view() : *text;
}

std::vector<char> RawView::flags(const std::string& column) const {
  const std::size_t at = column_of(column);
  std::vector<char> set(rows());
  for (std::size_t r = 0; r < set.size(); ++r) {
    const View given = value(r, at);
    const auto* number = std::get_if<std::int64_t>(&given);
    set[r] = number != nullptr && *number != 0 ? 1 : 0;
  }
  return set;
}

}  // namespace kerfbook::report
