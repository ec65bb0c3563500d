#include "report/rows.h"

#include "base/input.h"

namespace kerfbook::report {

Raw::Raw(std::vector<std::string> column_names, const std::vector<std::vector<Value>>& rows)
    : names(std::move(column_names)) {
  for (const auto& row : rows) {
    for (const auto& value : row) std::visit([&](const auto& cell) { add(cell); }, value);
  }
}

void Raw::add(const View& cell) {
  if (const auto* number = std::get_if<std::int64_t>(&cell)) {
    cells_.push_back({*number, 0, Is::number});
  } else if (const auto* text = std::get_if<std::string_view>(&cell)) {
    cells_.push_back(
        {static_cast<std::int64_t>(texts_.size()), static_cast<std::uint32_t>(text->size()), Is::text});
    texts_ += *text;
  } else {
    cells_.push_back({});
  }
}

Raw read_rows(Query& query, const Parameters& parameters) {
  for (const auto& [name, value] : parameters) query.bind(name, value);
  Raw raw(query.columns());
  const int columns = static_cast<int>(raw.names.size());
  while (query.step()) {
    for (int c = 0; c < columns; ++c) raw.add(query.value(c));
    if (raw.bytes() > kMostOfRows)
      throw SqlFault(
          "it gives more than " + shown_bytes(kMostOfRows) + " of rows; ask for fewer days at once", -1);
  }
  return raw;
}

}  // namespace kerfbook::report
