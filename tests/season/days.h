// days.h -- the reckoning's own reading of day sheets: what stands on each line, with what holds for it there.
//
// What holds: a site, job, species, grade, bundle and set-up hold from their line on. A sheet with one job is all that
// job's. On a sheet with several, what stands above the first is no job's, nor what stands after a `site` or `move` line
// and above the line of another job with no log and no board between. A line that names a job at its end is that job's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fraction.h"

namespace reckoning {

struct Date {
  int year = 0;
  int month = 0;
  int day = 0;
  friend auto operator<=>(const Date&, const Date&) = default;
};
Date date_of(const std::string& text);  ///< 2027-08-30
std::string text_of(const Date& date);
std::int64_t number_of(const Date& date);  ///< days in a row; only differences mean anything
Date date_of_number(std::int64_t number);
Date monday_of(const Date& date);

/// Where a fact stands: its sheet, its place in the order of the day, and what holds for it.
struct Stand {
  Date day;
  int shift = 1;
  int place = 0;
  std::string site, job, species, grade, bundle, setup;  ///< empty = none
};

/// A board's section: thickness and width, in inches or, metric, in millimetres.
struct Section {
  std::string name;  ///< as a report calls it: 2x6, 50x150
  Fraction thick;
  Fraction wide;
  bool metric = false;
  bool quarters = false;  ///< 5/4 is another name than 1-1/4
};

enum class Sense { sawn, less, resaw };

struct Boards {
  Stand at;
  Sense sense = Sense::sawn;
  Section section;
  Fraction length;          ///< of each, in feet or metres; of lineal feet all of it, never below 0
  std::int64_t pieces = 0;  ///< below 0 for `less` and `resaw`; 0 for lineal feet
  bool lineal = false;
  [[nodiscard]] std::int64_t sign() const { return sense == Sense::sawn ? 1 : -1; }
};

struct Defect {
  Fraction amount;
  bool percent = false;  ///< else board feet
};

struct Measure {
  std::vector<Fraction> small;  ///< inches or centimetres
  std::vector<Fraction> large;
  Fraction length;  ///< feet or metres
  bool metric = false;
};

struct Log {
  Stand at;
  std::string tag;
  enum class State { received, sawn, left } state = State::sawn;
  std::optional<Measure> measure;  ///< its own, or the one it was received with; none = never measured
  bool borrowed = false;
  std::vector<Defect> defects;
  std::string origin;
};

struct Sawing {
  Stand at;
  int from = 0;  ///< minute of the day
  int minutes = 0;
};

struct Stop {
  Stand at;
  std::optional<int> from;
  int minutes = 0;
  std::string cause, text;
  bool charge = false;
};

struct Hand {
  Stand at;
  std::string name, activity;
  int minutes = 0;
};

struct Teeth {
  Stand at;
  std::string saw, action, cause, log, text;
  std::optional<std::int64_t> count;
};

struct ChargeLine {
  Stand at;  ///< its job is the one it names
  std::string name, text;
  Fraction quantity = 1;
};

struct Move {
  Stand at;
  std::string from, to;
  Fraction distance;
  bool kilometres = false;
  int minutes = 0;
};

struct Meter {
  Stand at;
  Fraction hours;
};

struct Fuel {
  Stand at;
  Fraction quantity;
  std::string unit;
  std::optional<Fraction> paid;
};

struct Setup {
  Stand at;
  std::string name;
  std::optional<Fraction> over;  ///< inches
};

struct Sold {
  Stand at;
  std::string buyer;
  Section section;
  Fraction length;
  std::int64_t pieces = 0;
  bool lineal = false;
  std::optional<Fraction> price;
  bool each = false;  ///< the price is of a piece, else of a board foot
};

/// One sheet as it is in force.
struct Sheet {
  Date day;
  int shift = 1;
  std::vector<Boards> boards;
  std::vector<Log> logs;
  std::vector<Sawing> sawing;
  std::vector<Stop> stops;
  std::vector<Hand> crew;
  std::vector<Teeth> teeth;
  std::vector<ChargeLine> charges;
  std::vector<Move> moves;
  std::vector<Meter> meters;
  std::vector<Fuel> fuel;
  std::vector<Setup> setups;
  std::vector<Sold> sold;
};

/// Reads the part of the notation that the seasons are written in; anything else is a std::runtime_error, so that no
/// line is left out of the reckoning without a word.
Sheet read_sheet(const std::string& text);

/// Sheets in force, by day and shift. A sheet of a day and shift that is there already takes its place.
void put(std::vector<Sheet>& sheets, Sheet sheet);

/// Gives logs that are named by their tag alone the measure they were received or left with.
void lend_measures(std::vector<Sheet>& sheets);

}  // namespace reckoning
