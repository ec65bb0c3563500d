// known.h -- what the book can tell the sheet's checker, read for one sheet without reading whole tables of lines.
#pragma once

#include "book/core.h"
#include "sheet/check.h"

namespace kerfbook::book {

/// For one sheet: the words and lengths met, the deck as it stood before the sheet, tags of it sawn on other days, and the
/// most lumber that logs have given before it.
sheet::Known known_for(Core& core, const sheet::Sheet& sheet);

}  // namespace kerfbook::book
