#include "render/outputs.h"

#include <stdlib.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "render/cell.h"

namespace kerfbook::render {
namespace {

std::string one_form(std::string digits) {
  std::string out;
  for (const char c : digits) {
    if ((c >= '0' && c <= '9') || c == '-' || c == '.') out += c;
  }
  if (out.find('.') != std::string::npos) {
    out.erase(out.find_last_not_of('0') + 1);
    if (out.ends_with('.')) out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

std::string iso(const std::string& day) {
  if (day.size() == 10 && day[2] == '/')
    return day.substr(6) + "-" + day.substr(0, 2) + "-" + day.substr(3, 2);
  return day;
}

std::vector<std::string> totals_where(const Table& table, const std::vector<std::string>& all) {
  std::vector<std::string> out;
  const auto columns = shown_columns(table);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = table.columns[columns[i]];
    const bool totalled = !table.totals.empty() && column.total != TotalKind::none;
    out.push_back(totalled && i < all.size() ? canonical(all[i], column) : "");
  }
  return out;
}

void add_row(Figures& figures, const Table& table, const std::vector<std::string>& cells, bool struck) {
  std::vector<std::string> row;
  const auto columns = shown_columns(table);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    row.push_back(i < cells.size() ? canonical(cells[i], table.columns[columns[i]]) : "missing");
  }
  figures.rows.push_back(std::move(row));
  figures.struck.push_back(struck);
}

/// The columns of a ruled line, as first and last place on the screen.
std::vector<std::pair<int, int>> spans(std::string_view rule) {
  std::vector<std::pair<int, int>> out;
  for (std::size_t i = 0; i < rule.size(); ++i) {
    if (rule[i] != '-') continue;
    const std::size_t from = i;
    while (i + 1 < rule.size() && rule[i + 1] == '-') ++i;
    out.emplace_back(static_cast<int>(from), static_cast<int>(i));
  }
  return out;
}

std::string between(std::string_view line, std::pair<int, int> span) {
  std::string out;
  int at = 0;
  for (std::size_t i = 0; i < line.size();) {
    std::size_t end = i + 1;
    while (end < line.size() && (static_cast<unsigned char>(line[end]) & 0xC0U) == 0x80U) ++end;
    const auto sign = line.substr(i, end - i);
    if (at >= span.first && at <= span.second) out += sign;
    at += screen_width(sign);
    i = end;
  }
  return std::string(trim(out));
}

bool is_rule(std::string_view line) {
  return line.starts_with("----") && line.find_first_not_of("- ") == std::string_view::npos;
}

}  // namespace

std::string canonical(const std::string& shown, const Column& column) {
  if (shown == "-" || shown.empty()) return "";
  if (column.kind == ColumnKind::text) return join(split_words(shown), " ");
  return column.kind == ColumnKind::day ? iso(shown) : one_form(shown);
}

Figures figures_of(const Table& table) {
  Figures out;
  const auto columns = shown_columns(table);
  for (const Row& row : table.rows) {
    std::vector<std::string> cells;
    for (const std::size_t i : columns) cells.push_back(plain_cell(row.cells[i]));
    add_row(out, table, cells, row.struck);
  }
  std::vector<std::string> totals;
  for (const std::size_t i : columns)
    totals.push_back(table.totals.empty() ? "" : plain_cell(table.totals[i]));
  out.totals = totals_where(table, totals);
  return out;
}

Figures from_text(const std::string& text, const Table& table) {
  Figures out;
  std::vector<std::pair<int, int>> places;
  bool below = false;
  for (const auto line : split_lines(text)) {
    if (is_rule(line)) {
      below = !places.empty();
      places = spans(line);
      continue;
    }
    if (places.empty()) continue;
    std::vector<std::string> cells;
    for (const auto& place : places) cells.push_back(between(line, place));
    if (below) {
      out.totals = totals_where(table, cells);
      return out;
    }
    add_row(out, table, cells, line.ends_with(" struck"));
  }
  out.totals = totals_where(table, {});
  return out;
}

std::vector<std::vector<std::string>> read_csv(const std::string& csv) {
  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (quoted && c == '"' && i + 1 < csv.size() && csv[i + 1] == '"') {
      rows.back().back() += csv[++i];
    } else if (c == '"') {
      quoted = !quoted;
    } else if (!quoted && c == ',') {
      rows.back().emplace_back();
    } else if (!quoted && c == '\n') {
      rows.emplace_back(1);
    } else if (quoted || c != '\r') {
      rows.back().back() += c;
    }
  }
  if (rows.back().size() == 1 && rows.back().front().empty()) rows.pop_back();
  return rows;
}

