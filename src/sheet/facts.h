// facts.h -- a sheet with its context filled in: every tally item, log and event with the site, job, species,
// grade, bundle and set-up in force where it stands. What the book stores is exactly this, in this order.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// What holds at a line, by the rules in sheet.h. Empty strings = not said (a first sheet need not name a job or a
/// species).
struct Context {
  std::string site;  ///< after a `move`, the place moved to
  std::string
      job;  ///< the one the line itself names, else the one that holds; `own` for the mill's own stock
  std::string species;
  std::string grade;
  std::string bundle;
  std::string setup;  ///< empty = the set-up carried over from earlier days
  bool operator==(const Context&) const = default;
};

/// One fact of a day with its number in the order of the day: number = line in the sheet x 1000 + item in the
/// line (from 0), so a tally item, a log and a tooth change can be put in order, and the line found again.
struct DatedFact {
  int number = 0;
  Context context;
  const Line* line = nullptr;  ///< lives as long as the sheet
  std::size_t item = 0;        ///< which tag, tally item, random-width board or hand of the line
};

/// Lines with several items (tally, random tally, sold, crew, log with several tags) give one DatedFact an item; all
/// others give one. Context lines and remarks give none, Setup and Move give one. Tag ranges are spread out.
std::vector<DatedFact> facts(const Sheet& sheet);

/// "T13-T22" becomes T13, T14 ... T22; a single tag comes back alone; empty when it is no sane range (over 200
/// tags, different prefixes, end before start).
std::vector<std::string> spread_tags(const std::string& written);

/// All tags of a log line, ranges spread out: the tag of item i is spread(log)[i]. Empty for a log without a tag.
std::vector<std::string> spread(const LogLine& log);

/// The job the line itself names, as `, job CODE` or in a charge line; empty = none, and so the one that holds is meant.
const std::string& named_job(const Fact& fact);
/// Where to keep it; null for a kind of line that names none in this way.
std::string* job_named_at_end(Fact& fact);

/// A log, or boards tallied: what is in the hands of one job at one place.
bool is_work(const Fact& fact);

/// What a job may be charged for: sawing time, logs sawn, boards, moves, charge lines, stops marked so, and stops and
/// teeth for metal.
bool could_be_charged(const Fact& fact);

/// The jobs of the sheet's `job` lines, each once, in order.
std::vector<std::string> jobs_of(const Sheet& sheet);

}  // namespace kerfbook::sheet
