// golden_test.cpp -- whole runs of the built program as text: each tests/golden/*.golden is a script of `$ `
// lines with everything they print below them. KERFBOOK_GOLDEN=update writes the files anew, to be read with
// a pencil.
//
// A line `$ COMMAND` is run by sh in a scratch folder that holds a copy of demo_data; `kerfbook` is the
// program. Standard output and standard error are kept in order; an exit code that is not 0 is printed as
// `[exit N]`. The scratch folder's name is left out. Clock times (20:14:07) are printed as HH:MM:SS, and digests, which are over the times too, as (the digest).
// Lines that begin `# ` are
// remarks.
#include <doctest/doctest.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

#include "slurp.h"

namespace fs = std::filesystem;

namespace {

const fs::path kRoot = KERFBOOK_ROOT;
const std::string kProgram = KERFBOOK_PROGRAM;

using kerfbook::tests::slurp;

std::string run_in(const fs::path& folder, const std::string& command) {
  const std::string script =
      "cd '" + folder.string() + "' && exec 2>&1 && env -i PATH=\"" + folder.string() +
      "/bin:/usr/bin:/bin\" HOME=/nonexistent TZ=UTC LC_ALL=C.UTF-8 KERFBOOK_BOOK=mill.book sh -c '" +
      std::regex_replace(command, std::regex("'"), "'\\''") + "'";
  FILE* pipe = popen(script.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  for (std::size_t n = 0; (n = fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  const int status = pclose(pipe);
  if (!out.empty() && out.back() != '\n') out += '\n';
  out = std::regex_replace(out, std::regex("\\b[0-2][0-9]:[0-5][0-9]:[0-5][0-9]\\b"), "HH:MM:SS");
  out = std::regex_replace(
      out,
      std::regex(
          "\\b[0-9a-f]{4}( [0-9a-f]{4}){2,7}( [0-9a-f]{1,3})?\\b|\\b[0-9a-f]{64}\\b|\\b[0-9a-f]{12}\\b"),
      "(the digest)");
  const std::string here = folder.string() + "/";
  for (std::size_t at = 0; (at = out.find(here)) != std::string::npos;) out.erase(at, here.size());
  const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  if (code != 0) out += "[exit " + std::to_string(code) + "]\n";
  return out;
}

fs::path scratch_for(const std::string& name) {
  const fs::path folder =
      fs::temp_directory_path() / ("kerfbook-golden-" + std::to_string(getpid()) + "-" + name);
  fs::remove_all(folder);
  fs::create_directories(folder / "bin");
  fs::create_symlink(kProgram, folder / "bin" / "kerfbook");
  fs::copy(kRoot / "demo_data", folder / "demo_data", fs::copy_options::recursive);
  return folder;
}

/// Runs every command of the script; the text as it ought to be.
std::string played(const std::string& script, const fs::path& folder) {
  std::string out;
  std::size_t at = 0;
  while (at < script.size()) {
    std::size_t end = script.find('\n', at);
    if (end == std::string::npos) end = script.size();
    const std::string line = script.substr(at, end - at);
    at = end + 1;
    if (line.starts_with("# ")) out += line + "\n";
    if (line.starts_with("$ ")) out += line + "\n" + run_in(folder, line.substr(2)) + "\n";
  }
  return out;
}

std::vector<fs::path> golden_files() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(kRoot / "tests" / "golden")) {
    if (entry.path().extension() == ".golden") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

TEST_CASE("every golden run prints exactly what its file says") {
  const char* mode = std::getenv("KERFBOOK_GOLDEN");
  const bool update = mode != nullptr && std::string(mode) == "update";
  const auto files = golden_files();
  REQUIRE(files.size() >= 1);
  for (const auto& file : files) {
    const std::string expected = slurp(file);
    const fs::path folder = scratch_for(file.stem().string());
    const std::string got = played(expected, folder);
    fs::remove_all(folder);
    if (update) {
      std::ofstream(file, std::ios::binary) << got;
      continue;
    }
    const bool same = got == expected;
    if (!same) {
      const fs::path kept = fs::temp_directory_path() / (file.filename().string() + ".got");
      std::ofstream(kept, std::ios::binary) << got;
      MESSAGE(file.filename().string() << ": what came is in " << kept.string());
    }
    CHECK_MESSAGE(same, file.filename().string());
  }
}
