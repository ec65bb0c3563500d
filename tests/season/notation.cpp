#include "notation.h"

#include <cctype>
#include <sstream>

namespace reckoning {

Words words_of(const std::string& text) {
  std::istringstream stream(text);
  Words words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::string joined(const Words& words, std::size_t from, std::size_t to) {
  std::string all;
  for (std::size_t i = from; i < to; ++i) all += (all.empty() ? "" : " ") + words[i];
  return all;
}

std::string joined(const Words& words, std::size_t from) {
  return joined(words, from, words.size());
}

bool begins_with_digit(const std::string& word) {
  return !word.empty() && std::isdigit(static_cast<unsigned char>(word.front())) != 0;
}

bool is_size(const std::string& word) {
  return begins_with_digit(word) && word.find('x') != std::string::npos;
}

std::vector<std::string> parted(const std::string& text, char mark) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == mark)
      parts.emplace_back();
    else
      parts.back() += c;
  }
  return parts;
}

/// 7:15 is 435; 0:36, 9 and 9.5 are times of so many hours.
int minutes_of(const std::string& text) {
  if (const auto colon = text.find(':'); colon != std::string::npos)
    return std::stoi(text.substr(0, colon)) * 60 + std::stoi(text.substr(colon + 1));
  return static_cast<int>((fraction_of(text) * 60).nearest(1).whole());
}

/// 7:15-10:20; past midnight where the end is before the beginning.
Clock clock_of(const std::string& text) {
  const auto dash = text.find('-');
  const int from = minutes_of(text.substr(0, dash));
  const int to = minutes_of(text.substr(dash + 1));
  return {from, to > from ? to - from : to + 24 * 60 - from};
}

bool is_clock(const std::string& text) {
  return text.find(':') != std::string::npos && text.find('-') != std::string::npos;
}

/// 16, 16'6, or metres with their m.
Fraction length_of(const std::string& text, bool metric) {
  if (metric) return fraction_of(text.ends_with('m') ? text.substr(0, text.size() - 1) : text);
  const auto mark = text.find('\'');
  if (mark == std::string::npos) return fraction_of(text);
  const std::string inches = text.substr(mark + 1);
  const Fraction feet = fraction_of(text.substr(0, mark));
  return inches.empty() ? feet : feet + fraction_of(inches) / 12;
}

/// 2x6, 5/4x6; 50x150 in an inch book is millimetres, as no board is over 15 in thick.
Section section_of(const std::string& thick, const std::string& wide) {
  Section section;
  section.name = thick + "x" + wide;
  section.thick = fraction_of(thick);
  section.wide = fraction_of(wide);
  section.metric = Fraction(15) < section.thick;
  section.quarters = thick.find('/') != std::string::npos && thick.find('-') == std::string::npos;
  return section;
}

}  // namespace reckoning
