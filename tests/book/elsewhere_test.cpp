// elsewhere_test.cpp -- a book reached by a link, in a place that must not be written, or what is no file at all: the right
// sentence and exit code, and nothing left beside it. Where rights matter a child process gives up those of root first.
#include <doctest/doctest.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <functional>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

namespace fs = std::filesystem;

const std::string kSheet = "sheet 2026-06-20\nspecies DF\n2x6 5/12\n";

struct Answer {
  std::string said;
  int code = 0;
  auto operator<=>(const Answer&) const = default;
  friend std::ostream& operator<<(std::ostream& out, const Answer& answer) {
    return out << answer.code << " " << answer.said;
  }
};

Answer answer_of(const std::function<void()>& deed) {
  try {
    deed();
  } catch (const Error& error) {
    return {error.what(), static_cast<int>(error.code())};
  }
  return {};
}

Answer read_at(const fs::path& file) {
  return answer_of([&] {
    const Book book = Book::open(file, Shelf::options(true));
    if (!book.verify().empty()) throw Failed("verify finds something");
  });
}

Answer posted_to(const fs::path& file) {
  return answer_of([&] { Book::open(file, Shelf::options()).post_sheet(kSheet, ""); });
}

constexpr int kNotPossible = 99;

/// What a child process answers, after `before` has changed what it may do. kNotPossible when it cannot.
Answer in_a_child(const std::function<bool()>& before, const std::function<Answer()>& deed) {
  int ends[2] = {};
  REQUIRE(::pipe(ends) == 0);
  const ::pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    Answer answer{"", kNotPossible};
    if (before()) answer = deed();
    static_cast<void>(!::write(ends[1], answer.said.data(), answer.said.size()));
    ::_exit(answer.code);
  }
  ::close(ends[1]);
  Answer answer;
  char some[512];
  for (::ssize_t have = 0; (have = ::read(ends[0], some, sizeof some)) > 0;)
    answer.said.append(some, static_cast<std::size_t>(have));
  ::close(ends[0]);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFEXITED(status));
  answer.code = WEXITSTATUS(status);
  return answer;
}

constexpr ::uid_t kNobody = 65'534;

/// Root may do what rights forbid, so it becomes somebody else.
bool no_longer_root() {
  if (::geteuid() != 0) return true;
  return ::setgid(kNobody) == 0 && ::setuid(kNobody) == 0;
}

/// The folder and all in it belong to whom the child will be.
void give_away(const Shelf& shelf) {
  if (::geteuid() != 0) return;
  REQUIRE(::chown(shelf.folder().c_str(), kNobody, kNobody) == 0);
  for (const auto& entry : fs::recursive_directory_iterator(shelf.folder()))
    REQUIRE(::lchown(entry.path().c_str(), kNobody, kNobody) == 0);
}

bool cannot(const Answer& answer) {
  if (answer.code != kNotPossible) return false;
  MESSAGE("not tested here: this place does not let a process give up root's rights, or mount");
  return true;
}

/// A book with one sheet, given away.
void make_book(const Shelf& shelf) {
  { shelf.new_book().post_sheet("sheet 2026-06-01\nspecies DF\nlog T1 14x12\n2x6 5/12 3/16\n", ""); }
  give_away(shelf);
}

}  // namespace

TEST_CASE(
    "a book is read and posted to through a link and a chain of links, and stays one file where it lies") {
  const Shelf shelf;
  make_book(shelf);
  const fs::path other = shelf.folder() / "other";
  fs::create_directory(other);
  fs::create_symlink("../mill.book", other / "one.book");
  fs::create_symlink("one.book", other / "two.book");
  fs::create_symlink(other / "two.book", other / "three.book");
  CHECK(read_at(other / "three.book") == Answer{});
  CHECK(posted_to(other / "three.book") == Answer{});
  CHECK(shelf.open(true).days().size() == 2);
  CHECK(fs::is_symlink(other / "three.book"));
  CHECK(std::distance(fs::directory_iterator(other), fs::directory_iterator()) == 3);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book", "other"});
}

TEST_CASE("links that lead nowhere or round in a ring are told as that, and no book is made behind them") {
  const Shelf shelf;
  const fs::path nowhere = shelf.folder() / "nowhere.book";
  const fs::path ring = shelf.folder() / "ring.book";
  fs::create_symlink("lost.book", nowhere);
  fs::create_symlink("round.book", ring);
  fs::create_symlink("ring.book", shelf.folder() / "round.book");
  const auto names = shelf.names();
  for (const auto& deed : {read_at, posted_to}) {
    CHECK(deed(nowhere) ==
          Answer{nowhere.string() + ": is a link to 'lost.book', and there is no such file", 1});
    CHECK(deed(ring) ==
          Answer{ring.string() + ": is a link that leads round to itself; give the book's own name", 1});
    const std::string lost = (shelf.folder() / "none" / "mill.book").string();
    CHECK(deed(lost) == Answer{lost + ": there is no such book; kerfbook new " + lost + " makes one", 1});
  }
  for (const fs::path& link : {nowhere, ring}) {
    CHECK_THROWS_AS(static_cast<void>(Book::create(link, Shelf::options())), const Refused&);
    CHECK_FALSE(is_book(link));
  }
  CHECK(shelf.names() == names);
}

