// few_logs.h -- the one number under which logs are too few to tell set-ups apart by.
#pragma once

#include <cstddef>

namespace kerfbook::tuning {

/// In either of the two that are compared. Common practice, no source.
constexpr std::size_t kFewLogs = 50;

}  // namespace kerfbook::tuning
