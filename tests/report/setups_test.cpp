// The report that compares two set-ups: the demo week's change as it was invented, which two are taken, and verdicts on books
// made for them.
#include <doctest/doctest.h>

#include "base/error.h"
#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

Ask fir(const std::string& rule = "") {
  Ask ask;
  ask.species = "DF";
  ask.rule = rule;
  return ask;
}

/// The row of a measure, as shown.
std::string line_of(const render::Document& document, const std::string& name) {
  const auto& table = document.tables.at(0);
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (cell_of(document, "measure", r) != name) continue;
    return cell_of(document, "earlier", r) + " " + cell_of(document, "later", r) + " " +
           cell_of(document, "change", r);
  }
  return "none";
}

/// So many runs of six logs under each set-up, with so many boards of 2x6x16 each; the later under a job of its own.
book::Book two_setups(int runs, int boards_before, int boards_after, const std::string& mill = "",
                      int scatter = 1) {
  std::vector<std::string> sheets;
  for (int r = 0; r < 2 * runs; ++r) {
    const bool later = r >= runs;
    std::string sheet = "sheet " + write_day(make_day(2026, 3, 2) + r) + "\n";
    if (r == 0) sheet += "setup thick kerf 0.3\n";
    if (r == runs) sheet += "setup thin kerf 0.2\n";
    if (later && !mill.empty()) sheet += "job FIN\n";
    for (const int diameter : {12, 13, 14, 15, 16, 17})
      sheet += "log " + std::to_string(diameter + r % 2) + "x16\n";
    sheet += "2x6 " +
             std::to_string((later ? boards_after : boards_before) + 4 * (r % 2) + scatter * (r % 3)) +
             "/16\n";
    sheets.push_back(sheet);
  }
  return small_book(mill, sheets);
}

}  // namespace

TEST_CASE(
    "the demo week's change reads +7.9 points by International, in all three measures, and is too few logs") {
  const auto document = answer(demo_week(), "setups-compared", fir());
  CHECK(line_of(document, "Overrun, as it is") == "-3.54 4.37 7.91");
  CHECK(line_of(document, "LRF, as it is") == "6.41 6.99 0.57");
  CHECK(line_of(document, "Recovery, as it is") == "57.66 60.35 2.69");
  CHECK(document.lead.at(0) ==
        "Too few logs to tell set-up 2 against 1 (13 logs and 26): under 50 in either anything can be chance "
        "(common "
        "practice, no source); 37 more are wanted.");
}

TEST_CASE("by Doyle before defects it reads +17.9 points, and 14.2 over one mix, the 11-in log left out") {
  const auto document = answer(demo_week(), "setups-compared", fir("doyle"));
  CHECK(line_of(document, "Overrun before defects, as it is") == "20.85 38.77 17.92");
  CHECK(line_of(document, "Overrun before defects, one mix") == "21.70 35.86 14.16");
  const auto& notes = document.tables.at(0).notes;
  CHECK(std::count(
            notes.begin(), notes.end(),
            "1 log of set-up 2 in a class of diameters that the other has none of is left out of one mix.") ==
        1);
}

TEST_CASE("the newest is held against the one before it, or the two that are asked for") {
  auto book = two_setups(2, 30, 30);
  book.post_sheet("sheet 2026-04-20\nsetup fine kerf 0.18\nlog 14x16\n2x6 8/16\n", "");
  const auto pair = [&](const Ask& ask) {
    const auto document = answer(book, "setups-compared", ask);
    const auto& notes = document.tables.at(0).notes;
    return notes.empty() ? std::string("none") : notes.front().substr(0, notes.front().find(','));
  };
  CHECK(pair({}) == "Earlier: set-up thin");
  Ask ask;
  ask.setup = "THIN";
  CHECK(pair(ask) == "Earlier: set-up thick");
  ask.setup = "fine";
  ask.against = "thick";
  CHECK(pair(ask) == "Earlier: set-up thick");
  ask.against = "fine";
  CHECK(pair(ask) == "none");
  ask.against = "thinn";
  CHECK_THROWS_WITH_AS(pair(ask), "against 'thinn' is not in the book; did you mean thin?", Refused);
}

