// toml_table.cpp -- reading one TOML table key by key; numbers are taken from the file's own digits.
#include "billing/toml_table.h"

#include <algorithm>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

/// The part of `line` from column `from` (from 1, in characters) up to column `past`.
std::string cut_out(std::string_view line, std::size_t from, std::size_t past) {
  std::string part;
  std::size_t column = 0;
  for (const char c : line) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++column;
    if (column >= from && column < past) part.push_back(c);
  }
  return part;
}

std::string without_underscores(std::string text) {
  text.erase(std::remove(text.begin(), text.end(), '_'), text.end());
  return text;
}

}  // namespace

Place place_of(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

TomlTable::TomlTable(const toml::table& table, std::string what, TomlFile& file)
    : table_(&table), what_(std::move(what)), file_(&file) {}

int TomlTable::line() const { return static_cast<int>(table_->source().begin.line); }

const toml::node* TomlTable::take(std::string_view key) {
  asked_.emplace_back(key);
  return table_->get(key);
}

std::vector<const toml::node*> TomlTable::take_list(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) return {};
  const toml::array* list = node->as_array();
  if (list == nullptr) return {node};
  std::vector<const toml::node*> all;
  for (const toml::node& one : *list) all.push_back(&one);
  return all;
}

std::string TomlTable::written(const toml::node& node) const {
  if (const auto* text = node.as_string()) return text->get();
  const toml::source_region& at = node.source();
  const std::size_t index = at.begin.line;
  if (index == 0 || index > file_->lines.size() || at.end.line != at.begin.line) return "";
  return std::string(trim(cut_out(file_->lines[index - 1], at.begin.column, at.end.column)));
}

void TomlTable::wrong(const toml::node& node, std::string what, std::string instead) {
  file_->found.push_back({Severity::error, place_of(node.source()), std::move(what), std::move(instead)});
}

void TomlTable::wrong_at(std::string_view key, std::string what, std::string instead) {
  const toml::node* node = table_->get(key);
  wrong(node != nullptr ? *node : *table_, std::move(what), std::move(instead));
}

std::string TomlTable::text(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) return "";
  if (const auto* text = node->as_string()) return std::string(trim(text->get()));
  wrong(*node, std::string(key) + " is not a text", "write it in quotes: " + std::string(key) + " = \"...\"");
  return "";
}

std::vector<std::string> TomlTable::words(std::string_view key) {
  std::vector<std::string> all;
  for (const toml::node* node : take_list(key)) {
    const auto* text = node->as_string();
    if (text != nullptr && !trim(text->get()).empty()) all.emplace_back(trim(text->get()));
    else wrong(*node, std::string(key) + " holds something that is no text",
               "write words in quotes: " + std::string(key) + " = [\"...\", \"...\"]");
  }
  return all;
}

std::optional<bool> TomlTable::flag(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* value = node->as_boolean()) return value->get();
  wrong(*node, std::string(key) + " is neither true nor false", "write true or false, without quotes");
  return std::nullopt;
}

std::optional<std::int64_t> TomlTable::whole(std::string_view key, std::int64_t least) {
  const toml::node* node = take(key);
  if (node == nullptr) return std::nullopt;
  const auto* value = node->as_integer();
  if (value != nullptr && value->get() >= least) return value->get();
  wrong(*node, std::string(key) + " is not a whole number from " + std::to_string(least) + " up",
        "as " + std::string(key) + " = " + std::to_string(std::max<std::int64_t>(least, 14)));
  return std::nullopt;
}

std::optional<Rational> TomlTable::number(std::string_view key, int max_places) {
  const toml::node* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (node->is_number() || node->is_string()) {
    const Result<Rational> got = read_decimal(without_underscores(written(*node)), max_places);
    if (got) return *got;
    wrong(*node, std::string(key) + ": " + got.slip().what, got.slip().instead);
    return std::nullopt;
  }
  wrong(*node, std::string(key) + " is not a number", "as " + std::string(key) + " = 0.48");
  return std::nullopt;
}

std::optional<Day> TomlTable::day(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* date = node->as_date()) {
    const toml::date d = date->get();
    if (day_exists(d.year, d.month, d.day)) return make_day(d.year, d.month, d.day);
  }
  if (const auto* text = node->as_string())
    if (const std::optional<Day> got = read_day(text->get())) return got;
  wrong(*node, std::string(key) + " is not a day", "as " + std::string(key) + " = 2026-05-04");
  return std::nullopt;
}

std::optional<TomlTable> TomlTable::table(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* inner = node->as_table()) return TomlTable(*inner, what_ + " " + std::string(key), *file_);
  wrong(*node, std::string(key) + " is not a table", "as " + std::string(key) + " = { ... }");
  return std::nullopt;
}

void TomlTable::finish() {
  for (const auto& [key, node] : *table_) {
    if (std::find(asked_.begin(), asked_.end(), key.str()) != asked_.end()) continue;
    const std::string near = nearest(key.str(), asked_);
    file_->found.push_back({Severity::error, place_of(key.source()),
                            "`" + std::string(key.str()) + "` is no key of " + what_,
                            near.empty() ? "its keys are " + join(asked_, ", ") : "did you mean `" + near + "`?"});
  }
}

}  // namespace kerfbook::billing
