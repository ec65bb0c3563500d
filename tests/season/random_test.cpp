// Seasons made up from a seed, posted and asked for in process, against the reckoning. A failure names its seed.
#include <doctest/doctest.h>

#include <cstdlib>

#include "asked.h"
#include "posted.h"
#include "random_season.h"

using namespace reckoning;

namespace {

constexpr std::uint64_t kSeasons = 50;

void check(const std::vector<std::string>& differences) {
  for (const auto& one : differences) FAIL_CHECK(one);
}

}  // namespace

TEST_CASE("every report of a random season's period says what the reckoning says") {
  const char* only = std::getenv("KERFBOOK_SEED");
  for (std::uint64_t seed = 1; seed <= kSeasons; ++seed) {
    if (only != nullptr && std::to_string(seed) != only) continue;
    CAPTURE(seed);
    const Season season = season_of(seed);
    Posted posted(season_mill(), "2028-12-31");
    posted.post(season.sheets);
    const auto check_drafts = [&] {
      for (const char* job : {"SILL", "TARN", "MOOR", "PEG"}) check(posted.draft_differs(job));
    };
    check_drafts();
    for (const auto& text : season.corrections) posted.correct(text, "counted again");
    if (!season.corrections.empty()) check_drafts();
    check(reports_that_differ(posted.desk(), posted.reckoned(), posted.whole()));
  }
}
