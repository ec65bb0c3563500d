// literals.h -- what a C++ file says: its texts in double quotes, read without a compiler, for the tests of this room.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "slurp.h"

namespace kerfbook::rules {

using tests::slurp;

/// One text in quotes from its first quote mark on: `at` is moved past the last one.
inline std::string quoted(const std::string& code, std::size_t& at) {
  if (at > 0 && code[at - 1] == 'R' &&
      (at < 2 || std::isalnum(static_cast<unsigned char>(code[at - 2])) == 0)) {
    const std::size_t open = code.find('(', at);
    const std::string close = ")" + code.substr(at + 1, open - at - 1) + "\"";
    const std::size_t end = std::min(code.find(close, open), code.size());
    at = std::min(end + close.size(), code.size());
    return code.substr(open + 1, end - open - 1);
  }
  std::string text;
  for (++at; at < code.size() && code[at] != '"'; ++at) {
    if (code[at] == '\\' && ++at < code.size() && code[at] == 'n')
      text += '\n';
    else if (at < code.size())
      text += code[at];
  }
  ++at;
  return text;
}

/// The texts of a C++ file, its remarks left out; neighbours that the compiler joins are one.
inline std::vector<std::string> literals(const std::string& code) {
  std::vector<std::string> all;
  bool joined = false;
  for (std::size_t at = 0; at < code.size();) {
    if (code.compare(at, 2, "//") == 0) {
      at = std::min(code.find('\n', at), code.size());
    } else if (code[at] == '\'' && at + 2 < code.size() && (code[at + 1] == '\\' || code[at + 2] == '\'')) {
      at += code[at + 1] == '\\' ? 4 : 3;
      joined = false;
    } else if (code[at] == '"') {
      const std::string text = quoted(code, at);
      if (joined)
        all.back() += text;
      else
        all.push_back(text);
      joined = true;
    } else {
      joined = joined && (std::isspace(static_cast<unsigned char>(code[at])) != 0 || code[at] == 'R');
      ++at;
    }
  }
  return all;
}

/// The same, one a line.
inline std::string said_in(const std::string& code) {
  std::string out;
  for (const std::string& text : literals(code)) out += text + "\n";
  return out;
}

/// With one blank for any blanks and line ends: as it reads, however it is broken into lines.
inline std::string in_one_line(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool blank = std::isspace(static_cast<unsigned char>(c)) != 0;
    if (!blank)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  while (out.ends_with(' ')) out.pop_back();
  return out;
}

}  // namespace kerfbook::rules
