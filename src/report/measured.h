// measured.h -- the exact figures of a number column that SQL gives, in the unit it is shown in. Inside the room.
#pragma once

#include "report/figures.h"
#include "report/raw_view.h"
#include "report/table.h"

namespace kerfbook::report {

/// Column `c` of the header, `column`; it is no ratio. Its total leaves struck rows out, and is absent where rows have
/// several units. Throws SqlFault for a text where a number is wanted.
Figures measured(const RawView& raw, std::size_t c, const ColumnSpec& column, const Struck& struck,
                 const Setting& setting);

}  // namespace kerfbook::report
