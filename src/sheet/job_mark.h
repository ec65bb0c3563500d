// job_mark.h -- `, job CODE` at the end of a line that may name its own job. Internal to this room.
#pragma once

#include <cstdint>
#include <string>

#include "sheet/fold.h"

namespace kerfbook::sheet {

/// Whether a kind of line may end so. Where text may stand before it the comma is needed.
enum class NamesJob : std::uint8_t { no, yes, after_comma };

/// Takes the mark off the line's words, which must not be joined yet, and gives the code as typed (`own` in small
/// letters). Empty when the line does not end so: the word job elsewhere is part of the text, as is everything then.
/// `head` words are not looked at.
std::string take_job_mark(FoldedLine& line, std::size_t head, NamesJob how);

/// A job's code as it is kept: `own` is written in small letters, all others as typed.
std::string job_code(const std::string& typed);

}  // namespace kerfbook::sheet
