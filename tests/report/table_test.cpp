// Rows become cells: units, ratios over totals, absent figures, metric books. report/table.h.
#include "report/table.h"

#include <doctest/doctest.h>

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::int64_t kBf = 37'748'736;  // cubic 1/64 in in a board foot: 144 x 64^3
const Value kNone = std::monostate{};

TableSpec spec_of(const std::string& columns) {
  const auto report = read_report(
      "-- report: t\n-- title: T\n-- meaning: M.\n-- table: t |\n" + columns + "SELECT 1;\n", "t.sql");
  REQUIRE(report.faults.empty());
  return report.tables.front();
}

std::string shown(const render::Cell& cell) {
  if (const auto* count = std::get_if<std::int64_t>(&cell)) return std::to_string(*count);
  if (const auto* figure = std::get_if<render::Figure>(&cell)) return plain(figure->shown());
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return "-";
}

std::vector<std::string> column(const render::Table& table, std::size_t c) {
  std::vector<std::string> out;
  for (const auto& row : table.rows) out.push_back(shown(row.cells[c]));
  if (!table.totals.empty()) out.push_back("total " + shown(table.totals[c]));
  return out;
}

using Shown = std::vector<std::string>;

}  // namespace

TEST_CASE("a ratio's total is total over total, never a mean of ratios") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  h hours \"h\" total=sum\n"
      "-- shows:  rate ratio:0 \"rate\" of=bf/h\n");
  const auto table = make_table(spec, {{"bf", "h"}, {{300 * kBf, 60}, {100 * kBf, 180}}}, {});
  CHECK(column(table, 2) == Shown{"300", "33", "total 100"});  // the mean of the two would be 167
}

TEST_CASE(
    "a ratio's total is over the sums printed under its sides, also of rows that have but one of them") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  h hours \"h\" total=sum\n"
      "-- shows:  rate ratio:0 \"rate\" of=bf/h\n");
  const auto table = make_table(spec, {{"bf", "h"}, {{300 * kBf, 60}, {900 * kBf, kNone}}}, {});
  CHECK(column(table, 0) == Shown{"300.00", "900.00", "total 1200.00"});
  CHECK(column(table, 1) == Shown{"1.00", "-", "total 1.00"});
  CHECK(column(table, 2) == Shown{"300", "-", "total 1200"});
}

TEST_CASE(
    "of two hidden sides, whose sums nobody sees, only the rows that have both count in a ratio's total") {
  const auto spec = spec_of(
      "-- shows:  n count \"n\" total=sum\n-- shows:  bf lumber \"\" hidden\n-- shows:  h hours \"\" hidden\n"
      "-- shows:  rate ratio:0 \"rate\" of=bf/h\n");
  const auto table =
      make_table(spec, {{"n", "bf", "h"}, {{1, 300 * kBf, 60}, {1, 900 * kBf, kNone}, {1, kNone, 60}}}, {});
  CHECK(column(table, 3) == Shown{"300", "-", "-", "total 300"});
}

TEST_CASE("lumber of a row without a scale counts in the total in the unit of the others' scale") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  net_bf scale \"net\" total=sum unit-from=u\n"
      "-- shows:  over percent-over \"over\" of=bf/net_bf\n-- shows:  u text \"\" hidden\n");
  const auto table = make_table(
      spec, {{"bf", "net_bf", "u"}, {{60 * kBf, 10'000'000, "ft3"}, {120 * kBf, kNone, kNone}}}, {});
  CHECK(column(table, 2) == Shown{"-50.0", "-", "total 50.0"});  // 15 ft3 of lumber over 10 ft3 of log
}

TEST_CASE("no scale is absent, never nothing; an under of zero gives no ratio") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  net_bf scale \"net\" total=sum unit-from=u\n"
      "-- shows:  over percent-over \"over\" of=bf/net_bf\n-- shows:  u text \"\" hidden\n");
  const auto table = make_table(spec, {{"bf", "net_bf", "u"}, {{kBf, kNone, kNone}, {kBf, 0, "bf"}}}, {});
  CHECK(column(table, 1) == Shown{"-", "0", "total 0"});
  CHECK(column(table, 2) == Shown{"-", "-", "total -"});
}

