// balance.h -- where the wood of some logs went: into lumber, into sawdust, and the rest. Exact: it is volume, not statistics.
//
// Of a mill whose head saw and edger saw stand at right angles and free a board a pass, each board costs one cut of either:
//   sawdust = length x (width x head kerf + thickness x edger kerf + both kerfs' corner)
// which is the board with its kerfs, (thickness + head) x (width + edger), less the board. A third saw, standing beside the edger,
// adds its own cut: (thickness + head) x third. Source: geometry; the cuts are counted as the mill makes them,
// common practice, no source. The cuts that free slabs and edgings alone are not known from a tally and are in the rest.
//
// Sizes are those really cut, green. All lengths are in one unit, and volumes in that unit cubed; whole numbers of a fine unit
// keep long sums from growing past what is counted exactly.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/exact.h"

namespace kerfbook::tuning {

/// What each saw takes out, in the unit of the sizes. 0 = there is no such saw.
struct Kerfs {
  Rational head;
  Rational edger;
  Rational third;
  bool operator==(const Kerfs&) const = default;
};

/// Of a board, across its length: the head saw cuts its wide faces, the edger saw its narrow ones.
struct Section {
  Rational thickness;
  Rational width;
  [[nodiscard]] Rational area() const { return thickness * width; }
  bool operator==(const Section&) const = default;
};
/// The section that boards were really cut to, of which the volume over the length, `area`, is known: of the `targets` of
/// their size the one whose area is nearest, if it is that to 1 in 10,000; else `nominal` with an oversize alike both ways,
/// below 0 for scant boards, in whole `step`s. `area` must be above 0.
Section section_cut(const Section& nominal, const Rational& area, const std::vector<Section>& targets,
                    const Rational& step);

/// Dust of boards of one section, `total_length` being that of all of them together; below 0 for boards taken off again.
Rational sawdust(const Section& section, const Rational& total_length, const Kerfs& kerfs);

/// Parts of the logs' volume, in one unit.
struct Balance {
  Rational logs;
  Rational lumber;   ///< green, as really cut
  Rational sawdust;  ///< by sawdust()
  /// Slabs, edgings, trim, shrinkage, and what was measured wrongly; below 0 is a fault.
  [[nodiscard]] Rational rest() const { return logs - lumber - sawdust; }
  /// More wood out than in: logs or boards are measured wrongly, or missing from the book. To be said, never hidden.
  [[nodiscard]] bool is_fault() const { return rest().is_negative(); }
  Balance& operator+=(const Balance& more);
};

/// 100 (lumber / scale - 1), of one unit; nullopt without a scale.
std::optional<Rational> overrun_percent(const Rational& lumber, const Rational& scale);
/// 100 part / logs; nullopt without logs.
std::optional<Rational> percent_of_logs(const Rational& part, const Balance& balance);

}  // namespace kerfbook::tuning
