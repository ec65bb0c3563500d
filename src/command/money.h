// money.h -- what the commands of billing share: sums, days, invoices and whose account it is.
#pragma once

#include <optional>
#include <string>

#include "billing/office.h"
#include "command/command.h"

namespace kerfbook::command {

/// Whose work is meant, and up to which day.
struct Whose {
  std::string job;
  std::string buyer;  ///< of own lumber
  std::string to;
};
void add_up_to(CLI::App& app, std::string& to, const char* help = "only sheets up to this day (today)");
void add_whose(CLI::App& app, Whose& whose, const char* job_help, const char* sale_help);
/// A day that may be left out: then it is today. WrongUsage, naming the option, when it is none.
Day day_or_today(const std::string& text, const char* option, const Session& session);

/// A sum in the book's currency; WrongUsage when it is none.
measure::Money sum_of(const std::string& text, const book::Book& book);

/// A deed that takes from what an invoice asks for: the whole of it when no sum is given.
using TakeOff = billing::Paper (*)(book::Book& book, std::int64_t invoice,
                                   std::optional<measure::Money> amount, const std::string& why, Day day);
void add_take_off(CLI::App& app, Session& session, TakeOff deed, const char* sum_help, const char* footer);

}  // namespace kerfbook::command
