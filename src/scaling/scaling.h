// scaling.h -- what a log measures, what is taken off, and its scale under a named rule and practice. Pure.
// The rules stand in one table (rules.h); a practice says how readings become what the rule is asked with.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/exact.h"
#include "base/result.h"
#include "measure/length.h"

namespace kerfbook::scaling {

using measure::Length;
using measure::System;

/// A log as measured, inside bark. Absent readings are empty, never zero.
struct LogMeasure {
  std::vector<Length> small;    ///< small end: one reading, or two at right angles
  std::vector<Length> large;    ///< large end: none, one or two
  std::vector<Length> mid;      ///< middle of the length: none, one or two
  std::optional<Length> girth;  ///< round the middle
  Length length;                ///< as measured; trim, if any, comes off by the practice
  std::vector<Length>
      segments;  ///< the person's own small-end diameter of each segment, top first; else empty
  bool operator==(const LogMeasure&) const = default;
};

enum class VolumeUnit : std::uint8_t { board_foot, cubic_foot, cubic_metre, hoppus_foot };
std::string_view unit_word(VolumeUnit unit);  ///< "bf", "ft3", "m3", "hoppus ft"

enum class DefectKind : std::uint8_t {
  percent,   ///< of the gross scale
  volume,    ///< board feet, or a cubic unit
  length,    ///< the log scaled as if so much shorter
  diameter,  ///< the log scaled as if so much thinner (smaller cylinder)
  squared,   ///< width x height x length of a box round the defect, over a divisor
  sector,    ///< so many degrees of the circle for so much of the length
};

struct Defect {
  DefectKind kind = DefectKind::volume;
  Rational amount;                           ///< percent; or volume in `unit`; or degrees of a sector
  VolumeUnit unit = VolumeUnit::board_foot;  ///< volume only
  Length width;                              ///< squared
  Length height;                             ///< squared
  Length length;                             ///< length, squared, sector
  Length diameter;                           ///< diameter
  std::string reason;                        ///< "rot", "sweep": kept and printed
  bool operator==(const Defect&) const = default;
};

/// Reads a log as a day sheet writes it: small end x length.
///   15x12            15 in small end, 12 ft long
///   12/13x16         two readings of the small end
///   12/13-15x16'6"   ... and a large end of 15 in, 16 ft 6 in long;  12-15/16x16 two readings of the large end
///   12x32 after which the sheet may add words:  mid 13.5   girth 48   segments 12,14
/// Inches may be 12, 12-1/2 (only where no large end could be meant: write 12.5 or 12½ beside a large end), 12.5, or
/// of a tape in tenths 12.3 or 12.27, kept to the nearest 1/64; feet in tenths, 15x16.4, likewise.
/// `7-7/8` is 7-7/8 in, since a large end is not smaller than the small one; `12-15/16` is two readings, 15 and 16.
/// Metric book (or metric units written): centimetres x metres: 30x4.8, 30/32-36x4.8, 30cmx4.8m.
Result<LogMeasure> read_log_spec(std::string_view spec, bool metric_book = false);
/// The spec without the added words, reading back as the same measures in such a book: `12.5-15x16'6"`; in an inch
/// book a metric log is written with its units, 30cmx4.8m; in a metric book an inch log is, 12"x16'.
std::string write_log_spec(const LogMeasure& log, bool metric_book = false);
/// One diameter or girth as a spec writes it (`13.5`; metric book: centimetres), for the added words. 64ths that are no
/// sixteenths are written as the shortest decimal that reads back as them.
Result<Length> read_diameter(std::string_view text, bool metric_book = false);
std::string write_diameter(Length diameter, bool metric_book = false);

/// Reads what follows the word `defect`:
///   15bf   10%   2' or 2ft (length)   1in or 1" (diameter)   7x7x16 (squared: in x in x ft)
///   90degx8 (sector of 90 degrees, 8 ft long; 90deg: the whole length)   0.05m3 or 3ft3 for cubic rules
/// Metric book (or metric units written): 0.6m (length), 3cm (diameter), 18x18x4.8 (cm x cm x m), 90degx2.4.
/// What is added for the scaler's inch round a squared defect is typed already added.
Result<Defect> read_defect(std::string_view text, bool metric_book = false);
/// Without the reason. Metric always has its units; in a metric book so have inches.
std::string write_defect(const Defect& defect, bool metric_book = false);

/// Scales are kept as whole millionths of the rule's unit.
constexpr std::int64_t kPerUnit = 1'000'000;

/// The practice is described in practice.h; here only its name travels.
struct Practice;

struct Segment {
  Length diameter;          ///< the scaling diameter used (after the practice's rounding)
  Length length;            ///< the scaling length used
  std::int64_t gross = 0;   ///< millionths
  bool overridden = false;  ///< the person's own diameter
};

/// One defect and what it took off.
struct Taken {
  std::string defect;       ///< as write_defect prints it
  std::string reason;       ///< "rot"; may be empty
  std::int64_t amount = 0;  ///< millionths, not rounded to whole board feet
};

/// What a log scales, and how that came about. net = gross - deduction always.
struct Scale {
  std::string rule;  ///< the rule's name, as `international-quarter`
  VolumeUnit unit = VolumeUnit::board_foot;
  std::int64_t gross = 0;            ///< millionths of the unit
  std::int64_t deduction = 0;        ///< never more than gross; all of it for a cull
  std::int64_t net = 0;              ///< 0 for a cull
  bool cull = false;                 ///< net below the practice's share of gross, or under the minimum log
  std::vector<Segment> segments;     ///< top first; one for a log scaled in one piece
  std::vector<Taken> taken;          ///< what each defect took off, before the total was rounded
  std::vector<std::string> remarks;  ///< in words: "under the minimum top of 6 in", "outside the table: ..."
};

/// Scales a log. Each defect is worked out on the sound log and the deductions are added, so that their order never
/// matters; only length and diameter defects are taken together, as one shorter and thinner log. The total is
/// rounded once, a half going up (FSH 2409.11, ch. 20, s. 21): to whole tens under Decimal C, to whole board feet
/// where the practice rounds to board feet, else as the practice's result. A Slip when the rule needs a reading that
/// was not taken ("smalian needs both ends").
Result<Scale> scale(const LogMeasure& log, const std::vector<Defect>& defects, const Practice& practice);

/// Cubic content of a log for recovery, whatever rule is billed by.
struct Content {
  std::int64_t cubic_feet = 0;  ///< millionths of ft3
  std::string method;  ///< in words: "Smalian, both ends", "Smalian, small end and taper 1/8 in per ft"
};
struct Taper {
  /// Thousandths of an inch of diameter per foot (inch) or hundredths of a millimetre per metre (metric).
  std::int64_t per_foot_mils = 125;
  std::int64_t per_metre = 1042;
  /// Length a log is cut over its nominal length, not counted in scale but wood all the same.
  Length trim{0, System::inch};
};
/// From both ends if measured, else the middle (Huber), else the girth, else the small end with the taper.
/// With small end, middle and large end: Newton. The length used is the nominal length plus `taper.trim`; a large
/// end worked out by taper is the small end plus the taper over the nominal length.
Content content(const LogMeasure& log, const Taper& taper);

}  // namespace kerfbook::scaling
