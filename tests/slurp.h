// slurp.h -- a whole file, read at once: byte by byte it is most of what a test costs under the sanitizers.
#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace kerfbook::tests {

/// Every byte of a file; empty when it cannot be read.
inline std::string slurp(const std::filesystem::path& file) {
  const std::ifstream stream(file, std::ios::binary);
  std::ostringstream all;
  all << stream.rdbuf();
  return std::move(all).str();
}

}  // namespace kerfbook::tests
