// program_bench.cpp -- what an evening costs as the person at the table pays for it: the whole program, from its start to
// its end, against a bare C program on libsqlite3 (floor.c) that does as much of the same as it must; by processor time of
// both, in the same run, so that what a disk takes for itself is left out. Run by hand: program_bench [FOLDER]
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "base/error.h"
#include "mill_years.h"

namespace fs = std::filesystem;
using namespace kerfbook;

namespace {

using Words = std::vector<std::string>;

constexpr int kYears = 20;
const fs::path kByHand = fs::path(KERFBOOK_ROOT) / "tests/bench/by_hand";

/// Processor time of one run, in milliseconds. Ends the bench when the program fails.
double cost_of(const Words& words) {
  std::vector<char*> argv;
  for (const auto& word : words) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  const pid_t child = ::fork();
  if (child == 0) {
    const int nowhere = ::open("/dev/null", O_WRONLY);
    ::dup2(nowhere, 1);
    ::dup2(nowhere, 2);
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  if (status != 0) throw Failed(fmt::format("{} {}: failed", words[0], words[1]));
  const auto milliseconds = [](const timeval& time) {
    return 1000.0 * static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1000.0;
  };
  return milliseconds(used.ru_utime) + milliseconds(used.ru_stime);
}

class Bench {
 public:
  explicit Bench(fs::path folder) : folder_(std::move(folder)), book_((folder_ / "twenty.book").string()) {
    fs::create_directories(folder_);
    bench::fill(book_, kYears);
  }

  void ask(const char* what, double goal, Words kerfbook, const std::string& by_hand) {
    kerfbook.insert(kerfbook.begin(), KERFBOOK_PROGRAM);
    const Words bare{KERFBOOK_FLOOR, "ask", book_, (kByHand / by_hand).string(),
                     std::to_string(last_day().number)};
    compare(
        what, goal, 40, [&] { return cost_of(kerfbook); }, [&] { return cost_of(bare); });
  }

  void post_a_day() {
    const int number = kYears * bench::kDaysAYear;
    const std::string sheet = spill(number);
    const auto after = (folder_ / "after.book").string();
    fs::copy_file(book_, after, fs::copy_options::overwrite_existing);
    cost_of({KERFBOOK_PROGRAM, "-b", after, "post", sheet});
    const auto one = [&](const std::string& to, const Words& words) {
      fs::copy_file(book_, to, fs::copy_options::overwrite_existing);
      return cost_of(words);
    };
    const auto ours = (folder_ / "day.book").string();
    const auto bare = (folder_ / "day.db").string();
    const std::string day = std::to_string(bench::day_of(number).number);
    compare(
        "a day posted into 20 years", 1.5, 20,
        [&] {
          return one(ours, {KERFBOOK_PROGRAM, "-b", ours, "post", sheet});
        },
        [&] {
          return one(bare, {KERFBOOK_FLOOR, "keep", bare, after, day});
        });
  }

  void post_years() {
    Words post{KERFBOOK_PROGRAM, "-b", (folder_ / "all.book").string(), "post"};
    const std::string ours = post[2];
    for (int i = 0; i < kYears * bench::kDaysAYear; ++i) post.push_back(spill(i));
    const auto mill = folder_ / "mill.toml";
    std::ofstream(mill) << bench::mill_file(kYears);
    const auto bare = (folder_ / "all.db").string();
    compare(
        "4,600 sheets posted at once", 5, 3,
        [&] {
          fs::remove(ours);
          cost_of({KERFBOOK_PROGRAM, "new", ours, "--mill", mill.string()});
          return cost_of(post);
        },
        [&] {
          fs::remove(bare);
          return cost_of({KERFBOOK_FLOOR, "keep", bare, ours});
        });
  }

  [[nodiscard]] const std::string& book() const { return book_; }
  [[nodiscard]] static Day last_day() { return bench::day_of(kYears * bench::kDaysAYear - 1); }

 private:
  /// The least of several runs each, in turn: what else the machine did is in neither.
  template <class One, class Other>
  static void compare(const char* what, double goal, int times, One ours, Other bare) {
    double least = 1e9;
    double floor = 1e9;
    for (int i = 0; i < times; ++i) {
      least = std::min(least, ours());
      floor = std::min(floor, bare());
    }
    fmt::print("{:<32} {:>9.2f} ms {:>9.2f} ms {:>6.2f}  at most {}\n", what, least, floor, least / floor,
               goal);
    std::fflush(stdout);
  }

  std::string spill(int number) {
    const auto file = folder_ / fmt::format("day{:05}.sheet", number);
    std::ofstream(file) << bench::sheet_of(number);
    return file.string();
  }

  fs::path folder_;
  std::string book_;
};

}  // namespace

int main(int count, char** words) {
  try {
    const fs::path folder =
        count > 1 ? fs::path(words[1]) : fs::temp_directory_path() / "kerfbook-program-bench";
    Bench bench(folder);
    fmt::print("{:<32} {:>12} {:>12} {:>6}\n", "processor time", "kerfbook", "bare C", "ratio");
    const std::string day = write_day(Bench::last_day());
    bench.ask("start (the version)", 1.0, {"--version"}, "start.sql");
    bench.ask("a day of 20 years", 1.5, {"-b", bench.book(), "report", "day", "--period", day}, "day.sql");
    bench.ask("the weeks of 20 years", 1.5,
              {"-b", bench.book(), "report", "production-week", "--from", "2006-01-01"},
              "production-week.sql");
    bench.post_a_day();
    bench.post_years();
    fs::remove_all(folder);
    return 0;
  } catch (const std::exception& fault) {
    std::fputs((std::string(fault.what()) + "\n").c_str(), stderr);
    return 1;
  }
}