TEST_CASE("a pipe, a device and a folder are no books, and none of them is waited for") {
  const Shelf shelf;
  REQUIRE(::mkfifo(shelf.file().c_str(), 0600) == 0);
  for (const auto& deed : {read_at, posted_to}) {
    for (const std::string& file :
         {shelf.file().string(), std::string("/dev/null"), std::string("/dev/zero")}) {
      CHECK(deed(file) == Answer{file + ": is no plain file, so no book", 1});
      CHECK_FALSE(is_book(file));
    }
    CHECK(deed(shelf.folder()) == Answer{shelf.folder().string() + ": is a folder, not a book", 1});
    const std::string within = (shelf.file() / "mill.book").string();
    CHECK(deed(within) ==
          Answer{within + ": there is no such book; kerfbook new " + within + " makes one", 1});
    const std::string longer = (shelf.folder() / std::string(300, 'x')).string();
    CHECK(deed(longer) == Answer{longer + ": is longer than a file's name can be", 1});
  }
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}

TEST_CASE("a book that may only be read answers, and is not posted to") {
  for (const bool folder_too : {false, true}) {
    CAPTURE(folder_too);
    const Shelf shelf;
    make_book(shelf);
    const std::string before = shelf.bytes();
    fs::permissions(shelf.file(), fs::perms(0444));
    if (folder_too) fs::permissions(shelf.folder(), fs::perms(0555));
    const Answer read = in_a_child(no_longer_root, [&] { return read_at(shelf.file()); });
    if (cannot(read)) return;
    CHECK(read == Answer{});
    CHECK(in_a_child(no_longer_root, [&] { return posted_to(shelf.file()); }) ==
          Answer{shelf.file().string() +
                     ": the book cannot be written to: the file may not be written to; look at its rights",
                 3});
    CHECK(shelf.bytes() == before);
    CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
    fs::permissions(shelf.folder(), fs::perms(0755));
  }
}

TEST_CASE("a book in a folder that may not be written to answers, and is not posted to") {
  const Shelf shelf;
  make_book(shelf);
  const std::string before = shelf.bytes();
  fs::permissions(shelf.folder(), fs::perms(0555));
  const Answer read = in_a_child(no_longer_root, [&] { return read_at(shelf.file()); });
  if (cannot(read)) return;
  CHECK(read == Answer{});
  CHECK(in_a_child(no_longer_root, [&] { return posted_to(shelf.file()); }) ==
        Answer{shelf.file().string() +
                   ": the book cannot be written to: its folder may not be written to, and posting "
                   "makes a file beside the book for a moment; look at the folder's rights",
               3});
  CHECK(shelf.bytes() == before);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
  fs::permissions(shelf.folder(), fs::perms(0755));
}

TEST_CASE("a book that may not even be read is told as that") {
  const Shelf shelf;
  make_book(shelf);
  for (const bool folder : {false, true}) {
    CAPTURE(folder);
    fs::permissions(folder ? shelf.folder() : shelf.file(), fs::perms::none);
    for (const auto& deed : {read_at, posted_to}) {
      const Answer answer = in_a_child(no_longer_root, [&] { return deed(shelf.file()); });
      if (cannot(answer)) return;
      CHECK(answer ==
            Answer{shelf.file().string() + ": may not be read; look at the rights of the file and its folder",
                   3});
    }
    fs::permissions(shelf.folder(), fs::perms(0755));
  }
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}

TEST_CASE("a book on a disk that may only be read answers, and is not posted to") {
  const Shelf shelf;
  make_book(shelf);
  const std::string before = shelf.bytes();
  const std::string where = shelf.folder().string();
  const char* const folder = where.c_str();
  const auto lock_disk = [&] {  // for the child alone
    return ::unshare(CLONE_NEWNS) == 0 && ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0 &&
           ::mount(folder, folder, nullptr, MS_BIND, nullptr) == 0 &&
           ::mount("none", folder, nullptr, MS_BIND | MS_REMOUNT | MS_RDONLY, nullptr) == 0;
  };
  const Answer read = in_a_child(lock_disk, [&] { return read_at(shelf.file()); });
  if (cannot(read)) return;
  CHECK(read == Answer{});
  CHECK(in_a_child(lock_disk, [&] { return posted_to(shelf.file()); }) ==
        Answer{shelf.file().string() + ": the book cannot be written to: the disk it is on may only be read",
               3});
  CHECK(shelf.bytes() == before);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book"});
}
