// paper_json.h -- the values of a paper as JSON and back, exactly: money in minor units, fractions as "n/d", days as
// 2026-05-08. Private to paper.cpp and frozen_*.cpp. A reader throws nlohmann's exceptions; paper.cpp makes sentences.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "paper/load_slip.h"
#include "price/bill.h"
#include "price/share.h"
#include "render/document.h"

namespace kerfbook::billing {

using Json = nlohmann::ordered_json;

Json frozen(const Rational& value);
Json frozen(const Decimal& value);
Json frozen(Day day);
Json frozen(const std::optional<Day>& day);
Json frozen(const SheetRef& sheet);
Json frozen(const Rate& rate);
Json frozen(const BillLine& line);
Json frozen(const TaxRow& tax);
Json frozen(const Split& split);
Json frozen(const Waiver& waiver);
Json frozen(const LoadLine& line);
Json frozen(const render::Document& document);
/// Items with their rates and sheets named by place in the two lists, each kept once.
Json frozen_items(const std::vector<Item>& items);

Rational thaw_rational(const Json& json);
Decimal thaw_decimal(const Json& json);
int thaw_small(const Json& json);  ///< a count of a line or a place, within a million
Day thaw_day(const Json& json);
std::optional<Day> thaw_maybe_day(const Json& json);
SheetRef thaw_sheet(const Json& json);
Rate thaw_rate(const Json& json);
BillLine thaw_line(const Json& json);
TaxRow thaw_tax(const Json& json);
Split thaw_split(const Json& json);
Waiver thaw_waiver(const Json& json);
LoadLine thaw_load_line(const Json& json);
render::Document thaw_document(const Json& json);
std::vector<Item> thaw_items(const Json& json);

template <class T>
Json frozen_list(const std::vector<T>& all) {
  Json list = Json::array();
  for (const T& one : all) list.push_back(frozen(one));
  return list;
}
template <class T>
std::vector<T> thaw_list(const Json& list, T (*thaw)(const Json&)) {
  std::vector<T> all;
  for (const Json& one : list) all.push_back(thaw(one));
  return all;
}

}  // namespace kerfbook::billing
