// demand.h -- what every fuzz target asks of a reader: no failure, and places inside the text.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/text.h"

namespace kerfbook::fuzz {

inline void demand(bool holds, const char* what, std::string_view text) {
  if (holds) return;
  std::fprintf(stderr, "%s\n--- the text:\n%.*s\n", what, static_cast<int>(text.size()), text.data());
  std::abort();
}

/// Line 0 is of the whole text, column 0 of the whole line.
inline void places_are_in(const std::vector<Diagnostic>& all, std::string_view text) {
  const auto lines = split_lines(text);
  for (const Diagnostic& found : all) {
    demand(found.place.line >= 0 && found.place.column >= 0, "a place before the text", text);
    const auto line = static_cast<std::size_t>(found.place.line);
    demand(line <= lines.size() || line == 1, "a diagnostic past the last line", text);
    if (line == 0 || found.place.column == 0 || lines.empty()) continue;
    const auto last = characters_before(lines[line - 1], lines[line - 1].size()) + 1;
    demand(found.place.column <= last, "a diagnostic past the end of its line", text);
  }
  demand(all.empty() || !show_all(all, "text", text).empty(), "nothing to show", text);
}

}  // namespace kerfbook::fuzz
