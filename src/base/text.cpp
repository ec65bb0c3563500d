#include "base/text.h"

#include <algorithm>
#include <cwchar>
#include <utility>

namespace kerfbook {
namespace {

char lower_ascii(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/// The code point that starts at `at`, which is moved past it. A byte that starts none comes back as U+FFFD.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto first = static_cast<unsigned char>(text[at++]);
  if (first < 0x80) return first;
  const int more = first >= 0xF0 && first < 0xF5 ? 3 : first >= 0xE0 ? 2 : first >= 0xC2 ? 1 : -1;
  if (more < 0 || first >= 0xF5 || at + static_cast<std::size_t>(more) > text.size()) return 0xFFFD;
  char32_t point = first & (0x3FU >> static_cast<unsigned>(more));
  for (int i = 0; i < more; ++i) {
    const auto byte = static_cast<unsigned char>(text[at]);
    if ((byte & 0xC0U) != 0x80U) return 0xFFFD;
    point = (point << 6U) | (byte & 0x3FU);
    ++at;
  }
  static constexpr char32_t kLeast[] = {0, 0x80, 0x800, 0x10000};
  const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
  return point < kLeast[more] || surrogate || point > 0x10FFFF ? 0xFFFD : point;
}

bool is_combining(char32_t c) {
  return (c >= 0x0300 && c <= 0x036F) || (c >= 0x200B && c <= 0x200F) || c == 0xFE0F ||
         (c >= 0x20D0 && c <= 0x20FF);
}

bool is_wide(char32_t c) {
  return (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
         (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
         (c >= 0xFFE0 && c <= 0xFFE6) || (c >= 0x1F300 && c <= 0x1FAFF) || (c >= 0x20000 && c <= 0x3FFFD);
}

int width_of(char32_t c) {
  if (is_combining(c)) return 0;
  return is_wide(c) ? 2 : 1;
}

/// Letters to change, add, leave out or swap with their neighbour to make one word of the other.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1);  // the row two above, for swaps
  std::vector<std::size_t> above(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::vector<std::size_t> row(b.size() + 1, i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1), above[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = std::move(above);
    above = std::move(row);
  }
  return above[b.size()];
}

}  // namespace

std::string_view trim(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), lower_ascii);
  return out;
}

bool same_word(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower_ascii(x) == lower_ascii(y); });
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

std::vector<std::string> split_words(std::string_view text) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < text.size()) {
    while (at < text.size() && is_blank(text[at])) ++at;
    std::size_t end = at;
    while (end < text.size() && !is_blank(text[end])) ++end;
    if (end > at) words.emplace_back(text.substr(at, end - at));
    at = end;
  }
  return words;
}

std::vector<std::string_view> split_lines(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    if (line.ends_with('\r')) line.remove_suffix(1);
    lines.push_back(line);
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return lines;
}

std::string join(const std::vector<std::string>& words, std::string_view between) {
  std::string out;
  for (const auto& word : words) {
    if (!out.empty()) out += between;
    out += word;
  }
  return out;
}

std::string in_quotes(std::string_view text) {
  return "'" + std::string(text) + "'";
}

std::string nearest(std::string_view typed, const std::vector<std::string>& known) {
  constexpr std::size_t kLongestWord =
      64;  // nobody misspells a longer one, and the time grows with the square
  if (typed.size() < 2 || typed.size() > kLongestWord) return {};  // set-up B is no slip of A
  const std::string word = lower(typed);
  std::string best;
  std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const auto& candidate : known) {
    const std::size_t apart =
        std::max(word.size(), candidate.size()) - std::min(word.size(), candidate.size());
    if (apart >= least) continue;
    const std::size_t distance = edit_distance(word, lower(candidate));
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

int screen_width(std::string_view utf8) {
  int width = 0;
  for (std::size_t at = 0; at < utf8.size();) width += width_of(next_code_point(utf8, at));
  return width;
}

std::string pad_right(std::string_view utf8, int width) {
  const int gap = width - screen_width(utf8);
  return std::string(utf8) + std::string(gap > 0 ? static_cast<std::size_t>(gap) : 0, ' ');
}

std::string pad_left(std::string_view utf8, int width) {
  const int gap = width - screen_width(utf8);
  return std::string(gap > 0 ? static_cast<std::size_t>(gap) : 0, ' ') + std::string(utf8);
}

std::string clip(std::string_view utf8, int width) {
  if (screen_width(utf8) <= width) return std::string(utf8);
  std::size_t at = 0;
  int used = 0;
  while (at < utf8.size()) {
    std::size_t next = at;
    const int more = width_of(next_code_point(utf8, next));
    if (used + more > width - 1) break;
    used += more;
    at = next;
  }
  return std::string(utf8.substr(0, at)) + "…";
}

bool is_utf8(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t start = at;
    if (next_code_point(bytes, at) == 0xFFFD && bytes.substr(start, 3) != "\xEF\xBF\xBD") return false;
  }
  return true;
}

