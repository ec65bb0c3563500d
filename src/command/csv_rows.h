// csv_rows.h -- comma-separated text (RFC 4180) as records of fields. What the fields mean is for who asked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace kerfbook::command {

struct CsvRecord {
  int line = 0;  ///< in the text, from 1; where the record begins
  std::vector<std::string> fields;
};

/// Quotes, doubled quotes, commas and line ends within quotes, CRLF, a byte-order mark. Blank lines give no record. A
/// quote that is never closed runs to the end of the text.
std::vector<CsvRecord> csv_records(std::string_view text);

}  // namespace kerfbook::command
