// program.h -- running the built program from a test, in a scratch folder of its own.
#pragma once

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "slurp.h"

namespace kerfbook::tests {

namespace fs = std::filesystem;

inline const fs::path kRoot = KERFBOOK_ROOT;
inline const std::string kProgram = KERFBOOK_PROGRAM;

inline void spill(const fs::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

/// A folder that is gone when the test is over.
class Scratch {
 public:
  Scratch() {
    std::string pattern = (fs::temp_directory_path() / "kerfbook-test-XXXXXX").string();
    path_ = ::mkdtemp(pattern.data());
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  ~Scratch() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  [[nodiscard]] const fs::path& path() const { return path_; }
  [[nodiscard]] fs::path operator/(const std::string& name) const { return path_ / name; }
  /// Names of the files in it, for "one file when idle".
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(path_)) found.push_back(entry.path().filename().string());
    std::sort(found.begin(), found.end());
    return found;
  }

 private:
  fs::path path_;
};

/// Starts a program with both outputs into files; the caller waits for it.
inline pid_t start_program(const std::string& program, const std::vector<std::string>& arguments,
                           const fs::path& out, const fs::path& err) {
  std::vector<std::string> words{program};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> argv;
  for (auto& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  const std::string out_name = out.string();
  const std::string err_name = err.string();
  const pid_t child = ::fork();
  if (child == 0) {
    const int out_file = ::open(out_name.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
    const int err_file = ::open(err_name.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
    ::dup2(out_file, 1);
    ::dup2(err_file, 2);
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  return child;
}

inline pid_t start(const std::vector<std::string>& arguments, const fs::path& out, const fs::path& err) {
  return start_program(kProgram, arguments, out, err);
}

struct Ran {
  int code = -1;  ///< exit code, or 128 + signal
  std::string out;
  std::string err;
};

inline int wait_for(pid_t child) {
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

inline Ran run_program(const std::string& program, const std::vector<std::string>& arguments,
                       const fs::path& folder) {
  const fs::path out = folder / ".out";
  const fs::path err = folder / ".err";
  Ran ran;
  ran.code = wait_for(start_program(program, arguments, out, err));
  ran.out = slurp(out);
  ran.err = slurp(err);
  fs::remove(out);
  fs::remove(err);
  return ran;
}

inline Ran run(const std::vector<std::string>& arguments, const fs::path& folder) {
  return run_program(kProgram, arguments, folder);
}

}  // namespace kerfbook::tests
