// support.h -- what the tests of this room share.
#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

#include "slurp.h"

/// A file of the source tree, byte for byte.
inline std::string read_file(const std::string& path) {
  const std::filesystem::path file = std::filesystem::path(KERFBOOK_ROOT) / path;
  REQUIRE_MESSAGE(std::filesystem::exists(file), path);
  return kerfbook::tests::slurp(file);
}
