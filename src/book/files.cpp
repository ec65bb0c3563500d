#include "book/files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstring>

#include "base/error.h"
#include "base/sync.h"

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
    throw Failed(
        fmt::format("{}: is made, but a power cut could still take it away; look at the disk", to.string()));
}

namespace {

/// Of a program that runs no more: ".mill.book.part1234" with nobody of that number.
void clear_dead(const fs::path& folder, const std::string& begin) {
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with(begin)) continue;
    int number = 0;
    const char* const end = name.data() + name.size();
    const auto read = std::from_chars(name.data() + begin.size(), end, number);
    if (read.ec == std::errc() && read.ptr == end && number > 0 && ::kill(number, 0) != 0 && errno == ESRCH)
      fs::remove(entry.path(), ignored);
  }
}

}  // namespace

DotFile::DotFile(const fs::path& file) {
  const std::string begin = "." + file.filename().string() + ".part";
  const fs::path folder = fs::absolute(file).parent_path();
  clear_dead(folder, begin);
  path_ = folder / (begin + std::to_string(::getpid()));
  std::error_code ignored;
  fs::remove(path_, ignored);  // of a program that was killed and had our number
}

DotFile::~DotFile() {
  std::error_code ignored;
  fs::remove(path_, ignored);
}

void DotFile::keep_as(const fs::path& file) {
  if (sync_path(path_) != 0)
    throw Failed(fmt::format("{}: could not be put on the disk ({})", file.string(), std::strerror(errno)));
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
