// bad_input_bench.cpp -- what bad input costs: the whole program over made files of growing size, each with its time, the
// most memory it had, and its time against the file of half its size. Time that grows as the file gives 2 there, and a
// file past its limit costs nothing. Give a word to run only the cases whose name has it, and the most MiB to go to.
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kKiB = 1024;
constexpr std::size_t kMiB = 1024 * kKiB;
constexpr unsigned kPatience = 120;  ///< seconds; then a run is given up

/// The n-th piece of a made file.
using Piece = std::function<std::string(std::size_t n)>;

struct Case {
  std::string name;
  std::string ending;
  std::string head;
  Piece piece;
  std::vector<std::string> command;  ///< FILE stands for the made file, BOOK for a new book
};

/// Written piece by piece: what this program holds counts as memory of the one it starts.
void make(const fs::path& file, const Case& of, std::size_t bytes) {
  std::ofstream stream(file, std::ios::binary);
  stream << of.head;
  std::size_t written = of.head.size();
  for (std::size_t n = 0; written < bytes; ++n) {
    const std::string piece = of.piece(n);
    if (written + piece.size() > bytes) break;
    stream << piece;
    written += piece.size();
  }
}

struct Cost {
  double seconds = 0;
  double mib = 0;
  int code = 0;
};

Cost run(const std::vector<std::string>& words) {
  std::vector<std::string> all = words;
  all.insert(all.begin(), KERFBOOK_PROGRAM);
  std::vector<char*> argv;
  for (auto& word : all) argv.push_back(word.data());
  argv.push_back(nullptr);
  const auto start = std::chrono::steady_clock::now();
  const pid_t child = ::fork();
  if (child == 0) {
    if (std::freopen("/dev/null", "w", stdout) == nullptr ||
        std::freopen("/dev/null", "w", stderr) == nullptr)
      ::_exit(126);
    ::alarm(kPatience);
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  return {took.count(), static_cast<double>(used.ru_maxrss) / 1024.0,
          WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status)};
}

void measure(const Case& of, const fs::path& folder, std::size_t most) {
  double before = 0;
  for (const std::size_t bytes : {256 * kKiB, 512 * kKiB, kMiB, 2 * kMiB, 4 * kMiB, 10 * kMiB, 100 * kMiB}) {
    if (bytes > most) break;
    const fs::path file = folder / ("made" + of.ending);
    const fs::path book = folder / "made.book";
    make(file, of, bytes);
    std::vector<std::string> words = of.command;
    const bool with_book = std::find(words.begin(), words.end(), "BOOK") != words.end();
    if (with_book) run({"new", book.string()});
    for (std::string& word : words) {
      if (word == "FILE") word = file.string();
      if (word == "FOLDER") word = folder.string();
      if (word == "BOOK") word = book.string();
    }
    const Cost cost = run(words);
    std::printf("%-34s %8zu KiB %8.2f s %8.1f MiB  exit %3d", of.name.c_str(), bytes / kKiB, cost.seconds,
                cost.mib, cost.code);
    if (before > 0.05) std::printf("  x %.2f", cost.seconds / before);
    std::printf("\n");
    std::fflush(stdout);
    before = cost.seconds;
    fs::remove(file);
    fs::remove(book);
    if (cost.code >= 128) break;
  }
}

std::string number(std::size_t n) {
  return std::to_string(n);
}

/// Bytes of every value but zero, the same on every machine.
Piece junk() {
  return [state = std::uint32_t{1}](std::size_t) mutable {
    state = state * 1664525U + 1013904223U;
    return std::string(1, static_cast<char>(1 + (state >> 24U) % 255));
  };
}

Piece again(const std::string& text) {
  return [text](std::size_t) { return text; };
}

