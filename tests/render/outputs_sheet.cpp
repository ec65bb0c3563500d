// outputs_sheet.cpp -- a report's tables found again on the worksheets of its workbook.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "base/text.h"
#include "render/cell.h"
#include "render/outputs.h"

namespace kerfbook::render {
namespace {

std::string one_blank(const std::string& words) {
  return join(split_words(words), " ");
}

std::vector<std::string> words_of_row(const std::map<int, SheetCell>& row) {
  std::vector<std::string> out;
  for (const auto& [column, cell] : row) out.push_back(one_blank(cell.value));
  return out;
}

std::vector<std::string> shown_headings(const Table& table) {
  std::vector<std::string> out;
  for (const std::size_t i : shown_columns(table)) out.push_back(heading_words(table.columns[i]));
  return out;
}

bool begins_with(const std::vector<std::string>& words, const std::vector<std::string>& first) {
  return words.size() >= first.size() && std::equal(first.begin(), first.end(), words.begin());
}

int last_row(const Sheet& sheet) {
  return sheet.cells.empty() ? -1 : sheet.cells.rbegin()->first.first;
}

/// Goes down the worksheets of a workbook, a table at a time.
class SheetReader {
 public:
  explicit SheetReader(const Sheet& sheet) : sheet_(sheet) {}

  Place read(const Table& table) {
    Place place;
    place.sheet = &sheet_;
    place.of.assign(table.columns.size(), -1);
    if (table.rows.empty()) {
      const int said = find({one_blank(table.when_empty)});
      if (said < 0) fail(table, "does not say that it is empty");
      at_ = said + 1;
    } else if (table.grid) {
      read_grid(table, place);
    } else {
      read_plain(table, place);
    }
    return place;
  }

 private:
  [[noreturn]] static void fail(const Table& table, const std::string& what) {
    throw std::runtime_error("xlsx: table " + table.name + " " + what);
  }

  /// The next row that begins with these words.
  [[nodiscard]] int find(const std::vector<std::string>& words) const {
    for (int row = at_; row <= last_row(sheet_); ++row) {
      if (begins_with(words_of_row(sheet_.row(row)), words)) return row;
    }
    return -1;
  }

  void read_plain(const Table& table, Place& place) {
    place.head = find(shown_headings(table));
    if (place.head < 0) fail(table, "has no row with its headings");
    const auto columns = shown_columns(table);
    std::size_t met = 0;
    for (const auto& [at, cell] : sheet_.row(place.head)) {
      if (met < columns.size()) {
        place.across.push_back(at);
        place.of[columns[met++]] = at;
      } else {
        name_hidden(table, one_blank(cell.value), at, place);
      }
    }
    at_ = place.head + 1;
    for (std::size_t i = 0; i < table.rows.size(); ++i) place.rows.push_back(at_++);
    if (!table.totals.empty()) place.feet.push_back(at_++);
    if (!sheet_.row(at_).empty()) fail(table, "has more rows than it should");
  }

  static void name_hidden(const Table& table, const std::string& heading, int at, Place& place) {
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i].hidden && heading_words(table.columns[i]) == heading) place.of[i] = at;
    }
  }

  /// A grid's headings begin with what heads its lines; its feet begin at the line named as what is counted.
  void read_grid(const Table& table, Place& place) {
    const auto words_of = [&](std::size_t column) {
      const Column& one = table.columns[column];
      return one_blank(heading_of(one) + (one.unit.empty() ? "" : ", " + one.unit));
    };
    const std::string counted = heading_words(table.columns[table.grid->cell]);
    for (int row = at_; row <= last_row(sheet_) && place.head < 0; ++row) {
      const auto words = words_of_row(sheet_.row(row));
      if (std::find(words.begin(), words.end(), counted) != words.end()) place.head = row;
    }
    if (place.head < 0) fail(table, "has no row with its headings");
    for (const auto& [at, cell] : sheet_.row(place.head)) place.across.push_back(at);
    for (at_ = place.head + 1; sheet_.at(at_, 0).value != words_of(table.grid->cell); ++at_) {
      if (at_ > last_row(sheet_)) fail(table, "has no foot");
      place.rows.push_back(at_);
    }
    while (!sheet_.row(at_).empty()) place.feet.push_back(at_++);
  }

  const Sheet& sheet_;
  int at_ = 0;
};

