// measures.h -- board measure, log rules and what a log holds, each by its published formula and by nothing of the program.
//
//   board foot         1 ft long, 12 in wide, 1 in thick: 144 cubic inches. American Softwood Lumber Standard, Voluntary
//                      Product Standard PS 20.
//   inch               25.4 mm exactly. International yard and pound agreement, 1959.
//   International 1/4  0.905 x the sum over 4-ft sections of 0.22 d^2 - 0.71 d, d growing 1/2 in a section from the small
//                      end, a part section in proportion at the butt, to the nearest 5 bf. Massachusetts G.L. c. 96
//                      s. 11A; Michigan MCL 290.401; F. Freese, A Collection of Log Rules, FPL-GTR-1, 1973.
//   Doyle              ((D - 4) / 4)^2 L. Louisiana R.S. 3:4641; Freese 1973.
//   Scribner formula   (0.79 D^2 - 2 D - 4) L / 16. Bruce and Schumacher, 1950, through D. R. Larsen, Forest Functions,
//                      University of Missouri, 2017; Freese 1973.
//   Smalian            the mean of both end areas times the length. D. Briggs, Forest Products Measurements and
//                      Conversion Factors, University of Washington, 1994, table 2-1.
//   whole feet         a part of a foot in a log's length is dropped (common practice, no source).
//   deductions         added, then rounded once to whole board feet, a half going up. USDA Forest Service, FSH 2409.11,
//                      ch. 20, s. 21. A rule that is not rounded has its deductions unrounded.
//   taper              1/8 in a foot where no large end was measured: 1/2 in per 4 ft, as International 1/4 has it.
//
// What the book keeps is as fine as it says: lumber in cubic 1/64 in, scale and content in millionths.
#pragma once

#include <optional>

#include "days.h"

namespace reckoning {

struct Scale {
  Fraction gross, deduction, net;  ///< board feet
};

/// International 1/4-inch, `doyle` or `scribner-formula`; nothing for a log that was not measured.
std::optional<Scale> scale_of(const Log& log, const std::string& rule);

/// Mean small end: inches, or centimetres of a metric log.
Fraction small_end(const Measure& measure);

/// Cubic feet of wood inside bark, with the trim allowance (inches). Without a large end the log tapers 1/8 in a foot of
/// its nominal length; a metric one, as the book keeps it, 10.42 mm a metre.
Fraction content_of(const Measure& measure, const Fraction& trim);

/// Board feet of nominal size; below 0 for what is taken off.
Fraction lumber_of(const Boards& boards);

/// The cubic feet really cut: nominal size and `over` inches both ways, or the target's section.
Fraction wood_of(const Boards& boards, const std::optional<Fraction>& over,
                 const std::optional<Section>& target);

/// All boards end to end, in feet; below 0 for what is taken off.
Fraction feet_of(const Boards& boards);

/// Feet in so many feet or metres.
Fraction in_feet(const Fraction& length, bool metric);

}  // namespace reckoning
