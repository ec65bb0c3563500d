// write_off.cpp -- `kerfbook write-off INVOICE [SUM]`: what will not be paid.
#include "command/commands.h"
#include "command/sums.h"

namespace kerfbook::command {

Form write_off_form() {
  return take_off_form(billing::write_off, "how much; without it all that is open",
                       "  kerfbook -b mill.book write-off 2 4.28 --why \"small rest\"");
}

}  // namespace kerfbook::command
