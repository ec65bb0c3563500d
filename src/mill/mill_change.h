// mill_change.h -- what a new text of the mill file says otherwise than the one before it. What only adds (a customer, a
// job, a price, a species, a size) needs no reason; what changes or takes away what was there does.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace kerfbook::book {

struct MillChange {
  std::vector<std::string> added;    ///< in the order of the new text: "customer ABC", "species LA"
  std::vector<std::string> changed;  ///< "[scale] rule (line 12)", "[[job]] ABC is taken out"
};

/// Both are TOML. Remarks, blanks and the order of keys and of [[customer]], [[job]], [[saw]] say nothing; an empty text
/// is as good as none. Only whole entries are additions: a [[table]], a word of [species] or [grade], an item of a list
/// that stands by itself (sites, sizes, a cut list), and what is only printed (address, phone, note). A key said for the
/// first time changes what was taken for granted without it.
MillChange mill_change(std::string_view before, std::string_view after);

/// "customer ABC, job ABC and 3 more".
std::string listed(const std::vector<std::string>& things);

}  // namespace kerfbook::book
