// copy_test.cpp -- safety copies: whole or not there at all, thinned out by their rule and never beyond it, and put back
// with the replaced book kept.
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/error.h"
#include "book/copy.h"
#include "book/restore.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

namespace fs = std::filesystem;

void post_day(Book& book, int day) {
  book.post_sheet(
      fmt::format("sheet 2026-06-{:02}\njob BRN\nspecies DF\nlog T{} 14x12\n2x6 5/12 3/16\n", day, day), "");
}

void make_book(const Shelf& shelf, int days) {
  Book book = shelf.new_book();
  for (int day = 1; day <= days; ++day) post_day(book, day);
}

std::vector<std::string> names_in(const fs::path& folder) {
  std::vector<std::string> names;
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(folder, none))
    names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

OpenOptions at(const std::string& now) {
  OpenOptions options = Shelf::options();
  options.now = [now] { return now; };
  return options;
}

std::string copy_name(Day day) {
  return "mill.book." + write_day(day) + "-200000.copy";
}

/// The days of the copies that stay when one is made every day, thinned each day.
std::vector<Day> kept_after(int days, Day first) {
  std::vector<DatedCopy> all;
  for (int i = 0; i < days; ++i) {
    const Day today = first + i;
    all.push_back({copy_name(today), today, "200000"});
    for (const DatedCopy& gone : outlived(all, today))
      std::erase_if(all, [&](const DatedCopy& one) { return one.day == gone.day; });
  }
  std::vector<Day> kept;
  for (const DatedCopy& one : all) kept.push_back(one.day);
  return kept;
}

}  // namespace

TEST_CASE("a copy holds what the book holds, is found sound, and stands alone in its folder") {
  const Shelf shelf;
  make_book(shelf, 3);
  const Book book = shelf.open(true);
  const Copied copied = copy_book(book, {}, "2026-06-03 20:00:00");
  CHECK(copied.file == shelf.folder() / "mill.book.copies" / copy_name(make_day(2026, 6, 3)));
  CHECK(copied.newest.digest == book.newest().digest);
  CHECK(names_in(copied.file.parent_path()) == std::vector<std::string>{copied.file.filename().string()});
  const Book copy = Book::open(copied.file, Shelf::options(true));
  CHECK(copy.verify().empty());
  CHECK(copy.newest().digest == book.newest().digest);
  CHECK(Shelf::dump(copy) == Shelf::dump(book));
}

TEST_CASE("two copies of one second have two names, and both are known as copies") {
  const Shelf shelf;
  make_book(shelf, 1);
  const Book book = shelf.open(true);
  const fs::path folder = shelf.folder() / "stick";
  const auto first = copy_book(book, folder, "2026-06-03 20:00:00");
  const auto second = copy_book(book, folder, "2026-06-03 20:00:00");
  CHECK(first.file != second.file);
  const auto known = dated_copies(shelf.file(), folder);
  REQUIRE(known.size() == 2);
  CHECK(known.back().file == second.file);
}

TEST_CASE("of daily copies stay the last 7 days, then one a week for 8 weeks, then one a month") {
  const Day first = make_day(2026, 1, 1);
  const Day last = first + 399;
  const auto kept = kept_after(400, first);
  int recent = 0;
  int weeks = 0;
  int months = 0;
  for (const Day day : kept) {
    const int age = last - day;
    ++(age < 7 ? recent : age < 63 ? weeks : months);
  }
  CHECK(recent == 7);
  CHECK(weeks >= 7);
  CHECK(weeks <= 9);
  CHECK(months >= 10);  // 400 days less nine weeks: eleven months, begun or whole
  CHECK(months <= 13);
  for (std::size_t i = 1; i < kept.size(); ++i) CHECK(kept[i] - kept[i - 1] <= 38);
  CHECK(kept_after(5, first).size() == 5);
}

TEST_CASE("the newest copy is never let go, nor one dated in days to come") {
  const Day today = make_day(2026, 6, 3);
  const std::vector<DatedCopy> old{{"a", today - 700, "1"}, {"b", today - 699, "1"}, {"c", today + 40, "1"}};
  const auto gone = outlived(old, today);
  REQUIRE(gone.size() <= 1);
  for (const auto& one : gone) CHECK(one.file == "a");
  CHECK(outlived({{"a", today - 700, "1"}}, today).empty());
}

