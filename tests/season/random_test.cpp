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

TEST_CASE(
    "the reports and drafts of a random season say what the reckoning says, before and after corrections") {
  // KERFBOOK_SEED=7 asks that season for everything; else each is asked for a part, so that all come to their turn
  const char* only = std::getenv("KERFBOOK_SEED");
  for (std::uint64_t seed = 1; seed <= kSeasons; ++seed) {
    if (only != nullptr && std::to_string(seed) != only) continue;
    CAPTURE(seed);
    const Season season = season_of(seed);
    Posted posted(season_mill(), "2028-12-31");
    posted.post(season.sheets);
    const auto check_drafts = [&] {
      static const std::vector<std::string> kJobs{"SILL", "TARN", "MOOR", "PEG"};
      for (std::size_t i = 0; i < kJobs.size(); ++i)
        if (only != nullptr || (seed + i) % 3 == 0) check(posted.draft_differs(kJobs[i]));
    };
    check_drafts();
    for (const auto& text : season.corrections) posted.correct(text, "counted again");
    if (!season.corrections.empty()) check_drafts();
    check(posted.under_no_job_differs());
    const auto turn = only == nullptr ? std::optional(static_cast<int>(seed % 3)) : std::nullopt;
    check(reports_that_differ(posted.desk(), posted.reckoned(), posted.whole(), turn));
  }
}
