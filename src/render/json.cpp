// json.cpp -- json for scripts. The keys are stable: report, title, columns, rows, totals; of the first table when
// there are several, and then `tables` carries every table with its name and title. `sums` and `notes` of a table,
// `head` of a paper, `lead` (the words above the tables) and `foot` come last, when there are any. Numbers are written digit for digit, with
// up to six decimals, so no binary fraction creeps in.
#include <nlohmann/json.hpp>
#include <string>

#include "base/text.h"
#include "render/cell.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

std::string quoted(const std::string& text) {
  return nlohmann::json(fit_to_print(text)).dump();
}

std::string value(const Cell& cell) {
  if (is_absent(cell)) return "null";
  return is_number(cell) ? plain_cell(cell) : quoted(plain_cell(cell));
}

/// Members or elements between brackets, one a line; `[]` when there are none.
std::string block(char open, const std::vector<std::string>& items, char close, const std::string& indent) {
  if (items.empty()) return std::string{open, close};
  std::string out(1, open);
  for (std::size_t i = 0; i < items.size(); ++i) out += (i > 0 ? ",\n" : "\n") + indent + "  " + items[i];
  return out + "\n" + indent + close;
}

/// Plain: m3. Money has its sign for a unit: in json it stands in no cell.
std::string unit_of(const Column& column, const Style& style) {
  return column.unit.empty() && column.kind == ColumnKind::money ? style.currency.sign
                                                                 : plain_unit(column.unit);
}

std::string columns(const Table& table, const Style& style, const std::string& indent) {
  std::vector<std::string> items;
  for (const std::size_t i : shown_columns(table)) {
    const Column& column = table.columns[i];
    items.push_back("{\"name\": " + quoted(column.name) + ", \"unit\": " + quoted(unit_of(column, style)) +
                    "}");
  }
  return block('[', items, ']', indent);
}

std::string rows(const Table& table, const std::string& indent) {
  const auto shown = shown_columns(table);
  std::vector<std::string> names;
  for (const std::size_t i : shown) names.push_back(quoted(table.columns[i].name) + ": ");
  std::vector<std::string> items;
  for (const Row& row : table.rows) {
    std::string item;
    for (std::size_t i = 0; i < shown.size(); ++i)
      item += (i > 0 ? ", " : "") + names[i] + value(row.cells[shown[i]]);
    if (row.struck) item += ", \"struck\": true";
    items.push_back("{" + item + "}");
  }
  return block('[', items, ']', indent);
}

std::string totals(const Table& table) {
  std::string out;
  for (const std::size_t i : shown_columns(table)) {
    if (table.totals.empty() || table.columns[i].total == TotalKind::none) continue;
    out += (out.empty() ? "" : ", ") + quoted(table.columns[i].name) + ": " + value(table.totals[i]);
  }
  return "{" + out + "}";
}

std::string strings(const std::vector<std::string>& texts, const std::string& indent) {
  std::vector<std::string> items;
  for (const auto& text : texts) items.push_back(quoted(text));
  return block('[', items, ']', indent);
}

std::string labelled(const std::string& label, const Cell& cell) {
  return "{\"label\": " + quoted(label) + ", \"value\": " + value(cell) + "}";
}

std::string sums(const Table& table, const std::string& indent) {
  std::vector<std::string> items;
  for (const SumLine& sum : table.sums) items.push_back(labelled(sum.label, sum.value));
  return block('[', items, ']', indent);
}

std::string paper_head(const Document& document) {
  std::vector<std::string> items;
  for (const HeadFact& fact : document.head) items.push_back(labelled(fact.label, fact.value));
  return block('[', items, ']', "  ");
}

/// The members columns, rows and totals; then sums and notes when there are any.
void add_members(const Table& table, const Style& style, const std::string& indent,
                 std::vector<std::string>& members) {
  members.push_back("\"columns\": " + columns(table, style, indent));
  members.push_back("\"rows\": " + rows(table, indent));
  members.push_back("\"totals\": " + totals(table));
  if (!table.sums.empty()) members.push_back("\"sums\": " + sums(table, indent));
  if (!table.notes.empty()) members.push_back("\"notes\": " + strings(table.notes, indent));
}

}  // namespace

std::string render_json(const Document& document) {
  std::vector<std::string> members = {"\"report\": " + quoted(document.name),
                                      "\"title\": " + quoted(document.title)};
  add_members(document.tables.empty() ? Table{} : document.tables.front(), document.style, "  ", members);
  if (document.tables.size() > 1) {
    std::vector<std::string> items;
    for (const Table& table : document.tables) {
      std::vector<std::string> inner = {"\"name\": " + quoted(table.name),
                                        "\"title\": " + quoted(table.title)};
      add_members(table, document.style, "      ", inner);
      items.push_back(block('{', inner, '}', "    "));
    }
    members.push_back("\"tables\": " + block('[', items, ']', "  "));
  }
  if (!document.head.empty()) members.push_back("\"head\": " + paper_head(document));
  if (!document.lead.empty()) members.push_back("\"lead\": " + strings(document.lead, "  "));
  if (!document.foot.empty()) members.push_back("\"foot\": " + strings(document.foot, "  "));
  return block('{', members, '}', "") + "\n";
}

}  // namespace kerfbook::render
