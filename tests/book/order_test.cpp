// order_test.cpp -- whatever is posted, in whatever order: a rebuilt book equals the one that grew, row for row, and
// a day's figures do not depend on which day was posted first.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <map>

#include "base/error.h"
#include "book/shelf.h"
#include "book/stock_held.h"
#include "sheet/generators.h"
#include "sheet/write.h"

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
  switch (*rc::gen::inRange(0, 8)) {
    case 7:
      return "log " + tag + " defect " + pick({"5bf", "10%", "1'"}) + " shake";
    case 0:
      return "in " + tag + " " + spec;
    case 5:
      return "log T1-T" + std::to_string(kTags);
    case 6:
      return "log t" + tag.substr(1) + " left on the mill";
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
  switch (*rc::gen::inRange(0, 15)) {
    case 12:
      return "sold cash bundle " + pick({"B1", "b2"}) + " at 100";
    case 13:
      return "1x3 24lf";
    case 14:
      return "sold cash 1x3 10lf";
    case 7:
      return "resaw 4x4 1/12";
    case 8:
      return "sold cash 2x6 2/12 at 1.05";
    case 9:
      return "teeth head replaced 1 metal T" + std::to_string(*rc::gen::inRange(1, kTags + 1));
    case 10:
      return "5/4 rw 7-1/2x8 9x10";
    case 11:
      return "bundle " + pick({"B1", "B2", "b1", "-"});
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

std::string any_sheet(int day, int shift = 1) {
  std::string text = "sheet 2026-06-0" + std::to_string(day) + (shift > 1 ? " shift 2" : "") + "\n";
  const int lines = *rc::gen::inRange(0, 9);
  for (int i = 0; i < lines; ++i) text += any_line() + "\n";
  return text;
}

std::string any_mill() {
  std::string text = "[scale]\nrule = \"" + pick({"doyle", "international-quarter"}) +
                     "\"\n[recovery]\ntaper = \"" + pick({"1/8", "1/10"}) +
                     "\"\n[lumber.target]\n\"2x6\" = \"" + pick({"2-1/8x6-1/8", "1-7/8x5-7/8"}) + "\"\n";
  for (const char* job : {"BRN", "TER"}) {  // in the file, or taken out of it
    if (*rc::gen::inRange(0, 2) == 0) continue;
    text += std::string("[[job]]\ncode = \"") + job + "\"\nrule = \"" + pick({"", "vermont", "doyle"}) +
            "\"\ntarget = { \"1x4\" = \"" + pick({"1-1/8x4-1/8", "1x4", "7/8x3-7/8"}) + "\" }\n";
  }
  return text;
}

/// Every day's runs and logs with the words in place of their numbers, which follow the order of posting.
std::string figures(const Book& book) {
  std::string out;
  for (const char* sql :
       {"SELECT day, shift, run, site, job, species, setup, logs, unscaled_logs, gross, net, content, lines, "
        "pieces, lumber, wood FROM v_run ORDER BY day, shift, run",
        "SELECT day, shift, number, tag, state, spec, borrowed, net, content FROM v_log ORDER BY day, shift, "
        "number",
        "SELECT day, shift, sites, sawing_minutes, crew_minutes, logs, net, lumber, lineal, counted_net FROM "
        "v_sheet ORDER BY day, shift",
        "SELECT day, shift, number, tag, job, net FROM v_deck ORDER BY day, shift, number",
        "SELECT bundle, species, grade, size, length, sum(pieces), sum(along), sum(lumber) FROM v_stock "
        "WHERE "
        "owner = 'own' GROUP BY bundle, species, grade, size, length ORDER BY 1, 2, 3, 4, 5",
        "SELECT day, shift, number, bundle, species, grade, size, length, pieces, along, lumber FROM "
        "v_whole_bundle ORDER BY 1, 2, 3, 5, 6, 7, 8"}) {
    SQLite::Statement rows(book.database(), sql);
    while (rows.executeStep()) {
      for (int i = 0; i < rows.getColumnCount(); ++i) out += rows.getColumn(i).getString() + "|";
      out += "\n";
    }
  }
  return out;
}

/// Whether it was taken: a sheet that cannot be understood is no part of the history.
bool post(Book& book, const std::string& text) {
  try {
    book.post_sheet(text, "again");
    return true;
  } catch (const DocumentRefused&) {
    return false;
  }
}

/// What posting keeps for questions over years, asked of the lines themselves: the logs that no later line of their
/// tag saws or leaves, each sheet's sums, and the stock. Rows that stand on one side only.
std::int64_t kept_wrongly(const Book& book) {
  const std::string deck =
      "SELECT day, shift, number FROM log l WHERE state <> 'sawn' AND NOT EXISTS (SELECT 1 FROM log s WHERE "
      "s.tag = l.tag AND s.state <> 'received' AND (s.day, s.shift, s.number) > (l.day, l.shift, l.number))";
  const std::string kept_deck = "SELECT day, shift, number FROM v_deck";
  const std::string sums =
      "SELECT day, shift, (SELECT count(*) FROM run r WHERE r.day = s.day AND r.shift = s.shift), "
      "(SELECT count(*) FROM log l WHERE l.day = s.day AND l.shift = s.shift AND state = 'sawn'), "
      "(SELECT coalesce(sum(pieces), 0) FROM tally t WHERE t.day = s.day AND t.shift = s.shift), "
      "(SELECT coalesce(sum(lumber), 0) FROM tally t WHERE t.day = s.day AND t.shift = s.shift), "
      "(SELECT sum(net) FROM log l WHERE l.day = s.day AND l.shift = s.shift AND state = 'sawn') FROM sheet "
      "s";
  const std::string kept_sums = "SELECT day, shift, runs, logs, pieces, lumber, net FROM v_sheet";
  std::string all = "SELECT ";
  for (const auto& [one, other] :
       {std::pair(deck, kept_deck), {kept_deck, deck}, {sums, kept_sums}, {kept_sums, sums}}) {
    all += "(SELECT count(*) FROM (" + one + " EXCEPT " + other + ")) + ";
  }
  return Shelf::number(book, all + tests::stock_wrongly_kept());
}

void assert_whole(const Book& book) {
  const auto findings = book.verify();
  if (!findings.empty()) RC_FAIL(findings.front().what);
  RC_ASSERT(kept_wrongly(book) == 0);
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
        post(book, any_sheet(*rc::gen::inRange(1, kDays + 1), *rc::gen::inRange(1, 3)));
      }
    }
    assert_whole(book);
  }));
}

