// outputs_check.h -- what must hold of every document in every form: the same figures, and sums that add up.
#pragma once

#include <map>
#include <string>

#include "render/document.h"

namespace kerfbook::render {

/// Renders a report in all forms, reads each back and checks that
/// - every form has the same rows, figures, struck lines and totals, and nothing where nothing is known: csv and json to
///   six decimals, what people read as the nearest figures;
/// - every printed sum is the sum of the lines printed with it, or a note says what these add to;
/// - in the workbook every sum is a formula over exactly its rows, and every formula gives the value stored beside it;
/// - every ratio, also a total's, is the one figure over the other.
/// `what` names the document in messages.
void check_forms(const Document& document, const std::string& what);

/// Every formula of these workbooks (name and bytes), worked out again by LibreOffice, gives the value stored beside it.
void check_recalculated(const std::map<std::string, std::string>& workbooks);

}  // namespace kerfbook::render
