// document_json.cpp -- a document as it was handed over, as JSON and back: every word, every figure as shown, and
// beside it the exact one where that is another.
#include <array>
#include <stdexcept>

#include "paper/paper_json.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Column;
using render::ColumnKind;
using render::Document;
using render::Figure;
using render::Table;

constexpr std::array<std::string_view, 5> kKinds{"text", "day", "count", "decimal", "money"};
constexpr std::array<std::string_view, 3> kOrders{"ymd", "mdy", "dmy"};

template <std::size_t N>
std::size_t place_of(const std::array<std::string_view, N>& words, const Json& json) {
  const std::string word = json.get<std::string>();
  for (std::size_t i = 0; i < N; ++i)
    if (words[i] == word) return i;
  throw std::invalid_argument("'" + word + "' is not known");
}

Json frozen_cell(const Cell& cell) {
  if (const auto* count = std::get_if<std::int64_t>(&cell)) return *count;
  if (const auto* figure = std::get_if<Figure>(&cell)) {
    if (figure->is_time()) return Json{{"minutes", (figure->exact() * Rational(kMinutesPerHour)).rounded(0)}};
    Json json{{"decimal", frozen(figure->shown())}};
    if (Figure(figure->shown()) != *figure) json["exact"] = frozen(figure->exact());
    return json;
  }
  if (const auto* day = std::get_if<Day>(&cell)) return Json{{"day", frozen(*day)}};
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return nullptr;
}

Cell thaw_cell(const Json& json) {
  if (json.is_null()) return std::monostate{};
  if (json.is_number()) return json.get<std::int64_t>();
  if (json.is_string()) return json.get<std::string>();
  if (json.contains("day")) return thaw_day(json.at("day"));
  if (json.contains("minutes")) return Figure::time(json.at("minutes").get<std::int64_t>());
  const Decimal shown = thaw_decimal(json.at("decimal"));
  if (!json.contains("exact")) return shown;
  const Figure figure(thaw_rational(json.at("exact")), shown.places);
  if (figure.shown() != shown) throw std::invalid_argument("a figure is not shown as it is");
  return figure;
}

Json frozen_cells(const std::vector<Cell>& cells) {
  Json list = Json::array();
  for (const Cell& cell : cells) list.push_back(frozen_cell(cell));
  return list;
}

Json frozen_column(const Column& column) {
  return Json{{"name", column.name},       {"heading", column.heading},
              {"unit", column.unit},       {"kind", kKinds[static_cast<std::size_t>(column.kind)]},
              {"places", column.places},   {"sum", column.total == render::TotalKind::sum},
              {"width", column.width_hint}};
}

Column thaw_column(const Json& json) {
  Column column;
  column.name = json.at("name").get<std::string>();
  column.heading = json.at("heading").get<std::string>();
  column.unit = json.at("unit").get<std::string>();
  column.kind = static_cast<ColumnKind>(place_of(kKinds, json.at("kind")));
  column.places = thaw_small(json.at("places"));
  column.total = json.at("sum").get<bool>() ? render::TotalKind::sum : render::TotalKind::none;
  column.width_hint = thaw_small(json.at("width"));
  return column;
}

Json frozen_table(const Table& table) {
  Json columns = Json::array();
  for (const Column& column : table.columns) columns.push_back(frozen_column(column));
  Json rows = Json::array();
  for (const render::Row& row : table.rows)
    rows.push_back(Json{{"cells", frozen_cells(row.cells)}, {"struck", row.struck}});
  Json sums = Json::array();
  for (const render::SumLine& sum : table.sums)
    sums.push_back(Json{{"label", sum.label}, {"value", frozen_cell(sum.value)}, {"strong", sum.strong}});
  Json json{{"name", table.name},
            {"title", table.title},
            {"columns", columns},
            {"rows", rows},
            {"totals", frozen_cells(table.totals)},
            {"sums", sums},
            {"ruled", table.ruled},
            {"new_page", table.new_page},
            {"notes", table.notes},
            {"when_empty", table.when_empty}};
  if (table.grid)
    json["grid"] = Json{{"row_keys", table.grid->row_keys},
                        {"column_key", table.grid->column_key},
                        {"cell", table.grid->cell},
                        {"row_sums", table.grid->row_sums}};
  return json;
}

