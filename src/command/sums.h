// sums.h -- what the commands of billing share: sums, days, invoices and whose account it is.
#pragma once

#include <optional>
#include <string>

#include "command/command.h"
#include "office/office.h"

namespace kerfbook::command {

/// Whose work is meant, and up to which day.
struct Whose {
  std::string job;
  std::string buyer;  ///< of own lumber
  std::string to;
};
Row up_to_row(std::string& to);
Rows whose_rows(Whose& whose, const char* job_meaning, const char* sale_meaning);
/// A day that may be left out: then it is today. WrongUsage, naming the option, when it is none.
Day day_or_today(const std::string& text, const char* option, const Session& session);

/// A sum in the book's currency; WrongUsage when it is none.
measure::Money sum_of(const std::string& text, const book::Book& book);

/// A deed that takes from what an invoice asks for: the whole of it when no sum is given.
using TakeOff = billing::Paper (*)(book::Book& book, std::int64_t invoice,
                                   std::optional<measure::Money> amount, const std::string& why, Day day,
                                   bool again);
/// --again: what is posted is one more like the one just before.
Row again_row(bool& again);
Form take_off_form(TakeOff deed, const char* sum_meaning, const char* footer);

}  // namespace kerfbook::command