namespace {

bool is_shown(std::uint32_t point) {
  if (point == '\n' || point == '\t') return true;
  const bool control = point < 0x20 || (point >= 0x7F && point < 0xA0);
  const bool turns = (point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069) ||
                     point == 0x200E || point == 0x200F || point == 0x061C;
  const bool separates = point == 0x2028 || point == 0x2029;
  const bool none = (point & 0xFFFEU) == 0xFFFE || point == 0xFEFF;
  return !control && !turns && !separates && !none;
}

bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c < 0x7F; });
}

/// One character of a text: its bytes, and whether they may be shown.
struct Seen {
  std::string_view bytes;
  std::uint32_t point = 0;
  bool text = true;  ///< false: bytes that are no UTF-8
  bool shown = true;
};

Seen seen_at(std::string_view text, std::size_t& at) {
  const std::size_t start = at;
  Seen seen;
  seen.point = static_cast<std::uint32_t>(next_code_point(text, at));
  seen.bytes = text.substr(start, at - start);
  seen.text = seen.point != 0xFFFD || seen.bytes == "\xEF\xBF\xBD";
  seen.shown = seen.text && is_shown(seen.point);
  return seen;
}

/// \x1B, \u202E: a byte or a character as a programmer would write it.
std::string written_out(char mark, std::uint32_t value, int digits) {
  std::string out{'\\', mark};
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
    out += "0123456789ABCDEF"[(value >> static_cast<unsigned>(shift)) & 0xFU];
  return out;
}

}  // namespace

std::size_t find_unfit(std::string_view text) {
  if (is_plain(text)) return std::string_view::npos;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    if (!seen_at(text, at).shown) return start;
  }
  return std::string_view::npos;
}

std::string written_out(std::string_view text) {
  if (is_plain(text)) return std::string(text);
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Seen seen = seen_at(text, at);
    const bool line_end = seen.point == '\r' && at < text.size() && text[at] == '\n';
    if (seen.shown || line_end || (seen.point == 0xFEFF && at == seen.bytes.size())) {
      out += seen.bytes;
    } else if (!seen.text) {
      for (const char c : seen.bytes) out += written_out('x', static_cast<unsigned char>(c), 2);
    } else {
      out += seen.point < 0x80 ? written_out('x', seen.point, 2) : written_out('u', seen.point & 0xFFFFU, 4);
    }
  }
  return out;
}

std::string fit_to_print(std::string_view text) {
  if (is_plain(text)) return std::string(text);
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Seen seen = seen_at(text, at);
    if (!seen.text)
      out += "\xEF\xBF\xBD";
    else if (seen.shown)
      out += seen.bytes;
  }
  return out;
}

std::string in_columns(std::string_view line) {
  std::string out;
  for (std::size_t at = 0; at < line.size();) {
    const Seen seen = seen_at(line, at);
    if (seen.bytes == "\t" || seen.bytes == "\n")
      out += ' ';
    else
      out += seen.shown ? seen.bytes : "?";
  }
  return out;
}

int characters_before(std::string_view utf8, std::size_t at) {
  int count = 0;
  for (std::size_t i = 0; i < at && i < utf8.size();) {
    next_code_point(utf8, i);
    ++count;
  }
  return count;
}

std::size_t byte_of_character(std::string_view utf8, int before) {
  std::size_t at = 0;
  for (; before > 0 && at < utf8.size(); --before) next_code_point(utf8, at);
  return at;
}

}  // namespace kerfbook
