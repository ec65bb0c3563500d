// stock.cpp -- `kerfbook stock`: own lumber on hand.
#include <CLI/CLI.hpp>
#include <ostream>

#include "command/commands.h"
#include "command/money.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string to;
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  const Day to = day_or_today(asked.to, "--to", session);
  auto document = billing::stock_document(book, to, session.today());
  document.style = session.style(book.mill());
  write_document(document, asked.output, session);
}

}  // namespace

void add_stock(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  add_up_to(app, asked->to, "as it was on this day (today)");
  add_output_options(app, asked->output);
  app.footer("  kerfbook -b mill.book stock -o stock.xlsx");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
