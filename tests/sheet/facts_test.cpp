// facts_test.cpp -- which site, job, species, grade, bundle and set-up hold for each fact of a day.
#include <doctest/doctest.h>

#include "sheet/facts.h"
#include "sheet/read.h"

using namespace kerfbook;
using namespace kerfbook::sheet;

namespace {

Sheet sheet_of(const std::string& text) {
  const ReadSheet got = read("sheet 2026-05-05\n" + text);
  REQUIRE_MESSAGE(got.found.empty(), show_all(got.found, "sheet", text));
  return got.sheet;
}

}  // namespace

TEST_CASE("context words hold until changed, and a dash takes grade and bundle away") {
  const Sheet sheet = sheet_of(
      "site farm\njob TER\nspecies DF\ngrade No2\nbundle B1\n2x6 1/16\ngrade -\nbundle -\nspecies WH\n2x6 "
      "1/16\n");
  const auto all = facts(sheet);
  REQUIRE(all.size() == 2);
  CHECK(all[0].context == Context{"farm", "TER", "DF", "No2", "B1", ""});
  CHECK(all[1].context == Context{"farm", "TER", "WH", "", "", ""});
}

TEST_CASE("a move changes the site and a set-up holds from its own line on") {
  const Sheet sheet = sheet_of("site farm\n2x6 1/16\nmove farm to yard 23 mi\nsetup 2\n2x6 1/16\n");
  const auto all = facts(sheet);
  REQUIRE(all.size() == 4);
  CHECK(all[0].context.site == "farm");
  CHECK(all[1].context.site == "yard");
  CHECK(all[2].context.setup == "2");
  CHECK(all[3].context.setup == "2");
}

TEST_CASE("each item of a line is a fact of its own, numbered by line and item in the order of the day") {
  const Sheet sheet = sheet_of("2x6 1/16 2/12\nlog T1-T3\ncrew A 9, B 9\n");
  const auto all = facts(sheet);
  std::vector<int> numbers;
  for (const auto& fact : all) numbers.push_back(fact.number);
  CHECK(numbers == std::vector<int>{2000, 2001, 3000, 3001, 3002, 4000, 4001});
  CHECK(spread(std::get<LogLine>(all[3].line->fact))[all[3].item] == "T2");
}

TEST_CASE("a range of tags spreads out, keeps its leading zeros, and an unreasonable one is none") {
  CHECK(spread_tags("T13-T15") == std::vector<std::string>{"T13", "T14", "T15"});
  CHECK(spread_tags("T09-11") == std::vector<std::string>{"T09", "T10", "T11"});
  CHECK(spread_tags("T13") == std::vector<std::string>{"T13"});
  CHECK(spread_tags("Y-7") == std::vector<std::string>{"Y-7"});
  CHECK(spread_tags("T15-T13").empty());
  CHECK(spread_tags("T1-U3") == std::vector<std::string>{"T1-U3"});
  CHECK(spread_tags("T1-T201").empty());
  CHECK(spread_tags("T1-T200").size() == 200);
}

namespace {

/// "line job", one a fact, in the order of the day; the line's number as in sheet_of(), where the day is line 1.
std::string jobs_in(const std::string& text) {
  const Sheet sheet = sheet_of(text);
  std::string out;
  for (const auto& fact : facts(sheet)) {
    out += (out.empty() ? "" : ", ") + std::to_string(fact.line->place.line) + " " +
           (fact.context.job.empty() ? "-" : fact.context.job);
  }
  return out;
}

std::string sites_in(const std::string& text) {
  const Sheet sheet = sheet_of(text);
  std::string out;
  for (const auto& fact : facts(sheet))
    out += (out.empty() ? "" : ", ") + (fact.context.site.empty() ? std::string("-") : fact.context.site);
  return out;
}

}  // namespace

TEST_CASE("a day with one job is all that job's, whatever stands above its line") {
  CHECK(jobs_in("crew Bess 9\nsawing 7:00-9:00\nstop 0:20 metal, charge\nteeth head replaced 1 metal\n"
                "move a to b 3 mi\nlog 12x16\n2x6 1/16\njob TER\n2x6 1/16\njob ter\nsawing 9:00-10:00\n") ==
        "2 TER, 3 TER, 4 TER, 5 TER, 6 TER, 7 TER, 8 TER, 10 TER, 12 ter");
  CHECK(jobs_in("sawing 7:00-9:00\njob own\n2x6 1/16\n") == "2 own, 4 own");
  CHECK(jobs_in("sawing 7:00-9:00\ncharge QHH bundling 2\nstop 0:20 rain, job QHH\njob TER\n") ==
        "2 TER, 3 QHH, 4 QHH");
  CHECK(jobs_in("sawing 7:00-9:00\nlog 12x16\n") == "2 -, 3 -");
}

TEST_CASE("on a day with several jobs what stands above the first is no job's, and own is a job") {
  CHECK(jobs_in("sawing 7:00-9:00\nlog 12x16\njob TER\nlog 12x16\njob own\nsawing 9:00-10:00\n") ==
        "2 -, 3 -, 5 TER, 7 own");
}

TEST_CASE("a line's own job goes before the one that holds, and changes nothing for the next line") {
  CHECK(jobs_in("sawing 7:00-9:00, job TER\njob TER\n2x6 1/16\nstop 1:00 rain, job QHH\n2x6 1/16\njob QHH\n"
                "2x6 1/16\nmove a to b 3 mi, job TER\n2x6 1/16\n") ==
        "2 TER, 4 TER, 5 QHH, 6 TER, 8 QHH, 9 TER, 10 QHH");
}

TEST_CASE("a heading of a new place with the next job at its foot is no longer the former job's") {
  CHECK(jobs_in("sawing 7:00-9:00\njob CAMP\n2x6 1/16\nsite B\nsawing 10:00-16:00\njob SMITH\n2x6 1/16\n") ==
        "2 -, 4 CAMP, 6 -, 8 SMITH");
  CHECK(jobs_in("job CAMP\n2x6 1/16\nmove A to B 3 mi\nstop 1:00 rain\njob SMITH\n") ==
        "3 CAMP, 4 CAMP, 5 -");
  // with work below it the job goes on at the new place
  CHECK(jobs_in("job CAMP\n2x6 1/16\nsite B\nsawing 10:00-16:00\n2x6 1/16\njob SMITH\n") ==
        "3 CAMP, 5 CAMP, 6 CAMP");
  // so does the only job, and one whose line is repeated
  CHECK(jobs_in("job CAMP\n2x6 1/16\nsite B\nsawing 10:00-16:00\njob camp\n") == "3 CAMP, 5 CAMP");
}

TEST_CASE("above the first place stands the only one, or where the move left from") {
  CHECK(sites_in("sawing 7:00-9:00\nsite farm\n2x6 1/16\n") == "farm, farm");
  CHECK(sites_in("sawing 7:00-9:00\nmove farm to yard 3 mi\n2x6 1/16\n") == "farm, yard, yard");
  CHECK(sites_in("sawing 7:00-9:00\nsite farm\n2x6 1/16\nsite yard\n2x6 1/16\n") == "-, farm, yard");
  CHECK(sites_in("2x6 1/16\nmove farm to yard 3 mi\n") == "farm, yard");
  CHECK(sites_in("2x6 1/16\nsite yard\n2x6 1/16\n") == "-, yard");
}
