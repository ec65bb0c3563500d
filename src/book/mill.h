// mill.h -- the mill file: names, units, conventions, saws, sizes, customers, jobs. TOML, posted like a sheet.
// Nothing in it is needed to start: a default Mill accepts a first sheet.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "measure/convention.h"
#include "measure/money.h"
#include "measure/size.h"
#include "scaling/practice.h"

namespace kerfbook::book {

struct Saw {
  std::string role;                        ///< head, edger, third
  std::optional<measure::Length> diameter;
  std::optional<std::int64_t> kerf_mils;   ///< thousandths of an inch; metric: hundredths of a mm
  std::optional<int> teeth;
  std::optional<int> rpm;
};

struct NamedSize {
  measure::Size nominal;
  std::optional<measure::Size> target;  ///< what it is cut to; absent = nominal plus the set-up's oversize
};

struct CutLine {  ///< one line of a job's cut list
  measure::Size size;
  measure::Length length;
  std::int64_t pieces = 0;
  std::string grade;
};

struct Customer {
  std::string code;
  std::string name;
  std::vector<std::string> address;
  std::string phone;
  std::string email;
  std::string tax_certificate;  ///< exemption certificate on file; empty = none
  std::string note;
};

/// Everything after `price`, `charge`, `share`: kept as the file's own tables for billing/ to read (billing owns
/// the meaning; see billing/terms.h). Text of the TOML fragment, in order.
struct MoneyTables {
  std::string toml;
};

struct JobEntry {
  std::string code;
  std::string customer;   ///< a customer's code; empty for own work
  std::string name;
  std::string site;
  std::string owner;      ///< "customer" (default), "own", "shares"
  std::string rule;       ///< scaling practice agreed for this job; empty = the house practice
  std::optional<measure::Convention> convention;  ///< how its lumber is counted; empty = the house convention
  std::vector<NamedSize> sizes;   ///< targets of this job's own
  std::vector<CutLine> cut_list;
};

struct Word {  ///< a species or a grade
  std::string code;
  std::string name;
  std::string group;  ///< species: group for the year's return
};

struct Mill {
  std::string name = "the mill";
  std::string owner;
  std::vector<std::string> address;
  std::string phone;
  std::string email;
  std::string tax_number;
  std::string logo;                 ///< file name of an image; empty = none
  std::vector<std::string> terms;   ///< lines printed under an invoice
  measure::System units = measure::System::inch;
  measure::Currency currency;
  bool a4 = false;                  ///< paper: Letter or A4
  std::string dates = "ymd";        ///< ymd, mdy, dmy: how dates are printed
  int week_start = 1;               ///< 1 = Monday ... 7 = Sunday
  int season_month = 1;             ///< the season's first day
  int season_day = 1;
  scaling::Practice house;          ///< house log rule and its conventions
  std::vector<scaling::Practice> practices;  ///< defined by the file
  scaling::Taper taper;             ///< taper and trim allowance for log content
  measure::Convention convention;   ///< house counting convention
  std::vector<Saw> saws;
  std::optional<measure::Length> largest_log;    ///< diameter
  std::optional<measure::Length> longest_log;
  std::optional<measure::Length> thickest_board;
  std::optional<measure::Length> widest_board;
  std::optional<std::int64_t> most_bf_a_day;
  std::vector<Word> species;
  std::vector<Word> grades;
  std::vector<NamedSize> sizes;
  std::vector<std::string> sites;
  std::vector<Customer> customers;
  std::vector<JobEntry> jobs;
  MoneyTables money;
};

struct ReadMill {
  Mill mill;
  std::vector<Diagnostic> found;  ///< every problem at once, each with its line
};

/// Reads a mill file. Unknown keys are errors that name the nearest known key.
ReadMill read_mill(std::string_view toml);

const JobEntry* find_job(const Mill& mill, std::string_view code);
const Customer* find_customer(const Mill& mill, std::string_view code);
/// The practice a job's logs are scaled under: its own rule, else the house's.
const scaling::Practice& practice_for(const Mill& mill, std::string_view job);
/// A practice by name: one the file defines, else a built-in one. nullopt when there is none.
std::optional<scaling::Practice> practice_named(const Mill& mill, std::string_view name);
/// The target section of a nominal size cut for a job; nullopt = nominal plus the set-up's oversize.
std::optional<measure::Size> target_for(const Mill& mill, std::string_view job, const measure::Size& nominal);

}  // namespace kerfbook::book
