#include "scaling/scribner_table.h"

#include <array>
#include <cstddef>

namespace kerfbook::scaling {
namespace {

// 1 to 5 in: thousandths for every length.
constexpr std::array<std::int64_t, 5> kSmallestFactors = {0, 143, 390, 676, 1070};

// 6 to 11 in: thousandths for lengths of 1-15, 16-31 and 32-40 ft.
constexpr std::int64_t kSmallFactors[6][3] = {
    {1160, 1249, 1570}, {1400, 1608, 1800}, {1501, 1854, 2200},
    {2084, 2410, 2900}, {3126, 3542, 3815}, {3749, 4167, 4499},
};

// 12 to 120 in: thousandths for every length.
constexpr std::array<std::int64_t, 109> kFactors = {
    4900,   6043,   7140,   8880,   10000,  11528,  13290,  14990,  17499,  18990,  20880,  23510,  25218,
    28677,  31249,  34220,  36376,  38040,  41060,  44376,  45975,  48990,  50000,  54688,  57660,  64319,
    66730,  70000,  75240,  79480,  83910,  87190,  92501,  94990,  99075,  103501, 107970, 112292, 116990,
    121650, 126525, 131510, 136510, 141610, 146912, 152210, 157710, 163288, 168990, 174850, 180749, 186623,
    193170, 199120, 205685, 211810, 218501, 225685, 232499, 239317, 246615, 254040, 261525, 269040, 276630,
    284260, 292501, 300655, 308970, 317360, 325790, 334217, 343290, 350785, 359120, 368380, 376610, 385135,
    393380, 402499, 410834, 419166, 428380, 437499, 446565, 455010, 464150, 473430, 482490, 491700, 501700,
    511700, 521700, 531700, 541700, 552499, 562501, 573350, 583350, 594150, 604170, 615010, 625890, 636660,
    648380, 660000, 671700, 683330, 695011,
};

struct Departure {
  int feet;
  int inches;
  int tens;
};
constexpr Departure kDepartures[] = {
    {4, 42, -1},   {4, 46, -1},   {4, 51, -1},  {4, 52, -1},  {4, 53, -1},  {4, 54, -1},  {4, 55, -1},
    {4, 60, -1},   {4, 63, -1},   {4, 65, -1},  {4, 72, -1},  {4, 73, -1},  {4, 74, -1},  {4, 75, -1},
    {4, 76, -1},   {4, 80, -1},   {4, 86, -1},  {4, 88, -1},  {4, 93, -1},  {4, 96, -1},  {4, 98, -1},
    {4, 101, -1},  {4, 102, -1},  {4, 103, -1}, {4, 104, -1}, {4, 105, -1}, {4, 106, -1}, {4, 111, -1},
    {4, 112, -1},  {4, 115, -1},  {4, 118, -1}, {5, 10, -1},  {5, 19, +1},  {5, 21, +1},  {5, 41, -1},
    {5, 43, -1},   {5, 46, -1},   {5, 59, -1},  {5, 64, -1},  {5, 65, -1},  {5, 74, -1},  {5, 75, -1},
    {5, 81, -1},   {5, 84, -1},   {5, 86, -1},  {5, 89, -1},  {5, 90, -1},  {5, 93, -1},  {5, 95, -1},
    {5, 97, -1},   {5, 99, -1},   {5, 109, -1}, {5, 110, -1}, {5, 113, -1}, {5, 119, -1}, {5, 120, -1},
    {6, 20, +1},   {6, 21, +1},   {6, 82, +1},  {6, 92, -1},  {6, 108, -1}, {6, 112, -1}, {6, 114, -1},
    {7, 9, +1},    {7, 11, -1},   {7, 61, +1},  {7, 71, -1},  {7, 79, +1},  {8, 24, +1},  {8, 29, +1},
    {8, 38, +1},   {8, 64, -1},   {8, 66, -1},  {8, 67, +1},  {8, 69, -1},  {8, 71, +1},  {8, 77, +1},
    {8, 79, -1},   {8, 83, +1},   {9, 29, +1},  {9, 43, +1},  {9, 51, +1},  {9, 61, +1},  {9, 74, +1},
    {10, 9, +1},   {10, 23, -1},  {10, 71, +1}, {10, 74, -1}, {10, 77, +1}, {10, 83, +1}, {10, 96, -1},
    {10, 107, +1}, {11, 9, +1},   {11, 25, -1}, {11, 58, +1}, {11, 61, +1}, {11, 64, +1}, {11, 73, +1},
    {12, 10, -1},  {13, 6, -1},   {13, 47, -1}, {13, 52, +1}, {13, 61, +1}, {13, 66, +1}, {13, 69, +1},
    {13, 77, -1},  {13, 99, -1},  {14, 6, -1},  {14, 44, -1}, {14, 80, -1}, {15, 6, -1},  {15, 28, -1},
    {15, 45, +1},  {15, 51, +1},  {15, 61, +1}, {15, 74, +1}, {15, 80, +1}, {17, 46, +1}, {17, 61, +1},
    {17, 64, +1},  {17, 75, +1},  {17, 80, +1}, {18, 44, -1}, {18, 70, +1}, {18, 71, -1}, {18, 77, -1},
    {18, 81, +1},  {18, 83, -1},  {18, 91, +1}, {18, 93, +1}, {18, 95, +1}, {18, 98, +1}, {18, 100, +1},
    {18, 107, +1}, {18, 111, +1}, {19, 8, -1},  {19, 9, -1},  {19, 13, +1}, {20, 8, -1},  {20, 9, -1},
    {20, 62, +1},  {20, 64, +1},  {20, 66, +1}, {20, 67, -1}, {20, 69, +1}, {20, 71, -1}, {20, 77, -1},
    {20, 79, +1},
};

struct Cell {
  int inches;
  int feet;
};
constexpr Cell kHalfEntries[] = {{6, 4}, {6, 5}, {6, 6}, {6, 7}, {6, 8},
                                 {6, 9}, {7, 4}, {7, 5}, {7, 6}, {8, 4}};

constexpr std::int64_t factor(int inches, int feet) {
  const int length_class = feet <= 15 ? 0 : feet <= 31 ? 1 : 2;
  if (inches < 6) return kSmallestFactors[static_cast<std::size_t>(inches - 1)];
  if (inches < 12) return kSmallFactors[inches - 6][length_class];
  return kFactors[static_cast<std::size_t>(inches - 12)];
}

/// Factor times length to the nearest ten, a half up.
constexpr std::int64_t by_factor(int inches, int feet) {
  return (factor(inches, feet) * feet + 5'000) / 10'000 * 10;
}

using Row = std::array<std::int32_t, kScribnerTableFeet + 1>;
using Table = std::array<Row, kScribnerMostInches + 1>;

constexpr Table make_table() {
  Table table{};
  const auto cell = [&table](int inches, int feet) -> std::int32_t& {
    return table[static_cast<std::size_t>(inches)][static_cast<std::size_t>(feet)];
  };
  for (int inches = kScribnerLeastInches; inches <= kScribnerMostInches; ++inches) {
    for (int feet = kScribnerLeastFeet; feet <= kScribnerTableFeet; ++feet) {
      cell(inches, feet) = static_cast<std::int32_t>(by_factor(inches, feet));
    }
  }
  for (const Departure& off : kDepartures) cell(off.inches, off.feet) += 10 * off.tens;
  for (const Cell& half : kHalfEntries) cell(half.inches, half.feet) = 5;
  return table;
}

constexpr Table kTable = make_table();

}  // namespace

std::int64_t scribner_decimal_c(int inches, int feet) {
  if (feet > kScribnerTableFeet) return by_factor(inches, feet);
  return kTable[static_cast<std::size_t>(inches)][static_cast<std::size_t>(feet)];
}

std::int64_t scribner_by_factor(int inches, int feet) {
  return by_factor(inches, feet);
}

std::int64_t scribner_factor(int inches, int feet) {
  return factor(inches, feet);
}

}  // namespace kerfbook::scaling
