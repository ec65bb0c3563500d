// bills.h -- what a job's sheets cost by the mill file: drafts line by line, before and after corrections.
//
// Each line is rounded once: board feet, scale and lengths to hundredths (or whole ones, as the mill file says), and then
// quantity x rate to the cent, a half away from 0. Time is billed by the minute: minutes x rate / 60.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "reckoning.h"

namespace reckoning {

/// Something a sheet is charged for, under one price or one part of a charge.
struct Item {
  Date day;
  int shift = 0;       ///< 0: of the job itself and of no day
  std::string rate;    ///< which price or charge: what stands under one is one line
  bool alone = false;  ///< a charge is a line of its own for each time
  Fraction quantity;
  Fraction price;            ///< of one
  std::int64_t parts = 100;  ///< the quantity is rounded to 1/parts; 0 = not rounded
  bool sawing = false;       ///< of a price, which minimum and percent charges count
  std::string tax;
};

struct Bill {
  std::vector<Fraction> amounts;  ///< of the lines, in no order
  Fraction subtotal;
  Fraction tax;
  Fraction total;
  Fraction sawing;
  Fraction minimum;  ///< what a minimum charge adds
};

/// What was on a paper: the items of the sheets in the revision that was billed.
struct Billed {
  std::vector<Item> items;
  Fraction sawing;
  Fraction minimum;
};

class Bills {
 public:
  explicit Bills(const Mill& mill) : mill_(mill) {}

  /// All a job's sheets are charged for.
  [[nodiscard]] std::vector<Item> items_of(const std::string& job, const std::vector<Sheet>& sheets) const;
  /// Own lumber sold to a buyer.
  [[nodiscard]] std::vector<Item> items_sold(const std::string& buyer,
                                             const std::vector<Sheet>& sheets) const;
  /// The draft of what is not billed yet: new sheets whole, corrected ones by their difference.
  [[nodiscard]] Bill draft(const std::string& job, const std::vector<Item>& now,
                           const std::vector<Billed>& before = {}) const;

 private:
  struct Question {
    std::string job, species, grade;
    Date day;
    const Section* section = nullptr;
  };
  [[nodiscard]] bool fits(const Entry& entry, const Question& asked) const;
  [[nodiscard]] const Entry* find(const std::string& table, const Question& asked, bool sells,
                                  const std::string& name = {}) const;
  void lumber(const Boards& boards, std::vector<Item>& items) const;
  void log(const Log& log, std::vector<Item>& items) const;
  void charge(const Entry& entry, const Stand& at, const Fraction& times, const Fraction& quantity,
              std::vector<Item>& items) const;
  void charges_of(const std::string& job, const Sheet& sheet, std::vector<Item>& items) const;

  const Mill& mill_;
};

/// What is on hand to compare: the amounts of a draft's or an invoice's lines as the program prints them, and its total.
struct PrintedBill {
  std::vector<Fraction> amounts;
  Fraction total;  ///< before a deposit is taken off
};
PrintedBill printed_bill(const Json& answer);

/// What differs, in sentences; nothing when all agrees.
std::vector<std::string> differences(const Bill& expected, const PrintedBill& actual);

}  // namespace reckoning
