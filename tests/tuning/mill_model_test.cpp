// mill_model_test.cpp -- the model's logs and mills are those of the book.
#include "tuning/mill_model.h"

#include <doctest/doctest.h>

#include <string>

#include "tuning/sawing_model.h"

using namespace kerfbook;
using namespace kerfbook::tuning;

namespace {

SawLog log_as(const std::string& spec, const scaling::Taper& taper, bool metric = false) {
  const auto read = scaling::read_log_spec(spec, metric);
  REQUIRE(static_cast<bool>(read));
  const auto log = saw_log(*read, taper);
  REQUIRE(log.has_value());
  return *log;
}
book::Mill mill_of(const std::string& toml) {
  const auto read = book::read_mill(toml);
  REQUIRE(read.found.empty());
  return read.mill;
}

}  // namespace

TEST_CASE("a log with its small end only grows by the mill's taper, and is longer by the trim") {
  scaling::Taper taper;
  taper.trim = measure::inches(4);
  const SawLog log = log_as("15x12", taper);
  CHECK(log.small_end == 15 * kFineInch);
  CHECK(log.large_end == 15 * kFineInch + 12 * kFineInch / 8);
  CHECK(log.length == 12 * kFineFoot + 4 * kFineInch);
  CHECK(log.trim == 4 * kFineInch);
}

TEST_CASE("two readings are averaged, and a measured large end goes before the taper") {
  const SawLog log = log_as("12/13-15x16", {});
  CHECK(log.small_end == 12 * kFineInch + kFineInch / 2);
  CHECK(log.large_end == 15 * kFineInch);
}

TEST_CASE("a metric log is as large as it is: 30 cm x 4 m with a centimetre of taper a metre") {
  scaling::Taper taper;
  taper.per_metre = 1000;
  const SawLog log = log_as("30x4", taper, true);
  CHECK(log.small_end == 94488);  // 300 mm in 1/8000 in
  CHECK(log.large_end - log.small_end == doctest::Approx(40 / 25.4 * 8000).epsilon(0.001));
  CHECK_FALSE(saw_log({}, taper).has_value());
}

TEST_CASE("the set-up's kerf is the head saw's, the edger keeps its own; without any there is no model") {
  const auto mill =
      mill_of("[[saw]]\nrole = \"head\"\nkerf = 0.29\n[[saw]]\nrole = \"edger\"\nkerf = \"1/4\"\n");
  const auto setup = kerfs_of(mill, {280, std::nullopt, 120});
  REQUIRE(setup.has_value());
  CHECK(setup->head == 280);
  CHECK(setup->edger == 250);
  CHECK(setup->over == 120);
  CHECK(kerfs_of(mill, {})->head == 290);
  CHECK(kerfs_of(mill, {280, 240, 0})->edger == 240);
  CHECK(kerfs_of(book::Mill{}, {280, std::nullopt, std::nullopt})->edger == 280);
  CHECK_FALSE(kerfs_of(book::Mill{}, {std::nullopt, std::nullopt, 50}).has_value());
}

TEST_CASE(
    "a size is cut to its target where the mill file has one, else over nominal; the largest board holds") {
  const auto mill =
      mill_of("[capacity]\nlargest_board = \"8x12\"\n[lumber.target]\n\"2x4\" = \"1-5/8x3-5/8\"\n");
  const std::vector<measure::Size> sizes{{measure::inches(2), measure::inches(4)},
                                         {measure::inches(1), measure::inches(12)},
                                         {measure::inches(1), measure::inches(14)}};
  const SawMill made = saw_mill(mill, "", {250, 250, 50}, sizes, {measure::feet(8)});
  CHECK(made.products[0].thickness == kFineInch * 13 / 8);
  CHECK(made.products[0].width == kFineInch * 29 / 8);
  CHECK(made.products[1].width == 12 * kFineInch + fine_mils(50));
  CHECK(made.head_kerf == fine_mils(250));
  const Pattern pattern = SawingModel(made).best({20 * kFineInch, 21 * kFineInch, 8 * kFineFoot, 0});
  REQUIRE_FALSE(pattern.boards.empty());
  for (const auto& board : pattern.boards) CHECK(board.product != 2);
}
