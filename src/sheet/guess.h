// guess.h -- what a slip was most likely meant as, for the part of a complaint that says what would be right. Only ever
// shown, never taken: a guess is for the person to confirm by typing it. Internal to this room.
#pragma once

#include <string>
#include <string_view>

namespace kerfbook::sheet {

/// `5/14/2026`, `2026-5-14`, `20260514`, `2026-14-05` are 2026-05-14; of `5/6/2026` both readings; else empty.
std::string likely_day(std::string_view typed);
/// A clock time: `7.15`, `715`, `7:15am`, `7` are 7:15 and 7:00; else empty.
std::string likely_clock(std::string_view typed);
/// A span or a length of time: `7.15-10.20`, `7-9`, `0,6`, `90'`, `1:30h`; else empty.
std::string likely_time(std::string_view typed);
/// `15,5` with the comma made a point, when it stands between digits; else empty.
std::string with_point(std::string_view typed);

/// The word of the language for one that is not: `date` is sheet, `hours` is crew; else empty.
std::string_view word_meant(std::string_view typed);

}  // namespace kerfbook::sheet
