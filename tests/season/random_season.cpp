#include "random_season.h"

#include <array>
#include <random>
#include <string_view>

#include "days.h"

namespace reckoning {
namespace {

class Maker {
 public:
  explicit Maker(std::uint64_t seed) : dice_(seed) {}

  Season make() {
    Season season;
    std::int64_t day = number_of({2027, 1, 4}) + below(330);
    const std::int64_t days = 7 + below(6);
    hours_ = 100 + below(900);
    for (std::int64_t i = 0; i < days; ++i) {
      day += one_in(6) ? 8 + below(40) : 1 + below(2);
      const std::string text = sheet(day, 1);
      season.sheets.push_back(text);
      if (one_in(5)) season.sheets.push_back(sheet(day, 2));
    }
    for (const auto& text : season.sheets)
      if (season.corrections.size() < 2 && one_in(4)) season.corrections.push_back(corrected(text));
    return season;
  }

 private:
  std::int64_t below(std::int64_t most) {
    return static_cast<std::int64_t>(dice_() % static_cast<std::uint64_t>(most));
  }
  bool one_in(std::int64_t many) { return below(many) == 0; }
  template <std::size_t N>
  std::string one_of(const std::array<std::string_view, N>& words) {
    return std::string(words[static_cast<std::size_t>(below(static_cast<std::int64_t>(N)))]);
  }
  static std::string clock(std::int64_t minute) {
    const std::string minutes = std::to_string(minute % 60);
    return std::to_string(minute / 60) + ":" + (minutes.size() < 2 ? "0" : "") + minutes;
  }

  std::string sheet(std::int64_t day, int shift) {
    text_ =
        "sheet " + text_of(date_of_number(day)) + (shift > 1 ? " shift " + std::to_string(shift) : "") + "\n";
    now_ = shift > 1 ? 14 * 60 : 7 * 60;
    if (!one_in(4)) line("site " + one_of(kSites));
    idle_lines(shift);
    if (one_in(3)) return text_;  // a day without sawing
    if (one_in(3)) sawing();
    if (one_in(6)) {
      sawing();
      text_.insert(text_.size() - 1, ", job " + one_of(kJobs));
    }
    if (one_in(4)) line("teeth head touched-up");
    if (one_in(8)) line("setup " + one_of(kSetups) + " kerf 0.28 over 0." + std::to_string(1 + below(15)));
    const std::int64_t jobs = one_in(8) ? 0 : 1 + below(3);
    if (jobs == 0) work("");
    for (std::int64_t i = 0; i < jobs; ++i) {
      const std::string job = one_of(kJobs);
      line("job " + job);
      work(job);
      if (i + 1 < jobs && one_in(4)) move();
    }
    return text_;
  }

  void idle_lines(int shift) {
    line("crew Ketha " + std::to_string(4 + below(6)) + ", Oryn " + clock(240 + below(300)) +
         (one_in(3) ? " stacking" : ""));
    if (one_in(2)) stop();
    if (one_in(2))
      line("fuel " + std::to_string(2 + below(12)) + "." + std::to_string(below(10)) + " gal" +
           (one_in(3) ? " " + std::to_string(20 + below(40)) + ".35" : ""));
    if (one_in(2) || shift > 1) {
      hours_ += below(90);
      line("meter " + std::to_string(hours_ / 10) + "." + std::to_string(hours_ % 10));
    }
  }

  void sawing() {
    const std::int64_t from = now_ + below(30);
    now_ = from + 5 + below(100);
    line("run " + clock(from) + "-" + clock(now_));
  }

  void stop() {
    const std::string charge = one_in(4) ? ", charge" : "";
    line("stop " + clock(1 + below(80)) + " " + one_of(kCauses) + (one_in(2) ? " again" : "") + charge);
  }

