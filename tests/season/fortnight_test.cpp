// Two weeks of an invented mill, written out in the folder fortnight: several jobs, sites, shifts and owners a day, a day
// without sawing, and corrections before and after the papers. Every answer is held against the reckoning.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "asked.h"
#include "posted.h"
#include "shares.h"

using namespace reckoning;

namespace {

namespace fs = std::filesystem;

const fs::path kFolder = fs::path(KERFBOOK_ROOT) / "tests/season/fortnight";
const std::vector<std::string> kJobs{"FEN", "HOL", "PIK", "GAR", "DAM"};

void check(const std::vector<std::string>& differences) {
  for (const auto& one : differences) FAIL_CHECK(one);
}

std::vector<std::string> sheets_in(const fs::path& folder, const std::string& begin = {}) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".sheet" && entry.path().filename().string().starts_with(begin))
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::vector<std::string> texts;
  for (const auto& file : files) texts.push_back(Desk::text_in(file.string()));
  return texts;
}

/// The fortnight as first posted.
struct Fortnight : Posted {
  Fortnight() : Posted(Desk::text_in((kFolder / "mill.toml").string()), "2027-09-11") {
    post(sheets_in(kFolder));
  }
  void correct_all(const std::string& begin) {
    for (const auto& text : sheets_in(kFolder / "corrections", begin)) correct(text, "counted again");
  }
  void correct_before_papers() {
    for (const char* one : {"a", "b", "c"}) correct_all(one);
  }
  void check_drafts() const {
    for (const auto& job : kJobs) check(draft_differs(job));
  }
};

const Period kFirstWeek{{2027, 8, 30}, {2027, 9, 5}};
const Period kSecondWeek{{2027, 9, 6}, {2027, 9, 12}};
const Period kAugust{{2027, 8, 1}, {2027, 8, 31}};
const Period kWholeYear{{2027, 1, 1}, {2027, 12, 31}};

}  // namespace

TEST_CASE("the fortnight's reports are what the reckoning makes of its sheets, as posted and as corrected") {
  Fortnight book;
  check(reports_that_differ(book.desk(), book.reckoned(), kWholeYear));
  book.correct_before_papers();
  for (const Period& period : {kFirstWeek, kSecondWeek, kAugust, kWholeYear})
    check(reports_that_differ(book.desk(), book.reckoned(), period));
}

TEST_CASE("each day of the fortnight has its four numbers, runs and stops") {
  Fortnight book;
  for (const auto& sheet : book.sheets()) check(day_that_differs(book.desk(), book.reckoned(), sheet.day));
}

TEST_CASE("narrowed to a job, customer, species or site the reports keep to it") {
  Fortnight book;
  book.correct_before_papers();
  for (const char* job : {"FEN", "HOL", "PIK", "own"})
    check(narrowed_that_differ(book.desk(), book.reckoned(), kWholeYear, {job, "", "", ""}));
  check(narrowed_that_differ(book.desk(), book.reckoned(), kWholeYear, {"", "HOL", "", ""}));
  check(narrowed_that_differ(book.desk(), book.reckoned(), kWholeYear, {"", "", "DF", ""}));
  check(narrowed_that_differ(book.desk(), book.reckoned(), kWholeYear, {"", "", "", "Nettle yard"}));
}

TEST_CASE("all logs of the fortnight scaled again by another rule") {
  const Fortnight book;
  for (const char* rule : {"doyle", "scribner-formula", "international-quarter"})
    check(rescaled_that_differ(book.desk(), book.reckoned(rule), kWholeYear, rule));
}

TEST_CASE("drafts are to the cent before and after corrections, and after papers what they left") {
  Fortnight book;
  book.check_drafts();
  check(book.under_no_job_differs());
  check(book.sale_differs("Marl"));
  check(book.sale_differs("cash"));
  book.correct_before_papers();
  book.check_drafts();
  for (const auto& job : kJobs) check(book.issue(job));
  book.correct_all("x");
  for (const char* job : {"FEN", "HOL", "PIK", "GAR"}) check(book.draft_differs(job));
  check(differences(book.earnings(), book.desk().answer({"report", "earnings"})));
}

TEST_CASE(
    "what customers owe is what they were billed less what they paid, in the list and on their statements") {
  Fortnight book;
  book.correct_before_papers();
  for (const auto& job : kJobs) check(book.issue(job));
  book.desk().done({"pay", "150.25", "--customer", "FEN", "--by", "cash"});
  book.desk().done({"pay", "60", "--customer", "HOL"});
  const std::map<std::string, Fraction> paid{{"FEN", fraction_of("150.25")}, {"HOL", 60}};
  Table owed;
  owed.keys = {"customer"};
  owed.sums = {"balance"};
  for (const auto& [customer, sum] : book.invoiced()) {
    const Fraction open = sum - (paid.count(customer) != 0 ? paid.at(customer) : Fraction(0));
    owed.rows.push_back({{"customer", customer}, {"open", figure(open)}, {"balance", figure(open)}});
    const Json statement = book.desk().answer({"paper", "statement", customer});
    std::string last;
    for (const auto& table : statement.at("tables").list)
      if (table.at("name").text == "movements") last = table.at("rows").list.back().at("balance").text;
    if (!(fraction_of(last) == open))
      FAIL_CHECK("a statement ends with " << last << ", reckoned " << open.text());
  }
  check(differences(owed, book.desk().answer({"owed"})));
}

TEST_CASE(
    "cedar on halves is divided to the board; the mill's half is stock, and the customer's is fetched "
    "whole") {
  Fortnight book;
  const auto division = divided_on_halves("WRE", book.sheets());
  const Json paper = book.desk().answer({"divide", "WRE"});
  Table lines;
  lines.keys = {"size", "length"};
  for (const auto& line : division)
    lines.rows.push_back({{"size", line.boards.section.name},
                          {"length", line.boards.length.text() + " ft"},
                          {"pieces", figure(line.boards.pieces)},
                          {"customer", figure(line.to_customer)},
                          {"mill", figure(line.to_mill)}});
  check(differences(lines, paper));
  const auto stock = [&](bool fetched) {
    std::vector<std::string> found;
    const Json answer = book.desk().answer({"report", "stock", "--period", "2027"});
    for (const auto& table : stock_after(book.reckoned(), kWholeYear, "WRE", division, fetched))
      for (const auto& one : differences(table, answer)) found.push_back(table.name + ": " + one);
    return found;
  };
  check(stock(false));
  book.desk().done({"load", "WRE"});
  check(stock(true));
}
