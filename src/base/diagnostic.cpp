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

/// Blanks that bring a caret under the character of that column, whatever widths the characters before it have.
std::string blanks_before(std::string_view line, int column) {
  const std::size_t bytes = byte_of_character(line, column - 1);
  const int past_end = column - 1 - characters_before(line, bytes);
  const int blanks = screen_width(line.substr(0, bytes)) + (past_end > 0 ? past_end : 0);
  return std::string(static_cast<std::size_t>(blanks), ' ');
}

/// show() with the text cut into lines already: a text with many faults is cut once.
std::string shown_among(const Diagnostic& found, std::string_view file,
                        const std::vector<std::string_view>& lines) {
  std::string out = written_out(file);
  if (found.place.line > 0) out += ":" + std::to_string(found.place.line);
  if (found.place.column > 0) out += ":" + std::to_string(found.place.column);
  out += std::string(": ") + word_for(found.severity) + ": " + written_out(found.what);
  if (!found.instead.empty()) out += "; " + written_out(found.instead);
  out += "\n";
  const auto index = static_cast<std::size_t>(found.place.line - 1);
  if (found.place.line < 1 || index >= lines.size() || lines[index].size() > kLongestShown) return out;
  const std::string line = in_columns(lines[index]);
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
    out += written_out(file) + ": and " + std::to_string(all - kMostShown) + " more; mend these first\n";
  return out;
}

}  // namespace kerfbook
