// sawing_published_test.cpp -- the sawing model against what is printed of log rules, kerf and thickness. The model is the
// most that geometry gives, a rule what its author thought fit to leave for slabs: each tolerance says how far they part.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "measure/csv_rows.h"
#include "tuning/saw_by_hand.h"
#include "tuning/width_fill.h"

using namespace kerfbook;
using namespace kerfbook::tuning;
using namespace kerfbook::tuning::test;
using kerfbook::test::rows_of;

namespace {

/// 1-inch boards of every whole width from `least` up.
SawMill board_mill(Fine kerf, std::int64_t least, const std::vector<std::int64_t>& feet,
                   Fine thickness = kFineInch) {
  SawMill mill;
  mill.head_kerf = mill.edger_kerf = kerf;
  for (std::int64_t width = least; width <= 48; ++width) {
    mill.products.push_back(inches_of(1, width, 0, feet));
    mill.products.back().thickness = thickness;
  }
  return mill;
}

/// Sum of the best over straight 12-ft logs from `from` to `to` inches, a tenth apart.
double lumber_of(const SawMill& mill, double from, double to) {
  const SawingModel model(mill);
  double bf = 0;
  for (double diameter = from; diameter < to + 0.01; diameter += 0.1)
    bf += bf_of(model.best(log_of(diameter, 12)));
  return bf;
}

}  // namespace

// Boards 1 in thick, a quarter inch between them, no taper. The rule's own allowance for slabs is printed nowhere in
// figures: the model, which leaves none, gives 3 to 31 % more, the more the smaller the log. With 5/8 in left all round
// it is within 7 % of each cell, over and under, and within 1 % over all of them.
// source: USDA Forest Service, FSH 2409.11 (a softwood's board counts from 4 in of width)
// source: E. Wengert, Log Volume charts, 2001
TEST_CASE(
    "with 1-inch boards from 4 in wide and a 1/4-inch kerf the model gives Scribner Decimal C, 12 to 40 in") {
  const SawingModel model(board_mill(kFineInch / 4, 4, {16}));
  int cells = 0;
  double all_printed = 0;
  double all_slabbed = 0;
  for (const auto& row : rows_of("scaling/scribner_decimal_c.csv")) {
    const double diameter = std::stod(row.at(0));
    if (row.at(1) != "16" || diameter < 12 || diameter > 40) continue;
    const double printed = 10 * std::stod(row.at(2));
    const double most = bf_of(model.best(log_of(diameter, 16, 0)));
    const double slabbed = bf_of(model.best(log_of(diameter - 2 * 0.625, 16, 0)));
    CAPTURE(diameter);
    CHECK(most > 1.03 * printed);
    CHECK(most < 1.31 * printed);
    CHECK(std::abs(slabbed - printed) < 0.07 * printed);
    all_printed += printed;
    all_slabbed += slabbed;
    ++cells;
  }
  CHECK(cells == 29);
  CHECK(std::abs(all_slabbed - all_printed) < 0.01 * all_printed);
}

// Boards 1 in thick, 1/4 in of kerf and 1/16 in of shrinkage, at least 3 in wide (from memory), taper 1/2 in to 4 ft and
// boards shorter by 4 ft out of it. Printed cells are to the nearest 5 bf, whence the 2.5.
// source: E. Wengert, Log Volume charts, 2001
TEST_CASE(
    "with its kerf, shrinkage and taper the model gives International 1/4-inch as printed, 12 to 26 in") {
  int cells = 0;
  for (const auto& row : rows_of("scaling/international_quarter.csv")) {
    const double diameter = std::stod(row.at(0));
    const auto feet = std::stoll(row.at(1));
    if (diameter < 12 || feet < 8) continue;
    std::vector<std::int64_t> lengths;
    for (auto length = feet; length > 0; length -= 4) lengths.push_back(length);
    const SawingModel model(board_mill(kFineInch * 5 / 16, 3, lengths));
    const double printed = std::stod(row.at(2));
    const double found = bf_of(model.best(log_of(diameter, feet, 0.125)));
    CHECK_MESSAGE(std::abs(found - printed) < 2.5 + 0.06 * printed,
                  diameter << " x " << feet << ": " << found);
    ++cells;
  }
  CHECK(cells > 25);
}

// source: Michigan MCL 290.401 (0.904762 (0.22 D^2 - 0.71 D) for each 4 ft, taper 1/2 in)
TEST_CASE("International 1/4-inch by its formula: 0 to 5 % more in 12 to 40 in, under 1 % from 28 in up") {
  const SawingModel model(board_mill(kFineInch * 5 / 16, 3, {4, 8, 12, 16}));
  for (double diameter = 12; diameter <= 40; ++diameter) {
    double rule = 0;
    for (double d = diameter; d < diameter + 2; d += 0.5) rule += 0.904762 * (0.22 * d * d - 0.71 * d);
    const double more = bf_of(model.best(log_of(diameter, 16, 0.125))) / rule - 1;
    CAPTURE(diameter);
    CHECK(more > 0);
    CHECK(more < (diameter < 28 ? 0.05 : 0.01));
  }
}

// source: H. Hallock, FPL Report 2254, 1962
TEST_CASE("a kerf of 9/32 for 12/32 in small logs: slightly over 7 % more on average, 0 to 33 % by log") {
  const SawMill wide = board_mill(kFineInch * 12 / 32, 4, {8, 10, 12});
  const SawMill narrow = board_mill(kFineInch * 9 / 32, 4, {8, 10, 12});
  const double gain = lumber_of(narrow, 5.5, 12) / lumber_of(wide, 5.5, 12) - 1;
  CHECK(gain > 0.065);
  CHECK(gain < 0.08);
  double most = 0;
  for (double diameter = 5.5; diameter < 12.01; diameter += 0.1) {
    const double one = lumber_of(narrow, diameter, diameter) / lumber_of(wide, diameter, diameter) - 1;
    CHECK(one >= 0);
    CHECK(one <= 0.33);
    most = std::max(most, one);
  }
  CHECK(most > 0.10);  // by log it is another story than on average
}

// source: E. Wengert, 2000
TEST_CASE(
    "twelve 1-1/8 boards from a cant: 1/32 less kerf is worth about 2.1 %, 1/32 less thickness a little over "
    "2.2 %") {
  const auto room_for_twelve = [](Fine thickness, Fine kerf) {
    const WidthFill fill({{thickness, 1}}, kerf, 40 * kFineInch);
    Fine room = 0;
    while (fill.worth(room) < 12) room += kFineInch / 64;
    return static_cast<double>(room);
  };
  const Fine board = kFineInch * 9 / 8;
  const Fine kerf = kFineInch * 9 / 32;
  const double whole = room_for_twelve(board, kerf);
  CHECK(std::abs(100 * (1 - room_for_twelve(board, kerf - kFineInch / 32) / whole) - 2.1) < 0.05);
  const double thinner = 100 * (1 - room_for_twelve(board - kFineInch / 32, kerf) / whole);
  CHECK(thinner > 2.2);
  CHECK(thinner < 2.3);
}

// source: E. Wengert, 2004
TEST_CASE("boards of 1-1/16 for 1-1/8 on average are worth nearly 5 % at day's end") {
  const auto day = [](Fine thickness) {
    return lumber_of(board_mill(kFineInch / 4, 4, {8, 10, 12}, thickness), 10, 24);
  };
  const double gain = 100 * (day(kFineInch * 17 / 16) / day(kFineInch * 9 / 8) - 1);
  CHECK(gain > 4);
  CHECK(gain < 5.5);
}
