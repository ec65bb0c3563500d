// mill.h -- the mill file: names, units, conventions, saws, sizes, customers, jobs. TOML, posted like a sheet.
// Nothing in it is needed to start: a default Mill accepts a first sheet. Prices, charges, shares, taxes, agreements
// and numbering are in the same file, but are read and described in price/terms.h.
//
// The grammar. Every table and key may be left out; a blank text ("") is as good as none. Sizes, lengths and measures
// are written as in a sheet, in quotes ("2x6", "16'6", "5/16"); a plain number needs none (16, 0.26). A key that is not
// known is an error that names the nearest one.
//
//   [mill]
//   name       = "Q. Hargan, custom sawing"
//   owner      = "Quill Hargan"
//   address    = ["The yard, Sallow Fork", "Tannet County"]
//   phone      = ""     email = ""     tax_number = ""     logo = "hargan.png"
//   terms      = ["Payment within 14 days."]   lines printed under every invoice
//   sites      = ["Tervane farm", "yard"]      places the mill stands at, as sheets call them
//   units      = "inch"                inch: sizes in inches, lengths in feet; metric: sizes in mm, lengths in m, log
//                                      diameters in cm. Whichever it is, a written unit is understood.
//   currency   = "$"                   or { sign = "kr", after = true, places = 2, mark = ",", thousands = "." };
//                                      thousands: a mark, "blank" or "none"
//   paper      = "letter"              letter, a4
//   dates      = "ymd"                 how dates are printed: ymd, mdy, dmy
//   week_start = "monday"
//   season     = "04-01"               month and day the season begins
//
//   [scale]                            the house log rule; a job may have another
//   rule       = "international-quarter"   a rule, a built-in practice, or a [[practice]] of this file
//     what the house does otherwise than the rule's published conventions (all of them, also in [[practice]]):
//   diameter   = "nearest"             as-read, down, nearest (half up), nearest-half-down, nearest-half-even
//   readings   = "average"             two readings of an end: average, average-drop-half, smaller
//   length_step = "1'"                 lengths come down to a multiple of it; 0 = as measured
//   trim       = "4"                   inches (mm) taken off the measured length before it is scaled
//   longest_segment = "20"             a longer log is scaled in segments; 0 = never
//   taper_share = "rule"               segments' diameters: rule (its own taper), even, none
//   taper      = "1/8"                 inches per foot (mm per m) where no large end was measured
//   minimum_top = "6"                  a thinner log is a cull; inches (cm)
//   minimum_length = "8"               a shorter log is a cull
//   merchantable_percent = "33-1/3"    a log with less of its gross scale left is a cull
//   round_to   = 5                     exact, 1, 5, 10, 0.01, 0.001 of the rule's unit
//   squared_divisor = 16               of a squared defect
//   name       = "house"               how reports call it then; left out, the rule's name and `-house`
//
//   [[practice]]                       one more practice, to be named in [scale], in a job, or to a report
//   name       = "our-scribner"        not the name of a built-in one
//   rule       = "scribner-c"          a rule or a built-in practice, with the same keys as [scale] to change it
//
//   [recovery]                         how much wood a log holds, for recovery and LRF, whatever rule is billed by
//   taper      = "1/8"                 inches per foot (mm per m), for logs with only the small end measured
//   trim       = "4"                   inches (mm) that logs are cut over the length they are scaled by
//
//   [count]                            how lumber is counted; a job or a price may count otherwise
//   thickness  = "as-cut"              as-cut, next-quarter, next-inch
//   under_inch_as_inch = false         3/4 counts as 1
//   surface_measure = false            board by board, hardwood
//   length     = "as-written"          as-written, whole-foot-down, even-foot-down
//   rounding   = "total-hundredths"    total-hundredths, total-whole, line-hundredths, line-whole
//
//   [capacity]                         beyond it a sheet is warned of, never refused
//   largest_log = 36                   diameter; inches (cm)
//   longest_log = "20'"
//   largest_board = "8x12"
//   bf_a_day   = 4000
//
//   [[saw]]
//   role       = "head"                head, edger, third, or a name: what a sheet's `teeth` says
//   diameter   = 56                    inches (mm)
//   kerf       = 0.26                  inches (mm); "1/4" is read too
//   teeth      = 22
//   rpm        = 580
//
//   [species]
//   DF = "Douglas-fir"                 or { name = "Douglas-fir", group = "softwood" }: group for the year's return
//   [grade]
//   No2 = "Number 2"                   the mill's own yard grades, not a grade stamp
//
//   [lumber]
//   sizes      = ["1x4", "2x6", "5/4x6"]
//   [lumber.target]                    what a size is cut to; without it, nominal plus the set-up's oversize
//   "2x6"      = "1-5/8x5-5/8"
//
//   [[customer]]
//   code       = "TER"                 one word
//   name       = "Oda Tervane"
//   address    = ["Tervane farm"]      phone, email, note
//   certificate = ""                   tax exemption certificate on file
//
//   [[job]]
//   code       = "TER"                 what a sheet's `job` line says
//   customer   = "TER"                 a [[customer]]; none: the mill's own work
//   name       = "Barn"                site = "Tervane farm"
//   owner      = "customer"            of the lumber: customer, own, shares
//   rule       = "doyle"               instead of the house rule
//   count      = { thickness = "next-inch" }   instead of [count], key by key
//   target     = { "2x4" = "1-5/8x3-5/8" }     instead of [lumber.target], size by size; or [job.target] below
//   cut_list   = ["2x6x16 12", "2x10 8/16 12/12"]   as tally lines: size x length pieces, or size pieces/length
//
//   [[cost]]                           what the work costs, for the mill's own eyes: it stands on no customer's paper
//   name       = "Bess"
//   rate       = 24.00
//   per        = "crew-hour"           crew-hour, sawing-hour, engine-hour, day (sawn), year, MBF (m3), log, tooth,
//                                      gallon or litre (fuel no sheet gives a price for), mile or km (moved)
//   days       = 120                   of a year's cost: the days a year the mill saws, over which it is spread
//   hand       = "Bess"                of a crew hour: this hand's; one without is for hands without an entry of their own
//   saw        = "head"                of a tooth, the same way
//   from       = 2026-03-01            first day in force, until a later [[cost]] of the same name takes over
//
//   [[service]]
//   name       = "oil"                 done by a stop for `service` whose remark has the word; without a name, by any
//   every      = 50                    engine hours
//
// toml_table.h reads TOML; a table is added in a mill_*.cpp and one line of mill.cpp.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/input.h"
#include "measure/convention.h"
#include "measure/money.h"
#include "measure/size.h"
#include "scaling/practice.h"

