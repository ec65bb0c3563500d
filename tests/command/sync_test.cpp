// sync_test.cpp -- when the very last thing fails, that the folder is synced, what is told is true: it is done already.
#include <dirent.h>
#include <doctest/doctest.h>
#include <sys/stat.h>
#include <sys/syscall.h>

#include <cerrno>

#include "base/sync.h"
#include "command/desk.h"

namespace {

/// The folder that cannot be synced; none when empty. Files in it can be.
struct stat failing_folder {};
bool a_folder_fails = false;

int synced(long call, int handle) {
  struct stat now {};
  if (a_folder_fails && ::fstat(handle, &now) == 0 && now.st_ino == failing_folder.st_ino &&
      now.st_dev == failing_folder.st_dev) {
    errno = EIO;
    return -1;
  }
  return static_cast<int>(::syscall(call, handle));
}

}  // namespace

// In place of the system's, for this program and for the libraries it uses.
extern "C" int fsync(int handle) {
  return synced(SYS_fsync, handle);
}
extern "C" int fdatasync(int handle) {
  return synced(SYS_fdatasync, handle);
}

using namespace kerfbook::tests;

namespace {

constexpr int kDone = 0;
constexpr int kFailed = 3;

class FailingFolder {
 public:
  explicit FailingFolder(const fs::path& folder) {
    REQUIRE(::stat(folder.c_str(), &failing_folder) == 0);
    a_folder_fails = true;
  }
  FailingFolder(const FailingFolder&) = delete;
  FailingFolder& operator=(const FailingFolder&) = delete;
  ~FailingFolder() { a_folder_fails = false; }
};

Ran at_desk(const std::string& book, std::vector<std::string> words) {
  words.insert(words.begin(), {"-b", book});
  return run_at("2026-06-03", "20:00:00", words);
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "a payment or a sheet whose folder cannot be synced at the end is posted, and the message says so") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  spill(scratch / "next.sheet", "sheet 2026-06-02\njob BRN\nspecies DF\nsawing 8:00-9:00\n2x6 5/12\n");
  const std::vector<std::vector<std::string>> deeds{{"pay", "5", "--invoice", "1"},
                                                    {"post", (scratch / "next.sheet").string()}};
  for (const auto& deed : deeds) {
    CAPTURE(deed.front());
    {
      const FailingFolder failing(scratch.path());
      const Ran ran = at_desk(book, deed);
      CHECK(ran.code == kFailed);
      CHECK_MESSAGE(has(ran.err, " is posted all the same, so do not post it again"), ran.err);
    }
    CHECK(at_desk(book, {"verify"}).code == kDone);
  }
  CHECK(at_desk(book, {"paper", "payment", "1"}).code == kDone);
  CHECK(at_desk(book, {"show", "2026-06-02"}).code == kDone);
}

TEST_CASE("a receipt or a report whose folder cannot be synced is written, and the message says so") {
  const Scratch scratch;
  const std::string book = book_with_an_invoice(scratch);
  fs::create_directory(scratch / "out");
  const FailingFolder failing(scratch / "out");
  const std::string receipt = (scratch / "out/receipt.txt").string();
  const Ran paid = at_desk(book, {"pay", "5", "--invoice", "1", "-o", receipt});
  CHECK(paid.code == kFailed);
  CHECK(has(paid.err, "receipt.txt: is written, but a power cut could still take it away"));
  CHECK(has(paid.err, "receipt 1 posted all the same, so do not post it again"));
  CHECK(has(slurp(receipt), "5.00"));
  const std::string report = (scratch / "out/owed.txt").string();
  const Ran owed = at_desk(book, {"owed", "-o", report});
  CHECK(owed.code == kFailed);
  CHECK(has(owed.err, "owed.txt: is written, but"));
  CHECK(has(slurp(report), "BRN"));
}

TEST_CASE("a new book whose folder cannot be synced at the end is made, and the message says so") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  Ran ran;
  {
    const FailingFolder failing(scratch.path());
    ran = run_at("2026-06-03", "20:00:00", {"new", book});
  }
  CHECK(ran.code == kFailed);
  CHECK(has(ran.err, "mill.book: is made, but a power cut could still take it away"));
  CHECK(!has(ran.err, "nothing was changed"));
  CHECK(at_desk(book, {"verify"}).code == kDone);
}

TEST_CASE("a folder is synced, and one that is not there is told of") {
  const Scratch scratch;
  CHECK(kerfbook::sync_path(scratch.path()) == 0);
  CHECK(kerfbook::sync_path(scratch / "missing") == ENOENT);
  const FailingFolder failing(scratch.path());
  CHECK(kerfbook::sync_path(scratch.path()) == EIO);
}
