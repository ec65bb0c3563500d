#include "base/unfinished.h"

#include <signal.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <string>

namespace kerfbook {

namespace fs = std::filesystem;

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

fs::path unfinished_name(const fs::path& file) {
  const std::string begin = "." + file.filename().string() + ".part";
  const fs::path folder = fs::absolute(file).parent_path();
  clear_dead(folder, begin);
  fs::path name = folder / (begin + std::to_string(::getpid()));
  std::error_code ignored;
  fs::remove(name, ignored);  // of a program that was killed and had our number
  return name;
}

}  // namespace kerfbook
