#include "sheet/kinds.h"

#include <array>

#include "base/text.h"

namespace kerfbook::sheet {
namespace {

constexpr std::array kKinds{
    LineKind{"site", read_site, Joining::none, "site Tervane farm"},
    LineKind{"crew", read_crew, Joining::spans, "crew Quill 9, Bess 8:30"},
    LineKind{"sawing", read_sawing, Joining::spans, "sawing 7:15-10:20 10:56-13:30", "run"},
    LineKind{"stop", read_stop, Joining::none, "stop 0:36 metal staple in T17, charge"},
    LineKind{"job", read_job, Joining::none, "job TER"},
    LineKind{"species", read_species, Joining::none, "species DF"},
    LineKind{"grade", read_grade, Joining::none, "grade No2"},
    LineKind{"bundle", read_bundle, Joining::none, "bundle B12"},
    LineKind{"setup", read_setup, Joining::none, "setup 2 kerf 0.25 over 0.05"},
    LineKind{"log", read_log, Joining::sizes, "log T13 15x12 defect 15bf rot"},
    LineKind{"in", read_in, Joining::sizes, "in T13 15x12 from the creek lot"},
    LineKind{"less", read_less, Joining::tally, "less 2x6 1/16 split"},
    LineKind{"resaw", read_resaw, Joining::tally, "resaw 4x6 2/12"},
    LineKind{"sold", read_sold, Joining::tally, "sold cash 2x6 No2 6/16 at 1.05"},
    LineKind{"teeth", read_teeth, Joining::none, "teeth head replaced 3 metal T17"},
    LineKind{"blade", read_blade, Joining::none, "blade head changed dull"},
    LineKind{"thick", read_thick, Joining::tally, "thick 2x6 2.02 2.00 1.98"},
    LineKind{"charge", read_charge, Joining::none, "charge TER metal-strike 1"},
    LineKind{"meter", read_meter, Joining::none, "meter 1854.6"},
    LineKind{"fuel", read_fuel, Joining::none, "fuel 7.3 gal"},
    LineKind{"move", read_move, Joining::none, "move Tervane farm to yard 46 mi 3:45"},
    LineKind{"note", read_note, Joining::none, "note rain after three"},
};

}  // namespace

std::span<const LineKind> line_kinds() {
  return kKinds;
}

const LineKind* find_kind(std::string_view word) {
  for (const LineKind& kind : kKinds) {
    if (same_word(kind.word, word) || (!kind.also.empty() && same_word(kind.also, word))) return &kind;
  }
  return nullptr;
}

}  // namespace kerfbook::sheet
