// under.h -- what a sheet puts under each job and place, added up: so that the order of its lines can be looked over.
#pragma once

#include <string>
#include <vector>

#include "measure/size.h"
#include "sheet/facts.h"

namespace kerfbook::book {

/// All of a sheet that is one job's at one place.
struct Under {
  std::string job;         ///< empty = no job's
  std::string site;        ///< empty = not said
  std::vector<int> lines;  ///< numbers in the sheet, rising, each once
  int sawing_minutes = 0;
  std::int64_t logs = 0;    ///< sawn
  std::int64_t pieces = 0;  ///< less and resaw taken off; lineal lines count none
  measure::Volume lumber;   ///< as the book counts it
  int stops = 0;            ///< that are charged to nobody
  int charges = 0;          ///< stops marked to be charged or for metal, teeth for metal, charge lines
  int moves = 0;
};

/// In the order they first appear. Lines that only say what holds, crew, meter, fuel, calipers and notes are not in it.
/// Throws std::overflow_error past what can be counted.
std::vector<Under> put_under(const sheet::Sheet& sheet, measure::System book);

/// "3-7, 9, 12-14"
std::string line_ranges(const std::vector<int>& lines);

}  // namespace kerfbook::book