TEST_CASE("every sheet these tests make up is one a book takes") {
  CHECK(rc::check("made-up sheets are good", [] {
    const Shelf shelf;
    Book book = shelf.new_book();
    const std::string text = any_sheet(1);
    if (!post(book, text)) RC_FAIL(show_all(book.check_sheet(text), "sheet", text));
  }));
}

TEST_CASE("a day's figures do not depend on the order in which days were posted") {
  CHECK(rc::check("order of posting", [] {
    const std::string mill = any_mill();
    std::vector<std::string> sheets;
    for (int day = 1; day <= kDays; ++day) {
      for (int shift = 1; shift <= 2; ++shift) sheets.push_back(any_sheet(day, shift));
    }
    std::vector<std::string> answers;
    for (int way = 0; way < 2; ++way) {
      const Shelf shelf;
      Book book = shelf.new_book();
      book.post_mill(mill, "");
      for (const auto& sheet : sheets) post(book, sheet);
      answers.push_back(figures(book));
      assert_whole(book);
      for (std::size_t i = sheets.size(); i > 1; --i) {
        std::swap(sheets[i - 1], sheets[*rc::gen::inRange<std::size_t>(0, i)]);
      }
    }
    RC_ASSERT(answers[0] == answers[1]);
  }));
}

TEST_CASE("a corrected book has the figures of one that was right from the first") {
  CHECK(rc::check("corrections leave only what is right", [] {
    const Shelf corrected_shelf;
    Book corrected = corrected_shelf.new_book();
    std::map<std::pair<int, int>, std::string> right;
    const int acts = *rc::gen::inRange(1, 10);
    for (int i = 0; i < acts; ++i) {
      const int day = *rc::gen::inRange(1, kDays + 1);
      const int shift = *rc::gen::inRange(1, 3);
      const std::string text = any_sheet(day, shift);
      if (post(corrected, text)) right[{day, shift}] = text;
    }
    const Shelf shelf;
    Book book = shelf.new_book();
    for (const auto& [key, text] : right) RC_ASSERT(post(book, text));
    RC_ASSERT(figures(corrected) == figures(book));
    RC_ASSERT(Shelf::number(book, "SELECT count(*) FROM struck") == 0);
  }));
}

TEST_CASE("whatever the language of the day sheet can say, a book keeps, and rebuilds row for row") {
  for (const bool metric : {false, true}) {
    CAPTURE(metric);
    CHECK(rc::check("any facts, posted, corrected and rebuilt", [metric] {
      const Shelf shelf;
      Book book = shelf.new_book();
      if (metric) book.post_mill("[mill]\nunits = \"metric\"\n", "");
      const sheet::ReadOptions options{metric, 2};
      int taken = 0;
      for (int i = 0; i < 3; ++i) {
        sheet::Sheet made = generate::sheet();
        made.day = make_day(2026, 6, *rc::gen::inRange(1, 3));
        try {
          book.post_sheet(sheet::write(made, options), "again");
          ++taken;
        } catch (const DocumentRefused& refused) {
          RC_FAIL(show_all(refused.found(), "sheet", refused.text()));
        }
      }
      RC_ASSERT(taken == 3);
      assert_whole(book);
      const std::string rows = Shelf::dump(book);
      book.rebuild();
      RC_ASSERT(Shelf::dump(book) == rows);
    }));
  }
}
