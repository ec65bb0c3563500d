// measure_test.cpp -- `kerfbook measure`: what is taken off a tally is taken off its board feet.
#include <doctest/doctest.h>

#include <sstream>

#include "command/command.h"

using namespace kerfbook;

namespace {

std::string measured(const std::vector<std::string>& lines) {
  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  command::Context context{.in = in,
                           .out = out,
                           .err = err,
                           .today = [] { return make_day(2026, 5, 9); },
                           .time_of_day = [] { return std::string("20:00:00"); },
                           .environment = [](const std::string&) { return std::optional<std::string>(); }};
  std::vector<std::string> words{"measure", "--as", "csv"};
  words.insert(words.end(), lines.begin(), lines.end());
  command::run(words, context);
  return out.str() + err.str();
}

}  // namespace

TEST_CASE("what `less` and `resaw` take off is taken off the board feet") {
  const std::string answer = measured({"2x6 10/10", "less 2x6 3/10", "resaw 2x6 30lf"});
  CHECK(answer.find("2x6,10 ft,10,100") != std::string::npos);
  CHECK(answer.find("2x6,10 ft,-3,-30") != std::string::npos);
  CHECK(answer.find("2x6,30 ft,,-30") != std::string::npos);
}
