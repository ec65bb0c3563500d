// outputs_files.cpp -- folders and files of the tests, and other programs they ask.
#include <stdlib.h>

#include <cstdio>
#include <fstream>
#include <stdexcept>

#include "render/outputs.h"
#include "slurp.h"

namespace kerfbook::render {

std::string output_of(const std::string& command) {
  std::string out;
  FILE* const pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return out;
  char buffer[4096];
  for (std::size_t got = 0; (got = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, got);
  ::pclose(pipe);
  return out;
}

Folder::Folder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "kerfbook-test-XXXXXX").string();
  if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for temporary files");
  path_ = pattern;
}

Folder::~Folder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

void write_file(const std::string& path, const std::string& bytes) {
  std::filesystem::create_directories(std::filesystem::path(path).parent_path());
  std::ofstream(path, std::ios::binary) << bytes;
}

std::string read_file(const std::string& path) {
  return tests::slurp(path);
}

}  // namespace kerfbook::render
