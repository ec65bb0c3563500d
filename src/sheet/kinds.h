// kinds.h -- the table of line kinds: the word a line begins with, and the function that reads the rest of it.
// Internal to this room, but for what help pages show through read.h.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "sheet/job_mark.h"
#include "sheet/line_reader.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// Reads a line after its first word. nullopt once it has complained.
using ReadLine = std::optional<Fact> (*)(LineReader& line);

struct LineKind {
  std::string_view word;  ///< empty for a tally line, which begins with its size
  ReadLine read;          ///< null for the `sheet` line, which read.cpp reads itself
  Joining joining;
  std::string_view meaning;
  std::span<const LineForm> forms;  ///< every way it is written, each with a line that is right
  std::string_view also = {};       ///< an older word for it: read, never written
  NamesJob names_job = NamesJob::no;

  [[nodiscard]] std::string_view example() const { return forms.front().example; }
};

/// Every kind, in the order help tells of them; none is missing.
std::span<const LineKind> line_kinds();
/// The kind a line of this first word is of, `sheet` too; nullptr when it is of none.
const LineKind* find_kind(std::string_view word);
const LineKind& tally_kind();

// read_context.cpp
std::optional<Fact> read_site(LineReader& line);
std::optional<Fact> read_job(LineReader& line);
std::optional<Fact> read_species(LineReader& line);
std::optional<Fact> read_grade(LineReader& line);
std::optional<Fact> read_bundle(LineReader& line);
std::optional<Fact> read_note(LineReader& line);

// read_time.cpp
std::optional<Fact> read_crew(LineReader& line);
std::optional<Fact> read_sawing(LineReader& line);
std::optional<Fact> read_stop(LineReader& line);

// read_log.cpp
std::optional<Fact> read_log(LineReader& line);
std::optional<Fact> read_in(LineReader& line);

// read_tally.cpp: read_sawn is asked with no word taken, for a line that begins with a size
std::optional<Fact> read_sawn(LineReader& line);
std::optional<Fact> read_less(LineReader& line);
std::optional<Fact> read_resaw(LineReader& line);
std::optional<Fact> read_sold(LineReader& line);
std::optional<Fact> read_thick(LineReader& line);

// read_setup.cpp
std::optional<Fact> read_setup(LineReader& line);

// read_work.cpp
std::optional<Fact> read_teeth(LineReader& line);
std::optional<Fact> read_blade(LineReader& line);
std::optional<Fact> read_charge(LineReader& line);
std::optional<Fact> read_meter(LineReader& line);
std::optional<Fact> read_fuel(LineReader& line);
std::optional<Fact> read_move(LineReader& line);

// read_residue.cpp
std::optional<Fact> read_residue(LineReader& line);

}  // namespace kerfbook::sheet
