// part.h -- what several built-in reports share stands once, in reports/parts/NAME.sql, and is put in where a report says
//
//   -- part:    production-by
//   --   step = week                     one line for each word that stands in curly brackets in the part
//
// A report a person sees (`report NAME --sql`) has its parts in it, so that it can be copied whole.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace kerfbook::report {

/// The text of the part of that name; empty when there is none.
using PartNamed = std::function<std::string_view(std::string_view name)>;

/// `text` with its parts put in. Throws logic_error for a part nobody has, a {word} that is not given, and a word that is
/// given and stands nowhere: built-in reports are whole or the tests fail.
std::string with_parts(std::string_view text, const PartNamed& part_named);

}  // namespace kerfbook::report
