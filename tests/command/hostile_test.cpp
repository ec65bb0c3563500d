// hostile_test.cpp -- texts made to upset a screen, a page or a workbook: they are refused where they are read, written out
// in messages, and come out of no form of an answer.
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <sstream>

#include "base/text.h"
#include "command/command.h"
#include "command/program.h"

using namespace kerfbook;
using kerfbook::tests::kRoot;
using kerfbook::tests::Scratch;
using kerfbook::tests::spill;

namespace {

struct Answer {
  int code = -1;
  std::string out;
  std::string err;
};

Answer run(const std::vector<std::string>& arguments, const std::string& input = "") {
  std::istringstream in(input);
  std::ostringstream out;
  std::ostringstream err;
  command::Context context{.in = in,
                           .out = out,
                           .err = err,
                           .today = [] { return make_day(2026, 5, 9); },
                           .time_of_day = [] { return std::string("20:00:00"); },
                           .environment = [](const std::string&) { return std::optional<std::string>(); }};
  Answer answer;
  answer.code = command::run(arguments, context);
  answer.out = out.str();
  answer.err = err.str();
  return answer;
}

const std::vector<std::string> kHostile{"\x1B[31m",     "\r",           "\x07",         "\x7F",
                                        "\xC2\x9B",     "\xE2\x80\xAE", "\xE2\x81\xA7", "\xE2\x80\x8E",
                                        "\xEF\xBF\xBE", "\xEF\xBF\xBF", "\xED\xA0\x80", "\xFF"};

/// Nothing raw, but the line ends of csv.
void is_clean(const std::string& text) {
  std::string plain = text;
  std::erase(plain, '\r');
  CHECK(find_unfit(plain) == std::string_view::npos);
}

}  // namespace

TEST_CASE(
    "hostile text in a sheet, a mill file or a report is refused at its place, and the message is clean") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}).code == 0);
  for (const auto& typed : kHostile) {
    CAPTURE(written_out(typed));
    spill(scratch / "a.sheet", "sheet 2026-05-05\nsite x" + typed + "y\n");
    spill(scratch / "a.toml", "[mill]\nname = \"x" + typed + "y\"\n");
    spill(scratch / "a.sql", "-- report: mine\n-- title: x" + typed +
                                 "y\n-- meaning: m\n-- table: t |\n"
                                 "-- shows: a count \"A\"\nSELECT 1 AS a\n");
    for (const char* name : {"a.sheet", "a.toml", "a.sql"}) {
      const std::string file = (scratch / name).string();
      const Answer checked = run({"-b", book, "check", file});
      CHECK(checked.code == 1);
      CHECK(checked.err.find(file + ":2") == 0);
      is_clean(checked.err);
      is_clean(checked.out);
      if (std::string(name) != "a.sql") CHECK(run({"-b", book, "post", file}).code == 1);
    }
    const Answer listed = run({"-b", book, "report", "--reports", scratch.path().string()});
    is_clean(listed.err);
    is_clean(listed.out);
    is_clean(run({"-b", book, "report", "mine", "--sql", "--reports", scratch.path().string()}).out);
  }
}

TEST_CASE("a mill file's escapes bring in nothing that its letters may not, in a value or in a key") {
  const Scratch scratch;
  for (const char* typed : {"\\u001B", "\\u202E", "\\uFFFE", "\\u200F", "\\u0000", "\\b"}) {
    CAPTURE(typed);
    spill(scratch / "a.toml", "[mill]\nname = \"x" + std::string(typed) + "\"\n");
    CHECK(run({"check", (scratch / "a.toml").string()})
              .err.find(":2:8: error: a character that cannot be printed") != std::string::npos);
    spill(scratch / "a.toml", "[species]\n\"x" + std::string(typed) + "\" = \"fir\"\n");
    CHECK(run({"check", (scratch / "a.toml").string()})
              .err.find(":2:1: error: a character that cannot be printed") != std::string::npos);
  }
}

TEST_CASE("hostile text on the command line is refused before anything is done") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book, "--mill", (kRoot / "demo_data" / "hargan.toml").string()}).code == 0);
  REQUIRE(run({"-b", book, "post", (kRoot / "demo_data" / "2026-05-04.sheet").string()}).code == 0);
  for (const auto& typed : kHostile) {
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"pay", "1", "--customer", "TER", "--by", "x" + typed},
          {"pay", "1", "--customer", "T" + typed},
          {"post", "-", "--why", typed},
          {"report", "production", "--job", "x" + typed},
          {"report", "x" + typed},
          {"scale", "15x12" + typed},
          {"measure", "2x6x16" + typed},
          {"new", (scratch / ("b" + typed)).string()},
          {"x" + typed}}) {
      std::vector<std::string> all{"-b", book};
      all.insert(all.end(), words.begin(), words.end());
      const Answer answer = run(all, "sheet 2026-05-04\n");
      CAPTURE(answer.err);
      CHECK(answer.code == 2);
      is_clean(answer.err);
      CHECK(answer.err.find(written_out(typed)) != std::string::npos);
    }
  }
  CHECK(run({"-b", book, "post", "-", "--why", std::string(20'000, 'x')}, "sheet 2026-05-04\n").code == 2);
  CHECK(run({"-b", book, "verify"}).out.find("2 entries") != std::string::npos);
}

TEST_CASE("a file called by bytes that are no UTF-8 is read, and its name is written out") {
  const Scratch scratch;
  const std::string file = (scratch / "b\xF8k.sheet").string();
  spill(file, "sheet 2026-05-05\nnonsense\n");
  const Answer answer = run({"check", file});
  CHECK(answer.code == 1);
  CHECK(answer.err.find("b\\xF8k.sheet:2:1: error") != std::string::npos);
}

TEST_CASE("a text that SQL makes of numbers comes out clean in every form") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}).code == 0);
  spill(scratch / "mine.sql",
        "-- report: mine\n-- title: T\n-- meaning: m\n-- table: t |\n-- shows: a text \"A\"\n"
        "SELECT 'x' || char(27, 91, 51, 49, 109, 8238, 65534, 13, 8207) || 'y' AS a\n");
  for (const char* form : {"text", "csv", "json", "html"}) {
    CAPTURE(form);
    const Answer answer =
        run({"-b", book, "report", "mine", "--reports", scratch.path().string(), "--as", form});
    CHECK(answer.code == 0);
    CHECK(answer.out.find("x[31my") != std::string::npos);
    is_clean(answer.out);
  }
}

TEST_CASE(
    "whatever is handed over as a file is refused at its limit, and a pipe among reports or as a logo is not "
    "waited for") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book}).code == 0);
  for (const char* name : {"a.sheet", "a.toml", "a.sql", "a.csv"}) {
    spill(scratch / name, "");
    std::filesystem::resize_file(scratch / name, std::uintmax_t{1} << 40U);
    const std::string file = (scratch / name).string();
    const Answer answer =
        std::string(name) == "a.csv" ? run({"scale", "--file", file}) : run({"-b", book, "check", file});
    CHECK(answer.code == 1);
    CHECK(answer.err.find(file + ": longer than a ") != std::string::npos);
  }
  REQUIRE(::mkfifo((scratch / "pipe.sql").c_str(), 0600) == 0);
  const Answer listed = run({"-b", book, "report", "--reports", scratch.path().string()});
  CHECK(listed.code == 0);
  CHECK(listed.err.find("a.sql: error: longer than a report may be, 256 KiB") != std::string::npos);
  CHECK(run({"check", "/dev/zero"}).err ==
        "kerfbook: /dev/zero: longer than a day sheet may be, 1 MiB; post each day as a sheet of its own\n");
}
