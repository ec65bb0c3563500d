// credit.cpp -- `kerfbook credit INVOICE [SUM]`: a credit note; without a sum the whole invoice is cancelled.
#include "command/commands.h"
#include "command/money.h"

namespace kerfbook::command {

void add_credit(CLI::App& app, Session& session) {
  add_take_off(app, session, billing::credit_invoice,
               "how much; without it the whole invoice is cancelled and its work can be billed anew",
               "  kerfbook -b mill.book credit 2 25.00 --why \"short by two boards\"\n"
               "  kerfbook -b mill.book credit 2 --why \"billed twice\"");
}

}  // namespace kerfbook::command
