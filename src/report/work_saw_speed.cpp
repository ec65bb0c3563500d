// work_saw_speed.cpp -- the worker `saw-speed`: rim speed and bite of each saw of the mill file, and how much of each day the
// saws were in wood. The arithmetic stands in tuning/saw_arithmetic.h.
#include <fmt/format.h>

#include <array>

#include "base/count.h"
#include "base/text.h"
#include "report/workers.h"
#include "tuning/numbers.h"
#include "tuning/saw_arithmetic.h"

namespace kerfbook::report {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kMetresPerFoot = 0.3048;
constexpr const char* kNoFeed = "a set-up line on a sheet says it, as in setup 2 feed 55";

/// A feed of the book, feet or metres a minute, as feet.
std::optional<double> feed_of(const InputRows& rows, std::size_t r) {
  const auto feed = rows.number(r, "feed_micro");
  if (!feed || *feed <= 0) return std::nullopt;
  const bool metric = rows.number(r, "metric").value_or(0) != 0;
  return static_cast<double>(*feed) / 1e6 / (metric ? kMetresPerFoot : 1);
}

/// What is sawn of a day.
struct DaySawn {
  double feet = 0;
  double hours_in_wood = 0;  ///< of boards whose feed is known
  bool known = true;         ///< of all of them
};

class SawSpeed {
 public:
  explicit SawSpeed(const Given& given) : given_(given), metric_(given.setting.metric_book) {
    const auto& setup = given.rows("setup");
    if (setup.size() > 0) feed_ = feed_of(setup, 0);
    const auto& cuts = given.rows("cuts");
    for (std::size_t r = 0; r < cuts.size(); ++r) {
      const double feet = lineal_feet_of(cuts.number(r, "lineal").value_or(0));
      const auto feed = feed_of(cuts, r);
      auto& day = days_[cuts.number(r, "day").value_or(0)];
      day.feet += feet;
      day.known = day.known && feed.has_value();
      if (feed) day.hours_in_wood += tuning::cutting_hours(feet, *feed);
    }
  }

  Worked work() {
    Worked out;
    add_days(out.tables["days"]);
    for (const auto& saw : given_.mill.saws) add_saw(saw, out.tables["saws"]);
    if (!feed_ && !given_.mill.saws.empty())
      out.tables["saws"].notes.push_back(fmt::format("No feed is known, and so no bite: {}.", kNoFeed));
    if (auto words = in_wood_words(); !words.empty()) out.finding.push_back(std::move(words));
    for (const auto& saw : given_.mill.saws) {
      if (auto words = speed_words(saw); !words.empty()) out.finding.push_back(std::move(words));
    }
    out.foot.emplace_back(tuning::kSpeedCaution);
    return out;
  }

 private:
  [[nodiscard]] double told_length(double inches) const { return metric_ ? inches * kMmPerInch : inches; }
  [[nodiscard]] double told_feed(double feet) const { return metric_ ? feet * kMetresPerFoot : feet; }
  [[nodiscard]] const char* feed_unit() const { return metric_ ? "m per min" : "ft per min"; }

  [[nodiscard]] static std::optional<double> inches_across(const book::Saw& saw) {
    if (!saw.diameter) return std::nullopt;
    return tuning::as_double(measure::in_inches(*saw.diameter));
  }

  /// Feet a minute.
  [[nodiscard]] static std::optional<double> rim_of(const book::Saw& saw) {
    const auto across = inches_across(saw);
    if (!across || !saw.rpm) return std::nullopt;
    return tuning::rim_speed(*across, *saw.rpm);
  }

  /// Feet a minute, or metres a second.
  [[nodiscard]] std::optional<double> told_rim(const book::Saw& saw) const {
    const auto rim = rim_of(saw);
    return rim && metric_ ? *rim * kMetresPerFoot / 60 : rim;
  }

  /// Inches.
  [[nodiscard]] std::optional<double> bite_of(const book::Saw& saw) const {
    if (!feed_ || !saw.teeth || !saw.rpm) return std::nullopt;
    return tuning::bite(*feed_, *saw.teeth, *saw.rpm);
  }

  /// By the set-up in force, else by the mill file; inches.
  [[nodiscard]] std::optional<double> kerf_of(const book::Saw& saw) const {
    static constexpr std::array<std::pair<const char*, const char*>, 3> kOnSheets{
        {{"head", "kerf_mils"}, {"edger", "edger_mils"}, {"third", "third_mils"}}};
    const auto& setup = given_.rows("setup");
    for (const auto& [role, column] : kOnSheets) {
      if (setup.size() == 0 || !same_word(saw.role, role)) continue;
      if (const auto mils = setup.number(0, column))
        return inches_of_mils(*mils, setup.number(0, "metric").value_or(0) != 0);
    }
    if (!saw.kerf_mils) return std::nullopt;
    return inches_of_mils(*saw.kerf_mils, given_.mill.units == measure::System::metric);
  }

