// table_header.cpp -- a table's header against what its SELECT gives: columns, grid, chart.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/text.h"
#include "report/table.h"

namespace kerfbook::report {
namespace {

Diagnostic fault(int line, std::string what, std::string instead) {
  return {Severity::error, {line, 0}, std::move(what), std::move(instead)};
}

std::string did_you_mean(std::string_view name, const std::vector<std::string>& known) {
  const std::string near = nearest(name, known);
  return near.empty() ? "one of " + join(known, ", ") : "did you mean " + near + "?";
}

std::vector<std::string> declared(const TableSpec& spec) {
  std::vector<std::string> names;
  for (const auto& column : spec.columns) names.push_back(column.name);
  return names;
}

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

const ColumnSpec* find_column(const TableSpec& spec, const std::string& name) {
  const auto found = std::find_if(spec.columns.begin(), spec.columns.end(),
                                  [&](const ColumnSpec& c) { return c.name == name; });
  return found == spec.columns.end() ? nullptr : &*found;
}

/// The columns another column speaks of: sides of a ratio, units, metric flags.
void check_references(const TableSpec& spec, const ColumnSpec& column, std::vector<Diagnostic>& found) {
  for (const auto& name : {column.over, column.under, column.unit_from, column.metric_from}) {
    if (name.empty()) continue;
    const ColumnSpec* other = find_column(spec, name);
    if (other == nullptr) {
      found.push_back(fault(column.line,
                            fmt::format("column {} speaks of {}, which is not a column", column.name, name),
                            did_you_mean(name, declared(spec))));
    } else if ((name == column.over || name == column.under) &&
               (is_ratio(other->kind) || !is_number(other->kind))) {
      found.push_back(fault(
          column.line,
          fmt::format("column {} divides by or into {}, a {}", column.name, name, row_of(other->kind).word),
          "two columns that SQL gives as numbers; a ratio of ratios is not worked out"));
    }
  }
}

std::vector<std::string> split_commas(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t comma = text.find(',');
    parts.emplace_back(trim(text.substr(0, comma)));
    if (comma == std::string_view::npos) return parts;
    text.remove_prefix(comma + 1);
  }
}

/// `key=value` words of a grid or chart line; the value may be "quoted".
std::vector<std::pair<std::string, std::string>> settings_in(std::string_view text) {
  std::vector<std::pair<std::string, std::string>> out;
  while (!(text = trim(text)).empty()) {
    std::size_t end = 0;
    bool quoted = false;
    while (end < text.size() && (quoted || text[end] != ' ')) quoted = (text[end++] == '"') != quoted;
    std::string word(text.substr(0, end));
    std::erase(word, '"');
    const std::size_t equals = word.find('=');
    out.emplace_back(word.substr(0, equals), equals == std::string::npos ? "" : word.substr(equals + 1));
    text.remove_prefix(end);
  }
  return out;
}

std::size_t column_at(const TableSpec& spec, const std::string& name, std::string_view of) {
  for (std::size_t i = 0; i < spec.columns.size(); ++i) {
    if (spec.columns[i].name == name) return i;
  }
  throw SqlFault(fmt::format("the {} speaks of {}, which is not a column; {}", of, name,
                             did_you_mean(name, declared(spec))),
                 -1);
}

/// True when the rows do not all have the same cell there.
bool varies(const render::Table& table, std::size_t column) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const render::Row& row) {
    return row.cells[column] != table.rows.front().cells[column];
  });
}

bool has_figures(const render::Table& table, std::size_t column) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const render::Row& row) {
    return !std::holds_alternative<std::monostate>(row.cells[column]);
  });
}

/// The grid with its keys still to be thinned: a key written `job?` heads rows only when it varies.
struct Key {
  std::size_t column;
  bool only_when_varying;
};

}  // namespace

std::vector<Diagnostic> check_columns(const TableSpec& spec, const std::vector<std::string>& names) {
  std::vector<Diagnostic> found;
  std::set<std::string> seen;
  const std::string_view giver = spec.worked ? "worker" : "SELECT";
  for (const auto& column : spec.columns) {
    if (!seen.insert(column.name).second) {
      found.push_back(
          fault(column.line, fmt::format("column {} is declared twice", column.name), "one line a column"));
    }
    if (!is_ratio(column.kind) && !has(names, column.name)) {
      found.push_back(fault(column.line, fmt::format("the {} gives no column {}", giver, column.name),
                            did_you_mean(column.name, names)));
    }
    if (is_ratio(column.kind) && has(names, column.name)) {
      found.push_back(fault(
          column.line,
          fmt::format("column {} is a {}, which SQL must not give", column.name, row_of(column.kind).word),
          "leave it out of the SELECT; the engine works it out from of=A/B"));
    }
    check_references(spec, column, found);
  }
  for (const auto& name : names) {
    if (!has(declared(spec), name)) {
      found.push_back(fault(spec.sql_line,
                            fmt::format("the {} gives a column {} that has no line", giver, name),
                            fmt::format("-- shows: {} KIND \"Heading\"", name)));
    }
  }
  return found;
}

render::Grid read_grid(const TableSpec& spec, const render::Table& table) {
  render::Grid grid;
  std::vector<Key> keys;
  for (const auto& [key, value] : settings_in(spec.grid)) {
    if (key == "rows") {
      for (auto name : split_commas(value)) {
        const bool optional = name.ends_with('?');
        if (optional) name.pop_back();
        keys.push_back({column_at(spec, name, "grid"), optional});
      }
    } else if (key == "column") {
      grid.column_key = column_at(spec, value, "grid");
    } else if (key == "cell") {
      grid.cell = column_at(spec, value, "grid");
    } else if (key == "sums") {
      for (auto name : split_commas(value)) {
        const bool optional = name.ends_with('?');
        if (optional) name.pop_back();
        const std::size_t column = column_at(spec, name, "grid");
        if (!optional || has_figures(table, column)) grid.row_sums.push_back(column);
      }
    } else {
      throw SqlFault(fmt::format("'{}' is not a word of a grid; rows=A,B column=C cell=D sums=D,E", key), -1);
    }
  }
  for (const auto& key : keys) {
    if (!key.only_when_varying || varies(table, key.column)) grid.row_keys.push_back(key.column);
  }
  return grid;
}

render::Chart read_chart(const TableSpec& spec) {
  render::Chart chart;
  for (const auto& [key, value] : settings_in(spec.chart)) {
    if (key == "bar") {
      chart.kind = render::ChartKind::bar;
    } else if (key == "line") {
      chart.kind = render::ChartKind::line;
    } else if (key == "stacked-bar") {
      chart.kind = render::ChartKind::stacked_bar;
    } else if (key == "scatter") {
      chart.kind = render::ChartKind::scatter;
    } else if (key == "trend") {
      chart.trend = true;
    } else if (key == "across") {
      chart.x = column_at(spec, value, "picture");
    } else if (key == "up") {
      for (const auto& name : split_commas(value)) chart.y.push_back(column_at(spec, name, "picture"));
    } else if (key == "title") {
      chart.title = value;
    } else {
      throw SqlFault(fmt::format("'{}' is not a word of a picture; bar, line, stacked-bar or scatter, "
                                 "across=A up=B,C title=\"...\", "
                                 "trend",
                                 key),
                     -1);
    }
  }
  if (chart.y.empty()) throw SqlFault("the picture has nothing to draw; up=COLUMN", -1);
  return chart;
}

}  // namespace kerfbook::report
