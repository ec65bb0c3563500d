// terms.h -- what the mill file says of money: prices, charges, shares, taxes, agreements, numbering. Reading
// it. Choosing among prices is in price.h; nothing here knows the book. The rest of the mill file is read in
// book/.
//
// The grammar (TOML; all of it optional; amounts are plain decimals in the book's currency):
//
//   [invoice]
//   first    = 1                  number of the first invoice
//   prefix   = "K-"               printed before a number
//   due_days = 14                 days to pay; 0 = due on receipt
//   say      = ["..."]            lines printed under an invoice, before the mill's own terms
//
//   [[price]]                     of the prices that fit, the most particular one is used (price.h)
//   basis    = "bf"               bf mbf | log-scale log-mbf log m3-log | m3-sawn piece lineal-foot lineal-metre |
//                                 hour day | shares
//   rate     = 0.54               money a unit; not with `shares`
//   name     = "4 in and thicker" how papers call it; empty = made from basis and conditions
//   count    = { thickness = "as-cut", under_inch_as_inch = false, surface_measure = false,
//                length = "as-written", rounding = "total-whole" }
//                                 how lumber is counted: what is not named is as the job, else the house, counts.
//                                 Lineal feet go by its length and rounding, log scale by its rounding.
//   minimum_log = "12x8"          log bases: a log is charged as at least so thick (in or cm) and long (ft or m), and
//                                 never for less than such a log scales
//   minimum_job = 250.00          least sum for sawing a whole job
//   rule     = "doyle"            log bases: scaled by this practice instead of the job's
//   tax      = "sawing"           kind of line for [[tax]]; default sawing, and lumber when `own_lumber`
//   own_lumber = true             a price of own lumber sold (basis bf, mbf, piece, lineal-foot, lineal-metre, m3-sawn)
//     conditions, each narrowing; a word or a list of words:
//   job = "TER"   customer = "TER"   species = ["DF", "WH"]   grade = "Sel"   size = ["4x4", "4x6"]
//   thickness_from = "4"  thickness_to = "8"  width_from = "10"  width_to = "12"   of lumber, both ends included
//   diameter_from = "30"  diameter_to = "36"      of a log's small end (in or cm), both ends included
//   length_over = "16"  length_to = "20"          of a piece or a log, feet (metric book: metres); over is past it,
//                                                 to includes it
//   from = 2026-05-06  until = 2026-12-31         days in force, both included
//     Hours and days are of a job and have none of the sizes, species and grades; logs have no grade and no section.
//
//   [[charge]]                    amount of one occurrence = flat + rate x quantity
//   name     = "metal-strike"     what a sheet's `charge JOB NAME QUANTITY` says
//   title    = "Metal strike"     how papers call it; empty = the name
//   flat     = 40.00              for each occurrence
//   rate     = 9.00               for each unit
//   per      = "tooth"            each hour day mile km tooth bf mbf piece lineal-foot lineal-metre log bundle percent
//   free     = 20                 so many units of an occurrence are not charged
//   round_trip = true             mile, km: the way is charged both ways
//     what calls for it by itself, besides a `charge` line on a sheet (which goes before it on that sheet):
//   stop     = ["waiting"]        stops of these causes that were marked `charge` (quantity: their hours)
//   strike   = true               the saw met metal (quantity: teeth replaced for it)
//   move     = true               a move under the job (quantity: its distance)
//   automatic = true              lumber and logs that fit the conditions (bf mbf piece lineal-foot lineal-metre log),
//                                 or, with `percent`, the sum for sawing (rate = -5 is 5 % off)
//   once     = true               once for every job that fits (flat)
//   tax      = "service"          default service; sawing with `percent`
//     conditions as for a price
//
//   [[share]]                     of the prices' `shares`
//   percent  = 50                 the customer's share of the lumber
//   rule     = "by-size-line"     by-size-line alternate percent (share.h)
//   job = ...  customer = ...     conditions
//
//   [[tax]]                       the user's own entry; several may fall on one kind of line
//   name     = "Sales tax"
//   rate     = 5                  percent
//   on       = ["lumber"]         kinds of line
//   included = false              true: rates above are with this tax
//   certificate = true            customers with an exemption certificate are free of it
//   from = ...  until = ...
//
//   [[agreement]]                 what was agreed for a job
//   job      = "TER"
//   agreed   = 2026-04-20         the prices in force on this day hold for the whole job
//   deposit  = 400.00             asked for
//   due_days = 7                  instead of [invoice]
//   say      = ["..."]            lines of the agreement: thickness, helpers, slabs, what is not promised
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/exact.h"
#include "measure/convention.h"
#include "measure/money.h"
#include "measure/size.h"
#include "scaling/scaling.h"

