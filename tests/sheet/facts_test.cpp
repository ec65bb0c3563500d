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

TEST_CASE("sawing time before any job belongs to the day's only job, and to none when there are several") {
  const Sheet one = sheet_of("run 7:00-9:00\njob TER\n2x6 1/16\njob ter\n");
  CHECK(job_of_run(one, facts(one)[0]) == "TER");
  const Sheet two = sheet_of("run 7:00-9:00\njob TER\njob QHH\nrun 9:00-10:00\n");
  CHECK(job_of_run(two, facts(two)[0]).empty());
  CHECK(job_of_run(two, facts(two)[1]) == "QHH");
}
