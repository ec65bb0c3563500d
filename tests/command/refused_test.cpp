// refused_test.cpp -- every malformed sheet of the corpus, posted through the program: told at the right line and
// column, and the book byte for byte as it was.
#include <doctest/doctest.h>

#include <algorithm>

#include "command/program.h"

using namespace kerfbook::tests;

TEST_CASE(
    "every kind of malformed sheet is refused with its line and column and leaves the book byte-identical") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}, scratch.path()).code == 0);
  spill(scratch / "good.sheet", "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 5/12\n");
  REQUIRE(run({"-b", book, "post", (scratch / "good.sheet").string()}, scratch.path()).code == 0);
  const std::string before = slurp(book);
  int kinds = 0;
  for (const auto& entry : fs::directory_iterator(kRoot / "tests" / "sheet" / "malformed")) {
    if (entry.path().extension() != ".sheet") continue;
    const std::string file = entry.path().string();
    const std::string expected = slurp(fs::path(entry.path()).replace_extension(".expected"));
    const Ran ran = run({"-b", book, "post", file}, scratch.path());
    ++kinds;
    CHECK_MESSAGE(ran.code == 1, file);
    CHECK_MESSAGE(ran.out.empty(), file);
    // The golden names the file without its folder.
    std::string said = ran.err;
    const std::string folder = entry.path().parent_path().string() + "/";
    for (std::size_t at = 0; (at = said.find(folder, at)) != std::string::npos;)
      said.erase(at, folder.size());
    CHECK_MESSAGE(said.starts_with(expected), file << "\n" << said << "--- expected\n" << expected);
    CHECK_MESSAGE(slurp(book) == before, file);
  }
  CHECK(kinds >= 60);
  CHECK(scratch.names() == std::vector<std::string>{"good.sheet", "mill.book"});
}
