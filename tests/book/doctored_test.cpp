// doctored_test.cpp -- a book is opened as what it is, a file that may come from a stranger: whatever somebody has put
// into it is refused, told or harmless, and nothing of it ever runs (SQLite Database File Format; SQLite, "Defense
// Against The Dark Arts").
#include <doctest/doctest.h>

#include "base/error.h"
#include "book/doctored.h"

using namespace kerfbook;
using namespace kerfbook::book;
using namespace kerfbook::tests;

namespace {

/// The book that all are made from, its rows and its journal.
struct Whole {
  std::string bytes;
  std::string rows;
  std::string journal;
};

constexpr const char* kJournal =
    "SELECT group_concat(entry || kind || subject || revision || at || why || body || digest || keeps_rules) "
    "FROM journal";

const Whole& whole() {
  static const Whole made = [] {
    const Shelf shelf;
    const Book book = shelf.few_days();
    return Whole{shelf.bytes(), Shelf::dump(book), Shelf::text(book, kJournal)};
  }();
  return made;
}

const std::string kSheet = "sheet 2026-06-20\nspecies DF\nlog Z1 14x12\n2x6 5/12\nnote after\n";

/// A shelf with the whole book and, beside it, a file that nothing may touch.
class Bench {
 public:
  Bench() {
    std::ofstream(shelf_.file(), std::ios::binary) << whole().bytes;
    SQLite::Database(canary().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
        .exec("CREATE TABLE t (x); INSERT INTO t VALUES (1)");
    kept_ = Shelf::slurp(canary());
  }
  [[nodiscard]] const Shelf& shelf() const { return shelf_; }
  [[nodiscard]] fs::path canary() const { return shelf_.folder() / "canary.db"; }
  void check_canary() const { CHECK(Shelf::slurp(canary()) == kept_); }

 private:
  Shelf shelf_;
  std::string kept_;
};

/// What came of a deed: what was said, with which exit code.
struct Answer {
  std::string said;
  Exit code = Exit::done;
  [[nodiscard]] bool refused() const { return code != Exit::done; }
};

template <class Deed>
Answer answer_of(Deed&& deed) {
  try {
    deed();
  } catch (const Error& error) {
    return {error.what(), error.code()};
  }
  return {};
}

/// A sentence with the file's name that says what to do, and nothing in it that a terminal would obey.
void check_sentence(const Answer& answer) {
  CAPTURE(answer.said);
  CHECK((answer.code == Exit::refused || answer.code == Exit::failed));
  CHECK(answer.said.find("mill.book") != std::string::npos);
  CHECK(answer.said.find('\x1b') == std::string::npos);
  CHECK(answer.said.find("\xe2\x80\xae") == std::string::npos);
  CHECK(answer.said.find(';') != std::string::npos);
}

/// Refused in reading and in writing, and everything in the folder as it was.
void check_refused(const Shelf& shelf) {
  const auto names = shelf.names();
  const std::string before = shelf.bytes();
  for (const bool read_only : {true, false}) {
    CAPTURE(read_only);
    check_sentence(answer_of([&] { static_cast<void>(shelf.open(read_only)); }));
    CHECK(shelf.bytes() == before);
    CHECK(shelf.names() == names);
  }
}

/// Opened to be read, which leaves the file alone; what verify finds, or why it was not opened.
std::vector<std::string> looked_at(const Shelf& shelf, Fate fate) {
  const auto names = shelf.names();
  const std::string before = shelf.bytes();
  std::vector<std::string> found;
  const Answer answer = answer_of([&] {
    const Book book = shelf.open(true);
    for (const auto& finding : book.verify()) found.push_back(finding.what);
    if (fate != Fate::harmless) return;
    CHECK(Shelf::dump(book) == whole().rows);
    CHECK(Shelf::text(book, kJournal) == whole().journal);
  });
  CHECK(shelf.bytes() == before);
  CHECK(shelf.names() == names);
  if (answer.refused()) {
    check_sentence(answer);
    found.push_back(answer.said);
    CHECK_MESSAGE(fate == Fate::noticed, answer.said);
  }
  return found;
}

/// Posted to: done, or refused with nothing of it in the journal.
void post_to(const Shelf& shelf, Fate fate) {
  const auto names = shelf.names();
  const Answer answer = answer_of([&] { shelf.open().post_sheet(kSheet, ""); });
  CHECK(shelf.names() == names);
  if (fate == Fate::harmless) CHECK_MESSAGE(!answer.refused(), answer.said);
  if (!answer.refused()) {
    CHECK(shelf.bytes().find("note after") != std::string::npos);
    if (fate != Fate::harmless) return;
    for (const auto& finding : shelf.open(true).verify()) FAIL_CHECK(finding.what);
    return;
  }
  check_sentence(answer);
  bool there = false;
  const Answer again = answer_of([&] { there = shelf.open(true).current("2026-06-20").has_value(); });
  CHECK_FALSE(there);
  if (again.refused()) check_sentence(again);
}

/// Rebuilt, the book is the one it was made from; and one whose journal is damaged is not made worse.
void rebuild(const Shelf& shelf, bool mended) {
  if (!mended) {
    const Answer answer = answer_of([&] { shelf.open().rebuild(); });
    if (answer.refused()) check_sentence(answer);
    return;
  }
  Book book = shelf.open();
  book.rebuild();
  for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
  CHECK(Shelf::dump(book) == whole().rows);
  CHECK(Shelf::text(book, kJournal) == whole().journal);
}

void look_over(const std::vector<Doctored>& kinds) {
  set_canaries();
  for (const Doctored& kind : kinds) {
    CAPTURE(kind.name);
    const Bench bench;
    try {
      kind.deed(bench.shelf());
    } catch (const std::exception& fault) {
      FAIL_CHECK("this kind cannot be made: ", fault.what());
      continue;
    }
    static_cast<void>(canaries_sung());
    if (kind.fate == Fate::refused) {
      check_refused(bench.shelf());
    } else {
      const auto found = looked_at(bench.shelf(), kind.fate);
      if (kind.fate == Fate::harmless)
        CHECK_MESSAGE(found.empty(), (found.empty() ? "" : found.front()));
      else
        CHECK(found.size() >= 1);
      if (!kind.mended) post_to(bench.shelf(), kind.fate);
      rebuild(bench.shelf(), kind.mended);
    }
    CHECK(canaries_sung() == 0);
    bench.check_canary();
  }
}

}  // namespace

TEST_CASE("the canaries sing when a doctored book is trusted") {
  set_canaries();
  const Bench bench;
  by_sql("CREATE TRIGGER t AFTER INSERT ON note BEGIN SELECT canary(), canary_meek(); END")(bench.shelf());
  static_cast<void>(canaries_sung());
  by_sql("INSERT INTO note SELECT day, shift, 99000, 'x' FROM sheet LIMIT 1")(bench.shelf());
  CHECK(canaries_sung() == 2);
}

TEST_CASE("nothing that stands in a book's schema runs, and what is no part of a book is refused") {
  look_over(doctored_schemas());
}

TEST_CASE("rows that were changed are told by verify, and no reading and no posting comes to harm by them") {
  look_over(doctored_rows());
}

TEST_CASE(
    "a file that is kept in another way, damaged or has strange files beside it is told or does no harm") {
  look_over(doctored_files());
}

TEST_CASE("a book switched to a write-ahead log is refused to readers, and switched back by whoever writes") {
  const Bench bench;
  const Shelf& shelf = bench.shelf();
  by_sql("PRAGMA journal_mode = WAL")(shelf);
  const auto names = shelf.names();
  const std::string before = shelf.bytes();
  const Answer answer = answer_of([&] { static_cast<void>(shelf.open(true)); });
  CHECK(answer.said ==
        shelf.file().string() +
            ": another program has switched this book to a write-ahead log (WAL), which puts more "
            "files beside it; kerfbook -b " +
            shelf.file().string() + " rebuild switches it back");
  CHECK(answer.code == Exit::refused);
  CHECK(shelf.bytes() == before);
  {
    Book book = shelf.open();
    book.rebuild();
  }
  CHECK(shelf.names() == names);
  const Book book = shelf.open(true);
  CHECK(book.verify().empty());
  CHECK(Shelf::dump(book) == whole().rows);
}

TEST_CASE("a strange book with a write-ahead log is refused and left as it is") {
  const Bench bench;
  by_sql("CREATE TABLE extra (x); PRAGMA journal_mode = WAL")(bench.shelf());
  check_refused(bench.shelf());
}
