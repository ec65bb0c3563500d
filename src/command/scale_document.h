// scale_document.h -- what `kerfbook scale` answers, as documents for any renderer: logs under one rule or several, the
// size table of a rule, the list of rules.
#pragma once

#include <string>
#include <vector>

#include "command/scale_logs.h"
#include "render/document.h"
#include "scaling/practice.h"

namespace kerfbook::command {

/// One row a log and practice. Columns: spec, rule, gross, deduction, net, unit; before them tag when a log has one;
/// after them defect, segments and cull, each only where it says something. `lenient`: a practice that needs a reading
/// which was not taken gives a row without figures and a note; else Refused with every such log.
render::Document scaled_logs(const std::vector<AskedLog>& logs,
                             const std::vector<scaling::Practice>& practices, bool lenient);

/// Diameters down, lengths across: the sound scale of a log of that small end (middle, for rules of the middle).
/// Refused for a rule that needs both ends.
render::Document size_table(const scaling::Practice& practice, const std::vector<scaling::Length>& diameters,
                            const std::vector<scaling::Length>& lengths);

/// These practices told wholly: formula, source, range, conventions, choices made where publications differ.
render::Document description_of(const std::vector<scaling::Practice>& practices);

/// Every rule and built-in practice, with its source.
render::Document list_of_rules();

}  // namespace kerfbook::command
