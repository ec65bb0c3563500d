// figures_json.cpp -- figures, lines and items of a paper as JSON and back.
#include <algorithm>
#include <array>
#include <stdexcept>

#include "base/text.h"
#include "paper/paper_json.h"

namespace kerfbook::billing {

namespace {

std::string digits(Wide value) {
  if (value == 0) return "0";
  const bool negative = value < 0;
  std::string text;
  for (; value != 0; value /= 10)
    text.push_back(static_cast<char>('0' + static_cast<int>(value % 10 < 0 ? -(value % 10) : value % 10)));
  if (negative) text.push_back('-');
  std::reverse(text.begin(), text.end());
  return text;
}

constexpr std::size_t kMostDigits = 38;       ///< of a number of 127 bits
constexpr std::size_t kMostShortDigits = 18;  ///< of one of 63

Wide read_digits(std::string_view text) {
  Wide value = 0;
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  if (text.empty()) throw std::invalid_argument("a number without digits");
  if (text.size() > kMostDigits)
    throw std::invalid_argument("'" + std::string(text) + "' has more digits than can be counted exactly");
  for (const char c : text) {
    if (c < '0' || c > '9') throw std::invalid_argument("'" + std::string(text) + "' is not a number");
    value = value * 10 + (c - '0');
  }
  return negative ? -value : value;
}

std::int64_t read_short_digits(std::string_view text) {
  if (text.size() > kMostShortDigits + (text.starts_with('-') ? 1 : 0))
    throw std::invalid_argument("'" + std::string(text) + "' has more digits than can be counted exactly");
  return static_cast<std::int64_t>(read_digits(text));
}

Json frozen_length(const Length& length) {
  return std::to_string(length.count) + (length.system == measure::System::metric ? "mm/10" : "in/64");
}

Length thaw_length(const Json& json) {
  const std::string text = json.get<std::string>();
  const bool metric = text.ends_with("mm/10");
  if (!metric && !text.ends_with("in/64")) throw std::invalid_argument("'" + text + "' is not a length");
  return {read_short_digits(std::string_view(text).substr(0, text.size() - 5)),
          metric ? measure::System::metric : measure::System::inch};
}

Json frozen_size(const Size& size) {
  return Json{{"thick", frozen_length(size.thickness)},
              {"wide", frozen_length(size.width)},
              {"quarters", size.quarters}};
}

Size thaw_size(const Json& json) {
  return {thaw_length(json.at("thick")), thaw_length(json.at("wide")), json.at("quarters").get<bool>()};
}

constexpr std::array<std::string_view, 6> kLineKinds{"sawing",  "charge",  "adjustment",
                                                     "minimum", "percent", "waived"};
constexpr std::array<std::string_view, 5> kRoles{"price", "surcharge", "flat", "rated", "share"};

template <class Enum, std::size_t N>
Enum thaw_word(const std::array<std::string_view, N>& words, const Json& json) {
  const std::string word = json.get<std::string>();
  for (std::size_t i = 0; i < N; ++i)
    if (words[i] == word) return static_cast<Enum>(i);
  throw std::invalid_argument("'" + word + "' is not known");
}

/// Only what a share item needs of its fact.
Json frozen_fact(const Fact& fact) {
  return Json{{"bundle", fact.bundle},
              {"species", fact.species},
              {"grade", fact.grade},
              {"size", frozen_size(fact.size)},
              {"length", frozen_length(fact.length)},
              {"lineal", fact.kind == FactKind::lineal}};
}

Fact thaw_fact(const Json& json) {
  Fact fact;
  fact.kind = json.at("lineal").get<bool>() ? FactKind::lineal : FactKind::pieces;
  fact.bundle = json.value("bundle", std::string());
  fact.species = json.at("species").get<std::string>();
  fact.grade = json.at("grade").get<std::string>();
  fact.size = thaw_size(json.at("size"));
  fact.length = thaw_length(json.at("length"));
  return fact;
}

template <class T>
std::size_t place_in(std::vector<T>& all, const T& one) {
  const auto found = std::find(all.begin(), all.end(), one);
  if (found != all.end()) return static_cast<std::size_t>(found - all.begin());
  all.push_back(one);
  return all.size() - 1;
}

}  // namespace

Json frozen(const Rational& value) {
  return value.den() == 1 ? digits(value.num()) : digits(value.num()) + "/" + digits(value.den());
}

Rational thaw_rational(const Json& json) {
  const std::string text = json.get<std::string>();
  const std::size_t slash = text.find('/');
  if (slash == std::string::npos) return {read_digits(text), 1};
  const Wide den = read_digits(std::string_view(text).substr(slash + 1));
  if (den <= 0) throw std::invalid_argument("'" + text + "' is not a fraction");
  return {read_digits(std::string_view(text).substr(0, slash)), den};
}

int thaw_small(const Json& json) {
  constexpr std::int64_t kMost = 1'000'000;
  const auto value = json.get<std::int64_t>();
  if (value < -kMost || value > kMost)
    throw std::invalid_argument(std::to_string(value) + " is out of range");
  return static_cast<int>(value);
}

Json frozen(const Decimal& value) {
  return plain(value);
}

Decimal thaw_decimal(const Json& json) {
  const std::string text = json.get<std::string>();
  const std::size_t point = text.find('.');
  const int places = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
  std::string all = text;
  if (point != std::string::npos) all.erase(point, 1);
  return {read_short_digits(all), places};
}

Json frozen(Day day) {
  return write_day(day);
}
Json frozen(const std::optional<Day>& day) {
  return day ? frozen(*day) : Json(nullptr);
}

Day thaw_day(const Json& json) {
  const std::optional<Day> day = read_day(json.get<std::string>());
  if (!day) throw std::invalid_argument("'" + json.get<std::string>() + "' is not a day");
  return *day;
}
std::optional<Day> thaw_maybe_day(const Json& json) {
  return json.is_null() ? std::nullopt : std::optional(thaw_day(json));
}

Json frozen(const SheetRef& sheet) {
  return Json{{"day", write_day(sheet.day)},
              {"shift", sheet.shift},
              {"revision", sheet.revision},
              {"why", sheet.why}};
}
SheetRef thaw_sheet(const Json& json) {
  return {thaw_day(json.at("day")), thaw_small(json.at("shift")), thaw_small(json.at("revision")),
          json.at("why").get<std::string>()};
}

Json frozen(const Rate& rate) {
  return Json{{"title", rate.title},         {"unit", rate.unit},     {"counted", rate.counted},
              {"rate", frozen(rate.rate)},   {"places", rate.places}, {"per", rate.per},
              {"each_line", rate.each_line}, {"sawing", rate.sawing}, {"tax", rate.tax},
              {"order", rate.order}};
}
Rate thaw_rate(const Json& json) {
  Rate rate;
  rate.title = json.at("title").get<std::string>();
  rate.unit = json.at("unit").get<std::string>();
  rate.counted = json.at("counted").get<std::string>();
  rate.rate = thaw_rational(json.at("rate"));
  rate.places = thaw_small(json.at("places"));
  rate.per = json.at("per").get<std::int64_t>();
  rate.each_line = json.at("each_line").get<bool>();
  rate.sawing = json.at("sawing").get<bool>();
  rate.tax = json.at("tax").get<std::string>();
  rate.order = thaw_small(json.at("order"));
  return rate;
}

Json frozen(const LoadLine& line) {
  return Json{{"bundle", line.bundle},
              {"species", line.species},
              {"grade", line.grade},
              {"size", frozen_size(line.size)},
              {"length", frozen_length(line.length)},
              {"pieces", line.pieces}};
}
LoadLine thaw_load_line(const Json& json) {
  LoadLine line;
  line.bundle = json.at("bundle").get<std::string>();
  line.species = json.at("species").get<std::string>();
  line.grade = json.at("grade").get<std::string>();
  line.size = thaw_size(json.at("size"));
  line.length = thaw_length(json.at("length"));
  line.pieces = json.at("pieces").get<std::int64_t>();
  return line;
}

Json frozen(const BillLine& line) {
  Json json{{"kind", kLineKinds[static_cast<std::size_t>(line.kind)]},
            {"title", line.title},
            {"description", line.description},
            {"quantity", frozen(line.quantity)},
            {"unit", line.unit},
            {"rate", line.rate ? frozen(*line.rate) : Json(nullptr)},
            {"amount", line.amount.minor},
            {"tax", line.tax},
            {"taxed", line.taxed},
            {"sawing", line.sawing},
            {"pieces", line.pieces},
            {"day", frozen(line.day)},
            {"counted", line.counted}};
  if (line.timed) json["timed"] = true;
  return json;
}
BillLine thaw_line(const Json& json) {
  BillLine line;
  line.kind = thaw_word<LineKind>(kLineKinds, json.at("kind"));
  line.title = json.at("title").get<std::string>();
  line.description = json.at("description").get<std::string>();
  line.quantity = thaw_decimal(json.at("quantity"));
  line.timed = json.value("timed", false);
  line.unit = json.at("unit").get<std::string>();
  if (!json.at("rate").is_null()) line.rate = thaw_rational(json.at("rate"));
  line.amount.minor = json.at("amount").get<std::int64_t>();
  line.tax = json.at("tax").get<std::string>();
  line.taxed = json.at("taxed").get<bool>();
  line.sawing = json.at("sawing").get<bool>();
  line.pieces = json.at("pieces").get<std::int64_t>();
  line.day = thaw_maybe_day(json.at("day"));
  line.counted = json.at("counted").get<std::string>();
  return line;
}

Json frozen(const TaxRow& tax) {
  return Json{{"name", tax.name},           {"percent", frozen(tax.percent)}, {"base", tax.base.minor},
              {"amount", tax.amount.minor}, {"included", tax.included},       {"excused", tax.excused},
              {"added", tax.added}};
}
TaxRow thaw_tax(const Json& json) {
  TaxRow tax;
  tax.name = json.at("name").get<std::string>();
  tax.percent = thaw_rational(json.at("percent"));
  tax.base.minor = json.at("base").get<std::int64_t>();
  tax.amount.minor = json.at("amount").get<std::int64_t>();
  tax.included = json.at("included").get<bool>();
  tax.excused = json.at("excused").get<std::string>();
  tax.added = json.at("added").get<std::int64_t>();
  return tax;
}

Json frozen(const Split& split) {
  Json lines = Json::array();
  for (const ShareLine& line : split.lines)
    lines.push_back(Json{{"bundle", line.bundle},
                         {"species", line.species},
                         {"grade", line.grade},
                         {"size", frozen_size(line.size)},
                         {"length", frozen_length(line.length)},
                         {"pieces", line.pieces},
                         {"bf_each", frozen(line.bf_each)},
                         {"customer", line.to_customer},
                         {"mill", line.to_mill}});
  return Json{{"carried_in", frozen(split.carried_in)},
              {"carried", frozen(split.carried)},
              {"customer_pieces", split.customer_pieces},
              {"mill_pieces", split.mill_pieces},
              {"customer_bf", frozen(split.customer_bf)},
              {"mill_bf", frozen(split.mill_bf)},
              {"lines", lines}};
}
Split thaw_split(const Json& json) {
  Split split;
  split.carried_in = thaw_rational(json.at("carried_in"));
  split.carried = thaw_rational(json.at("carried"));
  split.customer_pieces = json.at("customer_pieces").get<std::int64_t>();
  split.mill_pieces = json.at("mill_pieces").get<std::int64_t>();
  split.customer_bf = thaw_rational(json.at("customer_bf"));
  split.mill_bf = thaw_rational(json.at("mill_bf"));
  for (const Json& one : json.at("lines"))
    split.lines.push_back({one.value("bundle", std::string()), one.at("species").get<std::string>(),
                           one.at("grade").get<std::string>(), thaw_size(one.at("size")),
                           thaw_length(one.at("length")), one.at("pieces").get<std::int64_t>(),
                           thaw_rational(one.at("bf_each")), one.at("customer").get<std::int64_t>(),
                           one.at("mill").get<std::int64_t>()});
  return split;
}

Json frozen(const Waiver& waiver) {
  Json json{{"day", write_day(waiver.day)},
            {"shift", waiver.shift},
            {"charge", waiver.charge},
            {"note", waiver.note}};
  if (waiver.back) json["back"] = true;
  if (!waiver.content.empty()) json["content"] = waiver.content;
  return json;
}
Waiver thaw_waiver(const Json& json) {
  return {
      thaw_day(json.at("day")),           thaw_small(json.at("shift")), json.at("charge").get<std::string>(),
      json.at("note").get<std::string>(), json.value("back", false),    json.value("content", std::string())};
}

Json frozen_items(const std::vector<Item>& items) {
  std::vector<Rate> rates;
  std::vector<SheetRef> sheets;
  Json list = Json::array();
  for (const Item& item : items) {
    Json one{{"sheet", place_in(sheets, item.sheet)},
             {"rate", place_in(rates, item.rate)},
             {"role", kRoles[static_cast<std::size_t>(item.role)]},
             {"charge", item.charge},
             {"key", item.key},
             {"words", item.words},
             {"size_line", item.size_line},
             {"count", item.count},
             {"pieces", item.pieces},
             {"quantity", frozen(item.quantity)},
             {"waived", item.waived}};
    if (item.fact) one["fact"] = frozen_fact(*item.fact);
    list.push_back(std::move(one));
  }
  return Json{{"rates", frozen_list(rates)}, {"sheets", frozen_list(sheets)}, {"items", std::move(list)}};
}

std::vector<Item> thaw_items(const Json& json) {
  const std::vector<Rate> rates = thaw_list(json.at("rates"), thaw_rate);
  const std::vector<SheetRef> sheets = thaw_list(json.at("sheets"), thaw_sheet);
  std::vector<Item> items;
  for (const Json& one : json.at("items")) {
    Item item;
    item.sheet = sheets.at(one.at("sheet").get<std::size_t>());
    item.rate = rates.at(one.at("rate").get<std::size_t>());
    item.role = thaw_word<Role>(kRoles, one.at("role"));
    item.charge = one.at("charge").get<std::string>();
    item.key = one.at("key").get<std::string>();
    item.words = one.at("words").get<std::string>();
    item.size_line = one.at("size_line").get<std::string>();
    item.count = one.at("count").get<std::int64_t>();
    item.pieces = one.at("pieces").get<std::int64_t>();
    item.quantity = thaw_rational(one.at("quantity"));
    item.waived = one.at("waived").get<std::string>();
    if (one.contains("fact")) {
      item.fact = thaw_fact(one.at("fact"));
      item.fact->count = item.count;
      item.fact->sheet = item.sheet;
    }
    items.push_back(std::move(item));
  }
  return items;
}

}  // namespace kerfbook::billing
