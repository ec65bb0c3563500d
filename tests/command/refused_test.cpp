// refused_test.cpp -- every malformed sheet of the corpus, posted through the program: told at the right line and
// column, and the book byte for byte as it was.
#include <doctest/doctest.h>

#include <algorithm>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

std::vector<fs::path> malformed_sheets() {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(kRoot / "tests" / "sheet" / "malformed")) {
    if (entry.path().extension() == ".sheet") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// The program names a file with its folder; the corpus says what is expected without.
std::string without_folder(std::string said, const fs::path& file) {
  const std::string folder = file.parent_path().string() + "/";
  for (std::size_t at = 0; (at = said.find(folder, at)) != std::string::npos;) said.erase(at, folder.size());
  return said;
}

/// A book with one good day in it.
std::string small_book(const Scratch& scratch) {
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}, scratch.path()).code == 0);
  spill(scratch / "good.sheet", "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 5/12\n");
  REQUIRE(run({"-b", book, "post", (scratch / "good.sheet").string()}, scratch.path()).code == 0);
  return book;
}

}  // namespace

TEST_CASE(
    "every kind of malformed sheet is refused with its line and column and leaves the book byte-identical") {
  const Scratch scratch;
  const std::string book = small_book(scratch);
  const std::string before = slurp(book);
  const auto corpus = malformed_sheets();
  CHECK(corpus.size() >= 60);
  for (const fs::path& file : corpus) {
    const std::string name = file.filename().string();
    CAPTURE(name);
    const Ran ran = run({"-b", book, "post", file.string()}, scratch.path());
    CHECK(ran.code == 1);
    CHECK(ran.out.empty());
    CHECK(without_folder(ran.err, file) == slurp(fs::path(file).replace_extension(".expected")) +
                                               "kerfbook: " + name + ": not posted; the book is as it was\n");
    CHECK(slurp(book) == before);
  }
  CHECK(scratch.names() == std::vector<std::string>{"good.sheet", "mill.book"});
}

TEST_CASE("check tells of a malformed sheet what post tells, with a book and without") {
  const Scratch scratch;
  const std::string book = small_book(scratch);
  const std::string before = slurp(book);
  ::unsetenv("KERFBOOK_BOOK");  // else "without a book" would not be so
  for (const fs::path& file : malformed_sheets()) {
    CAPTURE(file.filename().string());
    const std::string expected =
        slurp(fs::path(file).replace_extension(".expected")) + "kerfbook: 1 file has errors\n";
    const Ran with = run({"-b", book, "check", file.string()}, scratch.path());
    const Ran without = run({"check", file.string()}, scratch.path());
    CHECK(with.code == 1);
    CHECK(without.code == 1);
    CHECK(without_folder(with.err, file) == expected);
    CHECK(without_folder(without.err, file) == expected);
  }
  CHECK(slurp(book) == before);
}

TEST_CASE("one malformed sheet keeps out all sheets of the same post, wherever it stands among them") {
  const Scratch scratch;
  const std::string book = small_book(scratch);
  const std::string before = slurp(book);
  const std::string bad = (kRoot / "tests" / "sheet" / "malformed" / "crew_bad_time.sheet").string();
  spill(scratch / "late.sheet", "sheet 2099-06-02\njob BRN\nspecies DF\n2x6 5/12\n");
  spill(scratch / "early.sheet", "sheet 1999-06-02\njob BRN\nspecies DF\n2x6 5/12\n");
  const std::string late = (scratch / "late.sheet").string();
  const std::string early = (scratch / "early.sheet").string();
  for (const auto& files :
       {std::vector<std::string>{bad, late, early}, {late, bad, early}, {late, early, bad}}) {
    std::vector<std::string> words{"-b", book, "post"};
    words.insert(words.end(), files.begin(), files.end());
    CHECK(run(words, scratch.path()).code == 1);
    CHECK(slurp(book) == before);
  }
}

TEST_CASE("all malformed sheets of one post are told, each as it is told alone") {
  const Scratch scratch;
  const std::string book = small_book(scratch);
  const std::string before = slurp(book);
  std::vector<std::string> words{"-b", book, "post"};
  const auto files = malformed_sheets();
  for (const fs::path& file : files) words.push_back(file.string());
  const Ran ran = run(words, scratch.path());
  CHECK(ran.code == 1);
  for (const fs::path& file : files) {
    CAPTURE(file.filename().string());
    const std::string alone = run({"-b", book, "check", file.string()}, scratch.path()).err;
    const std::string told = alone.substr(0, alone.rfind("kerfbook: "));
    CHECK(ran.err.find(told) != std::string::npos);
  }
  CHECK(ran.err.ends_with("kerfbook: " + std::to_string(files.size()) +
                          " files have errors; nothing was posted\n"));
  CHECK(slurp(book) == before);
}

TEST_CASE("a changed day without a reason is refused by its file and day, and the book left byte-identical") {
  const Scratch scratch;
  const std::string book = small_book(scratch);
  const std::string before = slurp(book);
  spill(scratch / "good.sheet", "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 6/12\n");
  const Ran ran = run({"-b", book, "post", (scratch / "good.sheet").string()}, scratch.path());
  CHECK(ran.code == 1);
  CHECK(ran.err.find("good.sheet: 2026-06-01 is in the book already") != std::string::npos);
  CHECK(ran.err.find("--why") != std::string::npos);
  CHECK(slurp(book) == before);
}
