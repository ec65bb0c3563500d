// billable.h -- what a job's day sheets say, as billing sees it: plain values with the sheet they stand on.
// Loading them from a book is in office/load_billable.h; what they cost is in bill.h.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/day.h"
#include "base/exact.h"
#include "measure/convention.h"
#include "scaling/practice.h"
#include "scaling/scaling.h"

namespace kerfbook::billing {

using measure::Length;
using measure::Size;

/// A sheet in the revision its facts were taken from.
struct SheetRef {
  Day day;  ///< day 0 of the calendar and shift 0: what belongs to the job and to no day (`once` charges)
  int shift = 1;
  int revision = 1;
  std::string why;  ///< reason of that revision; empty for the first
  bool operator==(const SheetRef&) const = default;
  [[nodiscard]] bool same_sheet(const SheetRef& other) const {
    return day == other.day && shift == other.shift;
  }
};

/// Sheets by day and shift.
using SheetKey = std::pair<Day, int>;
inline SheetKey key_of(const SheetRef& sheet) {
  return {sheet.day, sheet.shift};
}
using Sheets = std::map<SheetKey, SheetRef>;

enum class FactKind : std::uint8_t {
  pieces,  ///< a tally item; count = pieces, negative for `less` and `resaw`
  lineal,  ///< lineal feet; count = counts of length
  log,     ///< a log sawn; count = 1
  sawing,  ///< count = minutes of sawing under the job
  stop,    ///< count = 1
  teeth,   ///< work on teeth; count = 1
  charge,  ///< a charge line; count = 1
  move,    ///< count = 1
  once,    ///< the job itself, for `once` charges
  sold,    ///< own lumber sold at the yard; count = pieces
  bundle,  ///< a bundle of own lumber sold for one price; count = 1
};

/// One fact. Which members mean something depends on the kind; all others are empty.
struct Fact {
  SheetRef sheet;
  FactKind kind = FactKind::pieces;
  std::string site;
  std::string species;
  std::string grade;
  std::string species_name;  ///< sold: as the buyer reads them
  std::string grade_name;
  std::string bundle;
  Size size;      ///< pieces, lineal, sold
  Length length;  ///< pieces, sold: of each (none: lineal feet, count is of length); log: as measured
  std::int64_t count = 1;
  std::string name;                ///< log: tag; stop: cause; teeth: saw; charge: its name; move: from;
                                   ///< bundle: its tag
  std::string text;                ///< stop, teeth, charge: what was noted; move: to
  std::string log_tag;             ///< teeth: the log
  std::string cause;               ///< teeth
  std::optional<Rational> agreed;  ///< sold, bundle: price agreed on the spot; else by the price list
  std::string agreed_per = "bf";   ///< sold: bf, piece, lf, lm
  int minutes = 0;                 ///< stop, move
  bool chargeable = false;         ///< stop marked `charge`
  Rational quantity;               ///< charge: its quantity; move: distance; teeth: how many
  bool kilometres = false;         ///< move
  bool measured = false;           ///< log: has a measure
  bool source_corrected = false;  ///< log: measured on another sheet, which was corrected since it was posted
  scaling::LogMeasure log;
  std::vector<scaling::Defect> defects;
};

/// What the fact is, without its sheet and count: two facts with one key on one sheet are the same thing twice.
std::string key_of(const Fact& fact);
/// The key in a customer's words: "2x6x16", "log T17", "stop (waiting)".
std::string words_of(const Fact& fact);

}  // namespace kerfbook::billing
