#include "book/files.h"

#include <fcntl.h>
#include <fmt/format.h>

#include <cerrno>
#include <cstring>

#include "base/error.h"
#include "base/sync.h"
#include "base/unfinished.h"

namespace kerfbook::book {

namespace fs = std::filesystem;

void name_new(const fs::path& from, const fs::path& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) != 0) {
    if (errno == EEXIST || fs::exists(fs::symlink_status(to)))
      throw Refused(to.string() + ": is there already");
    std::error_code error;  // a file system without that call
    fs::rename(from, to, error);
    if (error) throw Failed(fmt::format("{}: cannot be named so ({})", to.string(), error.message()));
  }
  if (sync_path(fs::absolute(to).parent_path()) != 0)
    throw FailedLate(
        fmt::format("{}: is made, but a power cut could still take it away; look at the disk", to.string()));
}

DotFile::DotFile(const fs::path& file) : path_(unfinished_name(file)) {}

DotFile::~DotFile() {
  std::error_code ignored;
  fs::remove(path_, ignored);
}

void DotFile::keep_as(const fs::path& file) {
  if (const int fault = sync_path(path_))
    throw Failed(fmt::format("{}: could not be put on the disk ({})", file.string(), std::strerror(fault)));
  name_new(path_, file);
}

std::string in_a_name(std::string_view now) {
  std::string out;
  for (const char c : now) {
    if (c == ' ') out += '-';
    if (c != ' ' && c != ':') out += c;
  }
  return out;
}

fs::path free_name(const std::string& base, const std::string& ending) {
  fs::path name = base + ending;
  for (int i = 2; fs::exists(fs::symlink_status(name)); ++i) name = fmt::format("{}-{}{}", base, i, ending);
  return name;
}

}  // namespace kerfbook::book
