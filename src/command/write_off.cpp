// write_off.cpp -- `kerfbook write-off INVOICE [SUM]`: what will not be paid.
#include "command/commands.h"
#include "command/money.h"

namespace kerfbook::command {

void add_write_off(CLI::App& app, Session& session) {
  add_take_off(app, session, billing::write_off, "how much; without it all that is open",
               "  kerfbook -b mill.book write-off 2 4.28 --why \"small rest\"");
}

}  // namespace kerfbook::command
