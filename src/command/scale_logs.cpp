#include "command/scale_logs.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/error.h"
#include "base/text.h"
#include "command/csv_rows.h"
#include "sheet/read.h"

namespace kerfbook::command {
namespace {

constexpr std::string_view kSheetLine = "sheet 2000-01-01";  // any day: only its log lines are of interest

/// The columns a CSV may have. `diameter` may also be called small, `log` also spec.
const std::vector<std::string> kColumns{"log", "tag",   "diameter", "length", "large",
                                        "mid", "girth", "segments", "defect", "reason"};

bool looks_like_log(const std::string& word) {
  return !word.empty() && word[0] >= '0' && word[0] <= '9' &&
         word.find_first_of("xX\xC3") != std::string::npos;
}

/// Without the word `log` in front, which a person may have copied from a sheet.
std::string without_log(const std::string& text) {
  const auto words = split_words(text);
  if (words.empty() || !same_word(words.front(), "log")) return text;
  return join({words.begin() + 1, words.end()}, " ");
}

std::vector<std::string> log_lines(const std::vector<std::string>& words) {
  std::vector<std::string> lines;
  bool closed = true;     // the last line takes no further words
  bool measured = false;  // ... has its measure
  std::string before;
  for (const auto& word : words) {
    if (same_word(word, "log")) continue;
    const bool whole = word.find(' ') != std::string::npos;
    const bool spec = looks_like_log(word) && !same_word(before, "defect");
    if (whole || closed || (spec && measured)) {
      lines.push_back(whole ? without_log(word) : word);
      closed = whole;
      measured = spec;
    } else {
      lines.back() += " " + word;
      measured = measured || spec;
    }
    before = word;
  }
  return lines;
}

/// Parts what was typed at the word `defect`: the measures, and the defects.
void part_typed(const std::string& typed, AskedLog& log) {
  std::vector<std::string> measures;
  std::vector<std::string> defects;
  for (const auto& word : split_words(typed)) {
    if (same_word(word, "defect")) {
      defects.emplace_back();
    } else if (defects.empty()) {
      const bool tag =
          measures.empty() && same_word(word.substr(0, word.find_last_not_of(",:") + 1), log.tag);
      if (!tag) measures.push_back(word);
    } else {
      defects.back() += (defects.back().empty() ? "" : " ") + word;
    }
  }
  log.spec = join(measures, " ");
  log.defect = join(defects, "; ");
}

/// `lines[i]` is what follows `log` on line i + 2 of a sheet.
ReadLogs read_lines(std::vector<std::string> lines, bool metric) {
  for (auto& line : lines) {  // a cell of a spreadsheet, or a word in quotes, may be broken over lines
    for (char& c : line) c = c == '\n' || c == '\r' ? ' ' : c;
  }
  ReadLogs out;
  out.text = std::string(kSheetLine) + "\n";
  for (const auto& line : lines) out.text += line.empty() ? "\n" : "log " + line + "\n";
  if (lines.size() >= sheet::kMostLines || out.text.size() > sheet::kSheetLimit.most)
    throw Refused("more logs than are scaled at once, " + grouped({sheet::kMostLines, 0}) +
                  "; part the list into several");
  auto read = sheet::read(out.text, {.metric = metric});
  out.found = std::move(read.found);
  for (const auto& line : read.sheet.lines) {
    const auto* fact = std::get_if<sheet::LogLine>(&line.fact);
    if (fact == nullptr) continue;
    const auto at = static_cast<std::size_t>(line.place.line);
    if (!fact->measure) {
      if (!has_error(out.found)) {
        out.found.push_back({Severity::error,
                             {line.place.line, 0},
                             "a log without a measure",
                             metric ? "write it as 30x4.8" : "write it as 15x12"});
      }
      continue;
    }
    AskedLog log;
    log.tag = fact->tags.empty() ? "" : fact->tags.front();
    log.measure = *fact->measure;
    log.defects = fact->defects;
    log.line = line.place.line;
    part_typed(lines[at - 2], log);
    out.logs.push_back(std::move(log));
  }
  return out;
}

std::string known_column(const std::string& typed) {
  std::string word = lower(typed);
  if (word == "small") return "diameter";
  if (word == "spec") return "log";
  if (std::find(kColumns.begin(), kColumns.end(), word) != kColumns.end()) return word;
  const std::string near = nearest(word, kColumns);
  throw WrongUsage(in_quotes(typed) + " is no column of a list of logs; " +
                   (near.empty() ? "it may have " + join(kColumns, ", ") : "did you mean " + near + "?"));
}

std::vector<std::string> columns_of(const CsvRecord& head) {
  std::vector<std::string> columns;
  for (const auto& field : head.fields) columns.push_back(known_column(field));
  const auto has = [&columns](const char* name) {
    return std::find(columns.begin(), columns.end(), name) != columns.end();
  };
  if (!has("log") && !(has("diameter") && has("length"))) {
    throw WrongUsage(
        "a list of logs begins with the names of its columns: log, or diameter and length (and any of " +
        join({kColumns.begin() + 4, kColumns.end()}, ", ") + ", tag)");
  }
  return columns;
}

/// A record as the rest of a log line.
std::string line_of(const CsvRecord& record, const std::vector<std::string>& columns) {
  std::map<std::string, std::string> field;
  for (std::size_t i = 0; i < std::min(columns.size(), record.fields.size()); ++i)
    field[columns[i]] = record.fields[i];
  std::string line = field["tag"].empty() ? "" : field["tag"] + ": ";  // 12: 7/8x12 is no log of 12-7/8 in
  if (!field["log"].empty()) {
    line += field["log"];
  } else {
    line += field["diameter"] + (field["large"].empty() ? "" : "-" + field["large"]) + "x" + field["length"];
  }
  for (const char* word : {"mid", "girth", "segments", "defect"}) {
    if (!field[word].empty()) line += " " + std::string(word) + " " + field[word];
  }
  if (!field["reason"].empty()) line += " " + field["reason"];
  return line;
}

}  // namespace

ReadLogs logs_of_words(const std::vector<std::string>& words, bool metric) {
  ReadLogs read = read_lines(log_lines(words), metric);
  read.text.erase(0, kSheetLine.size() + 1);  // line 1 is the first log
  for (auto& found : read.found) --found.place.line;
  for (auto& log : read.logs) --log.line;
  return read;
}

ReadLogs logs_of_csv(std::string_view csv, bool metric) {
  const auto records = csv_records(csv);
  if (records.empty()) throw WrongUsage("the list of logs is empty");
  const auto columns = columns_of(records.front());
  std::vector<std::string>
      lines;  // each on the line it has in the file, so that what is wrong is found there
  for (std::size_t i = 1; i < records.size(); ++i) {
    lines.resize(static_cast<std::size_t>(records[i].line - 1));
    lines.back() = line_of(records[i], columns);
  }
  return read_lines(lines, metric);
}

}  // namespace kerfbook::command