void add_sheets(std::vector<Case>& all) {
  const std::string head = "sheet 2026-05-05\njob A\nspecies DF\n";
  const auto add = [&](const std::string& name, const std::string& begin, Piece piece) {
    all.push_back({"sheet: " + name, ".sheet", begin, std::move(piece), {"check", "FILE"}});
  };
  add("junk", "", junk());
  add("zero bytes", "", again(std::string(64, '\0')));
  add("blanks", head, again(std::string(64, ' ')));
  add("lines of blanks", head, again("2x6" + std::string(1900, ' ') + "1/16\n"));
  add("one line", head + "note ", again("abc "));
  add("line ends", head, again("\n"));
  add("bad lines", head, [](std::size_t n) { return "2x" + number(n % 10) + " nonsense\n"; });
  add("unknown lines", head, [](std::size_t n) { return "spceies" + number(n) + "\n"; });
  add("good lines", head, [](std::size_t n) { return "1x3 1/" + number(8 + n % 9) + "\n"; });
  add("good logs", head, [](std::size_t n) { return "log T" + number(n) + " 15x12\n"; });
  add("logs twice", head, [](std::size_t n) { return "log T" + number(n / 2) + " 15x12\n"; });
  add("ranges", head,
      [](std::size_t n) { return "log " + number(1000 * n) + "-" + number(1000 * n + 900) + "\n"; });
  add("jobs", head, [](std::size_t n) { return "job J" + number(n) + "\n1x3 1/8\n"; });
  add("sites", head, [](std::size_t n) { return "site Farm " + number(n) + "\n1x3 1/8\n"; });
  add("doubtful times", head,
      [](std::size_t n) { return "stop 0.0" + number(1 + n % 9) + " cause" + number(n) + "\n"; });
  add("sawing", head, again("sawing 7:15-7:16 7:17-7:18\n"));
  add("crew", head, [](std::size_t n) { return "crew Man" + number(n) + " 0:01\n"; });
  add("notes", head, again("note rain after three\n"));
  add("teeth", head, [](std::size_t n) { return "teeth head replaced 1 metal T" + number(n) + "\n"; });
  add("calipers", head, again("thick 2x6 2.02 2.00 1.98 2.03\n"));
  add("sold", head, [](std::size_t n) { return "sold Buyer" + number(n) + " 1x3 1/8 at 1\n"; });
  add("moves", head, [](std::size_t n) { return "move A" + number(n) + " to B 1 mi 0:01\n"; });
  add("charges", head, [](std::size_t n) { return "charge A strike" + number(n) + " 1\n"; });
  add("marks", head, again("5/4 rw 7½×8 6″x8′*3 ,,,,;;;\n"));
  all.push_back({"sheet: posted logs",
                 ".sheet",
                 head,
                 [](std::size_t n) { return "log T" + number(n) + " 15x12\n"; },
                 {"-b", "BOOK", "post", "FILE"}});
  all.push_back({"sheet: posted jobs",
                 ".sheet",
                 head,
                 [](std::size_t n) { return "job J" + number(n) + "\n1x3 1/8\n"; },
                 {"-b", "BOOK", "post", "FILE"}});
}

void add_mill_files(std::vector<Case>& all) {
  const auto add = [&](const std::string& name, const std::string& begin, Piece piece) {
    all.push_back({"mill: " + name, ".toml", begin, std::move(piece), {"check", "FILE"}});
  };
  add("junk", "", junk());
  add("line ends", "", again("\n"));
  add("blanks", "", again(std::string(60, ' ') + "\n"));
  add("keys", "", [](std::size_t n) { return "key" + number(n) + " = 1\n"; });
  add("species", "[species]\n", [](std::size_t n) { return "S" + number(n) + " = \"x\"\n"; });
  add("species tables", "", [](std::size_t n) { return "[species.S" + number(n) + "]\nname = \"x\"\n"; });
  add("targets", "[lumber.target]\n", [](std::size_t n) {
    return "\"" + number(n / 999 + 1) + "/64x" + number(n % 999 + 1) + "/32\" = \"2x6\"\n";
  });
  add("sizes", "[lumber]\nsizes = [\n",
      [](std::size_t n) { return "\"" + number(n / 99 + 1) + "/64x" + number(n % 99 + 1) + "\",\n"; });
  add("saws", "", [](std::size_t n) { return "[[saw]]\nrole = \"S" + number(n) + "\"\n"; });
  add("jobs", "", [](std::size_t n) {
    return "[[job]]\ncode = \"J" + number(n) + "\"\ncustomer = \"C" + number(n) + "\"\n";
  });
  add("customers", "", [](std::size_t n) { return "[[customer]]\nname = \"C" + number(n) + "\"\n"; });
  add("prices", "",
      [](std::size_t n) { return "[[price]]\nbasis = \"bf\"\nrate = 0." + number(n % 90 + 10) + "\n"; });
  add("charges", "", [](std::size_t n) { return "[[charge]]\nname = \"c" + number(n) + "\"\nrate = 1\n"; });
  add("no TOML", "", again("= [ = ]\n"));
  add("brackets over lines", "a = ", again("[\n"));
  add("tables in lists over lines", "a = ", again("[ { " + std::string(1500, 'b') + " = \n"));
  std::string dotted = "b";
  for (int i = 0; i < 900; ++i) dotted += ".b";
  add("long keys in lists over lines", "a = ", again("[ { " + dotted + " =\n"));
  add("long keys", "", [dotted](std::size_t n) { return "k" + number(n) + "." + dotted + " = 1\n"; });
  add("one list", "a = [\n", again("1,\n"));
  add("broken claims", "[species]\n", [](std::size_t n) { return "S" + number(n) + " = \"x\"\n[=\n"; });
  all.push_back({"mill: posted customers",
                 ".toml",
                 "",
                 [](std::size_t n) { return "[[customer]]\nname = \"C" + number(n) + "\"\n"; },
                 {"-b", "BOOK", "post", "FILE"}});
  all.push_back({"mill: posted species",
                 ".toml",
                 "[species]\n",
                 [](std::size_t n) { return "S" + number(n) + " = \"x\"\n"; },
                 {"-b", "BOOK", "post", "FILE"}});
}

