// tape.h -- inches of a log's diameter, girth or defect as a tape reads them: in fractions, or in tenths and hundredths.
// Never leaves the room; lengths, and lumber sizes, are read by measure/.
#pragma once

#include <cstdint>
#include <string>

#include "base/result.h"
#include "measure/length.h"

namespace kerfbook::scaling {

using measure::Length;

/// What measure::read_inches reads, and beyond it 15.3 or 15.27 to the nearest 1/64 in. A half and a whole inch are only
/// met by a figure that is one, so no practice rounds the 64ths otherwise than the figure typed.
Result<Length> read_tape(const std::string& text);

/// Sixteenths to the last place; of other 64ths the shortest decimal that reads back as them: 15.3 is written as read.
std::string write_tape(std::int64_t count);

/// A length along the log: feet and inches to the sixteenth, of other 64ths the shortest decimal of a foot that reads
/// back as them (16.4, see measure::read_feet); metric `4.8m`. `with_mark`: feet are never left without their mark.
std::string write_long_tape(Length length, bool with_mark);

}  // namespace kerfbook::scaling
