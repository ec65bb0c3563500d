// credit.cpp -- `kerfbook credit INVOICE [SUM]`: a credit note; without a sum the whole invoice is cancelled.
#include "command/commands.h"
#include "command/sums.h"

namespace kerfbook::command {

Form credit_form() {
  return take_off_form(billing::credit_invoice,
                       "how much; without it the whole invoice is cancelled and its work can be billed anew",
                       "  kerfbook -b mill.book credit 2 25.00 --why \"short by two boards\"\n"
                       "  kerfbook -b mill.book credit 2 --why \"billed twice\"");
}

}  // namespace kerfbook::command