Table thaw_table(const Json& json) {
  Table table;
  table.name = json.at("name").get<std::string>();
  table.title = json.at("title").get<std::string>();
  for (const Json& column : json.at("columns")) table.columns.push_back(thaw_column(column));
  for (const Json& row : json.at("rows"))
    table.rows.push_back({thaw_list(row.at("cells"), thaw_cell), row.at("struck").get<bool>()});
  table.totals = thaw_list(json.at("totals"), thaw_cell);
  for (const Json& sum : json.at("sums"))
    table.sums.push_back(
        {sum.at("label").get<std::string>(), thaw_cell(sum.at("value")), sum.at("strong").get<bool>()});
  table.ruled = json.at("ruled").get<bool>();
  table.new_page = json.at("new_page").get<bool>();
  table.notes = json.at("notes").get<std::vector<std::string>>();
  table.when_empty = json.at("when_empty").get<std::string>();
  if (json.contains("grid")) {
    const Json& grid = json.at("grid");
    table.grid = render::Grid{grid.at("row_keys").get<std::vector<std::size_t>>(),
                              grid.at("column_key").get<std::size_t>(), grid.at("cell").get<std::size_t>(),
                              grid.at("row_sums").get<std::vector<std::size_t>>()};
  }
  return table;
}

Json frozen_style(const render::Style& style) {
  const measure::Currency& c = style.currency;
  return Json{{"sign", c.sign},
              {"sign_after", c.sign_after},
              {"places", c.places},
              {"decimal_mark", std::string(1, c.decimal_mark)},
              {"thousands", c.thousands == '\0' ? std::string() : std::string(1, c.thousands)},
              {"a4", style.paper == render::PaperSize::a4},
              {"dates", kOrders[static_cast<std::size_t>(style.dates)]}};
}

char one_char(const Json& json) {
  const std::string text = json.get<std::string>();
  return text.empty() ? '\0' : text.front();
}

render::Style thaw_style(const Json& json) {
  render::Style style;
  style.currency = {json.at("sign").get<std::string>(), json.at("sign_after").get<bool>(),
                    thaw_small(json.at("places")), one_char(json.at("decimal_mark")),
                    one_char(json.at("thousands"))};
  style.paper = json.at("a4").get<bool>() ? render::PaperSize::a4 : render::PaperSize::letter;
  style.dates = static_cast<render::DateOrder>(place_of(kOrders, json.at("dates")));
  return style;
}

}  // namespace

Json frozen(const Document& document) {
  Json parties = Json::array();
  for (const auto& party : document.parties)
    parties.push_back(Json{{"heading", party.heading}, {"lines", party.lines}});
  Json head = Json::array();
  for (const auto& fact : document.head)
    head.push_back(Json{{"label", fact.label},
                        {"value", frozen_cell(fact.value)},
                        {"kind", kKinds[static_cast<std::size_t>(fact.kind)]}});
  Json tables = Json::array();
  for (const Table& table : document.tables) tables.push_back(frozen_table(table));
  return Json{{"name", document.name},
              {"title", document.title},
              {"subtitle", document.subtitle},
              {"meaning", document.meaning},
              {"logo", document.logo},
              {"parties", parties},
              {"head", head},
              {"lead", document.lead},
              {"tables", tables},
              {"foot", document.foot},
              {"signatures", document.signatures},
              {"style", frozen_style(document.style)},
              {"made_on", document.made_on}};
}

Document thaw_document(const Json& json) {
  Document document;
  document.name = json.at("name").get<std::string>();
  document.title = json.at("title").get<std::string>();
  document.subtitle = json.at("subtitle").get<std::string>();
  document.meaning = json.at("meaning").get<std::string>();
  document.logo = json.at("logo").get<std::string>();
  for (const Json& party : json.at("parties"))
    document.parties.push_back(
        {party.at("heading").get<std::string>(), party.at("lines").get<std::vector<std::string>>()});
  for (const Json& fact : json.at("head"))
    document.head.push_back({fact.at("label").get<std::string>(), thaw_cell(fact.at("value")),
                             static_cast<ColumnKind>(place_of(kKinds, fact.at("kind")))});
  document.lead = json.at("lead").get<std::vector<std::string>>();
  for (const Json& table : json.at("tables")) document.tables.push_back(thaw_table(table));
  document.foot = json.at("foot").get<std::vector<std::string>>();
  document.signatures = json.at("signatures").get<std::vector<std::string>>();
  document.style = thaw_style(json.at("style"));
  document.made_on = json.at("made_on").get<std::string>();
  return document;
}

}  // namespace kerfbook::billing
