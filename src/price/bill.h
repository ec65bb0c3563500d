// bill.h -- facts become items, items become lines, lines become a draft: the pure heart of billing.
// A draft is always worked out afresh. What earlier papers froze comes in as Billed and is never billed again.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "measure/money.h"
#include "price/billable.h"
#include "price/terms.h"

namespace kerfbook::billing {

/// What one unit of something costs, and how its quantity is counted and called.
struct Rate {
  std::string title;    ///< "Sawing, 4 in and thicker"
  std::string unit;     ///< "bf", "MBF", "h"; empty for a lump sum
  std::string counted;  ///< the counting convention in words; empty where there is none
  Rational rate;        ///< money a unit
  int places = 2;       ///< decimals the quantity is rounded to, once, before the rate
  std::int64_t per =
      1;  ///< quantities are held in 1/per of the unit: bf when the unit is MBF, minutes of hours
  bool each_line = false;  ///< each size line is rounded, not the total
  bool sawing = false;     ///< a price (counts for minimum and percent charges), not a charge
  std::string tax;         ///< kind of line
  int order = 0;           ///< place among the terms
  bool operator==(const Rate&) const = default;
};

enum class Role : std::uint8_t {
  price,      ///< sawing by a price
  surcharge,  ///< a charge on piece counts or logs: summed over the paper like a price
  flat,       ///< a charge's lump sum, one line an occurrence
  rated,      ///< a charge's rate x quantity, one line an occurrence
  share,      ///< lumber to be divided, no money
};

/// Of an hour's rate: quantities are whole minutes up to the amount.
constexpr std::int64_t kMinutesPerHour = 60;
inline void by_the_minute(Rate& rate) {
  rate.unit = "h";
  rate.per = kMinutesPerHour;
  rate.places = 0;
}

/// One fact under one rate. `quantity` is in proportion to `count`, so that a part can be taken back.
struct Item {
  SheetRef sheet;
  Role role = Role::price;
  std::string charge;     ///< the charge's name; empty for a price
  std::string key;        ///< key_of(fact)
  std::string words;      ///< words_of(fact), with the reason noted
  std::string size_line;  ///< what is rounded together under line rounding: "DF 2x6x16"
  std::int64_t count = 1;
  std::int64_t pieces = 0;
  Rational quantity;  ///< exact, in 1/per of the rate's unit
  Rate rate;
  std::string waived;     ///< the note of a waiver; then nothing is charged
  bool unpriced = false;  ///< no charge is for it: shown without a price, and waived or priced before issue
  bool hangs = false;  ///< on another sheet, which was corrected since it was posted; not kept with the item
  std::string note;    ///< what the customer is to be told of it; on the draft, not kept with the item
  std::optional<Fact> fact;  ///< share items of a draft: the pieces themselves
};
/// Items of one sheet with one identity are the same thing counted again, whatever the rate.
std::string identity(const Item& item);

/// What is asked of a job, besides its facts.
struct JobTerms {
  std::string job;
  std::string customer;
  std::string certificate;                   ///< of exemption; empty = none
  measure::Convention convention;            ///< how its lumber is counted
  scaling::Practice practice;                ///< how its logs are scaled
  std::vector<scaling::Practice> practices;  ///< the mill file's own, for prices that name one
  /// The practice its logs are billed by, where they are: a list of logs goes by it. Else they stand as the sheets
  /// were scaled.
  std::optional<scaling::Practice> billed_by;
  scaling::Taper taper;                            ///< for what logs hold
  measure::System system = measure::System::inch;  ///< of the book
  int money_places = 2;
};

/// A charge let go, or work that is no job's, with the reason; or, `back`, asked for after all.
struct Waiver {
  Day day;  ///< with shift 0: of the job itself and no day, as SheetRef has it
  int shift = 1;
  std::string charge;
  std::string note;
  bool back = false;
  std::string content = {};  ///< of work that is no job's: exactly what was let go; empty for a charge
  [[nodiscard]] bool same_charge(const Waiver& other) const;
};

/// Something to be said of a sheet.
struct Said {
  SheetRef sheet;
  std::string words;
};

/// The least sum for sawing a whole job, of the price that asks most among those used.
struct LeastSum {
  Money sum;
  std::string tax;
};

struct Itemised {
  std::vector<Item> items;
  std::vector<Said> problems;  ///< what could not be priced, each with where and what would help
  std::vector<Said> remarks;   ///< what the owner should look at; nothing is kept from being issued
  std::optional<LeastSum> minimum;
};
/// Everything the facts call for, under the terms in force for each. Problems keep a paper from being issued.
Itemised itemise(const Terms& terms, const JobTerms& job, const std::vector<Fact>& facts,
                 const std::vector<Waiver>& waivers);

/// The practice a price by log scale uses: its own rule, else the job's; nullopt: there is none of that name.
std::optional<scaling::Practice> billed_practice(const JobTerms& job, const Price& price);

/// How a log's volume is worked out on papers: by its measures as they were written, with no trim allowance.
scaling::Taper measured_taper(const JobTerms& job);

/// Prices and ways of counting.
struct Priced {
  std::shared_ptr<const Terms> terms;
  JobTerms job;
};

/// What an issued paper froze.
struct Billed {
  std::string paper;             ///< "invoice 12"
  bool division = false;         ///< of shares; else of money
  bool cancelled = false;        ///< by a credit note: then it bills nothing, but its sheets are open again
  std::vector<SheetRef> sheets;  ///< covered, in the revision that was billed
  std::vector<Item> items;
  Money sawing;      ///< sum of its lines for sawing
  Money minimum;     ///< what a minimum charge added
  int revision = 0;  ///< of the mill file it was priced by; 0 = a book without one
  /// That mill file's prices, when they are not those of the draft: a corrected sheet differs at the prices it was
  /// billed by.
  std::shared_ptr<const Priced> by = {};
};

enum class LineKind : std::uint8_t {
  sawing,
  charge,
  adjustment,
  minimum,
  percent,
  waived,
  unpriced,  ///< on drafts alone
};

/// A line as it is printed.
struct BillLine {
  LineKind kind = LineKind::sawing;
  std::string title;        ///< of its rate
  std::string description;  ///< the title, with what was noted or corrected
  Decimal quantity;         ///< as printed; of time, whole minutes
  bool timed = false;       ///< it is time: printed in hours and minutes, and the rate is for an hour
  std::string unit;
  std::optional<Rational> rate;
  Money amount;
  std::string tax;      ///< kind of line
  bool taxed = false;   ///< some tax falls on it
  bool sawing = false;  ///< under a price (counts for minimum and percent charges)
  std::int64_t pieces = 0;
  std::optional<Day> day;  ///< of the sheet, where it is one sheet's
  std::string counted;     ///< convention in words
  bool operator==(const BillLine&) const = default;
};

/// A line's quantity in its unit: what is multiplied by the rate.
Rational quantity_of(const BillLine& line);

struct TaxRow {
  std::string name;
  Rational percent;
  Money base;  ///< sum of the lines it falls on
  Money amount;
  bool included = false;   ///< part of the lines' amounts, not added
  std::string excused;     ///< the certificate; then amount is what was left out (exclusive) or taken off
  std::int64_t added = 0;  ///< what it adds to the total, minor units
  bool operator==(const TaxRow&) const = default;
};

struct Draft {
  std::string job;
  std::string customer;
  std::optional<Day> from;  ///< first and last day of the sheets on it
  std::optional<Day> to;
  std::vector<BillLine> lines;
  Money subtotal;  ///< the lines' sum
  std::vector<TaxRow> taxes;
  Money total;
  Money sawing;
  Money minimum;
  std::vector<std::string> counted;  ///< each convention used, in words, once
  std::vector<std::string> notes;    ///< for the customer: logs charged as the minimum log
  std::vector<std::string> problems;
  std::vector<std::string> remarks;  ///< for the owner, before it is issued
  std::vector<SheetRef> sheets;
  /// Of the sheets those billed before, each with the revision that was: only their difference is on it.
  std::map<SheetKey, int> corrected = {};
  std::vector<Item> items;  ///< to be frozen with it
};

/// Why a revision of a sheet changed something of the job (or of what a buyer bought).
struct Reason {
  int revision = 1;
  std::string why;
};

/// A job as its sheets tell it now.
struct JobFacts {
  std::vector<Fact> facts;
  /// Of the sheets' corrections those that concern the job; the reasons of others are not for its papers.
  std::map<SheetKey, std::vector<Reason>> reasons = {};
  /// Every sheet of the days looked at, as it is in force now, also those without a fact; one set for all jobs.
  std::shared_ptr<const Sheets> sheets = std::make_shared<Sheets>();
};

/// The draft of what is not billed yet. Sheets billed in an earlier revision give the difference as adjustment
/// lines, at the rates they were billed at; sheets billed as they stand give nothing. `division` asks for the
/// lumber to be shared instead of the money. `today` decides which taxes are in force.
Draft make_draft(const Terms& terms, const JobTerms& job, const JobFacts& now,
                 const std::vector<Billed>& before, const std::vector<Waiver>& waivers, Day today,
                 bool division = false);

/// Taxes on lines, and the total. Each tax is rounded once, on the sum of the lines it falls on.
struct Taxed {
  std::vector<TaxRow> rows;
  Money total;
};
Taxed add_taxes(const std::vector<Tax>& taxes, std::vector<BillLine>& lines, const std::string& certificate,
                Day day);

/// Why the papers so far and the draft do not add up to what one bill for all would be: one entry a rate, tax or
/// minimum that differs, with quantities. Their differences add up to the whole difference.
struct Difference {
  std::string words;
  Money more;  ///< by so much the parts are more than the one bill
};
std::vector<Difference> explain_difference(const Draft& at_once, const std::vector<Draft>& parts);

/// Exact quantities as shown, and the amount: rounded once, or each size line, as the rate says.
struct Sum {
  Decimal quantity;  ///< of time, minutes
  Money amount;
};
Sum price_items(const Rate& rate, const std::vector<const Item*>& items, int money_places);

}  // namespace kerfbook::billing
