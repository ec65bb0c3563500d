#include "base/diagnostic.h"

#include <algorithm>

#include "base/text.h"

namespace kerfbook {
namespace {

constexpr std::size_t kLongestShown = 2000;  ///< bytes: a longer line is not repeated, its place says enough

const char* word_for(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "error";
    case Severity::warning:
      return "warning";
    case Severity::note:
      return "note";
  }
  return "error";
}

/// Tabs become single blanks so that the caret stands under the right character; what a terminal could take for a
/// command, and bytes that are no UTF-8, become question marks.
std::string printable(std::string_view line) {
  std::string out;
  for (std::size_t at = 0; at < line.size();) {
    const auto byte = static_cast<unsigned char>(line[at]);
    const std::size_t length = byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
    const bool control = byte < 0x20 || byte == 0x7F;
    const bool text = !control && at + length <= line.size() && is_utf8(line.substr(at, length));
    out += text ? line.substr(at, length) : byte == '\t' ? " " : "?";
    at += text ? length : 1;
  }
  return out;
}

/// Blanks that bring a caret under the character of that column, whatever widths the characters before it have.
std::string blanks_before(std::string_view line, int column) {
  std::size_t bytes = 0;
  const auto is_inside_character = [&] { return (static_cast<unsigned char>(line[bytes]) & 0xC0U) == 0x80U; };
  while (bytes < line.size() && (characters_before(line, bytes) < column - 1 || is_inside_character()))
    ++bytes;
  const int past_end = column - 1 - characters_before(line, bytes);
  const int blanks = screen_width(line.substr(0, bytes)) + (past_end > 0 ? past_end : 0);
  return std::string(static_cast<std::size_t>(blanks), ' ');
}

/// show() with the text cut into lines already: a text with many faults is cut once.
std::string shown_among(const Diagnostic& found, std::string_view file,
                        const std::vector<std::string_view>& lines) {
  std::string out(file);
  if (found.place.line > 0) out += ":" + std::to_string(found.place.line);
  if (found.place.column > 0) out += ":" + std::to_string(found.place.column);
  out += std::string(": ") + word_for(found.severity) + ": " + found.what;
  if (!found.instead.empty()) out += "; " + found.instead;
  out += "\n";
  const auto index = static_cast<std::size_t>(found.place.line - 1);
  if (found.place.line < 1 || index >= lines.size() || lines[index].size() > kLongestShown) return out;
  const std::string line = printable(lines[index]);
  out += "    " + line + "\n";
  if (found.place.column > 0) out += "    " + blanks_before(line, found.place.column) + "^\n";
  return out;
}

}  // namespace

bool has_error(const std::vector<Diagnostic>& found) {
  return std::any_of(found.begin(), found.end(), [](const auto& d) { return d.severity == Severity::error; });
}

void sort_by_place(std::vector<Diagnostic>& found) {
  std::stable_sort(found.begin(), found.end(), [](const Diagnostic& a, const Diagnostic& b) {
    if (a.place != b.place) return a.place < b.place;
    return a.severity > b.severity;
  });
}

std::string show(const Diagnostic& found, std::string_view file, std::string_view text) {
  return shown_among(found, file, split_lines(text));
}

std::string show_all(std::vector<Diagnostic> found, std::string_view file, std::string_view text) {
  const std::size_t all = found.size();
  if (all > kMostShown) {
    std::stable_partition(found.begin(), found.end(),
                          [](const Diagnostic& one) { return one.severity == Severity::error; });
    found.resize(kMostShown);
  }
  sort_by_place(found);
  const auto lines = split_lines(text);
  std::string out;
  for (const auto& one : found) out += shown_among(one, file, lines);
  if (all > kMostShown)
    out += std::string(file) + ": and " + std::to_string(all - kMostShown) + " more; mend these first\n";
  return out;
}

}  // namespace kerfbook
