// input_test.cpp -- whatever stands behind a name, no more of it is read than its kind may be long.
#include "base/input.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <istream>
#include <sstream>
#include <streambuf>

#include "base/error.h"

namespace {

using namespace kerfbook;
namespace fs = std::filesystem;

constexpr InputLimit kLimit{"a day sheet", 200 * 1024, "post each day as a sheet of its own"};

/// Gives the letter x for ever and counts what was taken.
class Endless : public std::streambuf {
 public:
  std::size_t given = 0;

 protected:
  std::streamsize xsgetn(char* to, std::streamsize size) override {
    std::fill(to, to + size, 'x');
    given += static_cast<std::size_t>(size);
    return size;
  }
  int_type underflow() override { return traits_type::to_int_type('x'); }
};

class File {
 public:
  explicit File(const std::string& text)
      : path_(fs::temp_directory_path() / ("kerfbook-input-" + std::to_string(getpid()))) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  ~File() { fs::remove(path_); }
  [[nodiscard]] std::string name() const { return path_.string(); }

 private:
  fs::path path_;
};

std::string refusal(const std::string& file) {
  try {
    read_input(file, kLimit);
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

TEST_CASE("a file up to the limit is read whole, byte for byte") {
  const File small("2x6 24/16\r\n\xFF");
  CHECK(read_input(small.name(), kLimit) == "2x6 24/16\r\n\xFF");
  const File largest(std::string(kLimit.most, 'x'));
  CHECK(read_input(largest.name(), kLimit).size() == kLimit.most);
}

TEST_CASE("a file over the limit is refused in a sentence that says the limit, and is not read") {
  const File file("");
  fs::resize_file(file.name(),
                  std::uintmax_t{1} << 40U);  // a terabyte that takes no room: to read it would take hours
  CHECK(refusal(file.name()) ==
        file.name() + ": longer than a day sheet may be, 200 KiB; post each day as a sheet of its own");
  const File by_one(std::string(kLimit.most + 1, 'x'));
  CHECK(refusal(by_one.name()).find("200 KiB") != std::string::npos);
}

TEST_CASE("a device or a stream without an end is left at the limit") {
  CHECK(refusal("/dev/zero") ==
        "/dev/zero: longer than a day sheet may be, 200 KiB; post each day as a sheet of its own");
  Endless endless;
  std::istream stream(&endless);
  CHECK_THROWS_WITH_AS(
      read_input(stream, "standard input", kLimit),
      "standard input: longer than a day sheet may be, 200 KiB; post each day as a sheet of its own",
      Refused);
  CHECK(endless.given == kLimit.most + 1);
}

TEST_CASE("a folder and a file that is not there are refused by name") {
  CHECK(refusal("/") == "/: is a folder, not a file");
  CHECK(refusal("/no/such.sheet") == "/no/such.sheet: cannot be read (No such file or directory)");
}

TEST_CASE("a stream that breaks off is not taken for its end") {
  class Broken : public std::streambuf {
   protected:
    int_type underflow() override { throw 1; }
  } broken;
  std::istream stream(&broken);
  CHECK_THROWS_WITH_AS(read_input(stream, "standard input", kLimit),
                       "standard input: cannot be read to its end", Refused);
}

TEST_CASE("limits are told in the largest unit they are whole in") {
  CHECK(shown_bytes(4 << 20) == "4 MiB");
  CHECK(shown_bytes(1536) == "1536 bytes");
  CHECK(shown_bytes(200 * 1024) == "200 KiB");
}

}  // namespace