TEST_CASE("overrun by a cubic rule counts lumber in the scale's own unit") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  net_bf scale \"net\" total=sum unit-from=u\n"
      "-- shows:  over percent-over \"over\" of=bf/net_bf\n-- shows:  u text \"\" hidden\n");
  // 60 bf are 5 ft3 of lumber; of 10 ft3 of log that is half
  const auto table = make_table(spec, {{"bf", "net_bf", "u"}, {{60 * kBf, 10'000'000, "ft3"}}}, {});
  CHECK(table.columns[1].name == "net_ft3");
  CHECK(table.columns[1].unit == "ft³");
  CHECK(column(table, 2) == Shown{"-50.0", "total -50.0"});
}

TEST_CASE("scales in two units are shown and not added") {
  const auto spec = spec_of(
      "-- shows:  net_bf scale \"net\" total=sum unit-from=u\n-- shows:  n count \"n\" total=sum\n"
      "-- shows:  u text \"\" hidden\n");
  const auto table =
      make_table(spec, {{"net_bf", "n", "u"}, {{5'000'000, 1, "bf"}, {7'000'000, 1, "m3"}}}, {});
  CHECK(column(table, 0) == Shown{"5", "7", "total -"});
  CHECK(column(table, 1) == Shown{"1", "1", "total 2"});
  CHECK(table.notes.size() == 1);
}

TEST_CASE("a rate of scales in two units has no total, and neither has lumber over them") {
  const auto spec = spec_of(
      "-- shows:  bf lumber \"bf\" total=sum\n-- shows:  net_bf scale \"net\" total=sum unit-from=u\n"
      "-- shows:  ft3 ft3 \"content\" total=sum\n-- shows:  u text \"\" hidden\n"
      "-- shows:  over percent-over \"over\" of=bf/net_bf\n-- shows:  each ratio \"net per ft3\" "
      "of=net_bf/ft3\n");
  const auto table =
      make_table(spec,
                 {{"bf", "net_bf", "ft3", "u"},
                  {{60 * kBf, 40'000'000, 10'000'000, "bf"}, {60 * kBf, 10'000'000, 10'000'000, "ft3"}}},
                 {});
  CHECK(column(table, 4) == Shown{"50.0", "-50.0", "total -"});
  CHECK(column(table, 5) == Shown{"4.00", "1.00", "total -"});
}

TEST_CASE("a row that adds two units is a dash, and a note says why") {
  const auto spec = spec_of(
      "-- shows:  fuel micro:1 \"Fuel\" total=sum unit-from=u\n-- shows:  n count \"n\" total=sum\n"
      "-- shows:  u text \"\" hidden\n");
  const auto table =
      make_table(spec, {{"fuel", "n", "u"}, {{7'300'000, 1, "gal,l"}, {2'000'000, 1, "gal"}}}, {});
  CHECK(column(table, 0) == Shown{"-", "2.0", "total 2.0"});
  REQUIRE(table.notes.size() == 1);
  CHECK(table.notes.front().starts_with("Fuel: in two units in one line"));
}

TEST_CASE("parts of a whole are the nearest figures, and their total that of all of them") {
  const auto spec = spec_of(
      "-- shows:  n count \"n\" total=sum\n-- shows:  share percent \"share\" of=n/all once\n"
      "-- shows:  rate ratio:1 \"per MBF\" of=n/base once per=mbf\n-- shows:  all count \"\" hidden\n"
      "-- shows:  base count \"\" hidden\n");
  const auto table = make_table(spec, {{"n", "all", "base"}, {{1, 3, 3}, {1, 3, 3}, {1, 3, 3}}}, {});
  CHECK(column(table, 1) == Shown{"33.3", "33.3", "33.3", "total 100.0"});
  CHECK(column(table, 2) == Shown{"333.3", "333.3", "333.3", "total 1000.0"});
}

TEST_CASE("every line is its nearest figure, and the total the exact sum rounded") {
  const auto spec = spec_of("-- shows:  bf lumber \"bf\" total=sum\n");
  const auto table = make_table(spec, {{"bf"}, {{kBf / 3}, {kBf / 3}, {kBf / 3}}}, {});
  CHECK(column(table, 0) == Shown{"0.33", "0.33", "0.33", "total 1.00"});
  CHECK(std::get<render::Figure>(table.rows[0].cells[0]).exact() == Rational(1, 3));
}