namespace kerfbook::book {

struct Saw {
  std::string role;  ///< head, edger, third, or a name
  std::optional<measure::Length> diameter;
  std::optional<std::int64_t> kerf_mils;  ///< thousandths of an inch; metric: hundredths of a mm
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

/// A job's cut list. Of a mill file that is in the book, and so was read and found good before, it is read when it is
/// first looked at: most answers look at none, and the lists of a busy mill are the longest part of its file.
class CutList {
 public:
  CutList() = default;
  explicit CutList(std::vector<CutLine> lines) : lines_(std::move(lines)) {}
  /// Lines as the mill file writes them.
  CutList(std::vector<std::string> written, bool metric) : written_(std::move(written)), metric_(metric) {}

  [[nodiscard]] auto begin() const { return lines().begin(); }
  [[nodiscard]] auto end() const { return lines().end(); }
  [[nodiscard]] bool empty() const { return written_.empty() && lines_.empty(); }
  [[nodiscard]] std::size_t size() const { return lines().size(); }
  const CutLine& operator[](std::size_t i) const { return lines()[i]; }

 private:
  const std::vector<CutLine>& lines() const;

  mutable std::vector<std::string> written_;  ///< not read yet
  mutable std::vector<CutLine> lines_;
  bool metric_ = false;
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

/// The whole text of the mill file, out of which price/ reads the tables that are its own (price/terms.h).
struct MoneyTables {
  std::string toml;
};

struct JobEntry {
  std::string code;
  std::string customer;  ///< a customer's code; empty for own work
  std::string name;
  std::string site;
  std::string owner;  ///< "customer", "own", "shares"; left out: by whether there is a customer
  std::string rule;   ///< scaling practice agreed for this job; empty = the house practice
  std::optional<measure::Convention> convention;  ///< how its lumber is counted; empty = the house convention
  std::vector<NamedSize> sizes;                   ///< targets of this job's own
  CutList cut_list;
};

struct Word {  ///< a species or a grade
  std::string code;
  std::string name;
  std::string group;  ///< species: group for the year's return
};

/// The practice of a mill that says nothing of log rules: international-quarter with its published conventions.
scaling::Practice usual_practice();

/// What something costs the mill. `whole` counts of v_use (schema/views/papers.sql) are one unit; a year's cost is one of all
/// the days it is spread over.
struct Cost {
  std::string name;
  std::int64_t rate_micro = 0;  ///< millionths of the currency
  std::string per;
  std::string unit;  ///< as printed
  std::int64_t whole = 1;
  std::string who;  ///< a hand or a saw; empty = every one without an entry of its own
  Day from{-1'000'000};
  Day to{1'000'000};  ///< last day in force
};

struct Service {
  std::string name;
  std::int64_t every_tenths = 0;  ///< of an engine hour
};

struct Mill {
  std::string name = "the mill";
  std::string owner;
  std::vector<std::string> address;
  std::string phone;
  std::string email;
  std::string tax_number;
  std::string logo;                ///< file name of an image, beside the book perhaps; empty = none
  std::vector<std::string> terms;  ///< lines printed under an invoice
  measure::System units = measure::System::inch;
  measure::Currency currency;
  bool a4 = false;            ///< paper: Letter or A4
  std::string dates = "ymd";  ///< ymd, mdy, dmy: how dates are printed
  int week_start = 1;         ///< 1 = Monday ... 7 = Sunday
  int season_month = 1;       ///< the season's first day
  int season_day = 1;
  scaling::Practice house = usual_practice();  ///< house log rule and its conventions
  std::vector<scaling::Practice> practices;    ///< defined by the file
  scaling::Taper taper;                        ///< taper and trim allowance for log content
  measure::Convention convention;              ///< house counting convention
  std::vector<Saw> saws;
  std::optional<measure::Length> largest_log;  ///< diameter
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
  std::vector<Cost> costs;
  std::vector<Service> services;
  MoneyTables money;
};

/// Some thousand customers and their prices.
constexpr InputLimit kMillLimit{"a mill file", 4 << 20, "is it the right file?"};

struct ReadMill {
  Mill mill;
  std::vector<Diagnostic> found;  ///< every problem at once, each with its line
};

/// Reads a mill file; never throws on any bytes. Every problem at once, each with line and column (a text that is no
/// TOML gives the parser's complaint alone). Unknown keys are errors that name the nearest known key.
ReadMill read_mill(std::string_view toml);
/// The same of a text out of the book, which was read before it was posted: its cut lists are left until asked for.
ReadMill read_posted_mill(std::string_view toml);

/// The name of a code among the mill file's words, or the code when it has none.
std::string name_of(const std::vector<Word>& words, const std::string& code);
const JobEntry* find_job(const Mill& mill, std::string_view code);
const Customer* find_customer(const Mill& mill, std::string_view code);
/// The practice a job's logs are scaled under: its own rule, else the house's.
const scaling::Practice& practice_for(const Mill& mill, std::string_view job);
/// A practice by name: one the file defines, else a built-in one. nullopt when there is none.
std::optional<scaling::Practice> practice_named(const Mill& mill, std::string_view name);
/// The target of a nominal size in a list; nullopt when the list gives it none.
std::optional<measure::Size> target_in(const std::vector<NamedSize>& sizes, const measure::Size& nominal);
/// The target section of a nominal size cut for a job; nullopt = nominal plus the set-up's oversize.
std::optional<measure::Size> target_for(const Mill& mill, std::string_view job, const measure::Size& nominal);

}  // namespace kerfbook::book
