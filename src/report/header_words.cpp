#include "report/header_words.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "base/text.h"

namespace kerfbook::report {
namespace {

bool is_word(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; });
}

}  // namespace

std::optional<Fact> fact_in(std::string_view line, int number) {
  std::string_view body = line.substr(2);
  if (body.starts_with("   ") || body.empty()) return std::nullopt;
  body = trim(body);
  const std::size_t colon = body.find(':');
  if (colon == std::string_view::npos || !is_word(body.substr(0, colon))) return std::nullopt;
  return Fact{std::string(body.substr(0, colon)), std::string(trim(body.substr(colon + 1))), number};
}

bool is_name(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  });
}

std::vector<std::string> split_quoted(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false;
  bool any = false;
  for (const char c : text) {
    if (c == '"') {
      quoted = !quoted;
      any = true;
    } else if (!quoted && (c == ' ' || c == '\t')) {
      if (any) words.push_back(std::exchange(word, {}));
      any = false;
    } else {
      word += c;
      any = true;
    }
  }
  if (any) words.push_back(word);
  return words;
}

std::optional<int> small_number(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < 0 || value > 99)
    return std::nullopt;
  return value;
}

std::string either(const std::string& near, const std::vector<std::string>& known, std::string_view after) {
  return near.empty() ? "one of " + join(known, ", ") : "did you mean " + near + std::string(after) + "?";
}

std::string now_called(const std::string& word, const std::vector<std::string>& known) {
  static const std::vector<std::pair<std::string_view, std::string_view>> kOnce{
      {"filters", "takes"}, {"column", "shows"}, {"columns", "shows"}, {"chart", "picture"}};
  for (const auto& [once, now] : kOnce) {
    if (word == once) return std::string(now);
  }
  return nearest(word, known);
}

bool has_select(std::string_view sql) {
  const auto lines = split_lines(sql);
  return std::any_of(lines.begin(), lines.end(), [](std::string_view line) {
    line = trim(line);
    return !line.empty() && !line.starts_with("--");
  });
}

}  // namespace kerfbook::report
