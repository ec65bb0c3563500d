// What a report says of the rules its logs were scaled by, of teeth by species, and of options it does not take.
#include <doctest/doctest.h>

#include "base/error.h"
#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

const std::vector<std::string> kShowScale{"day",
                                          "deck",
                                          "overrun",
                                          "overrun-by-diameter",
                                          "overrun-by-job",
                                          "overrun-by-setup",
                                          "overrun-by-species",
                                          "production",
                                          "production-week",
                                          "production-month",
                                          "production-year",
                                          "year"};

std::vector<std::string> scale_notes_of(const render::Document& document) {
  std::vector<std::string> notes;
  for (const auto& table : document.tables) {
    for (const auto& note : table.notes) {
      if (note.find("not one measure") != std::string::npos ||
          note.find("the rule now is") != std::string::npos)
        notes.push_back(note);
    }
  }
  return notes;
}

}  // namespace

TEST_CASE("a report over logs scaled by two rules says so, in one wording wherever a scale is shown") {
  const auto book =
      small_book("[scale]\nrule = \"doyle\"\n[[job]]\ncode = \"B\"\nrule = \"scribner-c\"\n",
                 {"sheet 2026-05-04\njob A\nlog 15x12\n2x6 10/12\njob B\nlog 16x12\n2x6 10/12\n"});
  for (const auto& name : kShowScale) {
    CHECK_MESSAGE(scale_notes_of(answer(book, name)) ==
                      std::vector<std::string>{
                          "Log scale here is by Doyle and by Scribner C: not one measure. --rule NAME "
                          "scales all logs by one rule."},
                  name);
  }
  Ask again;
  again.rule = "doyle";
  CHECK(scale_notes_of(answer(book, "overrun", again)).empty());
  Ask one;
  one.job = "B";
  CHECK(scale_notes_of(answer(book, "production", one)).empty());
}

TEST_CASE("logs that stand as scaled under an older rule are told, and with which one") {
  auto book =
      small_book("[scale]\nrule = \"doyle\"\n", {"sheet 2026-05-04\nlog 15x12\nlog 16x12\n2x6 10/12\n"});
  CHECK(scale_notes_of(answer(book, "overrun")).empty());
  book.post_mill("[scale]\nrule = \"scribner-c\"\n", "another rule");
  for (const auto& name : kShowScale) {
    CHECK_MESSAGE(scale_notes_of(answer(book, name)) ==
                      std::vector<std::string>{
                          "2 logs stand as scaled by Doyle when posted; the rule now is Scribner C."},
                  name);
  }
}

TEST_CASE("a job that the mill file has no more keeps the rule of its days, and nothing is said of it") {
  auto book = small_book("[scale]\nrule = \"doyle\"\n[[job]]\ncode = \"B\"\nrule = \"scribner-c\"\n",
                         {"sheet 2026-05-04\njob B\nlog 16x12\n2x6 10/12\n"});
  CHECK(scale_notes_of(answer(book, "overrun")).empty());
  book.post_mill("[scale]\nrule = \"doyle\"\n", "B is done");
  CHECK(scale_notes_of(answer(book, "overrun")).empty());
}

TEST_CASE("teeth by species are over that species' lumber, and their total is that of the fuel report") {
  const auto book = small_book(
      "", {"sheet 2026-05-04\nspecies DF\n2x12x10 100\nteeth head replaced 3 metal\nspecies WH\n2x12x10 25\n"
           "teeth head replaced 1 wear\nteeth head swaged 20\n",
           "sheet 2026-05-05\nspecies RC\n2x12x10 25\n"});
  const auto teeth = answer(book, "teeth");
  CHECK(shown_rows(teeth, 2) ==
        "|DF|1|3|3|2,000.00|1.50|\n"
        "|RC|0|-|-|500.00|-|\n"
        "|WH|2|1|-|500.00|2.00|\n"
        "||3|4|3|3,000.00|1.33|\n");
  CHECK(total_of(answer(book, "fuel"), "teeth_per_mbf") == "1.33");
  CHECK(total_of(answer(book, "fuel"), "teeth") == total_of(teeth, "replaced", 2));
}

TEST_CASE("a report that takes no period says so, and which options it takes") {
  const auto book = demo_week();
  const auto week = days(make_day(2026, 5, 4), make_day(2026, 5, 8));
  CHECK_THROWS_WITH_AS(answer(book, "earnings", week),
                       "report earnings is always over all days: leave out --period, --from and --to; it "
                       "takes --job, --customer",
                       WrongUsage);
  CHECK_THROWS_WITH_AS(answer(book, "upkeep", week),
                       "report upkeep is always over all days: leave out --period, --from and --to; it takes "
                       "none of these options",
                       WrongUsage);
  Ask species;
  species.species = "DF";
  CHECK_THROWS_WITH_AS(
      answer(book, "pace", species),
      "report pace cannot be limited by --species; it takes --period, --from, --to, --job, --customer",
      WrongUsage);
}
