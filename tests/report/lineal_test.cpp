// Lineal feet and mixed measures: what is taken off is taken off, inches and millimetres are never added as they stand.
#include <doctest/doctest.h>

#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

/// "Lineal since" of the last work on the head saw, with this tally since the work before it.
std::string lineal_since(const std::string& tally, const std::string& mill = "") {
  const auto book =
      small_book(mill, {"sheet 2026-05-04\nteeth head touched-up\n" + tally + "\nteeth head touched-up\n",
                        "sheet 2026-05-05\nteeth head touched-up\n"});
  const auto teeth = answer(book, "teeth");
  const std::string column = mill.empty() ? "since_lineal_ft" : "since_lineal_m";
  CHECK(cell_of(teeth, column, 2) == "0");
  return cell_of(teeth, column, 1);
}

}  // namespace

TEST_CASE("what is taken off by the lineal foot is taken off the length sawn since the last tooth change") {
  CHECK(lineal_since("2x6 10/10\nless 2x6 30lf") == "70");
  CHECK(lineal_since("2x6 10/10\nresaw 2x6 30lf\n1x6 60lf") == "130");
  CHECK(lineal_since("2x6 10/10\nless 2x6 3/10") == "70");
}

TEST_CASE("the length sawn over many sheets takes off what each of them takes off") {
  const auto book = small_book(
      "", {"sheet 2026-05-04\nteeth head touched-up\n2x6 10/10\nless 2x6 30lf\n",
           "sheet 2026-05-05\n2x6 50lf\nresaw 2x6 20lf\n", "sheet 2026-05-06\nteeth head touched-up\n"});
  CHECK(cell_of(answer(book, "teeth"), "since_lineal_ft", 1) == "100");
}

TEST_CASE("boards measured in feet and in metres are added as lengths") {
  // 10 boards of 3.048 m are 100 ft
  CHECK(lineal_since("50mmx150mm 10/3.048m") == "100");
  CHECK(lineal_since("2x6 10/10\n50mmx150mm 10/3.048m") == "200");
  CHECK(lineal_since("50x150 10/3\n2inx6in 10/10ft", "[mill]\nunits = \"metric\"\n") == "60");
}

TEST_CASE("the tally shows lineal feet as a length of their own, in a metric book metres") {
  const auto book = small_book("", {"sheet 2026-05-04\n1x3 212lf\nless 1x3 12lf\n2x6 3/8\n"});
  const auto tally = answer(book, "tally");
  CHECK(shown_rows(tally) ==
        "|-|-|-|1x3|-|-|50.00|200|\n"
        "|-|-|-|2x6|8|3|24.00|-|\n"
        "||||||3|74.00|200|\n");
  CHECK(total_of(answer(book, "day"), "lineal_ft", 5) == "200");
  const auto metric = answer(metric_days(), "tally");
  CHECK(total_of(metric, "lineal_m") == "37");
  CHECK(metric.tables[0].columns[column_at(metric.tables[0], "lineal_m")].unit == "m");
}

TEST_CASE("a grid of boards has a column of lineal feet when there are any") {
  const auto with =
      render::render_text(answer(small_book("", {"sheet 2026-05-04\n1x3 212lf\n2x6 3/8\n"}), "tally"));
  CHECK(with.find("Lineal, ft") != std::string::npos);
  const auto without = render::render_text(answer(small_book("", {"sheet 2026-05-04\n2x6 3/8\n"}), "tally"));
  CHECK(without.find("Lineal") == std::string::npos);
}

TEST_CASE("a run whose logs were measured in inches and in centimetres stands in the class of their mean") {
  // 30 cm are 11.81 in; (12 + 11.81 + 12) / 3 = 11.94
  const auto book = small_book("", {"sheet 2026-05-04\nlog 12x16\nlog 30cmx4.8m\nlog 12x16\n2x6 10/16\n"});
  CHECK(column_of(answer(book, "overrun-by-diameter"), "diameter") == "9 to 12 in");
  const auto metric = small_book("", {"sheet 2026-05-04\nlog 30cmx4.8m\nlog 34cmx4.8m\n2x6 10/16\n"});
  CHECK(column_of(answer(metric, "overrun-by-diameter"), "diameter") == "30 to 35 cm");
}

TEST_CASE("by diameter, every run and log counts: those not measured stand under a dash") {
  const auto book = small_book("", {"sheet 2026-05-04\nlog T1 12x16\n2x6 10/16\njob B\nlog T2 13x16\nlog "
                                    "T3\n2x6 8/16\njob C\n2x6 2/16\n"});
  const auto report = answer(book, "overrun-by-diameter");
  const auto overrun = answer(book, "overrun");
  CHECK(column_of(report, "runs") == "1 1 1");
  for (const char* column :
       {"logs", "net_scale_bf", "lumber_bf", "overrun_percent", "log_ft3", "lrf", "recovery_percent"})
    CHECK_MESSAGE(total_of(report, column) == total_of(overrun, column), column);
  CHECK(total_of(report, "logs", 1) == "3");
}
