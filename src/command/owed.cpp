// owed.cpp -- `kerfbook owed`: receivables with their age.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "billing/office.h"
#include "command/commands.h"
#include "command/period.h"

namespace kerfbook::command {
namespace {

struct Asked {
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  auto document =
      billing::receivables_document(book.mill(), billing::ledger_on(book, session.today()), session.today());
  document.style = session.style(book.mill());
  write_document(document, asked.output, session);
}

}  // namespace

void add_owed(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  add_output_options(app, asked->output);
  app.footer("  kerfbook -b mill.book owed");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
