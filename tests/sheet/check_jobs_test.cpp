// check_jobs_test.cpp -- what is said when the order of a sheet's lines leaves in doubt whose they are, and where.
#include <doctest/doctest.h>

#include "sheet/check.h"
#include "sheet/read.h"

using namespace kerfbook;
using namespace kerfbook::sheet;

namespace {

/// Each as "line: what", in the order of the lines.
std::vector<std::string> said(const std::string& lines, const Known& known = {}) {
  const std::string text = "sheet 2026-05-05\n" + lines;
  const ReadSheet got = read(text);
  REQUIRE_MESSAGE(got.found.empty(), show_all(got.found, "sheet", text));
  std::vector<std::string> all;
  for (const Diagnostic& one : check(got.sheet, known, *scaling::find_practice("international-quarter"))) {
    CHECK(one.severity == Severity::warning);
    CHECK(!one.instead.empty());
    all.push_back(std::to_string(one.place.line) + ": " + one.what);
  }
  return all;
}

using Said = std::vector<std::string>;

}  // namespace

TEST_CASE(
    "on a day with several jobs every line that could be charged and is no job's is told, logs and boards "
    "once") {
  CHECK(said("crew Bess 9\nsawing 7:00-9:00\nstop 0:20 waiting, charge\nstop 0:10 rain\nmove a to b 3 mi\n"
             "teeth head replaced 1 metal\nlog 12x16\nlog 13x16\n2x4 1/16\n2x6 1/16\njob TER\nlog "
             "12x16\nsawing 9:00-9:30\njob QHH\n"
             "log 12x16\nsawing 10:00-10:30\n") ==
        Said{"3: sawing of 2:00 stands above the first job, and the day has several: no job's",
             "4: a stop for waiting, marked to be charged, stands above the first job, and the day has "
             "several: no job's",
             "6: the move to b stands above the first job, and the day has several: no job's",
             "7: teeth or blade lost to metal stands above the first job, and the day has several: no job's",
             "8: logs stand above the first job, and the day has several: no job's",
             "10: boards stand above the first job, and the day has several: no job's"});
  CHECK(said("sawing 7:00-9:00\njob TER\nlog 12x16\n").empty());
  CHECK(said("sawing 7:00-9:00, job TER\njob TER\nlog 12x16\njob QHH\nsawing 9:00-10:00\n").empty());
}

TEST_CASE("sawing in the heading of a new place, the next job at its foot, is told to be no job's") {
  CHECK(said("job CAMP\nsawing 7:00-9:00\n2x6 1/16\nsite B\nsawing 10:00-16:00\njob SMITH\nsawing "
             "16:00-17:00\n2x6 1/16\n") ==
        Said{"6: sawing of 6:00 stands at a new place above job SMITH: no job's"});
}

TEST_CASE("a job with logs or boards and no sawing time is told beside the hours of the other") {
  CHECK(said("job CAMP\nsawing 7:00-9:00\n2x6 1/16\nsawing 10:00-16:00\njob SMITH\n2x6 1/16\n") ==
        Said{"6: job SMITH has logs or boards and no sawing time; job CAMP has 8:00"});
  CHECK(said("job CAMP\n2x6 1/16\njob SMITH\n2x6 1/16\n").empty());  // nobody wrote any down
}

TEST_CASE(
    "a move from one customer's job to another's is told whose it is; home from the last, or to own work, is "
    "not") {
  CHECK(said("job CAMP\n2x6 1/16\nmove A to B 46 mi\njob SMITH\n2x6 1/16\n") ==
        Said{"4: the move to B is job CAMP's, under which it stands"});
  CHECK(said("job CAMP\n2x6 1/16\nmove A to B 46 mi, job SMITH\njob SMITH\n2x6 1/16\n").empty());
  CHECK(said("job CAMP\n2x6 1/16\nmove A to yard 46 mi\njob own\n2x6 1/16\n").empty());
  CHECK(said("job CAMP\n2x6 1/16\njob SMITH\n2x6 1/16\nmove B to yard 46 mi\n").empty());
}

TEST_CASE(
    "a move in the heading below a place at which nothing is done is told to take all the work with it") {
  CHECK(said("site farm\nmove farm to yard 46 mi\njob TER\n2x6 1/16\n") ==
        Said{"3: all the work below is put at yard, and none at farm"});
  CHECK(said("move farm to yard 46 mi\njob TER\n2x6 1/16\n").empty());
  CHECK(said("site farm\nmove farm to yard 46 mi\nsite yard\njob TER\n2x6 1/16\n").empty());
  CHECK(said("site farm\njob TER\n2x6 1/16\nmove farm to yard 46 mi\nstop 0:20 rain\n").empty());
  CHECK(said("site farm\nmove farm to yard 46 mi\n").empty());
}

TEST_CASE("a charge mark is told that nobody pays it on a sheet without a job, and under own work") {
  CHECK(said("stop 0:20 waiting, charge\n2x6 1/16\n") ==
        Said{"2: a stop for waiting, marked to be charged, is no job's, and the sheet names none"});
  CHECK(said("job own\nstop 0:20 waiting, charge\n") ==
        Said{"3: a stop for waiting, marked to be charged, is under job own, which nobody pays"});
  CHECK(said("job own\nstop 0:20 waiting, charge, job TER\n").empty());
}

TEST_CASE("a sheet that names no job is told so once, where the book has jobs") {
  Known known;
  CHECK(said("sawing 7:00-9:00\n2x6 1/16\n", known).empty());
  known.jobs = {"TER"};
  CHECK(said("meter 12.0\nsawing 7:00-9:00\n2x6 1/16\n", known) ==
        Said{"3: the sheet names no job, so nothing on it is billed or counted as the mill's own"});
  CHECK(said("crew Bess 9\nstop 0:20 rain\nmeter 12.0\n", known).empty());
}
