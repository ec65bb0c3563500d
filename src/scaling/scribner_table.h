// scribner_table.h -- the Scribner Decimal C table: factors, the printed table's departures from them, small logs.
// Source of factors and departures: USDA Forest Service, Forest Management Service Center, National Volume Estimator
// Library (public domain), FMSC-Measurements/VolumeLibrary, scrib.f, commit 3854807 of 31 July 2026.
//
// An entry is (factor x length + 5) / 10 with the fraction dropped, in tens of board feet, plus the departure. The
// table so made was compared with the Decimal C lookup of ForestBiometrics.jl (Crghilardi/ForestBiometrics.jl,
// src/volume.jl, commit 49da275 of 5 April 2020) and with the Log Volume charts, courtesy Prof. Gene Wengert,
// WoodWeb Knowledge Base, 4 May 2001. Of the 765 cells that two of them print, 745 agree. The other 20, and what is
// chosen here:
//
//   6 in x 4, 5, 6, 7, 8, 9 ft; 7 in x 4, 5, 6 ft; 8 in x 4 ft: the library gives 1 ten (none at 6 in x 4 ft), which
//     is all its arithmetic can give; the printed tables have half entries, 5 bf. CHOSEN: 5 bf. (L. H. Bailey, Farm
//     and Garden Rule-Book, describes half entries for 6 and 8 ft logs of 6 and 7 in; read to the letter that takes
//     in 7 in x 8 ft, which both printed tables give as 1 ten, and so does this one.)
//   10, 12, 18, 23, 32, 38, 40, 42, 47, 49 in x 19 ft: the library gives 7, 9, 25, 45, 87, 127, 143, 159, 197, 213
//     tens, the lookup 6, 10, 26, 44, 88, 126, 142, 160, 196, 214 (all its 19-ft entries lie at the mean of the 18
//     and 20 ft ones). Only FSH 2409.11, Appendix 2, settles it, and it was not at hand. CHOSEN: the library's, the
//     Forest Service's own statement of its table, and one that follows the factors.
//
// Past 20 ft (single pieces to 40 ft) the factors are used alone, without departures: the same library.
#pragma once

#include <cstdint>

namespace kerfbook::scaling {

constexpr int kScribnerLeastInches = 6;
constexpr int kScribnerMostInches = 120;
constexpr int kScribnerLeastFeet = 4;
constexpr int kScribnerTableFeet = 20;
constexpr int kScribnerPieceFeet = 40;

/// Board feet (tens, or 5 for a half entry) of a whole-inch diameter, 6 to 120 in, and a whole-foot length, 4 to 40.
std::int64_t scribner_decimal_c(int inches, int feet);

/// The factor, thousandths of a board foot per foot of length: for the tests, which check it against print.
std::int64_t scribner_factor(int inches, int feet);

}  // namespace kerfbook::scaling