  void move() {
    const std::string to = one_of(kSites);
    line("move " + one_of(kSites) + " to " + to + " " + std::to_string(1 + below(40)) + " mi " +
         clock(20 + below(200)));
    if (one_in(2)) line("site " + to);
    if (one_in(3)) sawing();  // whose, is not said
    if (one_in(3)) line("stop " + clock(1 + below(80)) + " " + one_of(kCauses) + ", job " + one_of(kJobs));
  }

  void work(const std::string& job) {
    line("species " + one_of(kSpecies));
    if (!one_in(4)) sawing();
    if (one_in(3)) stop();
    for (std::int64_t logs = below(4); logs > 0; --logs) log();
    for (std::int64_t lines = 1 + below(5); lines > 0; --lines) boards(job);
    if (one_in(3))
      line("teeth " + one_of(kSaws) + " " + one_of(kActions) + " " + std::to_string(1 + below(8)) + " " +
           one_of(kTeethCauses));
    if (one_in(3)) boards(job);
    if (one_in(5)) line("crew Sune " + clock(30 + below(200)) + " edging");
  }

  void log() {
    const std::string tag = one_in(2) ? "L" + std::to_string(++tags_) + " " : "";
    if (one_in(9)) return line("log L" + std::to_string(++tags_));  // never measured
    std::string spec;
    if (one_in(4)) {
      spec = std::to_string(18 + below(40)) + "cm-" + std::to_string(58 + below(10)) + "cm";
      spec += "x" + std::to_string(2 + below(4)) + "." + std::to_string(below(10)) + "m";
    } else {
      const std::int64_t small = 7 + below(16);
      spec = std::to_string(small) + (one_in(4) ? ".5" : "");
      if (one_in(4)) spec += "/" + std::to_string(small + 1);
      if (one_in(3)) spec += "-" + std::to_string(small + 2 + below(4));
      spec += "x" + std::to_string(6 + below(12)) + (one_in(5) ? "'6" : "");
    }
    if (one_in(4))
      spec += one_in(2) ? " defect " + std::to_string(5 + below(20)) + "bf rot" : " defect 12.5% sweep";
    line("log " + tag + spec);
  }

  void boards(const std::string& job) {
    const bool metric = one_in(4);
    const std::string size = metric ? one_of(kMetric) : one_of(kInch);
    const std::string grade = one_in(3) ? " " + one_of(kGrades) : "";
    const bool by_length = job != "PEG" && one_in(4);
    std::string items;
    if (by_length) {
      items = " " + std::to_string(20 + below(200)) + (metric ? "lm" : "lf");
    } else if (!metric && one_in(6)) {
      return line("5/4 rw" + grade + " 7-1/2x" + std::to_string(6 + below(9)) + " 9x10 6x8*3");
    } else {
      for (std::int64_t i = 1 + below(3); i > 0; --i)
        items += " " + std::to_string(1 + below(30)) + "/" + (metric ? one_of(kMetres) : one_of(kFeet));
    }
    line(size + grade + items);
    if (!one_in(4)) return;
    const std::string off = by_length ? " 7" + std::string(metric ? "lm" : "lf")
                                      : " 1/" + (metric ? one_of(kMetres) : one_of(kFeet));
    line((one_in(2) ? "less " : "resaw ") + size + grade + off);
  }

  /// The same day with one tally line more, one count changed or the hour meter left out.
  std::string corrected(std::string text) {
    if (const auto at = text.find("\nrun 7:"); at != std::string::npos && one_in(2)) {
      text.replace(at, 7, "\nrun 6:");
      return text;
    }
    if (const auto at = text.find("\nstop 0:"); at != std::string::npos && one_in(2)) {
      text.replace(at, 8, "\nstop 1:");
      return text;
    }
    return text + "2x6 " + std::to_string(1 + below(9)) + "/12\n";
  }

  void line(const std::string& one) { text_ += one + "\n"; }

