// demo_week_test.cpp -- the demo week's logs: their scale, and their wood for recovery.
#include <doctest/doctest.h>

#include <map>

#include "measure/csv_rows.h"
#include "scaling/scaled.h"

using namespace kerfbook;
using namespace kerfbook::scaling;
using scaling::test::scaled;
using scaling::test::whole;

TEST_CASE("the demo week scales 6,375 bf gross and 6,300 net under International 1/4-inch") {
  std::int64_t gross = 0;
  std::int64_t net = 0;
  for (const auto& row : kerfbook::test::rows_of("scaling/demo_week.csv")) {
    const std::string defect = row[3] == "0" ? "" : " defect " + row[3] + "bf";
    const auto scale = scaled(row[1] + defect, "international-quarter");
    CHECK_MESSAGE(whole(scale.gross) == std::stoll(row[2]), row[0] << " " << row[1]);
    CHECK(whole(scale.deduction) == std::stoll(row[3]));
    gross += scale.gross;
    net += scale.net;
  }
  CHECK(gross == 6'375 * kPerUnit);
  CHECK(net == 6'300 * kPerUnit);
}

TEST_CASE("the demo week's wood gives each day's and the week's lumber recovery factor") {
  // Smalian, taper 1/8 in per ft of the nominal length, 0.4 ft trim (4.8 in: 307 counts of 1/64 in)
  const std::map<std::string, std::pair<std::int64_t, std::int64_t>> days{{"Mon", {156'067, 666}},
                                                                          {"Tue", {110'933, 634}},
                                                                          {"Wed", {81'467, 637}},
                                                                          {"Thu", {156'200, 789}},
                                                                          {"Fri", {144'008, 685}}};
  std::map<std::string, std::int64_t> wood;
  const Taper taper{.per_foot_mils = 125, .per_metre = 1042, .trim = {307, System::inch}};
  for (const auto& row : kerfbook::test::rows_of("scaling/demo_week.csv")) {
    const auto found = content(scaling::test::written(row[1]).log, taper);
    CHECK(found.method == "Smalian, small end and taper 1/8 in per ft");
    wood[row[0]] += found.cubic_feet;
  }
  std::int64_t week_lumber = 0;
  std::int64_t week_wood = 0;
  for (const auto& [day, figures] : days) {
    week_lumber += figures.first;
    week_wood += wood[day];
    const Rational lumber(figures.first, 100);
    const std::int64_t lrf = (lumber / Rational(wood[day], kPerUnit)).rounded(2);
    CHECK(lrf == std::int64_t{figures.second});
  }
  // 6,486.75 bf of the week (each day's figure above is rounded to a hundredth)
  CHECK((Rational(week_lumber, 100) / Rational(week_wood, kPerUnit)).rounded(2) == 686);
}

TEST_CASE("a log's content is worked out from what was measured, and says how") {
  const Taper none{.per_foot_mils = 0, .per_metre = 0, .trim = {}};
  const auto method = [&none](const std::string& log) {
    return content(scaling::test::written(log).log, none).method;
  };
  CHECK(method("10-12x16") == "Smalian, both ends");
  CHECK(method("10-12x16 mid 11") == "Newton, both ends and middle");
  CHECK(method("10-12x16 girth 34.5") == "Newton, both ends and middle");
  CHECK(method("10x16 mid 11") == "Huber, middle diameter");
  CHECK(method("10x16 girth 34.5") == "Huber, middle girth");
  CHECK(method("25cmx5m") == "Smalian, small end and taper 0.00 mm per m");
  // source: D. R. Larsen, Forest Functions, University of Missouri, 2017, cubicvolume: 10.647 and (conic) 10.588 ft3
  CHECK(content(scaling::test::written("10-12x16").log, none).cubic_feet == 10'646'508);
  CHECK(content(scaling::test::written("10-12x16 mid 11").log, none).cubic_feet == 10'588'331);
}
