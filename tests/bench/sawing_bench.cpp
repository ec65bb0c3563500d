// sawing_bench.cpp -- the best patterns of 55,000 logs on two threads, against the ten seconds they may take.
#include <fmt/core.h>

#include <ctime>
#include <random>
#include <set>

#include "mill_years.h"
#include "tuning/log_yield.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::tuning;
using bench::seconds;

constexpr std::size_t kLogs = 55'000;
constexpr double kAllowed = 10;  ///< seconds

SawMill mill() {
  SawMill made;
  made.head_kerf = fine_mils(280);
  made.edger_kerf = fine_mils(250);
  const auto add = [&](std::int64_t thickness, std::int64_t width) {
    SawProduct product;
    product.nominal = {measure::inches(thickness), measure::inches(width)};
    product.thickness = thickness * kFineInch + fine_mils(50);
    product.width = width * kFineInch + fine_mils(50);
    for (const std::int64_t feet : {8, 10, 12, 14, 16, 18, 20})
      product.lengths.push_back(measure::feet(feet));
    made.products.push_back(std::move(product));
  };
  for (const std::int64_t thickness : {1, 2})
    for (const std::int64_t width : {4, 6, 8, 10, 12}) add(thickness, width);
  add(4, 4);
  add(4, 6);
  return made;
}

/// Small ends 6 to 36 in to the half inch, most of them small; 8 to 20 ft; three tapers.
std::vector<SawLog> logs_of(Fine step) {
  std::mt19937 random(11);
  std::gamma_distribution<double> over(3, 2.6);
  std::uniform_int_distribution<Fine> feet(4, 10);
  std::uniform_int_distribution<Fine> taper(2, 4);
  std::vector<SawLog> logs;
  while (logs.size() < kLogs) {
    const Fine small = static_cast<Fine>((6 + over(random)) * kFineInch) / step * step;
    if (small > 36 * kFineInch) continue;
    const Fine length = 2 * feet(random) * kFineFoot;
    logs.push_back({small, small + taper(random) * length / kFineFoot * kFineInch / 24,
                    length + 4 * kFineInch, 4 * kFineInch});
  }
  return logs;
}

void run(const char* name, const SawMill& made, Fine step) {
  const auto logs = logs_of(step);
  const std::set<SawLog> kinds(logs.begin(), logs.end());
  LogYield sum;
  const std::clock_t before = std::clock();
  const double took = seconds([&] { sum = sum_of(yields_of(SawingModel(made), logs, 2)); });
  const double worked = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
  fmt::print("{:<44}{:>6} kinds{:>7.2f} s ({:.2f} s of work)  {:.2f} of what is allowed  {:.0f} bf\n", name,
             kinds.size(), took, worked, took / kAllowed, sum.bf());
}

}  // namespace

int main() {
  SawMill made = mill();
  run("55,000 logs, half inches, layers by thickness", made, kFineInch / 2);
  run("55,000 logs, quarter inches, by thickness", made, kFineInch / 4);
  made.layers = LayersBy::width;
  run("55,000 logs, half inches, layers by width", made, kFineInch / 2);
  return 0;
}
