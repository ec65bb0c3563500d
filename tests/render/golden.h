// golden.h -- whole outputs kept as files below tests/. KERFBOOK_GOLDEN=update writes them anew; read what changed with
// a pencil before it is committed.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <set>
#include <string>

#include "base/text.h"
#include "render/outputs.h"

namespace kerfbook::render {

inline bool golden_is_made_anew() {
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  return mode != nullptr && std::string(mode) == "update";
}

inline std::string golden_path(const std::string& room, const std::string& name) {
  return std::string(KERFBOOK_ROOT) + "/tests/" + room + "/golden/" + name;
}

/// The first line in which two texts differ, for the message.
inline std::string first_difference(const std::string& kept, const std::string& made) {
  const auto before = split_lines(kept);
  const auto after = split_lines(made);
  std::size_t line = 0;
  while (line < before.size() && line < after.size() && before[line] == after[line]) ++line;
  const auto at = [&](const auto& lines) {
    return line < lines.size() ? std::string(lines[line]) : std::string("(the end)");
  };
  return "line " + std::to_string(line + 1) + "\n kept: " + at(before) + "\n made: " + at(after);
}

inline void check_golden(const std::string& room, const std::string& name, const std::string& made) {
  const std::string path = golden_path(room, name);
  if (golden_is_made_anew()) write_file(path, made);
  const std::string kept = read_file(path);
  const bool same = kept == made;  // the two whole texts would bury the message
  CHECK_MESSAGE(same, path << " differs: " << first_difference(kept, made));
}

/// Files of a report or a document that is gone are no longer read by any test, so they must go too.
inline void check_no_golden_but(const std::string& room, const std::set<std::string>& names) {
  for (const auto& entry : std::filesystem::directory_iterator(golden_path(room, ""))) {
    if (names.contains(entry.path().filename().string())) continue;
    if (golden_is_made_anew()) std::filesystem::remove(entry.path());
    CHECK_MESSAGE(golden_is_made_anew(), entry.path().string() << " belongs to nothing; delete it");
  }
}

}  // namespace kerfbook::render
