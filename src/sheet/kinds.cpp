#include "sheet/kinds.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace kerfbook::sheet {
namespace {

template <std::size_t N>
using Forms = std::array<LineForm, N>;

constexpr Forms<1> kSheet{{{"DAY [shift N]", "sheet 2026-05-05"}}};
constexpr Forms<1> kSite{{{"PLACE", "site Tervane farm"}}};
constexpr Forms<1> kCrew{{{"NAME TIME [WORK], NAME TIME ...", "crew Quill 9, Bess 8:30"}}};
constexpr Forms<1> kSawing{{{"FROM-TO ... [, job CODE]", "sawing 7:15-10:20 10:56-13:30"}}};
constexpr Forms<1> kStop{
    {{"TIME CAUSE [TEXT] [, charge] [, job CODE]", "stop 0:36 metal staple in T17, charge"}}};
constexpr Forms<1> kJob{{{"CODE", "job TER"}}};
constexpr Forms<1> kSpecies{{{"CODE", "species DF"}}};
constexpr Forms<1> kGrade{{{"GRADE", "grade No2"}}};
constexpr Forms<1> kBundle{{{"TAG", "bundle B12"}}};
constexpr Forms<2> kSetup{{{"NAME [kerf K] [over O] [TEXT]", "setup 2 kerf 0.26 over 0.05"},
                           {"NAME [edger K] [third K] [lead L] [feed F] [zero Z] [tooth KIND]",
                            "setup 2 edger 0.24 lead 1/16 feed 55 zero -1/32 tooth chrome"}}};
constexpr Forms<3> kLog{
    {{"[TAG] DIAMETERxLENGTH [ENDS] [defect D [WHY]] ...", "log T13 15x12 defect 15bf rot"},
     {"TAG ... [left on the mill]", "log T14-T22"},
     {"TAG defect D [WHY]", "log T23 defect 10% shake"}}};
constexpr Forms<1> kIn{
    {{"[TAG] DIAMETERxLENGTH ... [from ORIGIN]", "in T24 12/13-15x16'6\" from the creek lot"}}};
constexpr Forms<4> kTally{{{"SIZE [GRADE] PIECES/LENGTH ...", "2x6 sel 5/10 1/12 4/16"},
                           {"SIZExLENGTH [GRADE] PIECES", "2x8x16 4"},
                           {"SIZE [GRADE] LENGTHlf", "1x3 212lf"},
                           {"THICKNESS rw [GRADE] WIDTHxLENGTH[*PIECES] ...", "5/4 rw fas 7-1/2x8 6x8*3"}}};
constexpr Forms<1> kLess{{{"(any tally) [WHY]", "less 2x6 1/16 split"}}};
constexpr Forms<1> kResaw{{{"(any tally)", "resaw 4x6 2/12"}}};
constexpr Forms<3> kSold{
    {{"BUYER SIZE [GRADE] PIECES/LENGTH ... [at PRICE [each]]", "sold cash 2x6 No2 6/16 at 1.05"},
     {"BUYER SIZE [GRADE] LENGTHlf [at PRICE [lf]]", "sold Ferrin 1x3 120lf at 0.40 lf"},
     {"BUYER bundle TAG [at PRICE]", "sold Ferrin bundle B7 at 240"}}};
constexpr Forms<1> kTeeth{
    {{"SAW WORK [COUNT] [CAUSE] [LOG] [TEXT] [, job CODE]", "teeth head replaced 3 metal T17"}}};
constexpr Forms<1> kBlade{{{"SAW WORK [CAUSE] [LOG] [TEXT] [, job CODE]", "blade head changed dull"}}};
constexpr Forms<1> kThick{{{"SIZE READING READING ...", "thick 2x6 2.02 2.00 1.98"}}};
constexpr Forms<1> kCharge{{{"JOB NAME [COUNT] [TEXT]", "charge TER metal-strike 1"}}};
constexpr Forms<1> kMeter{{{"HOURS", "meter 1854.6"}}};
constexpr Forms<1> kFuel{{{"QUANTITY gal|l [PRICE]", "fuel 7.3 gal"}}};
constexpr Forms<1> kMove{
    {{"PLACE to PLACE DISTANCE mi|km [TIME] [, job CODE]", "move Tervane farm to yard 46 mi 3:45"}}};
constexpr Forms<1> kResidue{{{"KIND QUANTITY ft3|yd3|m3|cord [TEXT]", "residue sawdust 2.5 yd3"}}};
constexpr Forms<1> kNote{{{"TEXT", "note rain after three"}}};

constexpr std::array kKinds{
    LineKind{"sheet", nullptr, Joining::none, "the day, before all else; shift 2 is a second sheet of it",
             kSheet},
    LineKind{"site", read_site, Joining::none, "where the mill stands, from here on", kSite},
    LineKind{"crew", read_crew, Joining::spans, "who worked how long, and at what if not at the mill", kCrew},
    LineKind{"sawing", read_sawing, Joining::spans, "from when to when the saw ran", kSawing, "run",
             NamesJob::yes},
    LineKind{"stop",
             read_stop,
             Joining::none,
             "time lost and why; with charge it is billed",
             kStop,
             {},
             NamesJob::after_comma},
    LineKind{"job", read_job, Joining::none,
             "whose the work is from here on, and all of it on a day with one job; job own is the mill's",
             kJob},
    LineKind{"species", read_species, Joining::none, "of logs and boards from here on", kSpecies},
    LineKind{"grade", read_grade, Joining::none, "of boards from here on; grade - is none again", kGrade},
    LineKind{"bundle", read_bundle, Joining::none, "boards from here on lie in it; bundle - is none again",
             kBundle},
    LineKind{"setup", read_setup, Joining::none,
             "how the saws are set from here on, also on later days: kerf of the head saw, over for what "
             "boards are "
             "cut above their size, kerfs of the other saws, feed in feet (metres) a minute",
             kSetup},
    LineKind{
        "log", read_log, Joining::sizes,
        "sawn, measured here or received before; left on the mill half-sawn, it counts when it is finished",
        kLog},
    LineKind{"in", read_in, Joining::sizes, "a log received, not sawn yet", kIn},
    LineKind{"", read_sawn, Joining::tally,
             "boards: by pieces of a length, by one length, by length alone, or of random width", kTally},
    LineKind{"less", read_less, Joining::tally, "taken off the tally", kLess},
    LineKind{"resaw", read_resaw, Joining::tally, "taken back to be sawn again", kResaw},
    LineKind{
        "sold", read_sold, Joining::tally,
        "own lumber, in the yard; PRICE is for a board foot, with each for a piece, with lf for a foot of "
        "length, for a bundle for all of it",
        kSold},
    LineKind{"teeth",
             read_teeth,
             Joining::none,
             "touched-up or sharpened, replaced, full-set, shanks or swaged; - stands for no CAUSE or LOG",
             kTeeth,
             {},
             NamesJob::after_comma},
    LineKind{"blade",
             read_blade,
             Joining::none,
             "the blade itself, changed or tensioned",
             kBlade,
             {},
             NamesJob::after_comma},
    LineKind{"thick", read_thick, Joining::tally, "caliper readings along one board", kThick},
    LineKind{"charge", read_charge, Joining::none, "a charge of the mill file, as often as it came", kCharge},
    LineKind{"meter", read_meter, Joining::none, "what the hour meter reads", kMeter},
    LineKind{"fuel", read_fuel, Joining::none, "filled in, and what was paid for all of it", kFuel},
    LineKind{"move",
             read_move,
             Joining::none,
             "the mill went there: take-down, road and set-up together",
             kMove,
             {},
             NamesJob::yes},
    LineKind{"residue", read_residue, Joining::none,
             "slabs, edgings, trim, chips, bark, shavings or sawdust taken away, as they lie", kResidue},
    LineKind{"note", read_note, Joining::none, "what else is to be remembered", kNote},
};

}  // namespace

std::span<const LineKind> line_kinds() {
  return kKinds;
}

const LineKind* find_kind(std::string_view word) {
  for (const LineKind& kind : kKinds) {
    if (kind.word.empty()) continue;
    if (same_word(kind.word, word) || (!kind.also.empty() && same_word(kind.also, word))) return &kind;
  }
  return nullptr;
}

const LineKind& tally_kind() {
  return *std::find_if(kKinds.begin(), kKinds.end(), [](const LineKind& kind) { return kind.word.empty(); });
}

}  // namespace kerfbook::sheet
