// notation.h -- the marks of a day sheet: words, times, lengths and sizes.
#pragma once

#include <string>
#include <vector>

#include "days.h"

namespace reckoning {

using Words = std::vector<std::string>;

struct Clock {
  int from = 0;
  int minutes = 0;
};

Words words_of(const std::string& text);
std::string joined(const Words& words, std::size_t from, std::size_t to);
std::string joined(const Words& words, std::size_t from);
bool begins_with_digit(const std::string& word);
bool is_size(const std::string& word);
std::vector<std::string> parted(const std::string& text, char mark);
int minutes_of(const std::string& text);
Clock clock_of(const std::string& text);
bool is_clock(const std::string& text);
Fraction length_of(const std::string& text, bool metric);
Section section_of(const std::string& thick, const std::string& wide);

}  // namespace reckoning
