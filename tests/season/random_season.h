// random_season.h -- a season made up from a seed: days with and without sawing, one job and several on a sheet, lines
// above and below them, inch and metric measures, lineal lines, moves, shifts, weeks and months with nothing.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace reckoning {

struct Season {
  std::vector<std::string> sheets;       ///< as first posted, in the order of their days
  std::vector<std::string> corrections;  ///< of some of them, to be posted after all
};

/// The same season for the same seed, on every machine.
Season season_of(std::uint64_t seed);

/// The mill file all these seasons are posted under.
std::string season_mill();

}  // namespace reckoning
