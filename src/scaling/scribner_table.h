// scribner_table.h -- Scribner Decimal C: the printed table, and the factors it was made from.
// Source of the factors and of the printed table's departures from them: USDA Forest Service, Forest Management
// Service Center, National Volume Estimator Library, Scribner factor table (2003).
//
// Two scales are made of them, and they are not the same:
//
//   the printed table, 6 to 120 in and 4 to 20 ft: (factor x length + 5) / 10 with the fraction dropped, in tens of
//     board feet, plus the departure;
//   by factors alone, 1 to 120 in and 1 to 40 ft: the same without departures and without half entries. This is the
//     practice of single pieces to 40 ft, at every length: Hart (Timber Measurement Society, 2018) counts 25 of the 44
//     combinations of 5 to 8 in by 10 to 20 ft that read 20 bf. By factors it is 25; by the table, which begins at 6 in,
//     it is 16.
//
// The table so made was compared with a second lookup of it, of 2020, and with E. Wengert's Log Volume charts, 2001. Of the 765 cells that two of them print, 745 agree. The other 20, and what is chosen here:
//
//   6 in x 4, 5, 6, 7, 8, 9 ft; 7 in x 4, 5, 6 ft; 8 in x 4 ft: the Forest Service gives 1 ten (none at 6 in x 4 ft),
//     which is all its arithmetic can give; the printed tables have half entries, 5 bf. CHOSEN: 5 bf. (L. H. Bailey,
//     Farm and Garden Rule-Book, describes half entries for 6 and 8 ft logs of 6 and 7 in; read to the letter that takes
//     in 7 in x 8 ft, which both printed tables give as 1 ten, and so does this one.)
//   10, 12, 18, 23, 32, 38, 40, 42, 47, 49 in x 19 ft: the Forest Service gives 7, 9, 25, 45, 87, 127, 143, 159, 197, 213
//     tens, the lookup 6, 10, 26, 44, 88, 126, 142, 160, 196, 214 (all its 19-ft entries lie at the mean of the 18
//     and 20 ft ones). Only FSH 2409.11, Appendix 2, settles it, and it was not at hand. CHOSEN: the Forest Service's
//     own statement of its table, which follows the factors.
#pragma once

#include <cstdint>

namespace kerfbook::scaling {

constexpr int kScribnerLeastInches = 6;  ///< of the printed table
constexpr int kScribnerMostInches = 120;
constexpr int kScribnerLeastFeet = 4;
constexpr int kScribnerTableFeet = 20;
constexpr int kFactorLeastInches = 1;  ///< of the factors

/// The printed table: board feet (tens, or 5 for a half entry) of a whole-inch diameter, 6 to 120 in, and a whole-foot
/// length, 4 to 20. A longer piece, which only a practice of the mill's own allows, goes by the factors.
std::int64_t scribner_decimal_c(int inches, int feet);

/// Factor times length in tens of board feet: 1 to 120 in, any whole-foot length; past 40 ft by the factor for 32 to 40.
std::int64_t scribner_by_factor(int inches, int feet);

/// The factor, thousandths of a board foot per foot of length: for the tests, which check it against print.
std::int64_t scribner_factor(int inches, int feet);

}  // namespace kerfbook::scaling
