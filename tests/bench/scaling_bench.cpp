// scaling_bench.cpp -- a million logs scaled under each rule, against a bare loop of the same formula in double on the
// same logs in the same run. The bare loop has no practice, no units, no segments and no exact rounding.
#include <fmt/core.h>

#include <cmath>
#include <random>
#include <vector>

#include "mill_years.h"
#include "scaling/scaler.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::scaling;
using bench::seconds;

constexpr std::size_t kLogs = 1'000'000;

struct Bare {
  double diameter;
  double length;
};

std::vector<LogMeasure> make_logs(std::vector<Bare>& bare) {
  std::mt19937 random(7);
  std::uniform_int_distribution<std::int64_t> inches(6, 40);
  std::uniform_int_distribution<std::int64_t> feet(8, 20);
  std::vector<LogMeasure> logs(kLogs);
  bare.reserve(kLogs);
  for (auto& log : logs) {
    log.small = {measure::inches(inches(random))};
    log.large = {measure::inches(log.small[0].count / measure::kPerInch + 2)};
    log.mid = {measure::inches(log.small[0].count / measure::kPerInch + 1)};
    log.length = measure::feet(feet(random));
    bare.push_back(
        {static_cast<double>(log.small[0].count) / 64, static_cast<double>(log.length.count) / 768});
  }
  return logs;
}

/// The bare International 1/4-inch: the section formula and the nearest 5.
double bare_international(const Bare& log) {
  double d = log.diameter;
  double sum = 0;
  for (double left = log.length; left > 0; left -= 4, d += 0.5) {
    sum += (0.22 * d * d - 0.71 * d) * std::fmin(left, 4) / 4;
  }
  return std::floor(0.905 * sum / 5 + 0.5) * 5;
}

double bare_doyle(const Bare& log) {
  return (log.diameter - 4) * (log.diameter - 4) / 16 * log.length;
}

double bare_loop(double (*formula)(const Bare&), const std::vector<Bare>& logs) {
  double sum = 0;
  const double took = seconds([&] {
    for (const auto& log : logs) sum += formula(log);
  });
  if (sum < 0) fmt::print("impossible\n");  // keeps the loop
  return took;
}

void run(const char* rule, const std::vector<LogMeasure>& logs, double bare) {
  const Scaler scaler = *Scaler::make(*find_practice(rule));
  const std::vector<Defect> sound;
  std::int64_t net = 0;
  const double figures = seconds([&] {
    for (const auto& log : logs) net += scaler.amounts(log, sound)->net;
  });
  std::int64_t again = 0;
  const double words = seconds([&] {
    for (const auto& log : logs) again += scaler.scale(log, sound)->net;
  });
  fmt::print(
      "{:24} figures {:6.3f} s  {:6.1f} x bare   with words {:6.3f} s  {:6.1f} x bare   net {} "
      "millionths{}\n",
      rule, figures, figures / bare, words, words / bare, net, net == again ? "" : "  DIFFERENT");
}

}  // namespace

int main() {
  std::vector<Bare> bare;
  const auto logs = make_logs(bare);
  const double international = bare_loop(bare_international, bare);
  const double doyle = bare_loop(bare_doyle, bare);
  fmt::print(
      "{} logs; bare loop: International 1/4 {:.4f} s, Doyle {:.4f} s; Doyle is set against its own, all "
      "others "
      "against International 1/4\n",
      kLogs, international, doyle);
  run("international-quarter", logs, international);
  run("doyle", logs, doyle);
  for (const char* rule :
       {"scribner-c", "scribner-formula", "vermont", "smalian", "newton", "hoppus", "jas"}) {
    run(rule, logs, international);
  }
  return 0;
}
