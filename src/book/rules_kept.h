// rules_kept.h -- the log rules of a sheet that is posted again: those it was posted under, unless asked otherwise.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "book/core.h"
#include "sheet/sheet.h"

namespace kerfbook::book {

struct RulesKept {
  bool keeps = false;      ///< the sheet keeps the rules of an earlier mill file than the one in force
  bool differ = false;     ///< ... and by those of the one in force some log of it would be scaled otherwise
  std::int64_t entry = 0;  ///< the mill file whose rules it has now
  std::vector<Diagnostic> found;  ///< what a person is to know of it
};

/// Of a sheet that is not in the book yet: nothing kept. `rescale`: asked to be scaled anew by the mill file in force.
RulesKept rules_kept(Core& core, const sheet::Sheet& sheet, bool rescale);

}  // namespace kerfbook::book
