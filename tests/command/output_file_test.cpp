// output_file_test.cpp -- an answer becomes a file whole or not at all, and a book is never one.
#include "command/output_file.h"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <thread>

#include "base/error.h"
#include "command/program.h"

using namespace kerfbook;
using namespace kerfbook::tests;
using command::OutputFile;

namespace {

std::string refusal(const fs::path& file) {
  try {
    OutputFile out(file.string());
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

unsigned rights_of(const fs::path& file) {
  struct ::stat now {};
  REQUIRE(::stat(file.c_str(), &now) == 0);
  return now.st_mode & 07777U;
}

}  // namespace

TEST_CASE("what is written is there whole, and nothing beside it, before and after") {
  const Scratch scratch;
  {
    OutputFile out((scratch / "a.csv").string());
    CHECK(scratch.names().empty());
    out.write("one\n");
  }
  CHECK(slurp(scratch / "a.csv") == "one\n");
  CHECK(scratch.names() == std::vector<std::string>{"a.csv"});
}

TEST_CASE("a file that was made ready and not written leaves what was there as it was") {
  const Scratch scratch;
  spill(scratch / "a.csv", "before");
  { OutputFile out((scratch / "a.csv").string()); }
  CHECK(slurp(scratch / "a.csv") == "before");
  CHECK(scratch.names() == std::vector<std::string>{"a.csv"});
}

TEST_CASE("a link stays a link, and a file keeps its rights") {
  const Scratch scratch;
  spill(scratch / "real.csv", "before");
  REQUIRE(::chmod((scratch / "real.csv").c_str(), 0640) == 0);
  fs::create_symlink("real.csv", scratch / "link.csv");
  OutputFile((scratch / "link.csv").string()).write("after");
  CHECK(fs::is_symlink(scratch / "link.csv"));
  CHECK(slurp(scratch / "real.csv") == "after");
  CHECK(rights_of(scratch / "real.csv") == 0640);
}

TEST_CASE("a link that leads nowhere yet makes the file it leads to") {
  const Scratch scratch;
  fs::create_symlink("later.csv", scratch / "link.csv");
  OutputFile((scratch / "link.csv").string()).write("x");
  CHECK(fs::is_symlink(scratch / "link.csv"));
  CHECK(slurp(scratch / "later.csv") == "x");
}

TEST_CASE("into a pipe the bytes go as they are, and it stays a pipe") {
  const Scratch scratch;
  const fs::path pipe = scratch / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  std::string got;
  std::thread reader([&] { got = slurp(pipe); });
  { OutputFile(pipe.string()).write("through"); }
  reader.join();
  CHECK(got == "through");
  CHECK(fs::is_fifo(pipe));
}

TEST_CASE("a folder, a name in no folder, a book and its journal are refused before anything is done") {
  const Scratch scratch;
  const fs::path book = scratch / "mill.book";
  REQUIRE(run({"new", book.string()}, scratch.path()).code == 0);
  const std::string bytes = slurp(book);
  fs::create_symlink("mill.book", scratch / "link.html");
  fs::create_hard_link(book, scratch / "other.html");
  CHECK(refusal(scratch.path()).find("is a folder") != std::string::npos);
  CHECK(refusal(scratch / "missing/a.html").find("there is no folder") != std::string::npos);
  CHECK(refusal(book).find("is a book, and stays one") != std::string::npos);
  CHECK(refusal(scratch / "link.html").find("is a book, and stays one") != std::string::npos);
  CHECK(refusal(scratch / "other.html").find("is a book, and stays one") != std::string::npos);
  CHECK(refusal(scratch / "mill.book-journal").find("is kept for the book") != std::string::npos);
  CHECK(slurp(book) == bytes);
}
