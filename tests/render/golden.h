// golden.h -- whole outputs kept as files in tests/render/golden. KERFBOOK_UPDATE_GOLDEN=1 writes them anew;
// read what changed with care before it is committed.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

namespace kerfbook::render {

inline std::string golden_path(const std::string& name) {
  return std::string(KERFBOOK_ROOT) + "/tests/render/golden/" + name;
}

inline void check_golden(const std::string& name, const std::string& made) {
  const std::string path = golden_path(name);
  if (std::getenv("KERFBOOK_UPDATE_GOLDEN") != nullptr) std::ofstream(path, std::ios::binary) << made;
  std::ifstream file(path, std::ios::binary);
  const std::string kept{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  CHECK_MESSAGE(kept == made, "differs from " << path);
}

}  // namespace kerfbook::render
