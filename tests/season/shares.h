// shares.h -- lumber sawn on halves divided between the owner of the logs and the mill, to the board.
#pragma once

#include <vector>

#include "reckoning.h"

namespace reckoning {

/// So many boards of one kind, and which side has them.
struct Divided {
  Boards boards;  ///< pieces: all of the kind
  std::int64_t to_customer = 0;
  std::int64_t to_mill = 0;
};

/// By size line, on halves: each side gets its whole boards of every line; then the odd boards are dealt from the largest
/// down, each to the side that is behind in board feet, the customer first.
std::vector<Divided> divided_on_halves(const std::string& job, const std::vector<Sheet>& sheets);

/// The stock report after the job's lumber was divided on that day, and its customer's part fetched or not.
std::vector<Table> stock_after(const Reckoning& reckoned, const Period& period, const std::string& job,
                               const std::vector<Divided>& division, bool fetched);

}  // namespace reckoning
