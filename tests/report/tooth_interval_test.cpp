// tooth_interval_test.cpp -- at what interval sharpening costs least, in the report of tooth life: on a made-up book whose ten
// sharpenings last 160 and 480 bf, worked out by hand.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "tables.h"
#include "tuning/change_interval.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::size_t kSaws = 0, kInterval = 2;
constexpr const char* kCrew = "[[cost]]\nname = \"Ama\"\nrate = 20.00\nper = \"crew-hour\"\n";
constexpr const char* kTooth = "[[cost]]\nname = \"Teeth\"\nrate = 2.50\nper = \"tooth\"\n";

/// Ten sharpenings by turns of 160 and 480 bf, each ended by two teeth put in for wear and a stop of half an hour, on days
/// of so many crew hours and four hours sawn.
std::vector<std::string> ten_worn(int crew_hours, const std::string& stop = "stop 0:30 teeth\n",
                                  int days = 10) {
  std::vector<std::string> sheets{"sheet 2026-04-01\nteeth head touched-up\n"};
  for (int i = 0; i < days; ++i) {
    sheets.push_back(fmt::format(
        "sheet 2026-04-{:02}\ncrew Ama {}\nsawing 8:00-12:00\n2x6 {}/16\n{}teeth head replaced 2 wear\n",
        i + 2, crew_hours, i % 2 == 0 ? 10 : 30, stop));
  }
  return sheets;
}

render::Document teeth_of(const std::string& mill, const std::vector<std::string>& sheets) {
  return answer(small_book(mill, sheets), "tooth-life");
}

std::string shown(const render::Document& document, std::initializer_list<const char*> columns) {
  std::string words;
  for (const char* column : columns)
    words += (words.empty() ? "" : " | ") + cell_of(document, column, 0, kInterval);
  return words;
}

}  // namespace

TEST_CASE("ten sharpenings of 160 and 480 bf cost least at 480 bf, to the cent as change_interval has it") {
  const auto document = teeth_of(std::string(kCrew) + kTooth, ten_worn(8));
  // By hand: two teeth are 5, half an hour of one hand 10, of sawing at 8 x 20 / 4 an hour 20: 15 by plan, 25 when dull.
  // At 160 bf 15 / 160; at 480 bf (15 + 25) / 2 over (160 + 480) / 2; when dull 25 over the same 320.
  CHECK(shown(document, {"worn", "planned", "forced", "mean_bf", "today_per_mbf", "best_bf", "best_per_mbf",
                         "as_planned", "verdict"}) ==
        "10 | $15.00 | $25.00 | 320 | $78.13 | 480 | $62.50 | 50 | sooner");
  CHECK(document.lead.at(1) ==
        "Sharpening the head saw every 480 bf would cost least, $62.50 per MBF; when it is dull, every 320 "
        "bf on average, it costs $78.13 per MBF. Strikes are in neither.");
  std::vector<tuning::Life> lives;
  for (int i = 0; i < 10; ++i) lives.push_back({i % 2 == 0 ? 160.0 : 480.0, true});
  const auto own = *tuning::change_interval(tuning::survival_of(lives), 15, 25);
  CHECK(own.candidates[own.best].every == 480);
  CHECK(fmt::format("${:.2f}", 1000 * own.candidates[own.best].cost_rate) ==
        cell_of(document, "best_per_mbf", 0, kInterval));
  CHECK(fmt::format("${:.2f}", 1000 * *own.never + 1e-9) == cell_of(document, "today_per_mbf", 0, kInterval));
}

TEST_CASE("where a stop costs no more than the hand's time, teeth are left as long as they last") {
  const auto document = teeth_of(std::string(kCrew) + kTooth, ten_worn(4));  // 20 an hour sawn too
  CHECK(shown(document, {"planned", "forced", "mean_bf", "best_bf", "best_per_mbf", "verdict"}) ==
        "$15.00 | $15.00 | 320 | - | - | as long as they last");
  CHECK(document.lead.at(1) ==
        "By the record nothing is saved by sharpening the head saw sooner: let its teeth go as long as they "
        "last, 320 bf on average at $46.88 per MBF.");
}

