#include "mill/spellings.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "base/text.h"

namespace kerfbook::book {
namespace {

using measure::System;
using scaling::DiameterRounding;
using scaling::ReadingsJoin;
using scaling::ResultRounding;
using scaling::TaperShare;

template <class Value>
using Words = std::vector<std::pair<std::string, Value>>;

std::string dashed(std::string_view typed) {
  std::string word = lower(trim(typed));
  std::replace_if(
      word.begin(), word.end(), [](char c) { return c == '_' || c == ' '; }, '-');
  return word;
}

Slip no_such_word(std::string_view typed, const std::vector<std::string>& words) {
  const bool number = !typed.empty() && typed[0] >= '0' && typed[0] <= '9';  // 3 is no slip for 1
  const std::string near = number ? "" : nearest(dashed(typed), words);
  return {in_quotes(typed) + " is not a word for this",
          near.empty() ? "write one of " + join(words, ", ") : "did you mean " + near + "?", 0};
}

template <class Value>
Result<Value> read_word(std::string_view typed, const Words<Value>& words) {
  const std::string word = dashed(typed);
  std::vector<std::string> known;
  for (const auto& [name, value] : words) {
    if (word == name) return value;
    known.push_back(name);
  }
  return no_such_word(typed, known);
}

template <class Value>
Result<Value> known_or_slip(std::optional<Value> got, std::string_view typed,
                            const std::vector<std::string>& words) {
  if (got) return *got;
  return no_such_word(typed, words);
}

}  // namespace

Result<DiameterRounding> read_diameter_word(std::string_view typed) {
  static const Words<DiameterRounding> words{
      {"as-read", DiameterRounding::none},
      {"down", DiameterRounding::down},
      {"nearest", DiameterRounding::nearest_half_up},
      {"nearest-half-down", DiameterRounding::nearest_half_down},
      {"nearest-half-even", DiameterRounding::nearest_half_even},
  };
  return read_word(typed, words);
}

Result<ReadingsJoin> read_readings_word(std::string_view typed) {
  static const Words<ReadingsJoin> words{
      {"average", ReadingsJoin::average},
      {"average-drop-half", ReadingsJoin::average_drop_half},
      {"smaller", ReadingsJoin::smaller},
  };
  return read_word(typed, words);
}

Result<ResultRounding> read_result_word(std::string_view typed) {
  static const Words<ResultRounding> words{
      {"exact", ResultRounding::none},     {"1", ResultRounding::nearest_1},
      {"5", ResultRounding::nearest_5},    {"10", ResultRounding::nearest_10},
      {"0.01", ResultRounding::hundredth}, {"0.001", ResultRounding::thousandth},
  };
  return read_word(typed, words);
}

Result<TaperShare> read_taper_word(std::string_view typed) {
  static const Words<TaperShare> words{
      {"rule", TaperShare::rule},
      {"even", TaperShare::even},
      {"none", TaperShare::none},
  };
  return read_word(typed, words);
}

Result<measure::ThicknessRule> read_thickness_word(std::string_view typed) {
  return known_or_slip(measure::read_thickness_rule(typed), typed, measure::thickness_rule_words());
}

Result<measure::LengthRule> read_length_word(std::string_view typed) {
  return known_or_slip(measure::read_length_rule(typed), typed, measure::length_rule_words());
}

Result<measure::BillRounding> read_rounding_word(std::string_view typed) {
  return known_or_slip(measure::read_bill_rounding(typed), typed, measure::bill_rounding_words());
}

Result<System> read_units_word(std::string_view typed) {
  static const Words<System> words{{"inch", System::inch}, {"metric", System::metric}};
  return read_word(typed, words);
}

Result<bool> read_paper_word(std::string_view typed) {
  static const Words<bool> words{{"letter", false}, {"a4", true}};
  return read_word(typed, words);
}

Result<std::string> read_dates_word(std::string_view typed) {
  static const Words<std::string> words{{"ymd", "ymd"}, {"mdy", "mdy"}, {"dmy", "dmy"}};
  return read_word(typed, words);
}

Result<int> read_weekday_word(std::string_view typed) {
  static const Words<int> words{{"monday", 1}, {"tuesday", 2},  {"wednesday", 3}, {"thursday", 4},
                                {"friday", 5}, {"saturday", 6}, {"sunday", 7}};
  const std::string word = dashed(typed);
  for (const auto& [name, day] : words) {
    if (word.size() >= 3 && name.starts_with(word)) return day;
  }
  return read_word(typed, words);
}

Result<std::string> read_owner_word(std::string_view typed) {
  static const Words<std::string> words{{"customer", "customer"}, {"own", "own"}, {"shares", "shares"}};
  return read_word(typed, words);
}

}  // namespace kerfbook::book