namespace kerfbook::billing {

using measure::Length;
using measure::Money;
using measure::Size;

enum class Basis : std::uint8_t {
  bf,           ///< lumber, board measure
  mbf,          ///< lumber, thousand bf
  log_scale,    ///< net log scale of the logs sawn, in the practice's unit
  log_mbf,      ///< net log scale, thousand bf
  log,          ///< logs sawn
  m3_log,       ///< cubic content of the logs sawn
  m3_sawn,      ///< lumber, cubic metres of nominal size
  piece,        ///< lumber, pieces
  lineal_foot,  ///< lumber, feet end to end
  lineal_metre,
  hour,    ///< sawing time of the job
  day,     ///< days on which the job was sawn
  shares,  ///< paid in lumber
};
enum class Per : std::uint8_t {
  each,  ///< what the sheet's charge line counts
  hour,
  day,
  mile,
  km,
  tooth,
  bf,
  mbf,
  piece,
  lineal_foot,
  lineal_metre,
  log,
  bundle,
  percent,  ///< of the sum for sawing on the paper
};
enum class ShareRule : std::uint8_t { by_size_line, alternate, percent };

std::string_view word_of(Basis basis);
std::string_view word_of(Per per);
std::string_view word_of(ShareRule rule);

/// When a price or a charge fits. Empty lists and absent bounds ask nothing.
struct Conditions {
  std::vector<std::string> job;
  std::vector<std::string> customer;
  std::vector<std::string> species;
  std::vector<std::string> grade;
  std::vector<Size> size;
  std::optional<Length> thickness_from;
  std::optional<Length> thickness_to;
  std::optional<Length> width_from;
  std::optional<Length> width_to;
  std::optional<Length> diameter_from;
  std::optional<Length> diameter_to;
  std::optional<Length> length_over;  ///< longer than this
  std::optional<Length> length_to;    ///< no longer than this
  std::optional<Day> from;
  std::optional<Day> until;                ///< last day included
  std::vector<std::string> species_names;  ///< of `species` and `grade`, as a customer reads them
  std::vector<std::string> grade_names;
  bool operator==(const Conditions&) const = default;
};

/// The parts of a counting convention a price names; the others come from the job or the house.
struct CountOverride {
  std::optional<measure::ThicknessRule> thickness;
  std::optional<bool> under_inch_as_inch;
  std::optional<bool> surface_measure;
  std::optional<measure::LengthRule> length;
  std::optional<measure::BillRounding> rounding;
  bool operator==(const CountOverride&) const = default;
};
measure::Convention joined(const measure::Convention& house, const CountOverride& over);

struct MinimumLog {
  Length diameter;
  Length length;
  bool operator==(const MinimumLog&) const = default;
};

struct Price {
  int line = 0;  ///< of the mill file: how `explain` and messages point at it
  Basis basis = Basis::bf;
  Rational rate;
  std::string name;  ///< empty = made from basis and conditions (price.h)
  CountOverride count;
  std::optional<MinimumLog> minimum_log;
  std::optional<Money> minimum_job;
  std::string rule;  ///< scaling practice; empty = the job's
  std::string tax = "sawing";
  bool own_lumber = false;
  Conditions when;
};

struct ChargeTerm {
  int line = 0;
  std::string name;
  std::string title;  ///< never empty after reading
  Rational flat;
  Rational rate;
  Per per = Per::each;
  Rational free;
  bool round_trip = false;
  std::vector<std::string> stop;
  bool strike = false;
  bool move = false;
  bool automatic = false;
  bool once = false;
  std::string tax = "service";
  Conditions when;
};

struct ShareTerm {
  int line = 0;
  Rational percent = 50;  ///< the customer's
  ShareRule rule = ShareRule::by_size_line;
  Conditions when;
};

struct Tax {
  int line = 0;
  std::string name;
  Rational percent;
  std::vector<std::string> on;
  bool included = false;
  bool certificate = true;
  std::optional<Day> from;
  std::optional<Day> until;
};

struct Agreement {
  int line = 0;
  std::string job;
  std::optional<Day> agreed;
  std::optional<Money> deposit;
  std::optional<int> due_days;
  std::vector<std::string> say;
};

struct InvoiceTerms {
  std::int64_t first = 1;
  std::string prefix;
  int due_days = 14;
  std::vector<std::string> say;
};

struct Terms {
  InvoiceTerms invoice;
  std::vector<Price> prices;
  std::vector<ChargeTerm> charges;
  std::vector<ShareTerm> shares;
  std::vector<Tax> taxes;
  std::vector<Agreement> agreements;
};

struct ReadTerms {
  Terms terms;
  std::vector<Diagnostic> found;  ///< every problem at once, with line and column of the mill file
};

/// What plain numbers mean in this book.
struct TermsOptions {
  bool metric = false;
  int money_places = 2;
  std::int64_t money_scale = 1;  ///< measure::money_scale: for telling a price that cannot be meant
  /// What logs are scaled in by a practice, else by a job's, else by the house's.
  std::function<scaling::VolumeUnit(const std::string& rule, const std::string& job)> log_unit =
      [](const std::string&, const std::string&) { return scaling::VolumeUnit::board_foot; };
  /// What a code is called on paper; the code where it has no name.
  std::function<std::string(const std::string&)> species_name = [](const std::string& code) { return code; };
  std::function<std::string(const std::string&)> grade_name = [](const std::string& code) { return code; };
};

/// Reads the money tables out of a whole mill file (other tables are left to book/). Unknown keys are errors
/// that name the nearest; a text that is not TOML gives the parser's complaint alone.
ReadTerms read_terms(std::string_view mill_toml, const TermsOptions& options = {});

/// The top-level names of the mill file that are read here: invoice, price, charge, share, tax, agreement.
const std::vector<std::string>& money_table_names();

const Agreement* find_agreement(const Terms& terms, std::string_view job);

}  // namespace kerfbook::billing
