// The json of a report, on which the scripts of others stand: its members, its columns' names and units, its values.
// The names of production, overrun and tally are promised; columns may be added to them, none renamed or taken away.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>

#include "demo.h"
#include "render/cell.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

using Json = nlohmann::ordered_json;
using Names = std::vector<std::string>;

struct Promised {
  std::string name;
  std::string unit;
};

Json json_of(const book::Book& book, const std::string& name, const Ask& ask = {}) {
  const auto document = run_report(find_report(all_reports(""), name), book, ask, {}, kToday);
  return Json::parse(render::render_json(document));
}

Names keys_of(const Json& object) {
  Names keys;
  for (const auto& [key, value] : object.items()) keys.push_back(key);
  return keys;
}

Names names_of(const Json& table) {
  Names names;
  for (const auto& column : table.at("columns")) names.push_back(column.at("name"));
  return names;
}

/// The promised columns stand in their order; others may stand among them.
void check_promised(const Json& table, const std::vector<Promised>& columns) {
  auto at = table.at("columns").begin();
  for (const auto& promised : columns) {
    CAPTURE(promised.name);
    at = std::find_if(at, table.at("columns").end(),
                      [&](const Json& column) { return column.at("name") == promised.name; });
    REQUIRE((at != table.at("columns").end()));
    CHECK(at->at("unit") == promised.unit);
    CHECK(keys_of(*at) == Names{"name", "unit"});
  }
}

bool fits(const Json& value, const render::Column& column) {
  static const std::regex kDay(R"(\d{4}-\d\d-\d\d)");
  if (value.is_null()) return true;
  if (column.kind == render::ColumnKind::text) return value.is_string();
  if (column.kind == render::ColumnKind::day)
    return value.is_string() && std::regex_match(value.get<std::string>(), kDay);
  return value.is_number();
}

std::vector<const render::Column*> shown(const render::Table& table) {
  std::vector<const render::Column*> columns;
  for (const auto& column : table.columns) {
    if (!column.hidden) columns.push_back(&column);
  }
  return columns;
}

void check_table(const Json& json, const render::Table& table, const std::string& where) {
  const auto columns = shown(table);
  const Names names = names_of(json);
  REQUIRE_MESSAGE(names.size() == columns.size(), where);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    CHECK_MESSAGE(names[i] == columns[i]->name, where);
    const bool money = columns[i]->kind == render::ColumnKind::money && columns[i]->unit.empty();
    CHECK_MESSAGE(json.at("columns")[i].at("unit") ==
                      (money ? render::Style{}.currency.sign : render::plain_unit(columns[i]->unit)),
                  where << "." << names[i]);
  }
  for (const auto& row : json.at("rows")) {
    Names keys = keys_of(row);
    if (row.contains("struck")) keys.pop_back();
    CHECK_MESSAGE(keys == names, where << ": every row has every column, in the order of the columns");
    for (const auto* column : columns)
      CHECK_MESSAGE(fits(row.at(column->name), *column),
                    where << "." << column->name << ": " << row.at(column->name));
  }
  Names totalled;
  for (const auto* column : columns) {
    if (!table.totals.empty() && column->total != render::TotalKind::none) totalled.push_back(column->name);
  }
  CHECK_MESSAGE(keys_of(json.at("totals")) == totalled, where << ": totals");
  for (const auto* column : columns)
    CHECK_MESSAGE(fits(json.at("totals").value(column->name, Json()), *column),
                  where << ": total of " << column->name);
}

void check_report_json(const render::Document& document) {
  const Json json = Json::parse(render::render_json(document));
  Names first = keys_of(json);
  REQUIRE(first.size() >= 5);
  first.resize(5);
  CHECK_MESSAGE((first == Names{"report", "title", "columns", "rows", "totals"}), document.name);
  CHECK(json.at("report") == document.name);
  CHECK(json.at("title") == document.title);
  check_table(json, document.tables.front(), document.name);
  if (document.tables.size() == 1) return;
  REQUIRE(json.at("tables").size() == document.tables.size());
  for (std::size_t i = 0; i < document.tables.size(); ++i) {
    CHECK(json.at("tables")[i].at("name") == document.tables[i].name);
    check_table(json.at("tables")[i], document.tables[i], document.name + "." + document.tables[i].name);
  }
  for (const char* member : {"columns", "rows", "totals"})
    CHECK_MESSAGE(json.at(member) == json.at("tables")[0].at(member), document.name << "." << member);
}

}  // namespace

TEST_CASE("the promised columns of production have their names and units") {
  check_promised(json_of(demo_week(), "production"), {{"day", ""},
                                                      {"site", ""},
                                                      {"logs", ""},
                                                      {"net_scale_bf", "bf"},
                                                      {"lumber_bf", "bf"},
                                                      {"pieces", ""},
                                                      {"overrun_percent", "%"},
                                                      {"sawing_hours", "h"},
                                                      {"bf_per_sawing_hour", ""},
                                                      {"stop_hours", "h"},
                                                      {"crew_hours", "h"}});
}

TEST_CASE("the promised columns of overrun have their names and units") {
  check_promised(json_of(demo_week(), "overrun"), {{"day", ""},
                                                   {"job", ""},
                                                   {"species", ""},
                                                   {"setup", ""},
                                                   {"rule", ""},
                                                   {"logs", ""},
                                                   {"net_scale_bf", "bf"},
                                                   {"lumber_bf", "bf"},
                                                   {"overrun_percent", "%"},
                                                   {"log_ft3", "ft3"},
                                                   {"lrf", ""},
                                                   {"recovery_percent", "%"}});
}

TEST_CASE("the promised columns of tally have their names and units") {
  check_promised(json_of(demo_week(), "tally"), {{"job", ""},
                                                 {"species", ""},
                                                 {"grade", ""},
                                                 {"size", ""},
                                                 {"length_ft", "ft"},
                                                 {"pieces", ""},
                                                 {"bf", "bf"}});
}

TEST_CASE("an empty book has the same columns, and no totals where it has no rows") {
  const auto full = demo_week();
  const auto empty = empty_book();
  for (const auto& report : all_reports("")) {
    const Json nothing = json_of(empty, report.name);
    CHECK_MESSAGE(names_of(nothing) == names_of(json_of(full, report.name)), report.name);
    CHECK_MESSAGE(nothing.at("totals").empty() == nothing.at("rows").empty(), report.name);
  }
}

TEST_CASE("in every report's json each row has every column, numbers are numbers, absent is null") {
  for (const auto& book : {demo_week(), empty_book(), odd_days(), metric_days()}) {
    for (const auto& report : all_reports("")) check_report_json(run_report(report, book, {}, {}, kToday));
  }
}

TEST_CASE("a figure in json has up to six decimals, and what is not known is null") {
  const auto book = demo_week();
  const auto production = run_report(find_report(all_reports(""), "production"), book, {}, {}, kToday);
  const std::string text = render::render_json(production);
  CHECK(text.find("\"lumber_bf\": 1562.00, \"pieces\": 114, \"overrun_percent\": 21.55642") !=
        std::string::npos);
  CHECK(text.find("\"totals\": {\"logs\": 54, \"net_scale_bf\": 6300, \"lumber_bf\": 6486.75") !=
        std::string::npos);
  const Json earnings = json_of(book, "earnings", {});  // nothing is issued yet
  REQUIRE(earnings.at("rows").size() == 2);
  CHECK(earnings.at("rows")[0].at("billed").is_null());
  CHECK(earnings.at("totals").at("billed").is_null());
}
