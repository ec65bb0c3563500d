#include "sheet/line_reader.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/guess.h"

namespace kerfbook::sheet {

std::string_view LineReader::peek(std::size_t ahead) const {
  return at_ + ahead < line_.words.size() ? std::string_view(line_.words[at_ + ahead].text)
                                          : std::string_view();
}

bool LineReader::take_if(std::string_view word) {
  if (done() || !same_word(peek(), word)) return false;
  ++at_;
  return true;
}

std::string LineReader::take_typed_words(std::size_t count) {
  std::string out;
  for (; count > 0; --count) {
    if (!out.empty()) out += ' ';
    out += take_typed();
  }
  return out;
}

int LineReader::column_of(const Word& word, std::size_t offset) const {
  const std::uint32_t byte = offset < word.from.size() ? word.from[offset] : word.end;
  return characters_before(line_.typed, byte) + 1;
}

void LineReader::tell(const Word& word, std::size_t offset, std::string what, std::string instead) {
  failed_ = true;
  found_.push_back(
      {Severity::error, {number_, column_of(word, offset)}, std::move(what), std::move(instead)});
}

void LineReader::slip(const Word& word, std::size_t offset, const Slip& slip) {
  const std::string_view rest = std::string_view(word.text).substr(std::min(offset, word.text.size()));
  tell(word, offset + byte_of_character(rest, slip.at), slip.what, slip.instead);
}

void LineReader::missing(std::string what, std::string instead) {
  failed_ = true;
  const int column = line_.words.empty() ? 1 : characters_before(line_.typed, line_.words.back().end) + 1;
  found_.push_back({Severity::error, {number_, column}, std::move(what), std::move(instead)});
}

void LineReader::warn(const Word& word, std::string what, std::string instead) {
  found_.push_back({Severity::warning, {number_, column_of(word)}, std::move(what), std::move(instead)});
}

void LineReader::expect_end(std::string_view after) {
  if (done()) return;
  const Word& word = take();
  error(word, in_quotes(typed(word)) + ": nothing more is read after " + std::string(after),
        "put a remark after ';'");
}

bool starts_with_digit(std::string_view text) {
  return !text.empty() && is_digit(text.front());
}

bool has_digit(std::string_view text) {
  return text.find_first_of("0123456789") != std::string_view::npos;
}

std::optional<std::int64_t> whole_number(std::string_view text) {
  if (!all_digits(text) || text.size() > 9) return std::nullopt;
  std::int64_t value = 0;
  for (const char c : text) value = value * 10 + (c - '0');
  return value;
}

std::optional<std::string> take_code(LineReader& line, std::string_view missing_what,
                                     std::string_view example) {
  if (line.done()) {
    line.missing(std::string(missing_what), "write " + std::string(example));
    return std::nullopt;
  }
  return line.take_typed();
}

namespace {

/// The unit a word stands for: "min", "h"; empty when it is none.
std::string_view time_unit(std::string_view word) {
  for (const std::string_view minutes : {"min", "mins", "minute", "minutes"}) {
    if (same_word(minutes, word)) return "min";
  }
  for (const std::string_view hours : {"h", "hr", "hrs", "hour", "hours"}) {
    if (same_word(hours, word)) return "h";
  }
  return {};
}

/// 8.30 is 8 hours and 18 minutes, and was perhaps meant as half past. Quarters and thirds are no doubt hours.
void doubt_hundredths(LineReader& line, const Word& word, int minutes) {
  const std::size_t point = word.text.find('.');
  if (point == std::string::npos || word.text.size() != point + 3 || !is_digit(word.text.back())) return;
  const int hundredths = std::stoi(word.text.substr(point + 1));
  if (hundredths > 59 || hundredths % 25 == 0 || hundredths == 33) return;
  const std::string clock =
      (point == 0 ? "0" : word.text.substr(0, point)) + ":" + word.text.substr(point + 1);
  line.warn(word,
            in_quotes(line.typed(word)) + " is read as hours and hundredths, " + write_duration(minutes),
            "if minutes were meant, write " + clock);
}

}  // namespace

std::optional<int> take_minutes(LineReader& line) {
  const Word& word = line.take();
  std::string text = word.text;
  if (text.ends_with(',')) text.pop_back();
  const std::string_view unit = time_unit(line.peek());
  const bool apart = !unit.empty() && text.find_first_not_of("0123456789.") == std::string::npos;
  const auto minutes = read_duration(apart ? text + std::string(unit) : text);
  if (!minutes) {
    const std::string likely = likely_time(text);
    line.error(word, in_quotes(line.typed(word)) + ": not a time",
               "write " + (likely.empty() ? "9, 8:30, 36min or 7:15-10:20" : likely));
    return std::nullopt;
  }
  if (apart) {
    line.take();
  } else {
    doubt_hundredths(line, word, *minutes);
  }
  return minutes;
}

}  // namespace kerfbook::sheet