Figures from_csv(const std::string& csv, const Table& table) {
  Figures out;
  auto rows = read_csv(csv);
  for (auto& row : rows)
    for (std::string& field : row)  // the mark that keeps text from being a formula
      if (field.size() > 2 && field[0] == '\'' &&
          std::string_view("=+-@").find(field[1]) != std::string_view::npos)
        field.erase(0, 1);
  const std::size_t columns = shown_columns(table).size();
  for (std::size_t i = 1; i < rows.size(); ++i) {
    add_row(out, table, rows[i], rows[i].size() > columns && rows[i].back() == "struck");
  }
  return out;
}

Figures from_json(const std::string& json, const Table& table) {
  Figures out;
  const auto read = nlohmann::json::parse(json);
  const auto word = [](const nlohmann::json& value) {
    if (value.is_null()) return std::string();
    return value.is_string() ? value.get<std::string>() : value.dump();
  };
  const auto columns = shown_columns(table);
  for (const auto& row : read.at("rows")) {
    std::vector<std::string> cells;
    for (const std::size_t i : columns) cells.push_back(word(row.at(table.columns[i].name)));
    add_row(out, table, cells, row.value("struck", false));
  }
  std::vector<std::string> totals;
  for (const std::size_t i : columns)
    totals.push_back(word(read.at("totals").value(table.columns[i].name, nlohmann::json())));
  out.totals = totals_where(table, totals);
  return out;
}

std::string output_of(const std::string& command) {
  std::string out;
  FILE* const pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return out;
  char buffer[4096];
  for (std::size_t got = 0; (got = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, got);
  ::pclose(pipe);
  return out;
}

Folder::Folder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "kerfbook-test-XXXXXX").string();
  if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for temporary files");
  path_ = pattern;
}

Folder::~Folder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

void write_file(const std::string& path, const std::string& bytes) {
  std::filesystem::create_directories(std::filesystem::path(path).parent_path());
  std::ofstream(path, std::ios::binary) << bytes;
}

std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string listing(const std::vector<Sheet>& sheets) {
  std::string out;
  for (const Sheet& sheet : sheets) {
    out += "[" + sheet.name + "]\n";
    for (const auto& [place, cell] : sheet.cells) {
      if (cell.value.empty() && cell.formula.empty()) continue;
      out += std::string(1, static_cast<char>('A' + place.second)) + std::to_string(place.first + 1) + "  " +
             (cell.text ? nlohmann::json(cell.value).dump() : cell.value) +
             (cell.format.empty() ? "" : "  " + cell.format) +
             (cell.formula.empty() ? "" : "  =" + cell.formula) + (cell.struck ? "  struck" : "") + "\n";
    }
  }
  return out;
}

Figures from_sheet(const Sheet& sheet, const Table& table) {
  Figures out;
  out.totals = totals_where(table, {});
  if (table.rows.empty()) return out;
  const auto columns = shown_columns(table);
  int row = sheet.row_of(heading_of(table.columns[columns.front()])) + 1;
  const auto cells_of = [&](int at) {
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const std::string& value = sheet.at(at, static_cast<int>(i)).value;
      const bool day =
          table.columns[columns[i]].kind == ColumnKind::day && !value.empty() && value != "Total";
      cells.push_back(day ? write_day(Day{std::stoi(value) - 25569}) : value);
    }
    return cells;
  };
  for (std::size_t i = 0; i < table.rows.size(); ++i, ++row)
    add_row(out, table, cells_of(row), sheet.at(row, 0).struck);
  out.totals = totals_where(table, cells_of(row));
  return out;
}

}  // namespace kerfbook::render
