// sheet.h -- one day (or shift) of the mill as it was written down: lines in order, nothing worked out.
// Reading is in read.h, printing in write.h, plausibility in check.h, meaning in context (facts.h).
//
// The grammar, one fact a line, `;` starts a remark, context words hold until changed. A NAME or TEXT is the words
// up to what follows it; a CODE, TAG, GRADE, CAUSE is one word.
//
//   sheet   DAY [shift N]                                    the day; N from 2 for a second sheet of that day
//   site    NAME
//   crew    NAME TIME [ACTIVITY] [, NAME TIME [ACTIVITY]]... TIME: 9, 9.5, 8:30, or spans 7:00-12:00 13:00-16:30
//   sawing  SPAN... [, job CODE]                             sawing time
//   stop    TIME|SPAN CAUSE [TEXT...] [, charge] [, job CODE]    TIME: 0:36, 36min, 0.6h; `, charge CODE` is both
//   job     CODE                                             `job own` is the mill's own stock
//   species CODE          grade GRADE          bundle TAG    `grade -`, `bundle -`: none again
//   setup   NAME [kerf K] [over O] [edger K] [third K] [lead L] [feed F] [zero Z] [tooth KIND] [TEXT...]
//                                                            a new saw set-up from here on, also on later days
//   log     [TAG] SPEC [mid D] [girth G] [segments D,D..] [defect D [REASON...]]... [left on the mill]
//   log     TAG|TAG-TAG ... [left on the mill]               received earlier with `in`, or left earlier
//   log     TAG defect D [REASON...] ... [left on the mill]  ... with a defect found in sawing, taken off besides
//   in      [TAG] SPEC ... [from ORIGIN...]                  a log received, not sawn yet
//   SIZE [GRADE] PIECES/LENGTH...                            a tally line: 2x6 sel 5/10 1/12 4/16
//   SIZExLENGTH [GRADE] PIECES                               2x8x16 4
//   SIZE [GRADE] LENGTHlf|LENGTHlm                           lineal feet or metres, pieces not counted
//   THICKNESS rw [GRADE] WIDTHxLENGTH[*PIECES]...            random width: 5/4 rw fas 7-1/2x8 6x8*3
//   less    (any tally form) [REASON...]                     taken off the tally
//   resaw   (any tally form)                                 taken back to be sawn again
//   sold    BUYER SIZE [GRADE] PIECES/LENGTH... [at PRICE [each]]    own stock sold at the yard; PRICE is for a board
//   sold    BUYER SIZE [GRADE] LENGTHlf [at PRICE [lf|lm]]           foot, for a piece with `each`, for a lineal foot or
//   sold    BUYER bundle TAG [at PRICE]                              metre with lf or lm, and of a bundle for all of it
//   teeth   SAW ACTION [COUNT] [CAUSE|-] [TAG|-] [TEXT...] [, job CODE]   ACTION: touched-up replaced full-set ...
//   blade   SAW changed|tensioned [CAUSE|-] [TAG|-] [TEXT...] [, job CODE]    the blade itself; no tooth is counted
//   thick   SIZE READING READING...                          caliper readings along one board
//   charge  JOB NAME [QUANTITY] [TEXT...]
//   meter   HOURS         fuel QUANTITY gal|l [PRICE]
//   move    FROM to PLACE DISTANCE mi|km [TIME] [, job CODE]
//   residue KIND QUANTITY ft3|yd3|m3|cord [TEXT...]          KIND: slabs edgings trim chips bark shavings sawdust
//   note    TEXT...
//
// What holds until when (facts.cpp fills it in, check_jobs.cpp warns where a reader may take it otherwise):
//   - species, grade, bundle and setup hold from their line until the next of their kind.
//   - A sheet with one job is all that job's, also what stands above its `job` line.
//   - A sheet with several jobs: a job holds from its `job` line to the next. What stands above the first is no
//     job's. Nor is what stands in a heading below it: after a `site` or `move` line, above the line of another job,
//     with no log and no board between, for a reader may take it for either job's. The move itself is the job's that
//     holds.
//   - A sawing, stop, teeth, blade or move line that ends in `, job CODE` is that job's wherever it stands, a charge
//     line is the job's it names; neither changes what holds for the lines after it. Logs and boards take the job of
//     the `job` line.
//   - A place holds from its `site` line, or from the move that went to it, to the next of either. What stands above
//     the first of them was done where that move left from; or at that site, when it is the only one and named
//     before any log or board.
// What is no job's and could be charged is never dropped: check and post warn of it, `bill` lists it.
//
// A line kind is added here (a struct, in the variant), in one row of the table in kinds.cpp with its reader, and in
// write.cpp; DEVELOPERS.md walks through one.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "measure/heap.h"
#include "measure/size.h"
#include "scaling/scaling.h"

