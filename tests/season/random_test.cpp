// Seasons made up from a seed, posted and asked for in process, against the reckoning. A failure names its seed.
#include <doctest/doctest.h>

#include <cstdlib>

#include "asked.h"
#include "random_season.h"

using namespace reckoning;

namespace {

constexpr std::uint64_t kSeasons = 50;

void check(const std::vector<std::string>& differences) {
  for (const auto& one : differences) FAIL_CHECK(one);
}

/// A book with a season posted, and the reckoning of the same sheets.
class Posted {
 public:
  explicit Posted(const Season& season) : desk("2028-12-31"), mill_(read_mill(season_mill())) {
    desk.done({"new", desk.path("mill.book"), "--mill", desk.file("mill.toml", season_mill())});
    std::vector<std::string> words{"post"};
    for (const auto& text : season.sheets) words.push_back(add(text));
    desk.done(words);
  }
  void correct(const std::string& text) { desk.done({"post", add(text), "--why", "counted again"}); }
  [[nodiscard]] Reckoning reckoned() const { return {mill_, sheets_}; }
  [[nodiscard]] Period whole() const { return {sheets_.front().day, sheets_.back().day}; }

  Desk desk;

 private:
  std::string add(const std::string& text) {
    Sheet sheet = read_sheet(text);
    const std::string name = text_of(sheet.day) + "-" + std::to_string(sheet.shift) + ".sheet";
    put(sheets_, std::move(sheet));
    return desk.file(name, text);
  }
  Mill mill_;
  std::vector<Sheet> sheets_;
};

}  // namespace

TEST_CASE("every report of a random season's period says what the reckoning says") {
  const char* only = std::getenv("KERFBOOK_SEED");
  for (std::uint64_t seed = 1; seed <= kSeasons; ++seed) {
    if (only != nullptr && std::to_string(seed) != only) continue;
    CAPTURE(seed);
    const Season season = season_of(seed);
    Posted posted(season);
    for (const auto& text : season.corrections) posted.correct(text);
    check(reports_that_differ(posted.desk, posted.reckoned(), posted.whole()));
  }
}