TEST_CASE("a struck row is shown and counts in no total") {
  const auto spec = spec_of("-- shows:  n count \"n\" total=sum\n-- shows:  s count \"\" strikes\n");
  const auto table = make_table(spec, {{"n", "s"}, {{23, 0}, {32, 1}}}, {});
  CHECK(table.rows[1].struck);
  CHECK(column(table, 0) == Shown{"23", "32", "total 23"});
}

TEST_CASE("a share of the whole counts the whole once, and refuses a whole that changes") {
  const auto spec = spec_of(
      "-- shows:  n count \"n\" total=sum\n-- shows:  share percent \"share\" of=n/all once\n"
      "-- shows:  all count \"\" hidden\n");
  const auto table = make_table(spec, {{"n", "all"}, {{1, 4}, {3, 4}}}, {});
  CHECK(column(table, 1) == Shown{"25.0", "75.0", "total 100.0"});
  CHECK_THROWS_AS(make_table(spec, {{"n", "all"}, {{1, 4}, {3, 5}}}, {}), SqlFault);
}

TEST_CASE("in a metric book lumber is in cubic metres, by value, name and unit") {
  const auto spec = spec_of(
      "-- shows:  lumber_bf lumber \"Lumber\" total=sum\n-- shows:  h hours \"h\"\n"
      "-- shows:  bf_per_hour ratio:1 \"bf per hour\" of=lumber_bf/h\n"
      "-- shows:  length_ft feet \"Length\"\n");
  const std::int64_t cubic_metre = 1'000'000'000'000;  // of 1/10 mm
  const auto table = make_table(spec, {{"lumber_bf", "h", "length_ft"}, {{3 * cubic_metre, 120, 48'000}}},
                                {.metric_book = true});
  CHECK(table.columns[0].name == "lumber_m3");
  CHECK(table.columns[0].unit == "m³");
  CHECK(table.columns[2].name == "m3_per_hour");
  CHECK(table.columns[3].name == "length_m");
  CHECK(column(table, 0) == Shown{"3.000", "total 3.000"});
  CHECK(column(table, 2) == Shown{"1.500", "total 1.500"});
  CHECK(column(table, 3) == Shown{"4.8", "total -"});
}

TEST_CASE("in a metric book volumes and volumes an hour have the places a cubic metre needs") {
  const auto spec = spec_of(
      "-- shows:  since_bf lumber:0 \"since\"\n-- shows:  h hours \"h\"\n"
      "-- shows:  bf_per_hour ratio:0 \"bf per hour\" of=since_bf/h\n"
      "-- shows:  h_per_bf ratio:0 \"h per bf\" of=h/since_bf\n");
  const std::int64_t cubic_metre = 1'000'000'000'000;
  const auto table = make_table(spec, {{"since_bf", "h"}, {{cubic_metre / 4, 60}}}, {.metric_book = true});
  CHECK(column(table, 0) == Shown{"0.3"});
  CHECK(column(table, 2) == Shown{"0.250"});
  CHECK(column(table, 3) == Shown{"4"});
}

TEST_CASE(
    "lengths take as few places as show every row exactly, and metric rows among inch rows become feet") {
  const auto spec =
      spec_of("-- shows:  length_ft feet \"Length\" metric-from=m\n-- shows:  m count \"\" hidden\n");
  CHECK(column(make_table(spec, {{"length_ft", "m"}, {{16 * 768, 0}, {8 * 768, 0}}}, {}), 0) ==
        Shown{"16", "8"});
  CHECK(column(make_table(spec, {{"length_ft", "m"}, {{16 * 768 + 384, 0}, {8 * 768, 0}}}, {}), 0) ==
        Shown{"16.5", "8.0"});
  const auto mixed =
      make_table(spec, {{"length_ft", "m"}, {{30'480, 1}, {8 * 768, 0}}}, {});  // 3.048 m = 10 ft
  CHECK(mixed.columns[0].unit == "ft");
  CHECK(column(mixed, 0) == Shown{"10", "8"});
  const auto metric = make_table(spec, {{"length_ft", "m"}, {{48'000, 1}}}, {});
  CHECK(metric.columns[0].unit == "m");
  CHECK(column(metric, 0) == Shown{"4.8"});
}

TEST_CASE("a text where a number is declared is a fault that names the column") {
  const auto spec = spec_of("-- shows:  n count \"n\"\n");
  CHECK_THROWS_WITH_AS(make_table(spec, {{"n"}, {{std::string("many")}}}, {}),
                       "column n gives the text 'many'; a count column needs a whole number", SqlFault);
}