TEST_CASE("without a cost of an hour, a stop for teeth or a price of a tooth there is no interval") {
  const auto hour = teeth_of(kTooth, ten_worn(8));
  CHECK(shown(hour, {"planned", "mean_bf", "verdict"}) == "- | - | no cost of an hour");
  CHECK(hour.lead.at(1) ==
        "At what interval sharpening costs least cannot be told: the book has no cost of a crew hour, or no "
        "sawing hours (mill file: [[cost]], per = \"crew-hour\").");
  const auto stop = teeth_of(std::string(kCrew) + kTooth, ten_worn(8, ""));
  CHECK(cell_of(stop, "verdict", 0, kInterval) == "no stop for teeth");
  CHECK(stop.lead.at(1) ==
        "At what interval sharpening costs least cannot be told: no sheet of the period has a stop for teeth "
        "(as in stop 0:20 teeth).");
  const auto tooth = teeth_of(kCrew, ten_worn(8));
  CHECK(cell_of(tooth, "verdict", 0, kInterval) == "no price of a tooth");
  CHECK(tooth.lead.at(1) ==
        "At what interval sharpening costs least cannot be told: the book has no price of a tooth (mill "
        "file: [[cost]], per = \"tooth\").");
}

TEST_CASE("nine worn give no interval but the sentence that says so") {
  const auto document = teeth_of(std::string(kCrew) + kTooth, ten_worn(8, "stop 0:30 teeth\n", 9));
  CHECK(cell_of(document, "verdict", 0, kInterval) == "too few worn to tell");
  CHECK(document.lead.at(0) ==
        "Too few sharpenings of the head saw to tell how long one lasts and what interval costs least: 9 "
        "worn, where 10 would tell (common practice, no source).");
}

TEST_CASE("work on teeth between which nothing is left sawn has no interval") {
  std::vector<std::string> sheets{"sheet 2026-04-01\nteeth head touched-up\n"};
  for (int i = 0; i < 10; ++i) {
    sheets.push_back(
        fmt::format("sheet 2026-04-{:02}\ncrew Ama 8\nsawing 8:00-12:00\n2x6 1/16\nless 2x6 1/16 split\nstop "
                    "0:30 teeth\nteeth head touched-up\n",
                    i + 2));
  }
  CHECK(cell_of(teeth_of(kCrew, sheets), "verdict", 0, kInterval) == "no lumber between sharpenings");
}

TEST_CASE("in a metric book the interval is cubic metres and its cost is of one") {
  auto sheets = ten_worn(8);
  for (auto& sheet : sheets) {
    const auto at = sheet.find("2x6 ");
    if (at != std::string::npos)
      sheet.replace(at, sheet.find('\n', at) - at,
                    sheet.find(" 10/16") != std::string::npos ? "50x200 10/5" : "50x200 30/5");
  }
  const auto document = teeth_of("[mill]\nunits = \"metric\"\n" + std::string(kCrew) + kTooth, sheets);
  // 0.5 and 1.5 m3: (15 + 25) / 2 over 1 m3
  CHECK(document.lead.at(1) ==
        "Sharpening the head saw every 1.5 m3 would cost least, $20.00 per m3; when it is dull, every 1.0 m3 "
        "on average, it costs $25.00 per m3. Strikes are in neither.");
  CHECK(cell_of(document, "best_per_m3", 0, kInterval) == "$20.00");
  CHECK(cell_of(document, "median_lineal", 0, kSaws) == "50");
}

TEST_CASE("lives are counted in lineal feet beside board feet and hours") {
  const auto document = teeth_of("", ten_worn(8));
  CHECK(cell_of(document, "median_bf", 0, kSaws) == "160");  // half are worn at it
  CHECK(cell_of(document, "median_lineal", 0, kSaws) == "160");
  CHECK(cell_of(document, "median_hours", 0, kSaws) == "4.0");
  const auto narrow =
      teeth_of("", {"sheet 2026-04-01\nteeth head touched-up\n2x4 30/16\nteeth head touched-up\n"});
  CHECK(cell_of(narrow, "median_bf", 0, kSaws) == "320");
  CHECK(cell_of(narrow, "median_lineal", 0, kSaws) == "480");
}

TEST_CASE("a tooth counts at the price in force on the newest day") {
  const std::string dearer =
      "[[cost]]\nname = \"Teeth\"\nrate = 2.50\nper = \"tooth\"\n[[cost]]\nname = \"Teeth\"\nrate = "
      "4.00\nper = \"tooth\"\nfrom = 2026-04-05\n";
  CHECK(shown(teeth_of(std::string(kCrew) + dearer, ten_worn(8)), {"planned", "forced"}) ==
        "$18.00 | $28.00");
}
