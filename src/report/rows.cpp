#include "report/rows.h"

namespace kerfbook::report {

Raw::Raw(std::vector<std::string> column_names, const std::vector<std::vector<Value>>& rows)
    : names(std::move(column_names)) {
  for (const auto& row : rows) cells_.insert(cells_.end(), row.begin(), row.end());
}

Raw read_rows(Query& query, const Parameters& parameters) {
  for (const auto& [name, value] : parameters) query.bind(name, value);
  Raw raw(query.columns());
  const int columns = static_cast<int>(raw.names.size());
  while (query.step()) {
    for (int c = 0; c < columns; ++c) raw.add(query.value(c));
  }
  return raw;
}

}  // namespace kerfbook::report
