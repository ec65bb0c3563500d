#include "mill_years.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "office/office.h"
#include "paper/project_paper.h"

namespace kerfbook::bench {
namespace {

constexpr int kDaysAWeek = 5;
constexpr int kWeeksAYear = kDaysAYear / kDaysAWeek;
constexpr int kJobsInMillFile = 46;
constexpr int kWeeksOnTheYard = 4;  // until own lumber is sold and a customer's is fetched
constexpr int kCustomers = 40;
constexpr std::array kSizes{"1x4", "1x6", "1x8", "2x4", "2x6", "2x8", "2x10", "4x4", "4x6", "5/4x6"};
constexpr std::array kSpecies{"DF", "WH", "RC", "GF"};
constexpr std::array kGrades{"Sel", "No2", "No3"};
constexpr std::array kCauses{"belt", "metal", "waiting", "hydraulic", "engine"};

std::string job_of(int week) {
  return fmt::format("J{}", week);
}

std::string log_size(int log) {
  return fmt::format("{}x{}", 10 + log % 13, 10 + 2 * (log % 4));
}

bool was_received(int log) {
  return log % 4 == 0;
}

/// `count` tally lines, as the items of lines by size; `first` counts on through the day.
std::string tally(int number, int first, int count, bool graded) {
  std::string text;
  for (int i = first; i < first + count; ++i) {
    const auto size = static_cast<std::size_t>((i / 5 + number) % 10);
    if (i % 5 == 0) {
      text += fmt::format("{}{}{}", text.empty() ? "" : "\n", kSizes[size],
                          graded ? fmt::format(" {}", kGrades[static_cast<std::size_t>(i / 5 % 3)]) : "");
    }
    text += fmt::format(" {}/{}", 1 + (number + 3 * i) % 4, 8 + 2 * (i % 5));
  }
  return text + "\n";
}

std::string logs(int number, int first, int count) {
  std::string text;
  for (int i = first; i < first + count; ++i) {
    const int log = number * kLogs + i;
    text +=
        was_received(log) ? fmt::format("log T{}\n", log) : fmt::format("log T{} {}\n", log, log_size(log));
  }
  return text;
}

std::string received(int number) {
  std::string text;
  for (int log = (number + 1) * kLogs; log < (number + 2) * kLogs; ++log) {
    if (was_received(log)) text += fmt::format("in T{} {} from creek lot\n", log, log_size(log));
  }
  return text;
}

/// What happens now and then: stops, teeth, fuel, the meter, a move, a sale, another set-up.
std::string happenings(int number) {
  std::string text =
      fmt::format("stop 0:{} {}\n", 10 + number % 40, kCauses[static_cast<std::size_t>(number % 5)]);
  if (number % 3 == 0) text += fmt::format("teeth head replaced {} metal\n", 1 + number % 4);
  if (number % 5 == 0) text += "teeth edger touched-up\n";
  if (number % 20 == 0) text += "teeth head full-set 22 wear\n";
  if (number % 2 == 0) text += fmt::format("fuel {}.{} gal\n", 6 + number % 4, number % 10);
  if (number % 5 == 4) text += fmt::format("meter {}.4\n", 1000 + number * 6);
  if (number % 60 == 7) text += "stop 0:40 service\n";
  if (number % 5 == 2) text += fmt::format("thick 2x6 2.0{} 2.03 2.01 2.04\n", number % 6);
  return text;
}

}  // namespace

Day day_of(int number) {
  const int year = number / kDaysAYear;
  const int in_year = number % kDaysAYear;
  return make_day(2006 + year, 1, 9) + 7 * (in_year / kDaysAWeek) + in_year % kDaysAWeek;
}

std::string sheet_of(int number) {
  const int week = number / kDaysAWeek;
  const bool friday = number % kDaysAWeek == kDaysAWeek - 1;
  const std::string site = week % 3 == 0 ? "yard" : fmt::format("farm {}", week % 30);
  const auto kind = static_cast<std::size_t>(week % 4);
  std::string text = fmt::format("sheet {}\nsite {}\ncrew Quill 9, Bess 9\njob {}\nspecies {}\n",
                                 write_day(day_of(number)), site, job_of(week), kSpecies[kind]);
  if (number % 460 == 0) text += fmt::format("setup {} kerf 0.29 over 0.12\n", 1 + number / 460);
  text +=
      "run 7:15-10:20 10:56-13:30\n" + received(number) + logs(number, 0, 7) + tally(number, 0, 30, false);
  text += happenings(number);
  text += friday ? fmt::format("job own\nspecies DF\nbundle B{}\nrun 14:00-15:00\n", week)
                 : fmt::format("species {}\nrun 14:00-15:00\n", kSpecies[(kind + 1) % 4]);
  text += logs(number, 7, 5) + tally(number, 30, 20, friday);
  if (friday)
    text += fmt::format("sold cash 2x6 No2 {}/16 at 1.05\nmove {} to yard 23 mi 1:30\n", 1 + week % 6, site);
  if (friday && week >= kWeeksOnTheYard)
    text += fmt::format("sold Ferrin bundle B{} at 900\n", week - kWeeksOnTheYard);
  return text;
}

std::string corrected_sheet_of(int number) {
  return sheet_of(number) + "less 2x6 1/16 split\n";
}

std::string mill_file(int years) {
  std::string text = "[mill]\nname = \"An invented mill\"\n[scale]\nrule = \"international-quarter\"\n";
  text +=
      "[species]\nDF = { name = \"Douglas-fir\", group = \"fir\" }\nWH = { name = \"western hemlock\", group "
      "= "
      "\"hemlock\" }\n";
  for (int i = 0; i < kCustomers; ++i)
    text += fmt::format("[[customer]]\ncode = \"C{0}\"\nname = \"Customer {0}\"\n", i);
  const int weeks = years * kWeeksAYear;
  for (int week = weeks - kJobsInMillFile; week < weeks; ++week) {
    text += fmt::format("[[job]]\ncode = \"{}\"\ncustomer = \"C{}\"\n", job_of(week), week % kCustomers);
    if (week % 10 == 0) text += "owner = \"shares\"\n";
    text += "cut_list = [\"2x6x16 40\", \"2x8x12 30\", \"1x6x10 60\", \"4x4x8 20\"]\n";
  }
  for (const char* per : {"crew-hour", "engine-hour", "gallon", "tooth", "mile", "MBF"}) {
    text += fmt::format("[[cost]]\nname = \"by {0}\"\nrate = 3.90\nper = \"{0}\"\n", per);
  }
  return text + "[[service]]\nname = \"oil\"\nevery = 50\n";
}

book::OpenOptions options(bool read_only) {
  book::OpenOptions how;
  how.read_only = read_only;
  how.papers = billing::project_paper;
  how.now = [] { return std::string("2026-01-01 20:00:00"); };
  return how;
}

void fill(const std::filesystem::path& file, int years) {
  std::filesystem::remove(file);
  auto made =
      book::Book::create(file, options(), book::Document{"mill", mill_file(years), book::EntryKind::mill});
  std::vector<book::Document> sheets;
  std::vector<book::Document> corrected;
  for (int i = 0; i < years * kDaysAYear; ++i) {
    sheets.push_back({write_day(day_of(i)), sheet_of(i), book::EntryKind::sheet});
    if (i % 40 == 39)
      corrected.push_back({write_day(day_of(i)), corrected_sheet_of(i), book::EntryKind::sheet});
  }
  made.post_all(sheets, "");
  made.post_all(corrected, "one board split");
  for (int week = 0; week + kWeeksOnTheYard < years * kWeeksAYear; ++week) {
    billing::load(made, {job_of(week), {}, "", "", ""}, day_of((week + kWeeksOnTheYard) * kDaysAWeek));
  }
}

double seconds(const std::function<void()>& deed) {
  const auto began = std::chrono::steady_clock::now();
  deed();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
}

}  // namespace kerfbook::bench