TEST_CASE("only copies of this very book with a name of ours are removed, and none without a good new one") {
  const Shelf shelf;
  make_book(shelf, 2);
  const fs::path folder = shelf.folder() / "stick";
  fs::create_directory(folder);
  const Day today = make_day(2026, 6, 3);
  const auto place = [&](const std::string& name) { fs::copy_file(shelf.file(), folder / name); };
  place(copy_name(today - 20));
  place(copy_name(today - 21));  // Tuesday and Wednesday of one week
  const std::vector<std::string> others{"mill.book.2026-05-12-200000.before-edition1.copy",
                                        "mill.book.2026-05-12.copy",
                                        "mill.book.2026-05-12-2000.copy",
                                        "mill.book.2026-05-12-200000.copy.old",
                                        "other.book.2026-05-12-200000.copy",
                                        "mill.book"};
  for (const auto& name : others) place(name);
  {  // a copy of another book that has the same name
    const Shelf other;
    Book book = other.new_book();
    post_day(book, 9);
    fs::copy_file(other.file(), folder / "mill.book.2026-05-11-200000.copy");
  }
  Book book = shelf.open();
  const Copied copied = copy_book(book, folder, write_day(today) + " 20:00:00");
  REQUIRE(copied.removed.size() == 1);
  CHECK(copied.removed.front().filename() == copy_name(today - 21));
  REQUIRE(copied.kept.size() == 1);
  CHECK(copied.kept.front().find("2026-05-11") != std::string::npos);
  for (const auto& name : others) CHECK(fs::exists(folder / name));
  CHECK(fs::exists(folder / copy_name(today - 20)));

  place(copy_name(today - 21));
  CHECK(copy_book(book, folder, write_day(today) + " 20:00:01", true).removed.empty());
  SQLite::Database(shelf.file().string(), SQLite::OPEN_READWRITE)
      .exec("UPDATE journal SET body = replace(body, '5/12', '6/12') WHERE entry = 1");
  const auto before = names_in(folder);
  CHECK_THROWS_WITH_AS(copy_book(book, folder, write_day(today) + " 20:00:02"),
                       doctest::Contains("the book is damaged"), const Failed&);
  CHECK(names_in(folder) == before);
}

TEST_CASE("a disk that is full while a copy is written leaves nothing that is named like one") {
  const Shelf shelf;
  make_book(shelf, 20);
  const auto whole = fs::file_size(shelf.file());
  const fs::path folder = shelf.folder() / "stick";
  fs::create_directory(folder);
  for (const auto room : {std::uintmax_t{0}, std::uintmax_t{4096}, whole / 2, whole - 4096}) {
    CAPTURE(room);
    const pid_t child = ::fork();
    if (child == 0) {
      ::signal(SIGXFSZ, SIG_IGN);
      const rlimit limit{room, room};
      ::setrlimit(RLIMIT_FSIZE, &limit);
      int code = 0;
      try {
        copy_book(shelf.open(true), folder, "2026-06-03 20:00:00");
      } catch (const Failed&) {
        code = 3;
      } catch (...) {
        code = 9;
      }
      ::_exit(code);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 3);
    CHECK(names_in(folder).empty());
  }
  copy_book(shelf.open(true), folder, "2026-06-03 20:00:00");
  CHECK(names_in(folder).size() == 1);
}

TEST_CASE("copying that is killed leaves no copy that is not whole, and the next one clears up") {
  const Shelf shelf;
  make_book(shelf, 25);
  const fs::path folder = shelf.folder() / "stick";
  int killed = 0;
  for (int wait = 0; wait < 40; ++wait) {
    const pid_t child = ::fork();
    if (child == 0) {
      try {
        copy_book(shelf.open(true), folder, fmt::format("2026-06-03 20:00:{:02}", wait));
      } catch (...) {
        ::_exit(9);
      }
      ::_exit(0);
    }
    ::usleep(static_cast<useconds_t>(wait * 400));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    killed += WIFSIGNALED(status) ? 1 : 0;
  }
  CHECK(killed > 3);
  copy_book(shelf.open(true), folder, "2026-06-03 21:00:00", true);
  const auto digest = shelf.open(true).newest().digest;
  for (const auto& name : names_in(folder)) {
    CAPTURE(name);
    if (name.front() == '.') continue;
    const Book copy = Book::open(folder / name, Shelf::options(true));
    CHECK(copy.newest().digest == digest);
  }
  CHECK(dated_copies(shelf.file(), folder).size() >= 1);
}

TEST_CASE("a copy held against the book says what each has that the other has not") {
  const Shelf shelf;
  make_book(shelf, 2);
  const fs::path copy = copy_book(shelf.open(true), {}, "2026-06-02 20:00:00").file;
  {
    Book book = shelf.open();
    post_day(book, 3);
    book.post_paper("invoice 1", "its text", "");
  }
  auto compared = compare_copy(shelf.file(), copy, Shelf::options());
  CHECK(compared.alike == 2);
  REQUIRE(compared.only_book.size() == 2);
  CHECK(compared.only_book[0].subject == "2026-06-03");
  CHECK(compared.only_book[1].subject == "invoice 1");
  CHECK(compared.only_copy.empty());
  CHECK_FALSE(compared.book_damaged);

  Book other = Book::open(copy, Shelf::options());
  post_day(other, 7);
  compared = compare_copy(shelf.file(), copy, Shelf::options());
  CHECK(compared.alike == 2);
  REQUIRE(compared.only_copy.size() == 1);
  CHECK(compared.only_copy[0].subject == "2026-06-07");
}

