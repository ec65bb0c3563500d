// judge.h -- whether what a deed left, and what it said, is right after something went wrong in the midst of it.
#pragma once

#include <string>
#include <vector>

#include "fault/bench.h"

namespace kerfbook::tests {

enum class End {
  ended,
  disk_gone,
  broken_off
};  ///< by itself, and so but nothing could be cleared; killed, or the power cut

struct Verdict {
  bool done = false;  ///< what decides is as after; else as before
  bool told = false;  ///< something was said that could be held against it
  std::vector<std::string> wrong;
};

/// `ran.code` counts only of a deed that ended by itself.
Verdict judge(const Bench& bench, const Seen& seen, const Ran& ran, End end);
/// What is wrong with a deed done once more after it was broken off, and nothing went wrong this time.
std::vector<std::string> judge_again(const Bench& bench, const Seen& seen, const Ran& ran);

}  // namespace kerfbook::tests
