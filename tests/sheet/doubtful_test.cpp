// doubtful_test.cpp -- a corpus of sheets that can be understood and are doubted: each doubtful/NAME.sheet gives exactly what
// doubtful/NAME.expected says, by a book that knows little (capacity*: by one whose mill file says what the mill takes). KERFBOOK_GOLDEN=update accepts what has changed, as for malformed/.
#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "sheet/check.h"
#include "sheet/read.h"
#include "sheet/support.h"

using namespace kerfbook;
namespace fs = std::filesystem;

namespace {

const fs::path kCorpus = fs::path(KERFBOOK_ROOT) / "tests/sheet/doubtful";

/// A book in which T7, T8 and T9 were sawn lately, that is looked at on the day of the sheet.
sheet::Known little_known() {
  sheet::Known known;
  known.today = read_day("2026-05-05");
  known.sawn_tags = {"T7", "T8", "T9"};
  for (const int length : {8, 10, 12, 14, 16}) known.lengths.push_back(measure::feet(length));
  return known;
}

/// The same for a mill whose file says what it takes.
sheet::Known said_capacity() {
  sheet::Known known = little_known();
  known.largest_log = measure::inches(40);
  known.longest_log = measure::feet(20);
  known.thickest_board = measure::inches(8);
  known.widest_board = measure::inches(12);
  known.most_bf_a_day = 3000;
  known.jobs = {"TER"};
  return known;
}

}  // namespace

TEST_CASE("every kind of doubt is told at its line with what would be right, and stops nothing") {
  const char* const mode = std::getenv("KERFBOOK_GOLDEN");
  const bool accept = mode != nullptr && std::string(mode) == "update";
  int sheets = 0;
  for (const auto& entry : fs::directory_iterator(kCorpus)) {
    if (entry.path().extension() != ".sheet") continue;
    ++sheets;
    const std::string name = entry.path().filename().string();
    CAPTURE(name);
    const std::string text = read_file("tests/sheet/doubtful/" + name);
    const sheet::ReadSheet got = sheet::read(text);
    std::vector<Diagnostic> all = got.found;
    for (const Diagnostic& one :
         check(got.sheet, name.starts_with("capacity") ? said_capacity() : little_known(),
               *scaling::find_practice("international-quarter")))
      all.push_back(one);
    CHECK_FALSE(has_error(all));
    CHECK_FALSE(all.empty());
    const std::string shown = show_all(all, name, text);
    const std::string expected = "tests/sheet/doubtful/" + entry.path().stem().string() + ".expected";
    if (accept) std::ofstream(std::string(KERFBOOK_ROOT) + "/" + expected, std::ios::binary) << shown;
    CHECK(shown == read_file(expected));
  }
  CHECK(sheets >= 14);
}
