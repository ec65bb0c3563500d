#include "command/csv_rows.h"

#include "base/text.h"

namespace kerfbook::command {
namespace {

/// Reads one field from `at`, which is left on the comma, the line end or the end of the text.
std::string take_field(std::string_view text, std::size_t& at, int& line) {
  std::string field;
  bool quoted = false;
  for (; at < text.size(); ++at) {
    const char c = text[at];
    if (c == '"') {
      const bool doubled = quoted && at + 1 < text.size() && text[at + 1] == '"';
      if (doubled) {
        field += c;
        ++at;
      } else if (quoted || trim(field).empty()) {
        quoted = !quoted;
      } else {
        field += c;  // an inch mark within a bare field: 12"x16'
      }
    } else if (!quoted && (c == ',' || c == '\n')) {
      break;
    } else if (c != '\r' || quoted) {
      if (c == '\n') ++line;
      field += c;
    }
  }
  return std::string(trim(field));
}

}  // namespace

std::vector<CsvRecord> csv_records(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::vector<CsvRecord> records;
  int line = 1;
  CsvRecord record{line, {}};
  for (std::size_t at = 0; at < text.size(); ++at) {
    record.fields.push_back(take_field(text, at, line));
    if (at < text.size() && text[at] == ',') {
      if (at + 1 == text.size()) record.fields.emplace_back();
      continue;
    }
    const bool blank = record.fields.size() == 1 && record.fields[0].empty();
    if (!blank) records.push_back(record);
    record = {++line, {}};
  }
  if (!record.fields.empty()) records.push_back(record);
  return records;
}

}  // namespace kerfbook::command
