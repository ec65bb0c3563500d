// order_test.cpp -- whatever is posted, in whatever order: a rebuilt book equals the one that grew, row for row, and
// a day's figures do not depend on which day was posted first.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "base/error.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

constexpr int kDays = 4;
constexpr int kTags = 3;

std::string pick(std::initializer_list<const char*> words) {
  return *rc::gen::elementOf(std::vector<std::string>(words.begin(), words.end()));
}

std::string log_line() {
  const std::string tag = "T" + std::to_string(*rc::gen::inRange(1, kTags + 1));
  const std::string spec = std::to_string(*rc::gen::inRange(8, 24)) + "x" + pick({"8", "10", "12", "16"});
  switch (*rc::gen::inRange(0, 5)) {
    case 0:
      return "in " + tag + " " + spec;
    case 1:
      return "log " + tag;  // borrowed, or never measured
    case 2:
      return "log " + tag + " " + spec + " left on the mill";
    case 3:
      return "log " + tag + " " + spec + " defect 10% rot";
    default:
      return "log " + spec;
  }
}

std::string any_line() {
  switch (*rc::gen::inRange(0, 8)) {
    case 0:
      return "job " + pick({"BRN", "own", "TER"});
    case 1:
      return "species " + pick({"DF", "WH"});
    case 2:
      return "setup " + pick({"1 over 0.12", "2 over 0.05", "1"});
    case 3:
      return "grade " + pick({"sel", "-"});
    case 4:
    case 5:
      return log_line();
    case 6:
      return "less 2x6 1/12 split";
    default:
      return pick({"2x6", "1x4", "5/4x6", "4x4"}) + " " + std::to_string(*rc::gen::inRange(1, 40)) + "/" +
             pick({"8", "12", "16"});
  }
}

std::string any_sheet(int day) {
  std::string text = "sheet 2026-06-0" + std::to_string(day) + "\n";
  const int lines = *rc::gen::inRange(0, 9);
  for (int i = 0; i < lines; ++i) text += any_line() + "\n";
  return text;
}

std::string any_mill() {
  return "[scale]\nrule = \"" + pick({"doyle", "international-quarter"}) + "\"\n[recovery]\ntaper = \"" +
         pick({"1/8", "1/10"}) + "\"\n[lumber.target]\n\"2x6\" = \"" + pick({"2-1/8x6-1/8", "1-7/8x5-7/8"}) +
         "\"\n";
}

/// Every day's runs with the words in place of their numbers, which follow the order of posting.
std::string figures(const Book& book) {
  std::string out;
  SQLite::Statement runs(
      book.database(),
      "SELECT day, shift, run, site, job, species, setup, logs, unscaled_logs, gross, net, content, "
      "lines, pieces, lumber, wood FROM v_run ORDER BY day, shift, run");
  while (runs.executeStep()) {
    for (int i = 0; i < runs.getColumnCount(); ++i) out += runs.getColumn(i).getString() + "|";
    out += "\n";
  }
  return out;
}

void post(Book& book, const std::string& text) {
  try {
    book.post_sheet(text, "again");
  } catch (const DocumentRefused&) {
    // a sheet that cannot be understood is no part of the history
  }
}

}  // namespace

TEST_CASE("a rebuilt book equals the one that grew, row for row, after any history") {
  CHECK(rc::check("rebuild equals growth", [] {
    const Shelf shelf;
    Book book = shelf.new_book();
    const int acts = *rc::gen::inRange(1, 10);
    for (int i = 0; i < acts; ++i) {
      if (*rc::gen::inRange(0, 5) == 0) {
        book.post_mill(any_mill(), "changed");
      } else {
        post(book, any_sheet(*rc::gen::inRange(1, kDays + 1)));
      }
    }
    const auto findings = book.verify();
    if (!findings.empty()) RC_FAIL(findings.front().what);
  }));
}

TEST_CASE("a day's figures do not depend on the order in which days were posted") {
  CHECK(rc::check("order of posting", [] {
    std::vector<std::string> sheets;
    for (int day = 1; day <= kDays; ++day) sheets.push_back(any_sheet(day));
    std::vector<std::string> answers;
    for (int way = 0; way < 2; ++way) {
      const Shelf shelf;
      Book book = shelf.new_book();
      for (const auto& sheet : sheets) post(book, sheet);
      answers.push_back(figures(book));
      std::reverse(sheets.begin(), sheets.end());
    }
    RC_ASSERT(answers[0] == answers[1]);
  }));
}
