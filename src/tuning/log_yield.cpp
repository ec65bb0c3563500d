#include "tuning/log_yield.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

namespace kerfbook::tuning {

namespace {

LogYield yield_of(const Pattern& pattern) {
  return {pattern.bf_counts, pattern.worth, pattern.log_in3, pattern.lumber_in3, pattern.sawdust_in3};
}

/// Logs are handed out one by one, for a large one takes longer. What one thread throws is thrown to the caller.
void saw_all(const SawingModel& model, const std::vector<SawLog>& logs, unsigned threads,
             std::vector<LogYield>& yields) {
  std::atomic<std::size_t> next = 0;
  std::exception_ptr failure;
  std::mutex one_at_a_time;
  const auto work = [&] {
    try {
      for (std::size_t i = next++; i < logs.size(); i = next++) yields[i] = yield_of(model.best(logs[i]));
    } catch (...) {
      const std::lock_guard lock(one_at_a_time);
      failure = std::current_exception();
    }
  };
  {
    std::vector<std::jthread> others;
    for (unsigned i = 1; i < threads && i < logs.size(); ++i) others.emplace_back(work);
    work();
  }
  if (failure) std::rethrow_exception(failure);
}

}  // namespace

LogYield& LogYield::operator+=(const LogYield& other) {
  bf_counts += other.bf_counts;
  worth += other.worth;
  log_in3 += other.log_in3;
  lumber_in3 += other.lumber_in3;
  sawdust_in3 += other.sawdust_in3;
  return *this;
}

double LogYield::bf() const {
  return static_cast<double>(bf_counts) / static_cast<double>(measure::kCountsPerBoardFoot);
}

SawLog classed(const SawLog& log, Fine diameter_step, Fine length_step) {
  const auto down = [](Fine length, Fine step) { return step > 0 ? length - length % step : length; };
  return {down(log.small_end, diameter_step), down(log.large_end, diameter_step),
          down(log.length - log.trim, length_step) + log.trim, log.trim};
}

std::vector<LogYield> yields_of(const SawingModel& model, const std::vector<SawLog>& logs, unsigned threads) {
  std::vector<SawLog> kinds = logs;
  std::sort(kinds.begin(), kinds.end());
  kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
  std::vector<LogYield> of_kind(kinds.size());
  saw_all(model, kinds, threads, of_kind);
  std::vector<LogYield> yields;
  yields.reserve(logs.size());
  for (const auto& log : logs) {
    const auto kind = std::lower_bound(kinds.begin(), kinds.end(), log) - kinds.begin();
    yields.push_back(of_kind[static_cast<std::size_t>(kind)]);
  }
  return yields;
}

LogYield sum_of(const std::vector<LogYield>& yields) {
  LogYield sum;
  for (const auto& yield : yields) sum += yield;
  return sum;
}

}  // namespace kerfbook::tuning
