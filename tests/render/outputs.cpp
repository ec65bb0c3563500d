// outputs.cpp -- cells in one form, and the forms that need no markup read back: text, csv, json.
#include "render/outputs.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "base/text.h"
#include "render/cell.h"

namespace kerfbook::render {
namespace {

std::string one_form(const std::string& digits, const Style& style) {
  std::string out;
  for (const char c : digits) {
    if ((c >= '0' && c <= '9') || c == '-') out += c;
    if (c == style.currency.decimal_mark) out += '.';
  }
  if (out.find('.') != std::string::npos) {
    out.erase(out.find_last_not_of('0') + 1);
    if (out.ends_with('.')) out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

std::string one_blank(const std::string& words) {
  return join(split_words(words), " ");
}

bool is_day(const std::string& day) {
  const auto marks = [&](char mark, std::size_t first, std::size_t second) {
    return day.size() == 10 && day[first] == mark && day[second] == mark;
  };
  return marks('-', 4, 7) || marks('/', 2, 5) || marks('.', 2, 5);
}

std::string iso(const std::string& day) {
  if (!is_day(day) || day[4] == '-') return day;
  const auto month_first = day[2] == '/';
  return day.substr(6) + "-" + day.substr(month_first ? 0 : 3, 2) + "-" + day.substr(month_first ? 3 : 0, 2);
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
  return !line.empty() && line.find_first_not_of("- ") == std::string_view::npos;
}

/// Goes down the lines of a text, a table at a time. On a narrow screen a table goes on below itself, in blocks that
/// begin with the columns that head its lines.
class TextReader {
 public:
  explicit TextReader(const std::string& text) : lines_(split_lines(text)) {}

  Figures read(const Table& table) {
    find(table);
    if (table.rows.empty()) {
      if (here() != one_line(table.when_empty)) fail(table, "does not say that it is empty");
      ++at_;
      return {};
    }
    Figures out = read_block(table);
    while (goes_on(out)) append(table, out, read_block(table));
    if (!table.grid) leave_shown(table, out);
    return out;
  }

 private:
  [[nodiscard]] std::string_view here() const {
    return at_ < lines_.size() ? lines_[at_] : std::string_view();
  }
  [[noreturn]] static void fail(const Table& table, const std::string& what) {
    throw std::runtime_error("text: table " + table.name + " " + what);
  }

  /// A table begins after an empty line, with its title when it has one.
  void find(const Table& table) {
    const std::string title = one_line(table.title);
    for (; at_ < lines_.size(); ++at_) {
      if (!lines_[at_].empty() || at_ + 1 == lines_.size()) continue;
      if (!title.empty() && lines_[at_ + 1] != title) continue;
      at_ += title.empty() ? 1 : 2;
      return;
    }
    fail(table, "is not there");
  }

  /// Below a table stand an empty line, words, or nothing more.
  [[nodiscard]] bool ends(const Table& table) const {
    const auto begins = [&](const std::string& note) {
      return here().starts_with(one_line(note).substr(0, 20));
    };
    return here().empty() || begins(kStruckNote) ||
           std::any_of(table.notes.begin(), table.notes.end(), begins);
  }

  Figures read_block(const Table& table) {
    std::size_t rule = at_;
    while (rule < lines_.size() && !is_rule(lines_[rule])) ++rule;
    if (rule == lines_.size()) fail(table, "has no ruled heading");
    const auto places = spans(lines_[rule]);
    const auto cells = [&] {
      std::vector<std::string> out;
      for (const auto& place : places) out.push_back(between(here(), place));
      return out;
    };
    Figures out;
    out.headings = headings(at_, rule);
    for (at_ = rule + 1; !ends(table) && here() != lines_[rule]; ++at_) out.rows.push_back(cells());
    if (here() != lines_[rule]) return out;
    for (++at_; !ends(table); ++at_) out.feet.push_back(cells());
    return out;
  }

  /// The words over each column, from the lines above a rule.
  [[nodiscard]] std::vector<std::string> headings(std::size_t from, std::size_t rule) const {
    std::vector<std::string> out;
    for (const auto& place : spans(lines_[rule])) {
      std::string words;
      for (std::size_t line = from; line < rule; ++line) words += between(lines_[line], place) + " ";
      out.push_back(one_blank(words));
    }
    return out;
  }

  /// Whether an empty line is followed by a block that begins with the same column; then stands at it.
  bool goes_on(const Figures& so_far) {
    if (!here().empty()) return false;
    std::size_t rule = at_ + 1;
    while (rule < lines_.size() && !lines_[rule].empty() && !is_rule(lines_[rule])) ++rule;
    if (rule >= lines_.size() || !is_rule(lines_[rule])) return false;
    if (headings(at_ + 1, rule).front() != so_far.headings.front()) return false;
    ++at_;
    return true;
  }

  static void append(const Table& table, Figures& out, const Figures& more) {
    std::size_t known = 0;
    while (known + 1 < more.headings.size() && more.headings[known] == out.headings[known]) ++known;
    const auto add = [&](std::vector<std::string>& to, const std::vector<std::string>& from) {
      to.insert(to.end(), from.begin() + static_cast<std::ptrdiff_t>(known), from.end());
    };
    if (more.rows.size() != out.rows.size() || more.feet.size() != out.feet.size())
      fail(table, "goes on below with other lines");
    add(out.headings, more.headings);
    for (std::size_t i = 0; i < out.rows.size(); ++i) add(out.rows[i], more.rows[i]);
    for (std::size_t i = 0; i < out.feet.size(); ++i) add(out.feet[i], more.feet[i]);
  }

  /// After the columns may come one that says which lines are struck, and one of bars.
  static void leave_shown(const Table& table, Figures& out) {
    const std::size_t columns = shown_columns(table).size();
    if (out.headings.size() < columns) fail(table, "has fewer columns ruled off than it shows");
    for (auto& row : out.rows) {
      out.struck.push_back(row.size() > columns && row[columns] == "struck");
      row.resize(columns);
    }
    for (auto& foot : out.feet) foot.resize(columns);
    out.headings.resize(columns);
  }

  std::vector<std::string_view> lines_;
  std::size_t at_ = 0;
};

std::string word_of(const nlohmann::json& value) {
  if (value.is_null()) return "";
  if (value.is_string()) return value.get<std::string>();
  return value.is_number_float() ? fmt::format("{:.6f}", value.get<double>()) : value.dump();
}

/// Cells made canonical: of a plain table by their columns, of a grid by their looks.
void make_canonical(Figures& figures, const Table& table, bool long_form, const Style& style = {}) {
  const auto columns = shown_columns(table);
  const auto cell = [&](const std::string& words, std::size_t i) {
    return long_form || !table.grid ? canonical(words, table.columns[columns[i]], style)
                                    : canonical(words, style);
  };
  if (table.grid && !long_form) figures.headings = canonical_heads(figures.headings, style);
  for (auto& row : figures.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) row[i] = cell(row[i], i);
  }
  for (auto& foot : figures.feet) {
    for (std::size_t i = 0; i < foot.size(); ++i) {
      const bool label = (long_form || !table.grid) && foot[i] == "Total" &&
                         table.columns[columns[i]].total == TotalKind::none;
      foot[i] = label ? "" : cell(foot[i], i);
    }
  }
}

Figures csv_table(const std::vector<std::vector<std::string>>& rows, std::size_t& at,
                  const Document& document, const Table& table) {
  const auto fail = [&](const char* what) { throw std::runtime_error("csv: table " + table.name + what); };
  if (document.tables.size() > 1 && (at >= rows.size() || rows[at++] != std::vector{table.name}))
    fail(" has no line with its name");
  if (at >= rows.size()) fail(" has no header");
  Figures out;
  out.headings = rows[at++];
  const bool struck = out.headings.size() > shown_columns(table).size() && out.headings.back() == "struck";
  if (struck) out.headings.pop_back();
  for (; at < rows.size() && rows[at] != std::vector<std::string>{""}; ++at) {
    out.rows.push_back(rows[at]);
    out.struck.push_back(struck && rows[at].back() == "struck");
    if (struck) out.rows.back().pop_back();
    if (out.rows.back().size() != out.headings.size()) fail(" has a row of another length than its header");
  }
  ++at;
  return out;
}

Figures json_table(const nlohmann::json& read) {
  Figures out;
  for (const auto& column : read.at("columns")) out.headings.push_back(column.at("name"));
  for (const auto& row : read.at("rows")) {
    auto& cells = out.rows.emplace_back();
    for (const auto& name : out.headings) cells.push_back(word_of(row.at(name)));
    out.struck.push_back(row.value("struck", false));
  }
  if (read.at("totals").empty()) return out;
  auto& foot = out.feet.emplace_back();
  for (const auto& name : out.headings)
    foot.push_back(word_of(read.at("totals").value(name, nlohmann::json())));
  return out;
}

}  // namespace

std::string canonical(const std::string& shown, const Column& column, const Style& style) {
  if (shown == "-" || shown.empty()) return "";
  if (column.kind == ColumnKind::text) return one_blank(shown);
  return column.kind == ColumnKind::day ? iso(shown) : one_form(shown, style);
}

std::string canonical(const std::string& shown, const Style& style) {
  if (shown == "-" || shown.empty()) return "";
  if (is_day(shown)) return iso(shown);
  const bool number = shown.find_first_not_of("0123456789,.+-") == std::string::npos;
  return number ? one_form(shown, style) : one_blank(shown);
}

std::vector<std::string> canonical_heads(std::vector<std::string> headings, const Style& style) {
  for (auto& heading : headings) {
    auto words = split_words(heading);
    if (!words.empty() && words.front() != "-") words.front() = canonical(words.front(), style);
    heading = join(words, " ");
  }
  return headings;
}

Rational number_of(const std::string& cell) {
  return cell.empty() ? Rational() : *read_decimal(cell, 15);
}

std::string heading_words(const Column& column) {
  return one_blank(heading_of(column) + " " + column.unit);
}

std::vector<std::string> Figures::totals() const {
  return feet.empty() ? std::vector<std::string>(headings.size()) : feet.front();
}

Figures figures_of(const Table& table) {
  Figures out;
  const auto columns = shown_columns(table);
  const auto cells_of = [&](const std::vector<Cell>& cells) {
    std::vector<std::string> words;
    for (const std::size_t i : columns) words.push_back(plain_cell(cells[i]));
    return words;
  };
  for (const std::size_t i : columns) out.headings.push_back(table.columns[i].name);
  for (const Row& row : table.rows) {
    out.rows.push_back(cells_of(row.cells));
    out.struck.push_back(row.struck);
  }
  if (!table.totals.empty()) out.feet.push_back(cells_of(table.totals));
  make_canonical(out, table, true);
  return out;
}

std::vector<Figures> from_text(const std::string& text, const Document& document) {
  std::vector<Figures> out;
  TextReader reader(text);
  for (const Table& table : document.tables) {
    out.push_back(reader.read(table));
    out.back().struck.resize(out.back().rows.size());
    make_canonical(out.back(), table, false, document.style);
  }
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

std::vector<Figures> from_csv(const std::string& csv, const Document& document) {
  auto rows = read_csv(csv);
  for (auto& row : rows)
    for (std::string& field : row)  // the mark that keeps text from being a formula
      if (field.size() > 2 && field[0] == '\'' &&
          std::string_view("=+-@").find(field[1]) != std::string_view::npos)
        field.erase(0, 1);
  std::size_t at = 0;
  std::vector<Figures> out;
  for (const Table& table : document.tables) {
    out.push_back(csv_table(rows, at, document, table));
    make_canonical(out.back(), table, true);
  }
  if (at < rows.size()) throw std::runtime_error("csv: more lines than tables");
  return out;
}

std::vector<Figures> from_json(const std::string& json, const Document& document) {
  const auto read = nlohmann::json::parse(json);
  std::vector<Figures> out;
  for (std::size_t i = 0; i < document.tables.size(); ++i) {
    const auto& table = document.tables.size() > 1 ? read.at("tables").at(i) : read;
    out.push_back(json_table(table));
    make_canonical(out.back(), document.tables[i], true);
  }
  return out;
}

}  // namespace kerfbook::render