  static constexpr std::array<std::string_view, 3> kSites{"Ness yard", "Sill farm", "Upper wood"};
  static constexpr std::array<std::string_view, 2> kSetups{"thin", "wide"};
  static constexpr std::array<std::string_view, 6> kJobs{"SILL", "TARN", "MOOR", "PEG", "HALF", "own"};
  static constexpr std::array<std::string_view, 3> kSpecies{"DF", "WH", "RC"};
  static constexpr std::array<std::string_view, 2> kGrades{"Sel", "No2"};
  static constexpr std::array<std::string_view, 4> kCauses{"belt", "waiting", "weather", "hydraulics"};
  static constexpr std::array<std::string_view, 2> kSaws{"head", "edger"};
  static constexpr std::array<std::string_view, 3> kActions{"replaced", "full-set", "swaged"};
  static constexpr std::array<std::string_view, 3> kTeethCauses{"wear", "grit", "metal"};
  static constexpr std::array<std::string_view, 8> kInch{"1x4", "1x6", "2x4",   "2x6",
                                                         "2x8", "4x4", "5/4x6", "1-1/8x5"};
  static constexpr std::array<std::string_view, 3> kMetric{"22x95", "50x150", "47x200"};
  static constexpr std::array<std::string_view, 7> kFeet{"7", "8", "10", "12", "14", "16", "16'6"};
  static constexpr std::array<std::string_view, 4> kMetres{"2.4m", "3.3m", "4.8m", "5.1m"};

  std::mt19937_64 dice_;
  std::string text_;
  std::int64_t now_ = 0;
  std::int64_t hours_ = 0;
  std::int64_t tags_ = 0;
};

}  // namespace

Season season_of(std::uint64_t seed) {
  return Maker(seed).make();
}

std::string season_mill() {
  return R"([mill]
name = "Ness sawing"
[scale]
rule = "international-quarter"
[recovery]
trim = "4"
[count]
rounding = "total-hundredths"
[species]
DF = { name = "Douglas-fir", group = "fir" }
WH = { name = "western hemlock", group = "hemlock" }
[[customer]]
code = "SILL"
name = "Sill farm"
[[customer]]
code = "TARN"
name = "Tarn house"
[[job]]
code = "SILL"
customer = "SILL"
[[job]]
code = "TARN"
customer = "TARN"
rule = "doyle"
[[job]]
code = "MOOR"
customer = "TARN"
rule = "scribner-formula"
[[job]]
code = "PEG"
customer = "SILL"
[[job]]
code = "HALF"
customer = "TARN"
owner = "shares"
[[price]]
job = "SILL"
basis = "bf"
rate = 0.48
[[price]]
job = "SILL"
basis = "bf"
thickness_from = "2"
rate = 0.535
[[price]]
job = "TARN"
basis = "hour"
rate = 61.50
[[price]]
job = "MOOR"
basis = "log-scale"
rate = 0.31
[[price]]
job = "PEG"
basis = "piece"
rate = 1.15
[[price]]
job = "HALF"
basis = "shares"
[[charge]]
name = "waiting"
title = "Waiting"
rate = 75.00
per = "hour"
stop = ["waiting"]
[[charge]]
name = "stopped"
title = "Stopped"
flat = 12.50
stop = ["belt", "weather", "hydraulics"]
[[charge]]
name = "travel"
title = "Travel"
rate = 1.75
per = "mile"
move = true
round_trip = true
[[cost]]
name = "Ketha"
rate = 28.00
per = "crew-hour"
hand = "Ketha"
[[cost]]
name = "Hands"
rate = 22.50
per = "crew-hour"
[[cost]]
name = "Wear"
rate = 4.50
per = "engine-hour"
[[cost]]
name = "Fuel"
rate = 3.90
per = "gallon"
[[cost]]
name = "Teeth"
rate = 2.60
per = "tooth"
[[cost]]
name = "Truck"
rate = 0.70
per = "mile"
[[cost]]
name = "Saws"
rate = 1.35
per = "MBF"
[[cost]]
name = "Insurance"
rate = 4800.00
per = "year"
days = 110
)";
}

}  // namespace reckoning