void add_reports(std::vector<Case>& all) {
  const std::string head = "-- report: mine\n-- title: T\n-- meaning: M\n-- table: t |\n";
  const auto add = [&](const std::string& name, const std::string& begin, Piece piece) {
    all.push_back({"report: " + name, ".sql", begin, std::move(piece), {"-b", "BOOK", "check", "FILE"}});
  };
  add("junk", "", junk());
  add("columns", head, [](std::size_t n) { return "-- shows: c" + number(n) + " count \"C\"\n"; });
  add("tables", head, [](std::size_t n) { return "-- table: t" + number(n) + " |\nSELECT 1 AS a\n"; });
  add("bad words", head, again("-- shos: x\n"));
  add("continued words", head + "-- note: x\n", again("--   and more\n"));
  add("parts of a SELECT", head + "-- shows: a count \"A\"\nSELECT 1", again(" + 1"));
  add("brackets", head + "-- shows: a count \"A\"\nSELECT ", again("("));
  add("remarks", head + "-- shows: a count \"A\"\nSELECT 1 AS a\n", again("/* x */ -- y\n"));
  add("statements", head + "-- shows: a count \"A\"\nSELECT 1 AS a;\n", again(";\n"));
  all.push_back(
      {"report: in a folder", ".sql", head, junk(), {"-b", "BOOK", "report", "mine", "--reports", "FOLDER"}});
}

void add_lists_of_logs(std::vector<Case>& all) {
  const auto add = [&](const std::string& name, const std::string& begin, Piece piece) {
    all.push_back({"logs: " + name, ".csv", begin, std::move(piece), {"scale", "--file", "FILE"}});
  };
  add("junk", "log\n", junk());
  add("good", "log\n", again("15x12\n"));
  add("bad", "log\n", again("x\n"));
  add("one quote", "log\n\"", again("15x12\n"));
  add("quotes", "log\n", again("\"\""));
  add("commas", "log\n", again(","));
  add("line ends", "log\n", again("\n"));
  add("defects", "log\n", again("15x12 defect 10% rot\n"));
}

}  // namespace

int main(int count, char** words) {
  std::vector<Case> all;
  add_sheets(all);
  add_mill_files(all);
  add_reports(all);
  add_lists_of_logs(all);
  std::string pattern = (fs::temp_directory_path() / "kerfbook-bench-XXXXXX").string();
  const fs::path folder = ::mkdtemp(pattern.data());
  const std::size_t most = count < 3 ? 100 * kMiB : std::strtoul(words[2], nullptr, 10) * kMiB;
  for (const Case& one : all) {
    const bool wanted = count < 2 || one.name.find(words[1]) != std::string::npos;
    if (wanted) measure(one, folder, most);
  }
  fs::remove_all(folder);
  return 0;
}