TEST_CASE("a copy put back is the book, and the replaced book is kept beside it as it was") {
  const Shelf shelf;
  make_book(shelf, 2);
  const fs::path copy = copy_book(shelf.open(true), {}, "2026-06-02 20:00:00").file;
  const auto digest = shelf.open(true).newest().digest;
  {
    Book book = shelf.open();
    post_day(book, 3);
  }
  const std::string bytes = shelf.bytes();
  const fs::path old = restore_copy(shelf.file(), copy, at("2026-06-04 20:00:00"));
  CHECK(old == shelf.folder() / "mill.book.2026-06-04-200000.replaced");
  CHECK(Shelf::slurp(old) == bytes);
  CHECK(shelf.open(true).newest().digest == digest);
  CHECK(shelf.open().verify().empty());
  CHECK(shelf.names() ==
        std::vector<std::string>{"mill.book", "mill.book.2026-06-04-200000.replaced", "mill.book.copies"});
}

TEST_CASE(
    "a damaged book, a cut one and a lost one are replaced too, a dead writer's journal kept with the "
    "damaged one") {
  const Shelf shelf;
  make_book(shelf, 12);
  const fs::path copy = copy_book(shelf.open(true), {}, "2026-06-12 20:00:00").file;
  const std::string whole = shelf.bytes();
  for (const std::size_t keep : {std::size_t{0}, std::size_t{150}, std::size_t{4096}, whole.size() / 2}) {
    CAPTURE(keep);
    std::ofstream(shelf.file(), std::ios::binary | std::ios::trunc) << whole.substr(0, keep);
    const auto compared = compare_copy(shelf.file(), copy, Shelf::options());
    CHECK(compared.book_damaged);
    CHECK(compared.only_book.empty());
    const fs::path old = restore_copy(shelf.file(), copy, at("2026-06-13 20:00:00"));
    CHECK(fs::file_size(old) == keep);
    CHECK(shelf.open(true).verify().empty());
  }
  const std::string journal("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7 and what a killed writer left", 36);
  std::ofstream(shelf.file().string() + "-journal", std::ios::binary) << journal << std::string(600, 'x');
  std::ofstream(shelf.file(), std::ios::binary | std::ios::trunc) << std::string(4096, 'x');
  const fs::path old = restore_copy(shelf.file(), copy, at("2026-06-14 20:00:00"));
  CHECK(fs::exists(old.string() + "-journal"));
  CHECK_FALSE(fs::exists(shelf.file().string() + "-journal"));
  CHECK(shelf.open(true).verify().empty());
  fs::remove(shelf.file());
  CHECK_FALSE(compare_copy(shelf.file(), copy, Shelf::options()).book_there);
  CHECK(restore_copy(shelf.file(), copy, at("2026-06-15 20:00:00")).empty());
  CHECK(shelf.open(true).verify().empty());
}

TEST_CASE("what is no sound copy is not put back, and the book stays") {
  const Shelf shelf;
  make_book(shelf, 12);
  const fs::path copy = copy_book(shelf.open(true), {}, "2026-06-12 20:00:00").file;
  const std::string whole = Shelf::slurp(copy);
  const std::string bytes = shelf.bytes();
  for (const std::string& hurt :
       {whole.substr(0, whole.size() / 2), std::string("a letter"), std::string()}) {
    std::ofstream(copy, std::ios::binary | std::ios::trunc) << hurt;
    CHECK_THROWS_AS(restore_copy(shelf.file(), copy, at("2026-06-13 20:00:00")), const Error&);
    CHECK(shelf.bytes() == bytes);
  }
  std::ofstream(copy, std::ios::binary | std::ios::trunc) << whole;
  SQLite::Database(copy.string(), SQLite::OPEN_READWRITE)
      .exec("UPDATE journal SET why = 'because' WHERE entry = 3");
  CHECK_THROWS_WITH_AS(restore_copy(shelf.file(), copy, at("2026-06-13 20:00:00")),
                       doctest::Contains("journal entry 3"), const Failed&);
  CHECK(shelf.bytes() == bytes);
  CHECK(shelf.names() == std::vector<std::string>{"mill.book", "mill.book.copies"});
}