  void add_saw(const book::Saw& saw, WorkedTable& table) const {
    const auto length = [&](const std::optional<double>& inches) {
      return inches ? micro(told_length(*inches)) : Value{};
    };
    const auto count = [](const std::optional<int>& number) {
      return number ? Value{std::int64_t{*number}} : Value{};
    };
    const auto& setup = given_.rows("setup");
    std::string tooth =
        same_word(saw.role, "head") && setup.size() > 0 ? setup.text(0, "tooth") : std::string();
    table.rows.push_back({saw.role, length(inches_across(saw)), count(saw.teeth),
                          tooth.empty() ? Value{} : Value{std::move(tooth)}, length(kerf_of(saw)),
                          count(saw.rpm), micro(told_rim(saw)), feed_ ? micro(told_feed(*feed_)) : Value{},
                          length(bite_of(saw)), metric_ ? "mm" : "in", metric_ ? "m per s" : "ft per min",
                          feed_unit()});
    std::vector<std::string> lacking;
    if (!saw.diameter) lacking.emplace_back("diameter");
    if (!saw.teeth) lacking.emplace_back("teeth");
    if (!saw.rpm) lacking.emplace_back("rpm");
    if (lacking.empty()) return;
    table.notes.push_back(
        fmt::format("Of the {} saw the mill file's [[saw]] does not say {}.", saw.role, join(lacking, ", ")));
  }

  void add_days(WorkedTable& table) {
    const auto& sheets = given_.rows("sheets");
    for (std::size_t r = 0; r < sheets.size(); ++r) {
      const auto day = sheets.number(r, "day").value_or(0);
      const auto minutes = sheets.number(r, "sawing").value_or(0);
      const auto found = days_.find(day);
      const DaySawn sawn = found == days_.end() ? DaySawn{} : found->second;
      const Value sawing = minutes * 1'000'000;
      const Value in_wood = sawn.known ? micro(sawn.hours_in_wood * 60) : Value{};
      const auto feed = sawn.known && sawn.hours_in_wood > 0
                            ? std::optional(told_feed(sawn.feet / sawn.hours_in_wood / 60))
                            : std::nullopt;
      table.rows.push_back({day, lineal_of(sawn.feet), micro(feed), in_wood, sawing, in_wood,
                            sawn.known ? sawing : Value{}, feed_unit()});
      if (!sawn.known) {
        ++unknown_days_;
        continue;
      }
      ++known_days_;
      cutting_ += sawn.hours_in_wood;
      sawing_ += static_cast<double>(minutes) / 60;
    }
    if (unknown_days_ > 0)
      table.notes.push_back(
          fmt::format("The feed is not known on {}: {}.", counted(unknown_days_, "day"), kNoFeed));
    if (cutting_ > sawing_)
      table.notes.emplace_back(
          "More time in wood than was sawn: a feed is too low, or sawing time is missing from a sheet.");
  }

  [[nodiscard]] std::string in_wood_words() const {
    if (known_days_ == 0) {
      return unknown_days_ == 0 ? std::string()
                                : "How long the saws were in wood cannot be told: no sheet says the feed.";
    }
    if (!(cutting_ > 0)) return {};
    const std::string of_days = unknown_days_ == 0 ? "" : ", on the days whose feed is known";
    return fmt::format("The head saw was in wood {} of {} sawing hours{}.", words_of(cutting_, 1, given_),
                       words_of(sawing_, 1, given_), of_days);
  }

  /// "The head saw's rim goes 9,896 ft a minute; at a feed of 55 ft a minute each tooth bites 0.033 in."
  [[nodiscard]] std::string speed_words(const book::Saw& saw) const {
    const auto rim = told_rim(saw);
    if (!rim) return {};
    std::string words = fmt::format("The rim of the {} saw goes {} {}", saw.role, words_of(*rim, 0, given_),
                                    metric_ ? "m a second" : "ft a minute");
    if (const auto bite = bite_of(saw)) {
      words += fmt::format("; at a feed of {} {} each tooth bites {} {}",
                           words_of(told_feed(*feed_), 0, given_), metric_ ? "m a minute" : "ft a minute",
                           words_of(told_length(*bite), metric_ ? 2 : 3, given_), metric_ ? "mm" : "in");
    }
    return words + ".";
  }

  const Given& given_;
  bool metric_;
  std::optional<double> feed_;  ///< of the set-up in force, feet a minute
  std::map<std::int64_t, DaySawn> days_;
  std::int64_t known_days_ = 0;
  std::int64_t unknown_days_ = 0;
  double cutting_ = 0;  ///< hours, of the days whose feed is known
  double sawing_ = 0;
};

Worked work(const Given& given) {
  return SawSpeed(given).work();
}

}  // namespace

Worker saw_speed() {
  return {.name = "saw-speed",
          .reads = {{"setup", {"kerf_mils", "edger_mils", "third_mils", "feed_micro", "tooth", "metric"}},
                    {"cuts", {"day", "lineal", "feed_micro", "metric"}},
                    {"sheets", {"day", "sawing"}}},
          .gives = {{"saws",
                     {"saw", "diameter", "teeth", "tooth", "kerf", "rpm", "rim_speed", "feed", "bite", "unit",
                      "speed_unit", "feed_unit"}},
                    {"days",
                     {"day", "boards", "feed", "wood_hours", "sawing_hours", "known_wood", "known_sawing",
                      "feed_unit"}}},
          .work = work};
}

}  // namespace kerfbook::report
