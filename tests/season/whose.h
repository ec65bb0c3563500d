// whose.h -- which job a line of a sheet belongs to, and where it was done, once the whole sheet is read.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>

#include "days.h"

namespace reckoning {

/// What the lines of a sheet are, by their numbers.
struct Lines {
  std::map<int, std::string> kinds;                           ///< the first word
  std::map<int, std::string> jobs;                            ///< of `job` lines
  std::map<int, std::pair<std::string, std::string>> places;  ///< from and to, of `site` and `move` lines
  std::set<int> named;                                        ///< lines that name their job at the end
};

/// On a sheet read from top to bottom: gives what stands above the only job to it, takes what stands in a heading from
/// the job above, and says where what stands above the first place was done.
void say_whose(Sheet& sheet, const Lines& lines);

}  // namespace reckoning
