// help_test.cpp -- the help pages and the complaints about how a command was typed: in this program's own words, fit to be
// read on 80 columns, and every example in them runs as it stands.
#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "base/text.h"
#include "command/program.h"
#include "sheet/read.h"

using namespace kerfbook;
using namespace kerfbook::tests;

namespace {

/// Words of the library that reads the command line, none of which a user is shown.
const std::vector<std::string> kTheLibrarysWords{
    "Usage",    "OPTIONS",  "Options:", "Positionals", "REQUIRED", "SUBCOMMAND", "Subcommand",
    "required", "expected", "argument", "Print this",  "Display",  "convert",    "not allowed",
    "excludes", "requires", "Run with", "Needs",       "Env:",     "INI",        "Expected"};

std::vector<std::string> page(const std::vector<std::string>& arguments) {
  const Scratch scratch;
  const Ran ran = run(arguments, scratch.path());
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
  std::vector<std::string> lines;
  for (const auto line : split_lines(ran.out)) lines.emplace_back(line);
  return lines;
}

/// The commands the program's own page lists, but help itself.
std::vector<std::string> commands() {
  std::vector<std::string> found;
  bool listed = false;
  for (const std::string& line : page({"--help"})) {
    if (line == "The book") listed = true;
    if (line == "With every command") break;
    if (listed && line.starts_with("  ") && line[2] != ' ') found.push_back(split_words(line).front());
  }
  REQUIRE(found.size() >= 20);
  return found;
}

std::vector<std::vector<std::string>> pages() {
  std::vector<std::vector<std::string>> all{page({"--help"}), page({"help", "sheet"})};
  for (const std::string& command : commands()) all.push_back(page({command, "--help"}));
  return all;
}

/// Lines of the pages that are to be typed.
std::vector<std::string> examples() {
  std::vector<std::string> found;
  for (const auto& lines : pages()) {
    for (const std::string& line : lines) {
      if (line.starts_with("  kerfbook ")) found.push_back(line.substr(2));
    }
  }
  return found;
}

int shell(const fs::path& folder, const std::string& command, std::string& out) {
  const std::string line = "cd '" + folder.string() + "' && export PATH=\"$PWD/bin:$PATH\" && ( " + command +
                           "\n) 2>&1 </dev/null; echo \"exit $?\"";
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  out.clear();
  char buffer[4096];
  for (std::size_t n = 0; (n = ::fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  ::pclose(pipe);
  return out.ends_with("exit 0\n") ? 0 : 1;
}

/// A folder as the sawyer of the examples has it: the demo week's sheets, its mill file, a list of logs; without a book.
void furnish(const fs::path& folder) {
  fs::create_directories(folder / "bin");
  spill(folder / "bin" / "kerfbook", "#!/bin/sh\nexec '" + kProgram + "' --today 2026-05-08 \"$@\"\n");
  fs::permissions(folder / "bin" / "kerfbook", fs::perms::owner_all);
  for (const auto& entry : fs::directory_iterator(kRoot / "demo_data")) {
    if (entry.is_regular_file()) fs::copy_file(entry.path(), folder / entry.path().filename());
  }
  fs::copy_file(kRoot / "demo_data/corrections/2026-05-07.sheet", folder / "2026-05-07.sheet",
                fs::copy_options::overwrite_existing);
  spill(folder / "deck.csv", "log\n15x12\n17.5x16\n");
}

}  // namespace

TEST_CASE("no help page shows a word of the library behind the command line, or is wider than 80 columns") {
  for (const auto& lines : pages()) {
    CAPTURE(lines.front());
    for (const std::string& line : lines) {
      CHECK_MESSAGE(screen_width(line) <= 80, line);
      for (const std::string& word : kTheLibrarysWords) {
        const bool found = line.find(word) != std::string::npos;
        CHECK_MESSAGE(!found, line);
      }
    }
  }
}

TEST_CASE("a command typed wrongly is answered with what is wrong and what is right, in our words") {
  const Scratch scratch;
  const std::vector<std::pair<std::vector<std::string>, std::string>> kTyped{
      {{"post"},
       "post: SHEET is missing (day sheets or mill files (.toml); - is standard input); write kerfbook post "
       "SHEET... [choices]"},
      {{"post", "a.sheet", "--why"}, "--why: nothing stands after it; write --why TEXT"},
      {{"post", "a.sheet", "--why", "x", "--why", "y"}, "--why stands there twice; write it once"},
      {{"show", "2026-05-05", "--shift", "two"}, "--shift: 'two' is not a whole number; write --shift 2"},
      {{"show", "2026-05-05", "--shift", "99999999999999"},
       "--shift: '99999999999999' is not a whole number; write --shift 2"},
      {{"report", "day", "week"},
       "'week': one word too many; write kerfbook report [NAME] [choices], and words that belong together in "
       "quotes"},
      {{"report", "day", "--sql=perhaps"}, "--sql: nothing more belongs to it; write --sql"},
      {{"report", "--perod", "today"}, "there is no option --perod; did you mean --period?"},
      {{"report", "--zzz"}, "there is no option --zzz"},
      {{"waive", "TER", "2026-05-05", "waiting"},
       "waive: --why TEXT is missing (the note; it stands on the invoice); write kerfbook waive JOB DAY "
       "CHARGE "
       "--why TEXT [choices]"},
      {{"-b"}, "--book: nothing stands after it; write --book FILE"},
      {{"-b", "a.book"}, "which command? kerfbook --help lists them"},
      {{"repot"}, "there is no command 'repot'; did you mean report? (kerfbook --help lists them)"},
      {{"help", "shet"},
       "there is no page on 'shet'; did you mean sheet? (kerfbook help lists the commands; help sheet is the "
       "language of the day sheet)"},
  };
  for (const auto& one : kTyped) {
    const std::vector<std::string>& typed = one.first;
    const std::string& answer = one.second;
    CAPTURE(join(typed, " "));
    const Ran ran = run(typed, scratch.path());
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err == "kerfbook: " + answer + "\n");
  }
}

TEST_CASE("whatever is typed, no complaint is the library's") {
  const Scratch scratch;
  std::vector<std::vector<std::string>> tried;
  for (const std::string& command : commands()) {
    tried.push_back({command, "--no-such"});
    tried.push_back({command, "--as"});
    tried.push_back({command, "a", "b", "c", "d", "e"});
    tried.push_back({command, "-o", "x", "-o", "y", "1", "2", "3"});
    for (const std::string& line : page({command, "--help"})) {
      if (!line.starts_with("  -")) continue;
      const std::vector<std::string> words = split_words(line);
      const std::string option = words[0].ends_with(',') ? words[1] : words[0];
      if (option == "--help") continue;
      tried.push_back({command, option});
      tried.push_back({command, option + "=", option + "=x", option, "y"});
    }
  }
  for (const auto& typed : tried) {
    CAPTURE(join(typed, " "));
    const Ran ran = run(typed, scratch.path());
    for (const std::string& word : kTheLibrarysWords) CHECK(ran.err.find(word) == std::string::npos);
    for (const char* const word : {"is required", "Flag", "override", "At Most", "At least"})
      CHECK(ran.err.find(word) == std::string::npos);
  }
}

TEST_CASE("every example on a help page runs as it stands") {
  const Scratch scratch;
  const fs::path empty = scratch / "empty";
  const fs::path posted = scratch / "posted";
  const fs::path issued = scratch / "issued";
  furnish(empty);
  std::string out;
  fs::copy(empty, posted, fs::copy_options::recursive);
  REQUIRE_MESSAGE(shell(posted, "kerfbook new mill.book --mill hargan.toml", out) == 0, out);
  const std::string demo = (kRoot / "demo_data").string();
  REQUIRE_MESSAGE(shell(posted, "kerfbook -b mill.book post '" + demo + "'/*.sheet", out) == 0, out);
  fs::copy(posted, issued, fs::copy_options::recursive);
  REQUIRE_MESSAGE(
      shell(issued, "kerfbook -b mill.book issue TER && kerfbook -b mill.book issue QHH", out) == 0, out);
  const fs::path yard = scratch / "yard";  // lumber in bundles, a load that left, and work that is no job's
  fs::copy(empty, yard, fs::copy_options::recursive);
  spill(yard / "yard.sheet",
        "sheet 2026-05-05\nsawing 7:00-9:00\njob QHH\nspecies DF\nbundle B1\n2x6 5/12\nbundle B2\n2x6 5/16\n"
        "job TER\nbundle B3\n2x6 4/16\n");
  REQUIRE_MESSAGE(
      shell(yard,
            "kerfbook new mill.book --mill hargan.toml && kerfbook -b mill.book post yard.sheet && "
            "kerfbook -b mill.book load TER",
            out) == 0,
      out);
  const auto all = examples();
  REQUIRE(all.size() >= 60);
  std::set<std::string> done;
  for (const std::string& example : all) {
    if (!done.insert(example).second) continue;
    std::string told;
    bool ran =
        false;  // in a new folder, over the week as posted, after its first two invoices, or on the yard
    for (const fs::path& state : {empty, posted, issued, yard}) {
      const fs::path here = scratch / "here";
      fs::remove_all(here);
      fs::copy(state, here, fs::copy_options::recursive);
      ran = shell(here, "export KERFBOOK_BOOK=mill.book; " + example, out) == 0;
      told += out;
      if (ran) break;
    }
    CHECK_MESSAGE(ran, example << "\n" << told);
  }
}

TEST_CASE("the page of the day sheet and the help of post tell of every kind of line") {
  const auto page_lines = page({"help", "sheet"});
  const std::string sheet_page = join(page_lines, "\n");
  const std::string post_page = join(page({"post", "--help"}), "\n");
  CHECK(page_lines.size() <= 90);
  for (const sheet::KindOfLine& kind : sheet::kinds_of_line()) {
    CAPTURE(kind.word);
    CHECK_FALSE(kind.meaning.empty());
    for (const sheet::LineForm& form : kind.forms) {
      CHECK(sheet_page.find(std::string(form.written)) != std::string::npos);
      CHECK(post_page.find("  " + std::string(form.example)) != std::string::npos);
    }
  }
}
