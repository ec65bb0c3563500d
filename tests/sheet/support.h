// support.h -- what the tests of this room share.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>
#include <string>

/// A file of the source tree, byte for byte.
inline std::string read_file(const std::string& path) {
  std::ifstream stream(std::string(KERFBOOK_ROOT) + "/" + path, std::ios::binary);
  REQUIRE_MESSAGE(stream.good(), path);
  std::stringstream text;
  text << stream.rdbuf();
  return text.str();
}
