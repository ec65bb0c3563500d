// Figures on papers: each the nearest one, totals exact, and a word where the printed lines do not add to them.
#include "base/text.h"
#include "book_helpers.h"
#include "office/agreed_terms.h"
#include "paper/documents.h"
#include "render/outputs.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const char* const kMill =
    "[mill]\nname = \"Mill\"\n[scale]\nrule = \"doyle\"\n[[customer]]\ncode = \"ORR\"\nname = \"Ann Orr\"\n"
    "[[job]]\ncode = \"BYR\"\ncustomer = \"ORR\"\n[[price]]\nbasis = \"bf\"\nrate = 0.45\n";

const char* const kSheet =
    "sheet 2026-05-08\nsite yard\njob BYR\nspecies DF\nrun 8:00-9:25\n"
    "log A1 12.5x12 defect 10% rot\nlog A2 10.5x11\nlog A3 12.5x12\n"
    "2x4 1/8\n2x10 1/8\n1x8 1/8\n";

struct Byre : DemoBook {
  Byre() : DemoBook(kMill, false) { book->post_sheet(kSheet, ""); }
  [[nodiscard]] render::Document tally() const {
    return tally_paper(*book, deal_of(*book, "BYR"), kFriday, kFriday, kFriday);
  }
};

const render::Table& named(const render::Document& paper, const std::string& name) {
  for (const render::Table& table : paper.tables)
    if (table.name == name) return table;
  FAIL("no table " << name);
  return paper.tables.front();
}

bool says(const render::Document& paper, const std::string& words) {
  return join(split_words(text_of(paper)), " ").find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a sound log has no deduction, and every scale on a tally is its nearest figure") {
  const Byre byre;
  const render::Document paper = byre.tally();
  // Doyle: (12.5 - 4)^2 x 12 / 16 = 54.1875, less a tenth of it
  // 48.76875; (10.5 - 4)^2 x 11 / 16 = 29.046875
  CHECK(says(paper, "A1 DF"));
  CHECK(says(paper, "54.188 5.419 10% rot 48.769"));
  CHECK(says(paper, "29.047 0.000 29.047"));
  const render::Table& logs = named(paper, "logs");
  CHECK(logs.rows[1].cells[5] == render::Cell(Decimal{0, 3}));
}

TEST_CASE("where the lines of a tally do not add to its total as printed, the paper says what they add to") {
  const Byre byre;
  // 5 1/3, 13 1/3 and 5 1/3 board feet are 24
  const std::string note =
      "Lumber: the lines as printed add to 23.99; the total is the exact sum, rounded: 24.00.";
  CHECK(says(byre.tally(), note));
  CHECK(says(issue_invoice(*byre.book, "BYR", kFriday, kFriday).document, note));
  const render::Document paper = byre.tally();
  CHECK(std::get<render::Figure>(named(paper, "tally").totals.back()).exact() == Rational(24));
}

TEST_CASE("a frozen paper keeps its exact figures beside the printed ones, and its workbook adds up") {
  const Byre byre;
  issue_invoice(*byre.book, "BYR", kFriday, kFriday);
  const render::Document again = read_paper(byre.book->current("invoice 1")->body).document;
  const render::Table& tally = named(again, "tally");
  CHECK(std::any_of(tally.rows.begin(), tally.rows.end(), [](const render::Row& row) {
    return std::get<render::Figure>(row.cells.back()).exact() == Rational(16, 3);  // 2x4x8
  }));
  render::read_workbook(render::render_xlsx(again));  // every formula gives the value stored beside it
}
