#include "render/xlsx_text.h"

#include <algorithm>
#include <cctype>
#include <string_view>

#include "base/text.h"
#include "render/cell.h"

namespace kerfbook::render {
namespace {

constexpr int kMostText = 32'000;  ///< a cell holds 32,767 units

/// Units of the file format's text, in which a character past the first 65,536 takes two.
int units_of(std::string_view text) {
  int units = 0;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0U) != 0x80U) units += byte >= 0xF0 ? 2 : 1;
  }
  return units;
}

std::string cut_to(const std::string& text, int units) {
  if (text.size() <= static_cast<std::size_t>(units)) return text;
  std::string out = text;
  while (units_of(out) > units) {
    do out.pop_back();
    while (!out.empty() && !is_utf8(out));
  }
  return out;
}

std::string trimmed_name(std::string name) {
  while (!name.empty() && (name.front() == '\'' || name.front() == ' ')) name.erase(0, 1);
  while (!name.empty() && (name.back() == '\'' || name.back() == ' ')) name.pop_back();
  return name;
}

/// Tenths of a digit's width, by the wider of what sans-serif faces have.
int tenths_of(char letter) {
  if (std::string_view("ijl.,:;'|!I ").find(letter) != std::string_view::npos) return 5;
  if (std::string_view("ftr()-[]/").find(letter) != std::string_view::npos) return 7;
  if (std::string_view("cksvxyz").find(letter) != std::string_view::npos) return 9;
  if (std::string_view("MW@").find(letter) != std::string_view::npos) return 17;
  if (std::string_view("mw%").find(letter) != std::string_view::npos) return 15;
  return letter >= 'A' && letter <= 'Z' ? 12 : 10;
}

}  // namespace

std::string cell_text(const std::string& text) {
  std::string out = fit_to_print(text);
  for (std::size_t at = out.find("_x"); at != std::string::npos; at = out.find("_x", at + 1)) {
    const bool code = at + 6 < out.size() && out[at + 6] == '_' &&
                      std::all_of(out.begin() + static_cast<std::ptrdiff_t>(at) + 2,
                                  out.begin() + static_cast<std::ptrdiff_t>(at) + 6,
                                  [](unsigned char c) { return std::isxdigit(c) != 0; });
    if (code) out.insert(at, "_x005F");
    if (code) at += 6;
  }
  return cut_to(out, kMostText);
}

std::string fit_for_name(const std::string& title, int units) {
  std::string name;
  for (const char c : one_line(title))
    name += std::string_view("[]:*?/\\").find(c) == std::string_view::npos ? c : '-';
  name = trimmed_name(cut_to(trimmed_name(name), units));
  if (lower(name) == "history") name += "-";
  return name.empty() ? "Sheet" : name;
}

std::string folded_name(const std::string& name) {
  std::string out = lower(name);
  for (std::size_t i = 0; i + 1 < out.size(); ++i) {
    const auto first = static_cast<unsigned char>(out[i]);
    auto second = static_cast<unsigned char>(out[i + 1]);
    auto lead = first;
    if (first == 0xC3 && second >= 0x80 && second <= 0x9E && second != 0x97) second += 0x20;
    if (first == 0xCE && second >= 0x91 && second <= 0x9F) second += 0x20;
    if (first == 0xCE && second >= 0xA0 && second <= 0xA9) lead = 0xCF, second -= 0x20;
    if (first == 0xD0 && second >= 0x90 && second <= 0x9F) second += 0x20;
    if (first == 0xD0 && second >= 0xA0 && second <= 0xAF) lead = 0xD1, second -= 0x20;
    out[i] = static_cast<char>(lead);
    out[i + 1] = static_cast<char>(second);
  }
  return out;
}

int printed_width(const std::string& text) {
  int tenths = 0;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) ++end;
    tenths +=
        end == i + 1 ? tenths_of(text[i]) : 12 * screen_width(std::string_view(text).substr(i, end - i));
    i = end;
  }
  return (tenths + 9) / 10;
}

int lines_in(const std::string& text, int width) {
  const int room = std::max(1, width - 1);
  int lines = 0;
  for (const auto line : split_lines(text)) {
    int used = -1;
    ++lines;
    for (const std::string& word : split_words(line)) {
      const int wide = printed_width(word);
      if (used >= 0 && used + 1 + wide > room) {
        ++lines;
        used = -1;
      }
      used += 1 + wide;
      for (; used > room; used -= room) ++lines;
    }
  }
  return std::max(lines, 1);
}

}  // namespace kerfbook::render
