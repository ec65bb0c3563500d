#include "tables.h"

#include <algorithm>
#include <optional>

namespace reckoning {
namespace {

constexpr std::int64_t kMillion = 1'000'000;

std::string shown(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* value = std::get_if<Fraction>(&cell)) return value->text();
  if (const auto* value = std::get_if<Shared>(&cell)) return value->value.text();
  return std::holds_alternative<Idle>(cell) ? "0 or a dash" : "a dash";
}

std::string shown(const Json& value) {
  return value.is_null() ? "a dash" : value.text;
}

bool agrees(const Cell& expected, const Json& actual) {
  if (const auto* text = std::get_if<std::string>(&expected))
    return actual.kind == Json::Kind::text && actual.text == *text;
  if (const auto* value = std::get_if<Fraction>(&expected))
    return actual.kind == Json::Kind::number && is_nearest(actual.text, *value);
  if (const auto* value = std::get_if<Shared>(&expected)) {
    if (actual.kind != Json::Kind::number) return value->value.is_zero() && actual.is_null();
    const Fraction off = fraction_of(actual.text) - value->value;
    const Fraction most = (value->value + 2) / Fraction(kMillion);
    return is_nearest(actual.text, value->value) || (!(most < off) && !(most < -off));
  }
  if (std::holds_alternative<Idle>(expected))
    return actual.is_null() || (actual.kind == Json::Kind::number && fraction_of(actual.text).is_zero());
  return actual.is_null();
}

std::optional<Fraction> figure_in(const Row& row, const std::string& column) {
  const auto at = row.find(column);
  if (at == row.end()) return std::nullopt;
  if (const auto* value = std::get_if<Fraction>(&at->second)) return *value;
  if (const auto* value = std::get_if<Shared>(&at->second)) return value->value;
  if (std::holds_alternative<Idle>(at->second)) return Fraction(0);
  return std::nullopt;
}

bool is_shared(const Table& table, const std::string& column) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const Row& row) {
    const auto at = row.find(column);
    return at != row.end() && std::holds_alternative<Shared>(at->second);
  });
}

Cell quotient(const Table& table, const Ratio& ratio, const std::optional<Fraction>& of,
              const std::optional<Fraction>& over) {
  if (!of || !over || over->is_zero()) return std::monostate();
  if (of->is_zero() && ratio.less.is_zero()) return Idle();
  const Fraction value = *of / *over * ratio.times - ratio.less;
  return is_shared(table, ratio.over) ? Cell(Shared{value}) : Cell(value);
}

std::optional<Fraction> sum_of(const Table& table, const std::string& column) {
  std::optional<Fraction> sum;
  for (const auto& row : table.rows)
    if (const auto value = figure_in(row, column)) sum = sum.value_or(Fraction(0)) + *value;
  return sum;
}

const Json& table_in(const Json& answer, const std::string& name) {
  for (const auto& table : answer.at("tables").list)
    if (name.empty() || table.at("name").text == name) return table;
  return answer;
}

std::string key_words(const Table& table, const Row& row) {
  std::string words;
  for (const auto& key : table.keys) words += (words.empty() ? "" : ", ") + shown(row.at(key));
  return words.empty() ? "the row" : words;
}

bool has_column(const Json& table, const std::string& name) {
  return std::any_of(table.at("columns").list.begin(), table.at("columns").list.end(),
                     [&](const Json& column) { return column.at("name").text == name; });
}

/// Where all lengths of a table are metric its column is called so, and is in metres.
void call_metres_so(Table& expected, const Json& actual) {
  const auto metres = [&](const std::string& column) {
    return column.ends_with("_ft") && !has_column(actual, column) ? column.substr(0, column.size() - 2) + "m"
                                                                  : column;
  };
  for (auto& key : expected.keys) key = metres(key);
  for (auto& row : expected.rows) {
    Row renamed;
    for (const auto& [column, cell] : row) {
      const std::string name = metres(column);
      const auto* feet = name == column ? nullptr : std::get_if<Fraction>(&cell);
      renamed[name] = feet == nullptr ? cell : *feet * Fraction(3'048, 10'000);
    }
    row = renamed;
  }
}

}  // namespace

