// pages.h -- the rows that stand on the pages of an SQLite file, whether or not anything leads to those pages any more.
// For this room only.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace kerfbook::book {

/// NULL, a number or a text; a text cut where bytes are missing. Blobs and floating numbers, which a book has none of,
/// come out as NULL.
using RawValue = std::variant<std::monostate, std::int64_t, std::string>;

struct RawRow {
  bool of_table = true;    ///< else of an index
  std::int64_t rowid = 0;  ///< of a table's
  std::vector<RawValue> values;
  bool complete = true;  ///< every byte was there
};

struct PageCount {
  std::int64_t pages = 0;
  std::int64_t unreadable = 0;
  bool cut_short = false;
};

/// Hands every row of at least `least_columns` columns, of tables and indexes, to `take`, in the order of the pages. Damaged rows are left out or come
/// incomplete; what is handed over may be nonsense and must be looked at. Refused when the file is none.
PageCount read_pages(const std::filesystem::path& file, std::size_t least_columns,
                     const std::function<void(const RawRow&)>& take);

}  // namespace kerfbook::book