std::string cell_words(const Sheet& sheet, int row, int at, bool day) {
  const SheetCell& cell = sheet.at(row, at);
  if (cell.text || cell.value.empty()) return cell.value;
  return day ? write_day(Day{std::stoi(cell.value) - 25569}) : shown_in_sheet(cell);
}

}  // namespace

const SheetCell& Sheet::at(int row, int column) const {
  static const SheetCell nothing;
  const auto found = cells.find({row, column});
  return found == cells.end() ? nothing : found->second;
}

int Sheet::row_of(const std::string& words) const {
  for (const auto& [place, cell] : cells) {
    if (place.second == 0 && cell.value == words) return place.first;
  }
  return -1;
}

std::map<int, SheetCell> Sheet::row(int at) const {
  std::map<int, SheetCell> out;
  for (auto cell = cells.lower_bound({at, 0}); cell != cells.end() && cell->first.first == at; ++cell) {
    if (!cell->second.value.empty() || !cell->second.formula.empty())
      out.emplace(cell->first.second, cell->second);
  }
  return out;
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

std::string number_in_sheet(const std::string& stored) {
  constexpr std::size_t kMostDecimals = 15;
  char digits[64];
  const double value = std::strtod(stored.c_str(), nullptr);
  std::snprintf(digits, sizeof digits, "%.15g", value);  // as many as a decimal keeps through a double
  const std::string_view all(digits);
  const std::size_t point = all.find('.');
  if (all.find('e') != std::string_view::npos ||
      (point != std::string_view::npos && all.size() - point - 1 > kMostDecimals))
    std::snprintf(digits, sizeof digits, "%.12f", value);
  Column number;
  number.kind = ColumnKind::decimal;
  return canonical(digits, number);
}

std::string shown_in_sheet(const SheetCell& cell) {
  const std::string number = number_in_sheet(cell.value);
  const std::string format = cell.format.substr(0, cell.format.find(';'));
  if (format.find('0') == std::string::npos) return number;  // the number as it is
  const std::size_t point = format.rfind('.');
  const std::size_t end = point == std::string::npos ? 0 : format.find_first_not_of('0', point + 1);
  const auto places = point == std::string::npos ? 0 : std::min(end, format.size()) - point - 1;
  const int shown_places = static_cast<int>(places);
  Column column;
  column.kind = ColumnKind::decimal;
  return canonical(plain(shown(number_of(number), shown_places)), column);
}

double drawn(const Rational& value) {
  return static_cast<double>(static_cast<long double>(value.num()) / static_cast<long double>(value.den()));
}

bool near(const Rational& a, const Rational& b) {
  const double one = drawn(a);
  const double other = drawn(b);
  return std::abs(one - other) <= 1e-9 * std::max({1.0, std::abs(one), std::abs(other)});
}

std::vector<Place> places_in(const std::vector<Sheet>& sheets, const Document& document) {
  std::vector<Place> out;
  std::size_t next = 0;
  std::optional<SheetReader> reader;
  for (const Table& table : document.tables) {
    if (!reader || !table.follows) {
      if (next >= sheets.size()) throw std::runtime_error("xlsx: fewer sheets than tables that begin one");
      reader.emplace(sheets[next++]);
    }
    out.push_back(reader->read(table));
  }
  if (next < sheets.size()) throw std::runtime_error("xlsx: more sheets than tables that begin one");
  return out;
}

Figures from_sheet(const Place& place, const Table& table, const Style& style) {
  Figures out;
  if (place.head < 0) return out;
  const Sheet& sheet = *place.sheet;
  const auto columns = shown_columns(table);
  const auto cells_of = [&](int row, bool foot) {
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < place.across.size(); ++i) {
      const Column* const column = table.grid ? nullptr : &table.columns[columns[i]];
      const bool day = column != nullptr && column->kind == ColumnKind::day;
      const std::string words = cell_words(sheet, row, place.across[i], day);
      const bool label = foot && column != nullptr && words == "Total" && column->total == TotalKind::none;
      cells.push_back(label ? "" : column == nullptr ? canonical(words) : canonical(words, *column));
    }
    return cells;
  };
  for (const int at : place.across) out.headings.push_back(one_blank(sheet.at(place.head, at).value));
  if (table.grid) out.headings = canonical_heads(out.headings, style);  // the lengths over a grid are words
  for (const int row : place.rows) {
    out.rows.push_back(cells_of(row, false));
    out.struck.push_back(sheet.at(row, place.across.front()).struck);
  }
  for (const int row : place.feet) out.feet.push_back(cells_of(row, true));
  return out;
}

}  // namespace kerfbook::render