Cell text_or_dash(const std::string& text) {
  return text.empty() ? Cell() : Cell(text);
}
Cell figure(const Fraction& value) {
  return value;
}
Cell idle_or(const Fraction& value) {
  return value.is_zero() ? Cell(Idle()) : Cell(value);
}
Cell dash_if_zero(const Fraction& value) {
  return value.is_zero() ? Cell() : Cell(value);
}

Cell shared(const Fraction& value) {
  return Shared{value};
}

void add_to(Cell& cell, const Fraction& more) {
  const auto* value = std::get_if<Fraction>(&cell);
  cell = value == nullptr ? more : *value + more;
}

bool is_nearest(const std::string& printed, const Fraction& exact) {
  return fraction_of(printed) == exact.nearest(kMillion);
}

std::vector<std::string> differences(Table expected, const Json& answer) {
  std::vector<std::string> found;
  const Json& actual = table_in(answer, expected.name);
  call_metres_so(expected, actual);
  for (auto& row : expected.rows)
    for (const auto& [column, ratio] : expected.ratios)
      row[column] = quotient(expected, ratio, figure_in(row, ratio.of), figure_in(row, ratio.over));

  std::vector<const Json*> left;
  for (const auto& row : actual.at("rows").list) left.push_back(&row);
  for (const auto& row : expected.rows) {
    const auto same = [&](const Json* candidate) {
      return std::all_of(expected.keys.begin(), expected.keys.end(),
                         [&](const std::string& key) { return agrees(row.at(key), candidate->at(key)); });
    };
    const auto at = std::find_if(left.begin(), left.end(), same);
    if (at == left.end()) {
      found.push_back("no row " + key_words(expected, row));
      continue;
    }
    for (const auto& [column, cell] : row) {
      if (!has_column(actual, column) || agrees(cell, (*at)->at(column))) continue;
      found.push_back(key_words(expected, row) + ": " + column + " is " + shown((*at)->at(column)) +
                      ", reckoned " + shown(cell));
    }
    left.erase(at);
  }
  for (const Json* row : left) {
    std::string words;
    for (std::size_t i = 0; i < row->names.size(); ++i)
      words += " " + row->names[i] + "=" + shown(row->list[i]);
    found.push_back("a row that is not reckoned:" + words);
  }

  if (!expected.with_totals) return found;
  const auto check_total = [&](const std::string& column, const Cell& total) {
    const Json& printed = actual.at("totals").at(column);
    if (actual.at("rows").list.empty() || agrees(total, printed)) return;
    found.push_back("total of " + column + " is " + shown(printed) + ", reckoned " + shown(total));
  };
  for (const auto& column : expected.sums) {
    const auto sum = sum_of(expected, column);
    if (sum && is_shared(expected, column))
      check_total(column, Shared{*sum});
    else
      check_total(column, !sum ? Cell() : idle_or(*sum));
  }
  for (const auto& [column, ratio] : expected.ratios) {
    if (!actual.at("totals").at(column).is_null() || !ratio.once) {
      const auto over = ratio.once && !expected.rows.empty() ? figure_in(expected.rows.front(), ratio.over)
                                                             : sum_of(expected, ratio.over);
      check_total(column, quotient(expected, ratio, sum_of(expected, ratio.of), over));
    }
  }
  return found;
}

std::string printed(const Json& answer, const std::string& table, const std::string& column, const Row& key) {
  const Json& actual = table_in(answer, table);
  if (key.empty()) return actual.at("totals").at(column).text;
  for (const auto& row : actual.at("rows").list)
    if (std::all_of(key.begin(), key.end(),
                    [&](const auto& one) { return agrees(one.second, row.at(one.first)); }))
      return row.at(column).text;
  return "";
}

}  // namespace reckoning