TEST_CASE(
    "a set-up that gets a tenth more out of like logs is called better, a lesser one worse, the same "
    "neither") {
  const auto said = [](int before, int after) {
    return answer(two_setups(10, before, after), "setups-compared").lead.at(0);
  };
  CHECK(said(40, 44) ==
        "The mill cuts better: set-up thin against thick gets 9.6 % more lumber out of like logs (60 logs "
        "and 60).");
  CHECK(said(44, 40) ==
        "The mill cuts worse: set-up thin against thick gets 8.3 % less lumber out of like logs (60 logs and "
        "60).");
  CHECK(said(40, 40) == "The record cannot tell set-up thin against thick (60 logs and 60) apart.");
}

TEST_CASE("where days scatter too much to tell a small change, it is said how many logs more would") {
  const auto document = answer(two_setups(10, 40, 43, "", 5), "setups-compared");
  CHECK(document.lead.at(0).starts_with(
      "The record cannot tell set-up thin against thick (60 logs and 60) apart. About "));
  CHECK_MESSAGE(document.lead.at(0).ends_with(" logs more would."), document.lead.at(0));
}

TEST_CASE("a job cut to finish size that counts more and holds less wood is not called better cutting") {
  const auto book =
      two_setups(10, 40, 44, "[[job]]\ncode = \"FIN\"\ntarget = { \"2x6\" = \"1-1/2x5-1/2\" }\n");
  const auto document = answer(book, "setups-compared");
  CHECK(document.lead.at(0) ==
        "The mill does not cut better: set-up thin against thick counts 9.6 % more board feet and cuts 24.7 "
        "% less wood out of like logs (60 logs and 60).");
  CHECK(document.lead.at(1) ==
        "What differs beside the set-up: a board foot does not hold the same wood in both, so their sizes or "
        "targets "
        "differ.");
}

TEST_CASE("a book of one set-up has nothing to compare, and says how a set-up begins") {
  const auto book = small_book("", {"sheet 2026-05-04\nsetup A\nlog 15x16\n2x6 10/16\n"});
  CHECK(answer(book, "setups-compared").lead.at(0).starts_with("There are no two set-ups to compare"));
}

TEST_CASE("days in its words are in the order the mill prints them in") {
  render::Style style;
  style.dates = render::DateOrder::month_day_year;
  const auto document =
      run_report(find_report(all_reports(""), "setups-compared"), demo_week(), fir(), style, kToday);
  CHECK_MESSAGE(document.tables.at(0).notes.at(0).find("05/04/2026 to 05/06/2026") != std::string::npos,
                document.tables.at(0).notes.at(0));
}

TEST_CASE("new shanks and a tensioned blade do not begin the count of lumber since teeth, touching up does") {
  const auto since = [](const std::string& work) {
    std::vector<std::string> sheets{"sheet 2026-03-01\nteeth head touched-up\n"};
    for (int r = 0; r < 4; ++r) {
      sheets.push_back("sheet " + write_day(make_day(2026, 3, 2) + r) + "\nsetup " + (r < 2 ? "a" : "b") +
                       " kerf 0.3\nlog 15x16\n2x6 5/16\n" + (r == 1 ? work : ""));
    }
    return line_of(answer(small_book("", sheets), "setups-compared"), "Lumber since the head saw's teeth");
  };
  CHECK(since("") == "80.00 240.00 160.00");
  CHECK(since("teeth head shanks 4\nblade head tensioned\nteeth edger touched-up\n") ==
        "80.00 240.00 160.00");
  CHECK(since("teeth head touched-up\n") == "80.00 80.00 0.00");
}
