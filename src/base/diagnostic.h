// diagnostic.h -- one thing found in a text someone typed: where, what, and what would be right.
// Diagnostics are values: a reader collects every one and goes on. See error.h for what ends a command.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace kerfbook {

enum class Severity { note, warning, error };

struct Place {
  int line = 0;    ///< counts from 1; 0 = the whole text
  int column = 0;  ///< counts from 1, in characters (not bytes); 0 = the whole line
  auto operator<=>(const Place&) const = default;
};

struct Diagnostic {
  Severity severity = Severity::error;
  Place place;
  std::string what;     ///< what is wrong, quoting what was typed
  std::string instead;  ///< what would be right; empty when `what` says it all
  bool operator==(const Diagnostic&) const = default;
};

/// True when any of them is an error (warnings and notes do not stop a post).
bool has_error(const std::vector<Diagnostic>& found);

/// In the order of the text: by line, then column, errors before warnings at the same place.
void sort_by_place(std::vector<Diagnostic>& found);

/// `file:line:col: error: what; instead`, then the line as typed and a caret under the column.
/// `text` is the whole text the places count in. Ends with a newline.
std::string show(const Diagnostic& found, std::string_view file, std::string_view text);

constexpr std::size_t kMostShown = 100;  ///< who has mended so many reads the text again anyway

/// All of them, in order, each as show() prints it. Of more than kMostShown so many are shown, errors before what is
/// no error, and a line says how many are not.
std::string show_all(std::vector<Diagnostic> found, std::string_view file, std::string_view text);

}  // namespace kerfbook