namespace kerfbook::sheet {

using measure::Length;
using measure::Size;

struct Site {
  std::string name;
  bool operator==(const Site&) const = default;
};
struct Job {
  std::string code;
  bool operator==(const Job&) const = default;
};
struct Species {
  std::string code;
  bool operator==(const Species&) const = default;
};
struct Grade {
  std::string code;
  bool operator==(const Grade&) const = default;
};  ///< empty = none again
struct Bundle {
  std::string tag;
  bool operator==(const Bundle&) const = default;
};  ///< empty = none again

struct Hand {
  std::string name;
  int minutes = 0;          ///< of all its spans when spans are given
  std::vector<Span> spans;  ///< empty when only a time was written
  std::string activity;     ///< empty = the day's work
  bool operator==(const Hand&) const = default;
};
struct Crew {
  std::vector<Hand> hands;
  bool operator==(const Crew&) const = default;
};

struct Sawing {
  std::vector<Span> spans;
  std::string
      job;  ///< named at the end of the line; empty = the job that holds. So for stops, teeth and moves
  bool operator==(const Sawing&) const = default;
};

struct Stop {
  int minutes = 0;
  std::optional<Span> span;
  std::string cause;  ///< one word: metal, waiting, belt, hydraulics, teeth, engine, jam, weather, ...
  std::string text;
  bool charge = false;
  std::string job;
  bool operator==(const Stop&) const = default;
};

/// How the saws are set. Mils: thousandths of an inch (metric book: hundredths of a mm). What is absent was not said here:
/// what was last said for the set-up of this name holds.
struct Setup {
  std::string name;
  std::optional<std::int64_t> kerf_mils;   ///< of the head saw
  std::optional<std::int64_t> over_mils;   ///< how much boards are cut over nominal, both ways
  std::optional<std::int64_t> edger_mils;  ///< kerf of the edger saw
  std::optional<std::int64_t> third_mils;  ///< kerf of the third saw
  std::optional<std::int64_t> lead_mils;   ///< how much nearer the log the saw's front stands
  std::optional<std::int64_t>
      zero_mils;  ///< where the set-works' pointer stands when the gap is nought; may be below 0
  std::optional<Rational> feed;  ///< feet a minute (metric book: metres), to 6 places
  std::string tooth;             ///< kind of tooth, one word: carbide, chrome ...; empty = not said
  std::string text;
  bool operator==(const Setup&) const = default;
};

/// `log` and `in`. With a measure: at most one tag. Without: the tags (ranges as written) of known logs, and of one log
/// the defects found in sawing, which come on top of those it was received with.
struct LogLine {
  bool received = false;          ///< `in`: received, not sawn
  std::vector<std::string> tags;  ///< as written: "T13", or a range "T13-T22"
  std::optional<scaling::LogMeasure> measure;
  std::vector<scaling::Defect> defects;
  bool left_on_mill = false;  ///< half-sawn at quitting time; counts on the day it is finished
  std::string origin;         ///< `in` only
  bool operator==(const LogLine&) const = default;
};

enum class Sense { sawn, less, resaw };  ///< less and resaw count against the tally

struct Tally {
  Sense sense = Sense::sawn;
  Size size;
  std::string grade;  ///< empty = the grade in force
  struct Item {
    std::int64_t pieces = 0;
    Length length;
    bool operator==(const Item&) const = default;
  };
  std::vector<Item> items;  ///< never empty
  std::string reason;       ///< `less` only
  bool operator==(const Tally&) const = default;
};

struct LinealTally {
  Sense sense = Sense::sawn;
  Size size;
  std::string grade;
  Length total;  ///< all pieces end to end
  std::string reason;
  bool operator==(const LinealTally&) const = default;
};

struct RandomTally {
  Sense sense = Sense::sawn;
  Length thickness;
  bool quarters = false;  ///< written 5/4
  std::string grade;
  struct Board {
    Length width;
    Length length;
    std::int64_t pieces = 1;
    bool operator==(const Board&) const = default;
  };
  std::vector<Board> boards;  ///< never empty
  std::string reason;
  bool operator==(const RandomTally&) const = default;
};

enum class SoldBy { board_foot, piece, lineal_foot, lineal_metre };

/// Own stock sold at the yard, of the species in force: pieces, or a length of pieces not counted, or a bundle.
struct Sold {
  std::string buyer;  ///< a customer's code or a name; `cash` for a stranger
  Size size;
  std::string grade;               ///< empty = the grade in force
  std::vector<Tally::Item> items;  ///< pieces; empty for a length or a bundle
  std::optional<Length> lineal;
  std::string bundle;              ///< the tag of a bundle sold whole: then no size and no grade
  std::optional<Rational> price;   ///< absent = by the price list
  SoldBy by = SoldBy::board_foot;  ///< what the price is for; a bundle's is for all of it
  bool operator==(const Sold&) const = default;
};

/// Work on the teeth of a saw, and the last two on its blade.
enum class ToothAction { touched_up, replaced, full_set, shanks, swaged, tensioned, changed };
/// Work on a saw: a `teeth` line, or a `blade` line when it is on the blade itself.
struct Teeth {
  std::string saw;  ///< head, edger, third, or a name from the mill file
  ToothAction action = ToothAction::touched_up;
  std::optional<int> count;  ///< of teeth; absent = not written, and always for the blade
  std::string cause;         ///< one word or empty: metal, wear, grit, rot, ...
  std::string log;           ///< the tag of the log, or empty
  std::string text;
  std::string job;
  bool operator==(const Teeth&) const = default;
};

struct Thick {
  Size size;
  std::vector<std::int64_t>
      readings;  ///< thousandths of an inch (metric size: hundredths of a mm); at least 2
  bool operator==(const Thick&) const = default;
};

struct Charge {
  std::string job;
  std::string name;
  Rational quantity = 1;
  std::string text;
  bool operator==(const Charge&) const = default;
};

struct Meter {
  std::int64_t tenths = 0;
  bool operator==(const Meter&) const = default;
};  ///< engine hours

enum class FuelUnit { gallon, litre };
struct Fuel {
  Rational quantity;
  FuelUnit unit = FuelUnit::gallon;
  std::optional<std::int64_t> price_minor;  ///< paid for all of it, minor units
  bool operator==(const Fuel&) const = default;
};

enum class DistanceUnit { mile, kilometre };
struct Move {
  std::string from;
  std::string to;
  Rational distance;
  DistanceUnit unit = DistanceUnit::mile;
  int minutes = 0;  ///< take-down, road and set-up together; 0 = not written
  std::string job;
  bool operator==(const Move&) const = default;
};

/// Slabs, dust and the like taken away, as they lie: stacked or loose.
struct Residue {
  std::string kind;  ///< slabs, edgings, trim, chips, bark, shavings, sawdust
  Rational quantity;
  measure::HeapUnit unit = measure::HeapUnit::cubic_foot;
  std::string text;
  bool operator==(const Residue&) const = default;
};

struct Note {
  std::string text;
  bool operator==(const Note&) const = default;
};
struct Remark {
  bool operator==(const Remark&) const = default;
};  ///< a line with nothing but a `;` remark, or empty

using Fact =
    std::variant<Remark, Site, Job, Species, Grade, Bundle, Crew, Sawing, Stop, Setup, LogLine, Tally,
                 LinealTally, RandomTally, Sold, Teeth, Thick, Charge, Meter, Fuel, Move, Residue, Note>;

struct Line {
  Fact fact;
  std::string remark;  ///< what stood after `;`, trimmed
  Place place;         ///< where it stood; not part of equality
  bool operator==(const Line& other) const { return fact == other.fact && remark == other.remark; }
};

struct Sheet {
  Day day;
  int shift = 1;
  std::string remark;       ///< after `;` on the sheet line
  std::vector<Line> lines;  ///< all but the sheet line itself, in order
  bool operator==(const Sheet&) const = default;
};

}  // namespace kerfbook::sheet
